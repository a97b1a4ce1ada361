#include "homes/space.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace burrow::homes {
namespace {

constexpr std::array habits{Habit::terrestrial, Habit::arboreal, Habit::fossorial};
constexpr std::array ages{Age::sling, Age::juvenile, Age::adult};

std::string_view nameOf(Habit habit) {
    switch (habit) {
        case Habit::terrestrial: return "terrestrial";
        case Habit::arboreal: return "arboreal";
        case Habit::fossorial: return "fossorial";
    }
    return {};
}

std::size_t position(Habit habit, Age age) {
    return static_cast<std::size_t>(habit) * ages.size() + static_cast<std::size_t>(age);
}

std::vector<TableShape> shapes() {
    const Range<double> spans{0, 20};
    const Range<double> share{0, 1};
    return {{"space",
             {{"ground_share", share, true},
              {"drop_spans", spans, true},
              {"drop_from_mm", {{0, 350}}, true}}},
            {"mixes", {{"mix"}, {"material"}, {"parts", {{0.1, 20}}}}},
            {"materials",
             {{"wet_kg_per_litre", {{0.1, 4}}},
              {"pressed_kg", {{0.01, 50}}, true},
              {"expands_to_litres", {{0.1, 500}}, true}}},
            {"settling", {{"loose_per_litre", {{1, 2}}}}},
            {"walls", {{"kg_per_litre", {{0.5, 4}}}}},
            {"cautions", {{"when"}, {"rank", {{0, 100}}}}}};
}

tl::unexpected<Error> refuse(std::string row) {
    return fail(Trouble::badInput, {"homes.rules", {{"row", std::move(row)}}});
}

Millimetres spansOf(const Dweller& dweller, double spans) { return dweller.span * spans; }

bool canFall(const Dweller& dweller, const SpaceNeed& need) {
    return need.dropSpans && dweller.span >= need.dropFrom;
}

/// At least this deep, by its spans and by the height of its home.
Millimetres leastGround(const Dweller& dweller, const SpaceNeed& need, Millimetres height) {
    return std::max(spansOf(dweller, dweller.groundSpans), height * need.groundShare);
}

Finding finding(Point point, Millimetres has, Millimetres needs, bool isKnown) {
    Finding found{point, Verdict::unknown, has, needs, {}};
    const bool isAtMost = point == Point::drop;
    if (isKnown) {
        const bool fits = isAtMost ? has <= needs : has >= needs;
        found.verdict = fits ? Verdict::fits : Verdict::amiss;
    }
    switch (found.verdict) {
        case Verdict::fits: found.why.id = "homes.fits"; break;
        case Verdict::amiss: found.why.id = isAtMost ? "homes.tooFar" : "homes.tooSmall"; break;
        case Verdict::unknown: found.why.id = "homes.unknown"; break;
    }
    found.why.arguments = {{"point", std::string(name(point))},
                           {"has", std::round(has.value)},
                           {"needs", std::round(needs.value)}};
    return found;
}

}  // namespace

std::string_view name(Age age) {
    switch (age) {
        case Age::sling: return "sling";
        case Age::juvenile: return "juvenile";
        case Age::adult: return "adult";
    }
    return {};
}

std::string_view name(Point point) {
    switch (point) {
        case Point::floorLength: return "floor_length";
        case Point::floorWidth: return "floor_width";
        case Point::ground: return "ground";
        case Point::air: return "air";
        case Point::drop: return "drop";
    }
    return {};
}

Result<HomeRules> HomeRules::fromJson(std::string_view file) {
    const auto wanted = shapes();
    HomeRules rules;
    BURROW_TRY(rules.tables_, Tables::fromJson(file, wanted));
    for (const auto habit : habits) {
        for (const auto age : ages) {
            const auto id = std::string(nameOf(habit)) + "." + std::string(name(age));
            const auto* row = rules.tables_.find("space", id);
            if (row == nullptr) return refuse(id);
            rules.needs_.push_back({row->numberIfAny("ground_share").value_or(0),
                                    row->numberIfAny("drop_spans"),
                                    {row->numberIfAny("drop_from_mm").value_or(0)},
                                    row->source});
        }
    }
    for (const auto& part : rules.tables_.rows("mixes")) {
        if (rules.tables_.find("materials", part.word("material")) == nullptr) {
            return refuse(part.id);
        }
    }
    return rules;
}

