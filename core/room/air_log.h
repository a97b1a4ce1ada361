// The air of the room's places as the book keeps it.
//
// Readings are fields of things of their own, one for each place and month (UTC): "2026-05-08 1f00..." is
// the day and a hash of the value, the value a file's hash and the day's readings (air/packed.h). So two
// loggers on one place and day never stand for the same field: both count, and what they say is united
// when it is read. The same file taken in on two phones is the same field with the same value. One more
// thing lists places and months. Like every set they merge, undo and leave; a book of an earlier version
// keeps and passes them on.
//
// What is taken in again adds nothing: readings the book has are left out, also where a logger's next
// file begins with all of the one before.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "air/sample.h"
#include "base/hash.h"
#include "husbandry/input.h"
#include "journal/book.h"
#include "model/profile.h"

namespace burrow {

/// A place as it was written, and the months in which its air was noted.
struct AirPlace {
    std::string place;                ///< as placeFit() reads it: "Warm room", "A / 2"
    std::vector<std::string> months;  ///< "2026-05" of UTC, in order
};

/// In the order of a walk by their names.
Result<std::vector<AirPlace>> airPlaces(Book& book);

/// The readings of a place from one moment to another, both included; united. Texts that this version
/// can't read are passed over.
Result<std::vector<air::Sample>> airOf(Book& book, const AirPlace& place, Range<Instant> when);

struct AirTaken {
    std::vector<Draft> drafts;  ///< empty where all is known already
    int added = 0;
    int known = 0;  ///< readings the book had
};

/// What taking the readings in would write, in one act. `file` is where they come from; none for those
/// that were typed. The spelling of a place that the book has already is kept. Fails with `badInput` for
/// a place without a name or with one longer than `longestScopeName`.
Result<AirTaken> airDrafts(Book& book, std::string_view place, std::span<const air::Sample> samples,
                           const std::optional<Sha256>& file = std::nullopt);

/// The newest day's mean of a place that has one within the last month.
struct PlaceWarmth {
    std::string place;
    LoggedWarmth warmth;

    friend bool operator==(const PlaceWarmth&, const PlaceWarmth&) = default;
};

/// Of all places, on that day or before. Means are over the time that is covered; where readings are too
/// far apart for that, of the readings.
Result<std::vector<PlaceWarmth>> recentWarmth(Book& book, const PlanDay& day,
                                              const air::AirRules& rules);

/// That of the narrowest of the places something stands in.
[[nodiscard]] std::optional<LoggedWarmth> warmthAt(std::span<const PlaceWarmth> warmths,
                                                   const Place& place);
/// The narrowest of some written places that something stands in, as a position; nothing for none.
[[nodiscard]] std::optional<std::size_t> narrowest(std::span<const std::string> written,
                                                   const Place& place);

}  // namespace burrow
