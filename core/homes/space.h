// How much room an animal needs, by habit and age, and whether its home gives it that. The rules are
// data; every answer says what there is and what it takes.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/message.h"
#include "base/result.h"
#include "model/profile.h"
#include "model/subject.h"
#include "model/table.h"

namespace burrow::homes {

using Litres = Quantity<struct LitreUnit>;
using Kilograms = Quantity<struct KilogramUnit>;

/// How far it has grown, as far as its home is concerned. A mature male counts as an adult.
enum class Age { sling, juvenile, adult };
[[nodiscard]] std::string_view name(Age age);

/// For whom the room is.
struct Dweller {
    Habit habit = Habit::terrestrial;
    Age age = Age::juvenile;
    Millimetres span;  ///< leg span, or body length of a scorpion
    // From the rules that the keeper can set for a species, an animal or a place.
    double floorSpans;   ///< least length of the floor, in its own spans
    double widthSpans;   ///< least width of the floor
    double airSpans;     ///< least height above the ground: what a climber climbs
    double groundSpans;  ///< least depth of the ground
};

/// What a dweller needs besides, in its own spans where the name says so.
struct SpaceNeed {
    double groundShare = 0;  ///< least depth as a part of the height of the home
    /// How far it may fall, from the lid to the ground; nothing where a fall does no harm.
    std::optional<double> dropSpans;
    Millimetres dropFrom;  ///< the span from which a fall can hurt
    std::string source;
};

/// The tables of assets/rules/tables/homes.json.
class HomeRules {
public:
    /// Fails with `badInput` for a file that is no such tables, or lacks a habit or an age.
    static Result<HomeRules> fromJson(std::string_view file);

    [[nodiscard]] const SpaceNeed& need(Habit habit, Age age) const;
    /// The tables that `ground` and `rehousing` read.
    [[nodiscard]] const Tables& tables() const { return tables_; }

private:
    Tables tables_;
    std::vector<SpaceNeed> needs_;
};

enum class Point { floorLength, floorWidth, ground, air, drop };
[[nodiscard]] std::string_view name(Point point);

enum class Verdict {
    fits,
    amiss,   ///< too small or too shallow; for `drop`, too far to fall
    unknown  ///< a size of the home is not recorded
};

struct Finding {
    Point point = Point::floorLength;
    Verdict verdict = Verdict::unknown;
    Millimetres has;
    Millimetres needs;  ///< at least, for `drop` at most
    Message why;
};

struct Fit {
    std::vector<Finding> findings;  ///< in the order of `Point`; `drop` only where it can hurt

    /// Whether nothing is amiss; what is not known does not count.
    [[nodiscard]] bool isGood() const;
    [[nodiscard]] bool isKnown() const;
};

/// The home as it is, with its ground as deep as it is. O(1).
[[nodiscard]] Fit fitOf(const Dweller& dweller, const Enclosure& home, const HomeRules& rules);

/// How deep the ground of a home may be made for the dweller; nothing where the floor is too small, no
/// depth would do, or a size is not recorded. O(1).
[[nodiscard]] std::optional<Range<Millimetres>> groundFor(const Dweller& dweller,
                                                          const Enclosure& home,
                                                          const HomeRules& rules);

/// The largest span for which the home is large enough, its ground being as it is: by floor, ground and
/// air, not by the drop, which becomes less of a danger as it grows. Nothing where no size is recorded.
[[nodiscard]] std::optional<Millimetres> largestSpan(const Dweller& dweller, const Enclosure& home);

/// The same dweller after a moult that makes it so many times as large.
[[nodiscard]] inline Dweller grown(Dweller dweller, double ratio) {
    dweller.span = dweller.span * ratio;
    return dweller;
}

/// Inner volume.
[[nodiscard]] Litres volume(const Enclosure& home);
/// Of the smallest home that would do.
[[nodiscard]] Litres leastVolume(const Dweller& dweller, const HomeRules& rules);

}  // namespace burrow::homes
