// Reading the book: who is kept, where, in what state, and what happened to them.
#pragma once

#include <map>

#include "journal/book.h"
#include "model/digest.h"
#include "model/subject.h"

namespace burrow {

/// A subject with all that a list or a planner needs.
struct Kept {
    Subject subject;
    Place place;  ///< its enclosure's, else its own
    Digest digest;
    std::optional<std::string> tagCode;
    std::optional<HomeSize> home;  ///< of its enclosure
    /// The day on which its quarantine was written down, where it is in one.
    std::optional<CivilDay> quarantinedSince;
};

struct RoomInfo {
    std::string name;
    std::string code;
    std::string contact;
    std::vector<std::pair<std::string, std::string>> rules;     ///< the keeper's own, by rule id
    std::vector<std::pair<std::string, std::string>> profiles;  ///< likewise, by species
    std::map<std::string, std::string> others;                  ///< all other settings, by name

    /// Empty where it is not set.
    [[nodiscard]] std::string other(const std::string& setting) const {
        const auto found = others.find(setting);
        return found == others.end() ? std::string() : found->second;
    }
};

Result<RoomInfo> roomInfo(Book& book);
Result<std::string> roomCode(Book& book);

/// Everyone in the book, also those who died or left; in no order.
Result<std::vector<Kept>> roster(Book& book);
Result<std::optional<Kept>> kept(Book& book, SubjectId id);
/// Those whose number is closest to what was typed (model/number.h). Two phones may both have given it.
Result<std::vector<SubjectId>> subjectsNumbered(Book& book, std::string_view number);
/// One above the highest number in use, with at least three digits.
Result<std::string> nextNumber(Book& book);
/// The one after that which nextNumber() gave.
[[nodiscard]] std::string numberAfter(const std::string& number);

Result<std::vector<Enclosure>> enclosures(Book& book);
Result<std::optional<Enclosure>> enclosure(Book& book, EnclosureId id);

Result<std::optional<Tag>> tag(Book& book, std::string_view code);
/// The code of a tag by the thing its fields are kept under; empty where there is none.
Result<std::string> tagCode(Book& book, const Uuid& thing);
Result<std::vector<SubjectId>> subjectsIn(Book& book, EnclosureId enclosure);
/// Those who may be meant by a tag: its own subject, or everyone in its enclosure. None for a tag that
/// is not in the book, or hangs on nothing yet.
Result<std::vector<SubjectId>> subjectsTagged(Book& book, std::string_view code);

/// More facts than any animal will have: the limit of history() where all of them are wanted.
inline constexpr int wholeHistory = 1'000'000;
/// At most `limit` facts, newest first, that happened before `before` (all, where nothing is given).
Result<std::vector<Fact>> history(Book& book, SubjectId id, int limit,
                                  std::optional<Instant> before = std::nullopt);
/// One fact as it stands after corrections.
Result<std::optional<Fact>> fact(Book& book, const EntryId& entry);

}  // namespace burrow
