// One CSV row to drafts for the journal.
#pragma once

#include <string>
#include <tl/expected.hpp>
#include <unordered_map>
#include <vector>

#include "exchange/bring.h"

namespace burrow::exchange {

/// The codes that rows may name: those in the book and those in the files.
class KnownCodes {
public:
    Done load(Book& book);
    /// Gives an animal of the file its identifier before its row is read. A code announced twice, or
    /// one that the book has already, stays with the first.
    void announce(const std::string& code, Book& book);

    [[nodiscard]] std::optional<SubjectId> subject(std::string_view code) const;
    [[nodiscard]] std::optional<EnclosureId> enclosure(std::string_view code) const;
    /// True the first time a row claims an announced animal: its code is then taken.
    bool claim(const std::string& code);
    /// False where an enclosure of that name is known already.
    bool addEnclosure(const std::string& code, EnclosureId id);

private:
    struct Named {
        SubjectId id;
        bool isTaken = false;
    };
    std::unordered_map<std::string, Named> subjects_;
    std::unordered_map<std::string, EnclosureId> enclosures_;
};

struct CellProblem {
    std::string column;
    Message reason;
};

class RowMaker {
public:
    using Drafts = tl::expected<std::vector<Draft>, CellProblem>;

    RowMaker(const std::vector<std::string>& header, char delimiter, KnownCodes& known, Book& book)
        : header_(header), delimiter_(delimiter), known_(known), book_(book) {}

    [[nodiscard]] Drafts draftsFor(CsvKind kind, const std::vector<std::string>& cells) const;

private:
    class Cells;
    [[nodiscard]] Drafts enclosureDrafts(const Cells& cells) const;
    [[nodiscard]] Drafts animalDrafts(const Cells& cells) const;
    [[nodiscard]] Drafts eventDrafts(const Cells& cells) const;

    const std::vector<std::string>& header_;
    char delimiter_;
    KnownCodes& known_;
    Book& book_;
};

}  // namespace burrow::exchange