const SpaceNeed& HomeRules::need(Habit habit, Age age) const {
    return needs_[position(habit, age)];
}

bool Fit::isGood() const {
    return std::none_of(findings.begin(), findings.end(),
                        [](const Finding& f) { return f.verdict == Verdict::amiss; });
}

bool Fit::isKnown() const {
    return std::none_of(findings.begin(), findings.end(),
                        [](const Finding& f) { return f.verdict == Verdict::unknown; });
}

Fit fitOf(const Dweller& dweller, const Enclosure& home, const HomeRules& rules) {
    const auto& need = rules.need(dweller.habit, dweller.age);
    const auto longer = std::max(home.length, home.width);
    const auto shorter = std::min(home.length, home.width);
    const auto air = home.height - home.substrate;
    const bool hasFloor = shorter > Millimetres{0};
    const bool hasHeight = home.height > Millimetres{0};
    const bool hasGround = home.substrate > Millimetres{0};
    Fit fit;
    fit.findings.push_back(
        finding(Point::floorLength, longer, spansOf(dweller, dweller.floorSpans), hasFloor));
    fit.findings.push_back(
        finding(Point::floorWidth, shorter, spansOf(dweller, dweller.widthSpans), hasFloor));
    const auto ground = leastGround(dweller, need, home.height);
    if (ground > Millimetres{0}) {
        const bool isKnown = hasGround && (hasHeight || need.groundShare == 0);
        fit.findings.push_back(finding(Point::ground, home.substrate, ground, isKnown));
    }
    fit.findings.push_back(
        finding(Point::air, air, spansOf(dweller, dweller.airSpans), hasHeight && hasGround));
    if (canFall(dweller, need)) {
        fit.findings.push_back(
            finding(Point::drop, air, spansOf(dweller, *need.dropSpans), hasHeight && hasGround));
    }
    return fit;
}

std::optional<Range<Millimetres>> groundFor(const Dweller& dweller, const Enclosure& home,
                                            const HomeRules& rules) {
    const auto& need = rules.need(dweller.habit, dweller.age);
    const auto longer = std::max(home.length, home.width);
    const auto shorter = std::min(home.length, home.width);
    if (shorter <= Millimetres{0} || home.height <= Millimetres{0}) return std::nullopt;
    if (longer < spansOf(dweller, dweller.floorSpans)) return std::nullopt;
    if (shorter < spansOf(dweller, dweller.widthSpans)) return std::nullopt;
    Range<Millimetres> depth{leastGround(dweller, need, home.height),
                             home.height - spansOf(dweller, dweller.airSpans)};
    if (canFall(dweller, need)) {
        depth.least = std::max(depth.least, home.height - spansOf(dweller, *need.dropSpans));
    }
    if (depth.least > depth.most) return std::nullopt;
    return depth;
}

std::optional<Millimetres> largestSpan(const Dweller& dweller, const Enclosure& home) {
    double largest = std::numeric_limits<double>::infinity();
    const auto limit = [&](Millimetres has, double spans) {
        if (has > Millimetres{0} && spans > 0) largest = std::min(largest, has.value / spans);
    };
    limit(std::max(home.length, home.width), dweller.floorSpans);
    limit(std::min(home.length, home.width), dweller.widthSpans);
    limit(home.substrate, dweller.groundSpans);
    if (home.substrate > Millimetres{0}) limit(home.height - home.substrate, dweller.airSpans);
    const bool isFull = home.height > Millimetres{0} && home.substrate >= home.height;
    if (isFull && dweller.airSpans > 0) return Millimetres{0};
    if (largest == std::numeric_limits<double>::infinity()) return std::nullopt;
    return Millimetres{largest};
}

Litres volume(const Enclosure& home) {
    return {home.length.value * home.width.value * home.height.value / 1e6};
}

Litres leastVolume(const Dweller& dweller, const HomeRules& rules) {
    const auto& need = rules.need(dweller.habit, dweller.age);
    const double span = dweller.span.value;
    // Where the ground is a part of the height, the air is the rest.
    const double byShare = dweller.airSpans / std::max(0.1, 1 - need.groundShare);
    const double height = std::max(dweller.groundSpans + dweller.airSpans, byShare);
    return {dweller.floorSpans * span * dweller.widthSpans * span * height * span / 1e6};
}

}  // namespace burrow::homes
