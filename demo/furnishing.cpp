#include "furnishing.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "room/air_log.h"

namespace burrow::demo {
namespace {

constexpr int airDays = 42;
constexpr int readingsPerDay = 48;

struct Shape {
    double length, width;  ///< in spans
    double ground;         ///< likewise
    double air;            ///< likewise
};

Shape shapeFor(Habit habit) {
    switch (habit) {
        case Habit::arboreal: return {2.2, 1.8, 0.3, 3.2};
        case Habit::fossorial: return {2.7, 1.7, 1.7, 1.1};
        case Habit::terrestrial: break;
    }
    return {3.2, 1.8, 0.6, 1.1};
}

double roomToGrow(double grown) {
    if (grown < 0.3) return 1.9;
    return grown < 0.75 ? 1.35 : 1.08;
}

struct Climate {
    const char* place;
    double warmth, swing;
    double humidity;
    bool hasHotDay;
};

// Named as the shelves are.
constexpr std::array climates{Climate{"A", 24.9, 0.4, 62, false},
                              Climate{"C, warm", 25.2, 0.5, 62, true},
                              Climate{"D, nursery", 25.0, 0.3, 65, false}};

}  // namespace

void fitHome(Enclosure& home, const Profile& profile, Millimetres span, Dice& dice) {
    const auto roundUp = [](double mm) { return Millimetres{std::ceil(mm / 10) * 10}; };
    const auto shape = shapeFor(profile.habit.value);
    const double grown = span.value / profile.adultSpan.value.most.value;
    // Now and then one has been left in a tub for too long.
    const double size = span.value * (dice.chance(0.05) ? 0.85 : roomToGrow(grown));
    home.length = roundUp(std::max(60.0, size * shape.length));
    home.width = roundUp(std::max(60.0, size * shape.width));
    // Whoever does not climb could be hurt by a fall from the lid.
    const bool climbs = profile.habit.value == Habit::arboreal;
    const double safe = climbs ? size * shape.air : span.value * 1.4;
    const auto air =
        Millimetres{std::floor(std::max(40.0, std::min(safe, size * shape.air + 10)) / 10) * 10};
    home.substrate = roundUp(std::max(30.0, size * shape.ground));
    if (profile.habit.value == Habit::fossorial && home.substrate < air) home.substrate = air;
    home.height = home.substrate + air;
}

Millimetres spanAfter(const Role& role, std::span<const FactDraft> life) {
    auto span = role.startSpan;
    for (const auto& fact : life) span = fact.body.span.value_or(span);
    return span;
}

std::vector<Enclosure> emptyHomes(Book& book) {
    struct Kind {
        int count;
        double length, width, height;
    };
    constexpr std::array kinds{Kind{4, 100, 100, 130}, Kind{3, 300, 200, 200},
                               Kind{2, 400, 300, 250}, Kind{3, 200, 200, 300},
                               Kind{2, 300, 300, 450}, Kind{1, 500, 300, 350}};
    std::vector<Enclosure> homes;
    for (const auto& kind : kinds) {
        for (int i = 0; i < kind.count; ++i) {
            Enclosure home;
            home.id = EnclosureId{book.newId()};
            home.name = fmt::format("S-{:02}", homes.size() + 1);
            home.length = {kind.length};
            home.width = {kind.width};
            home.height = {kind.height};
            home.place.shelf = "S, spare";
            home.place.position = std::to_string(homes.size() + 1);
            homes.push_back(std::move(home));
        }
    }
    return homes;
}

Result<std::vector<Draft>> airOfRoom(Book& book, const Options& options, Dice& dice) {
    std::vector<Draft> drafts;
    for (const auto& climate : climates) {
        std::vector<air::Sample> samples;
        for (int i = 0; i < airDays * readingsPerDay; ++i) {
            const auto day = options.until - airDays + i / readingsPerDay;
            const int minute = i % readingsPerDay * (24 * 60 / readingsPerDay);
            // Warmest in the afternoon; the damp goes the other way.
            const double sun = std::sin((minute / 60.0 - 9) / 12 * std::numbers::pi);
            const bool isHot = climate.hasHotDay && day == options.until - 9;
            const double warmth = climate.warmth + climate.swing * sun + (isHot ? 5.5 : 0);
            const double damp = climate.humidity - 3 * sun - (isHot ? 12 : 0);
            samples.push_back({options.zone.at(day, minute * 60),
                               Celsius{std::round(dice.around(warmth, 0.2) * 10) / 10},
                               air::Percent{std::round(dice.around(damp, 2))}});
        }
        BURROW_TRY(auto taken, airDrafts(book, climate.place, samples));
        std::ranges::move(taken.drafts, std::back_inserter(drafts));
    }
    return drafts;
}

}  // namespace burrow::demo
