// Air: humidity against published tables, day-degrees against quadrature, alarms.
#include <rapidcheck.h>

#include <algorithm>
#include <numbers>

#include "air/alarms.h"
#include "air/humidity.h"
#include "air/warmth.h"
#include "support/assets.h"
#include "support/checks.h"

using namespace burrow;
using namespace burrow::test;
using namespace burrow::air;

namespace {

const AirRules& rules() {
    static const auto shared =
        AirRules::fromJson(slurp(std::string(BURROW_ASSETS_DIR) + "/rules/tables/air.json"))
            .value();
    return shared;
}

bool isSpoken(const Message& message) {
    static const auto words = englishWords();
    const auto text = words.say(message, CivilDay{20'000});
    return !text.empty() && text.find('[') == std::string::npos;
}

void checkVapour(Checks& checks) {
    struct Row {
        double t, magnus, hylandWexler, iapws;
    };
    // The formula of WMO-No. 8, Annex 4.B itself; Hyland & Wexler 1983, which the tables of the ASHRAE
    // Handbook of Fundamentals are made from (constants from memory; psychrolib 1.1.1, the Handbook's
    // 2017 equations, gives 23.388037, 31.692165 and 42.460302 at 20, 25 and 30 degrees); IAPWS-95
    // (Wagner & Pruss 2002, constants from memory). In hPa over water.
    for (const auto& row :
         {Row{0, 6.112000, 6.112129, 6.112128}, Row{5, 8.717427, 8.724867, 8.725302},
          Row{10, 12.260302, 12.279953, 12.281122}, Row{15, 17.016720, 17.054478, 17.056770},
          Row{20, 23.325960, 23.388037, 23.391937}, Row{25, 31.600569, 31.692165, 31.698245},
          Row{30, 42.337239, 42.460302, 42.469199}, Row{35, 56.128417, 56.278194, 56.290574},
          Row{40, 73.674581, 73.834600, 73.851105}}) {
        const double value = saturation({row.t}).value;
        checks.near(value, row.magnus, 5e-7, "Magnus");
        // The formula is low by 0.17 to 0.31 % at 10 to 40 degrees.
        checks.near(value / row.hylandWexler, 1, .0035, "ASHRAE");
        checks.near(value / row.iapws, 1, .0035, "IAPWS");
    }
    // Saturation vapour pressures as handbooks print them (CRC, from memory), hPa.
    for (const auto& [t, printed] : {std::pair(0.0, 6.113), std::pair(10.0, 12.281),
                                     std::pair(20.0, 23.388), std::pair(30.0, 42.455)}) {
        checks.near(saturation({t}).value / printed, 1, .0035, "handbook");
    }
    struct Derived {
        double t, rh, dew, deficit, absolute;
    };
    // Computed from the same formulas in Python 3.11 in double precision.
    for (const auto& row : {Derived{20, 50, 9.255175, 11.662980, 8.620807},
                            Derived{25, 60, 16.693149, 12.640228, 13.779696},
                            Derived{25, 80, 21.306887, 6.320114, 18.372928},
                            Derived{28, 70, 22.014859, 11.313448, 18.994033},
                            Derived{30, 40, 14.925055, 25.402343, 12.104678},
                            Derived{0, 50, -9.202020, 3.056000, 2.424267}}) {
        checks.near(dewPoint({row.t}, {row.rh})->value, row.dew, 1e-6, "dew point");
        checks.near(deficit({row.t}, {row.rh}).value, row.deficit, 1e-6, "deficit");
        checks.near(absoluteHumidity({row.t}, {row.rh}).value, row.absolute, 1e-6, "absolute");
    }
    // Dew points of psychrolib 1.1.1 (ASHRAE): the formulas differ by up to 0.02 K.
    for (const auto& [t, rh, dew] :
         {std::tuple(20.0, 50.0, 9.272392), std::tuple(25.0, 60.0, 16.701132),
          std::tuple(25.0, 80.0, 21.309397), std::tuple(28.0, 70.0, 22.017297),
          std::tuple(30.0, 40.0, 14.935827)}) {
        checks.near(dewPoint({t}, {rh})->value, dew, .02, "dew point of ASHRAE");
    }
    checks.near(humidityAt({28}, {20}, {60}).value, 37.1122311, 1e-7,
                "20 degrees and 60 % warmed to 28");
    checks.that(!dewPoint({20}, {0}), "dry air has no dew point");
}

/// Mean of max(0, min(t, top) - base) over one turn of the sine, by the midpoint rule.
double quadrature(double least, double most, double base, std::optional<double> top) {
    constexpr int parts = 200'000;
    double total = 0;
    for (int i = 0; i < parts; ++i) {
        const double turn = 2 * std::numbers::pi * (i + .5) / parts;
        double t = (least + most) / 2 + (most - least) / 2 * std::sin(turn);
        if (top) t = std::min(t, *top);
        total += std::max(0.0, t - base);
    }
    return total / parts;
}

void checkDayDegrees(Checks& checks) {
    struct Row {
        double least, most, base;
        std::optional<double> top;
        double degrees;
    };
    // Values of the single sine (Baskerville & Emin 1969), confirmed by scipy 1.10.1 quadrature.
    for (const auto& row : {Row{10, 20, 12, {}, 3.387737839}, Row{8, 26, 10, {}, 7.286204361},
                            Row{8, 26, 10, 30., 7.286204361}, Row{4, 20, 10, {}, 3.626479023},
                            Row{0, 20, 10, {}, 3.183098862}, Row{18, 34, 15, 30., 10.128017752},
                            Row{15, 30, 10, {}, 12.5}, Row{5, 9, 10, {}, 0}}) {
        const WarmthScale scale{{row.base},
                                row.top ? std::optional(Celsius{*row.top}) : std::nullopt};
        const double value = dayDegreesBetween({row.least}, {row.most}, scale);
        checks.near(value, row.degrees, 5e-10, "single sine");
        checks.near(value, quadrature(row.least, row.most, row.base, row.top), 1e-7, "quadrature");
    }
}

const Zone& berlin() {
    static const auto zone = Zone::named("Europe/Berlin").value();
    return zone;
}

Sample sampleAt(CivilDay day, int minute, double celsius, const Zone& zone) {
    return {zone.at(day, minute * 60), Celsius{celsius}, std::nullopt};
}

void checkWarmth(Checks& checks) {
    const WarmthScale scale{{20}, std::nullopt};
    const CivilDay day = *civilDay({2026, 5, 8});
    // From 16 to 28 degrees over 24 hours: above 20 for 16 hours, 4 degrees on average there.
    const auto line = [&](int from, int to) {
        std::vector<Sample> samples;
        for (int minute = from; minute <= to; minute += 60) {
            samples.push_back(sampleAt(day, minute, 16 + minute / 120.0, berlin()));
        }
        return samples;
    };
    const auto one = warmthByDay(line(0, 1440), scale, berlin(), rules());
    checks.that(one.size() == 1 && one[0].day == day, "one day");
    checks.near(*one[0].dayDegrees, 4.0 * 16 / 24, 1e-12, "two and two thirds day-degrees");
    checks.near(one[0].mean.value, 22, 1e-12, "mean");
    checks.that(one[0].least == Celsius{16} && one[0].most == Celsius{28}, "extremes");
    checks.near(one[0].hours, 24, 1e-12, "a whole day");
    const auto part = warmthByDay(line(0, 600), scale, berlin(), rules());
    checks.that(part.size() == 1 && !part[0].dayDegrees, "ten hours are not enough");
    // The clocks go forward on 29 March 2026: a day of 23 hours counts as one.
    std::vector<Sample> steady;
    const CivilDay change = *civilDay({2026, 3, 29});
    const auto begin = berlin().at(change - 1, 0);
    for (int hour = 0; hour <= 71; ++hour) {
        steady.push_back({{begin.ms + hour * 3'600'000LL}, Celsius{25}, std::nullopt});
    }
    const auto three = warmthByDay(steady, scale, berlin(), rules());
    checks.that(three.size() == 3 && three[1].day == change, "three days");
    checks.near(three.at(1).hours, 23, 1e-12, "of which one has 23 hours");
    for (const auto& warmth : three)
        checks.near(*warmth.dayDegrees, 5, 1e-12, "five day-degrees each");
    // A gap of more than three hours is not bridged.
    auto gap = line(0, 1440);
    gap.erase(gap.begin() + 5, gap.begin() + 10);
    checks.near(warmthByDay(gap, scale, berlin(), rules())[0].hours, 18, 1e-12,
                "six hours are missing");
}

void checkAlarms(Checks& checks) {
    const CivilDay day = *civilDay({2026, 5, 8});
    const AirRange range{Range<Celsius>{{22}, {28}}, std::nullopt};
    const auto of = [&](std::initializer_list<double> degrees) {
        std::vector<Sample> samples;
        for (const double t : degrees) {
            samples.push_back(sampleAt(day, static_cast<int>(samples.size()) * 20, t, berlin()));
        }
        return alarms(samples, range, rules());
    };
    const auto warm = of({25, 29, 30, 28.2, 27.8, 28.1, 27, 25});
    checks.that(warm.size() == 1 && warm[0].breach == Breach::tooWarm,
                "one alarm, as it came back at once");
    checks.that(warm[0].worst == 30 && !warm[0].isOpen && isSpoken(warm[0].why), "at its worst");
    checks.that(warm[0].from == berlin().at(day, 1200) && warm[0].until == berlin().at(day, 6000),
                "how long");
    checks.that(of({25, 29, 25, 25}).empty(), "a moment is no alarm");
    const auto open = of({25, 21});
    checks.that(open.size() == 1 && open[0].isOpen && open[0].breach == Breach::tooCold,
                "still too cold");
    checks.that(of({22, 28}).empty(), "the ends belong to the range");
    const std::vector<Range<Celsius>> shared{{{20}, {26}}, {{24}, {30}}};
    checks.that(sharedRange<Celsius>(shared) == Range<Celsius>{{24}, {26}}, "warmth for both");
    const std::vector<Range<Celsius>> apart{{{18}, {22}}, {{24}, {30}}};
    checks.that(!sharedRange<Celsius>(apart) && !sharedRange<Celsius>({}), "no warmth suits both");
}

bool airHolds() {
    bool ok = rc::check("dew point is the temperature at which this air is saturated", [] {
        const Celsius t{*rc::gen::inRange(-200, 500) / 10.0};
        const Percent rh{*rc::gen::inRange(10, 1001) / 10.0};
        const auto dew = *dewPoint(t, rh);
        RC_ASSERT(dew <= t + Celsius{1e-9});
        RC_ASSERT(std::abs(saturation(dew) / vapourPressure(t, rh) - 1) < 1e-10);
        RC_ASSERT(std::abs(dewPoint(t, {100})->value - t.value) < 1e-10);
        RC_ASSERT(deficit(t, rh) >= Hectopascals{-1e-9});
    });
    ok &= rc::check("the hours and degrees of the days add up to those of the line", [] {
        std::vector<Sample> samples;
        Instant at = berlin().at(*civilDay({2026, 3, 20}), 0);
        double hours = 0;
        double degreeHours = 0;
        for (int i = *rc::gen::inRange(2, 200); i > 0; --i) {
            const double t = *rc::gen::inRange(150, 320) / 10.0;
            if (!samples.empty()) {
                const int step = *rc::gen::inRange(1, 180);
                at.ms += step * 60'000LL;
                hours += step / 60.0;
                degreeHours += step / 60.0 * (t + samples.back().temperature->value) / 2;
            }
            samples.push_back({at, Celsius{t}, std::nullopt});
        }
        double covered = 0;
        double degrees = 0;
        for (const auto& day : warmthByDay(samples, {{20}, {}}, berlin(), rules())) {
            covered += day.hours;
            degrees += day.hours * day.mean.value;
            RC_ASSERT(day.hours <= 25.000001);
            RC_ASSERT(day.least <= day.mean && day.mean <= day.most);
        }
        RC_ASSERT(std::abs(covered - hours) < 1e-6);
        RC_ASSERT(std::abs(degrees - degreeHours) < 1e-4);
    });
    return ok;
}

}  // namespace

int main() {
    Checks checks;
    checkVapour(checks);
    checkDayDegrees(checks);
    checkWarmth(checks);
    checkAlarms(checks);
    bool ok = checks.ok(90);
    ok &= airHolds();
    return ok ? 0 : 1;
}
