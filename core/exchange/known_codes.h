// What the rows of CSV files may name: the animals, enclosures, tags and events of the book and of the
// files themselves.
#pragma once

#include <string>
#include <unordered_map>
#include <unordered_set>

#include "journal/book.h"

namespace burrow::exchange {

class KnownCodes {
public:
    Done load(Book& book);
    /// Gives an animal of the file its identifier before its row is read. A code announced twice, or
    /// one that the book has already, stays with the first.
    void announce(const std::string& code, Book& book);
    /// The same for an event that others of its file are about, by the label it has there.
    void announceEntry(const std::string& label, Book& book);
    /// Labels of events hold within one file.
    void forgetEntries();

    [[nodiscard]] std::optional<SubjectId> subject(std::string_view code) const;
    /// Only one that is in the book, or whose row was good: what happens can happen to it.
    [[nodiscard]] std::optional<SubjectId> claimed(std::string_view code) const;
    [[nodiscard]] bool isInBook(std::string_view code) const;
    [[nodiscard]] std::optional<EnclosureId> enclosure(std::string_view code) const;
    [[nodiscard]] std::optional<EntryId> entry(std::string_view label) const;
    /// True the first time a row claims an announced animal: its code is then taken.
    bool claim(const std::string& code);
    /// Its row says how it stands now, so that no event sets anything.
    void setComplete(const std::string& code) { subjects_.at(code).isComplete = true; }
    [[nodiscard]] bool isComplete(std::string_view code) const;
    /// False where an enclosure of that code is known already.
    bool addEnclosure(const std::string& code, EnclosureId id);
    [[nodiscard]] bool isEnclosureInBook(std::string_view name) const;
    /// True the first time a row uses the label of an event.
    bool claimEntry(const std::string& label) { return usedEntries_.insert(label).second; }
    /// True the first time a row names a tag that the book does not have.
    bool claimTag(const std::string& code) { return tags_.insert(code).second; }

private:
    struct Named {
        SubjectId id;
        bool isTaken = false;
        bool isInBook = false;
        bool isComplete = false;
    };
    [[nodiscard]] const Named* find(std::string_view code) const;
    std::unordered_map<std::string, Named> subjects_;
    std::unordered_map<std::string, EnclosureId> enclosures_;
    std::unordered_set<std::string> enclosuresInBook_;
    std::unordered_map<std::string, EntryId> entries_;
    std::unordered_set<std::string> usedEntries_;
    std::unordered_set<std::string> tags_;
};

}  // namespace burrow::exchange
