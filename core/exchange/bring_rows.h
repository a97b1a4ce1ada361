// One CSV row to drafts for the journal.
#pragma once

#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "exchange/bring.h"
#include "exchange/known_codes.h"
#include "exchange/row_cells.h"

namespace burrow::exchange {

class RowMaker {
public:
    using Drafts = tl::expected<std::vector<Draft>, CellProblem>;

    /// `drawsTags`: an animal gets a tag of its own, because no file says which it has.
    RowMaker(const std::vector<std::string>& header, char delimiter, bool drawsTags,
             KnownCodes& known, Book& book)
        : header_(header),
          delimiter_(delimiter),
          drawsTags_(drawsTags),
          known_(known),
          book_(book) {}

    [[nodiscard]] Drafts draftsFor(CsvKind kind, const std::vector<std::string>& cells) const;

private:
    using Cells = RowCells;
    [[nodiscard]] Drafts settingDrafts(const Cells& cells) const;
    [[nodiscard]] Drafts enclosureDrafts(const Cells& cells) const;
    [[nodiscard]] Drafts animalDrafts(const Cells& cells) const;
    [[nodiscard]] Drafts tagDrafts(const Cells& cells) const;
    [[nodiscard]] Drafts eventDrafts(const Cells& cells) const;
    [[nodiscard]] FactDraft startEvent(const Cells& cells) const;
    void readField(FactDraft& draft, const std::string& column, const Cells& cells) const;
    [[nodiscard]] Subject readSubject(const Cells& cells) const;
    [[nodiscard]] std::optional<SubjectId> otherAnimal(const Cells& cells,
                                                       std::string_view column) const;
    [[nodiscard]] std::optional<EnclosureId> home(const Cells& cells) const;

    const std::vector<std::string>& header_;
    char delimiter_;
    bool drawsTags_;
    KnownCodes& known_;
    Book& book_;
};

}  // namespace burrow::exchange
