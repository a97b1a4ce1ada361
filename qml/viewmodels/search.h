// Finding residents by what a keeper types.
#pragma once

#include <QString>

#include "viewmodels/desk.h"

namespace burrow {

/// Everything a resident can be found by, for Search: its number with and without the room's code, every
/// name of its species, its place, source and note.
[[nodiscard]] QString searchText(const Resident& resident, const Desk& desk);

class Search {
public:
    /// Species are also found by a shortened genus ("B. hamorii"), numbers with other zeros in front.
    Search(const QString& typed, const Desk& desk);

    [[nodiscard]] bool isEmpty() const { return words_.isEmpty(); }
    /// Whether every word typed is somewhere in `text`, or the whole names its species or is its
    /// number. Of several words a single letter or digit must be a word there: "shelf c", "tub 1".
    [[nodiscard]] bool fits(const Resident& resident, const QString& text) const;

private:
    QStringList words_;
    QString number_;  ///< the whole as a number, without the room's code and zeros in front
    const Profile* species_ = nullptr;
};

/// Those with that number, with or without the room's code in front; where none has exactly this one,
/// those with the same without leading zeros, as subjectsNumbered() finds them in the book.
[[nodiscard]] std::vector<ResidentPtr> numbered(const Room& room, const QString& number);

/// Valid names of species for what was typed so far: those with a name that holds it, then those
/// that it may be a slip of.
[[nodiscard]] QStringList speciesLike(const QString& typed, const Profiles& profiles, int most);

}  // namespace burrow
