// The same measure over an animal's life, and the leg span that a carapace promises.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/message.h"
#include "growth/line.h"
#include "model/fact.h"
#include "model/profile.h"

namespace burrow::growth {

enum class Measure { carapace, span, carapaceWidth, fang, segment };
[[nodiscard]] std::string_view name(Measure measure);

/// One value on record.
struct Measured {
    EntryId entry;
    CivilDay day;  ///< of the moult, where it was taken of its skin
    Millimetres size;
    std::optional<Millimetres> low;  ///< with 95 percent within these, where that is known
    std::optional<Millimetres> high;
    std::optional<Method> method;
    /// At which moult: 1 for the first on record; 0 for one taken before it. Sizes change at moults only.
    int moult = 0;
    bool isOfTheMoult = false;  ///< of the shed skin itself
    /// Over the last value of an earlier moult; nothing for the first.
    std::optional<double> factor;
};

/// Oldest skin first, and oldest first within one. `history` may be in any order. What says which moult it
/// is about belongs to that one, whenever it was written. `segment` is for segments of legs: "leg 1 femur".
[[nodiscard]] std::vector<Measured> measureHistory(std::span<const Fact> history, Measure measure,
                                                   std::string_view segment = {});

/// One value for each skin, oldest first: the last one of the shed skin itself, or where there is none the
/// last of the animal in it. Factors are those between these. `values` are of measureHistory().
[[nodiscard]] std::vector<Measured> onePerSkin(std::span<const Measured> values);

/// Which segments of legs were measured, as entries spell them, in alphabetical order.
[[nodiscard]] std::vector<std::string> segmentsOf(std::span<const Fact> history);

/// Carapace and leg span of one animal in one skin.
struct SizePair {
    Millimetres carapace;
    Millimetres span;
};

/// What one animal has to say: the values of one entry, or the last of both in the same skin. One pair a
/// skin, so that an animal that is measured every week does not count for ten.
[[nodiscard]] std::vector<SizePair> sizePairs(std::span<const Fact> history);

/// Leg span from carapace length for one species: span = e^a x carapace^b, a line in logarithms. Growth
/// of parts goes by powers of each other (J. S. Huxley, Problems of Relative Growth, 1932).
class SpanByCarapace {
public:
    /// The fewest pairs that make a line with an interval.
    static constexpr int fewestPairs = 3;

    /// Nothing where there are too few pairs, or all carapaces are of one length.
    static std::optional<SpanByCarapace> of(std::span<const SizePair> pairs);

    struct Estimate {
        Millimetres span;
        Range<Millimetres> interval95;  ///< of the next animal of that carapace
        bool isBeyond = false;          ///< the carapace is outside those that were measured
    };
    [[nodiscard]] Estimate at(Millimetres carapace) const;
    [[nodiscard]] const Line& line() const { return line_; }
    [[nodiscard]] const Range<Millimetres>& carapaces() const { return carapaces_; }

private:
    Line line_;
    Range<Millimetres> carapaces_;
};

/// What to say where there is none: how many pairs there are, and how many it takes.
[[nodiscard]] Message tooFewPairs(std::size_t pairs);

}  // namespace burrow::growth
