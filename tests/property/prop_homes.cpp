// Homes: fit, ground, and when they are outgrown, against hand-made examples and simulation.
#include <rapidcheck.h>

#include <algorithm>
#include <chrono>
#include <random>

#include "homes/ground.h"
#include "homes/outgrown.h"
#include "support/assets.h"
#include "support/checks.h"

using namespace burrow;
using namespace burrow::test;
using namespace burrow::homes;

namespace {

const HomeRules& rules() {
    static const auto shared =
        HomeRules::fromJson(slurp(std::string(BURROW_ASSETS_DIR) + "/rules/tables/homes.json"))
            .value();
    return shared;
}

bool isSpoken(const Message& message) {
    static const auto words = englishWords();
    const auto text = words.say(message, CivilDay{20'000});
    return !text.empty() && text.find('[') == std::string::npos;
}

Enclosure homeOf(double length, double width, double height, double substrate = 0) {
    Enclosure home;
    home.name = "Tub";
    home.length = {length};
    home.width = {width};
    home.height = {height};
    home.substrate = {substrate};
    return home;
}

/// With the spans of floor and of air that such an animal usually gets.
Dweller dwellerOf(Habit habit, Age age, double span) {
    const double air = habit != Habit::arboreal ? 0.5 : age == Age::adult ? 2.5 : 3;
    const double ground = habit == Habit::arboreal      ? 0.2
                          : habit == Habit::terrestrial ? 0.5
                          : age == Age::sling           ? 1
                                                        : 1.5;
    return {habit, age, {span}, 3, 1.5, air, ground};
}

Verdict verdict(const Fit& fit, Point point) {
    for (const auto& finding : fit.findings) {
        if (finding.point == point) return finding.verdict;
    }
    return Verdict::unknown;
}

void checkFit(Checks& checks) {
    const auto adult = dwellerOf(Habit::terrestrial, Age::adult, 120);
    const auto good = fitOf(adult, homeOf(400, 250, 250, 100), rules());
    checks.that(good.isGood() && good.isKnown(), "floor of three spans, drop of 150 mm");
    checks.that(good.findings.size() == 5, "every point is told");
    checks.that(fitOf(adult, homeOf(250, 400, 250, 100), rules()).isGood(),
                "whichever side is long");
    const auto steep = fitOf(adult, homeOf(400, 250, 300, 100), rules());
    checks.that(verdict(steep, Point::drop) == Verdict::amiss, "a fall of 200 mm");
    checks.that(steep.findings.back().needs == Millimetres{180}, "at most 1.5 spans");
    checks.that(verdict(fitOf(adult, homeOf(359, 250, 250, 100), rules()), Point::floorLength) ==
                    Verdict::amiss,
                "a floor of less than three spans");
    const auto unknown = fitOf(adult, homeOf(0, 0, 0), rules());
    checks.that(unknown.isGood() && !unknown.isKnown(), "what is not recorded is not amiss");
    for (const auto* fit : {&good, &steep, &unknown}) {
        for (const auto& finding : fit->findings) checks.that(isSpoken(finding.why), "a reason");
    }
    const auto climber = dwellerOf(Habit::arboreal, Age::adult, 120);
    const auto low = fitOf(climber, homeOf(400, 250, 250, 50), rules());
    checks.that(verdict(low, Point::air) == Verdict::amiss, "a climber needs height");
    const auto digger = dwellerOf(Habit::fossorial, Age::sling, 10);
    const auto shallow = fitOf(digger, homeOf(60, 60, 80, 30), rules());
    checks.that(verdict(shallow, Point::ground) == Verdict::amiss,
                "a digging sling needs half the height");
    // 400 mm: at least 1.5 spans deep and a drop of at most 1.5; at most up to half a span of air.
    const auto depth =
        groundFor(dwellerOf(Habit::fossorial, Age::adult, 100), homeOf(300, 200, 400), rules());
    checks.that(depth == Range<Millimetres>{{250}, {350}}, "250 to 350 mm of ground");
    checks.that(
        !groundFor(dwellerOf(Habit::fossorial, Age::adult, 100), homeOf(300, 200, 190), rules()),
        "no depth would do");
    checks.that(!HomeRules::fromJson("{}"), "another file is refused");
}

bool fitsHold() {
    const auto anyDweller = [] {
        return dwellerOf(*rc::gen::element(Habit::terrestrial, Habit::arboreal, Habit::fossorial),
                         *rc::gen::element(Age::sling, Age::juvenile, Age::adult),
                         *rc::gen::inRange(5, 250));
    };
    const auto anyHome = [] {
        return homeOf(*rc::gen::inRange(20, 900), *rc::gen::inRange(20, 600),
                      *rc::gen::inRange(20, 600), *rc::gen::inRange(1, 300));
    };
    bool ok = rc::check("ground of any depth that is allowed fits, and less or more does not", [=] {
        const auto dweller = anyDweller();
        auto home = anyHome();
        const auto depth = groundFor(dweller, home, rules());
        if (!depth) {
            RC_ASSERT(!fitOf(dweller, home, rules()).isGood());
            return;
        }
        RC_ASSERT(volume(home) >= leastVolume(dweller, rules()) * .999);
        for (const double part : {0.0, .5, 1.0}) {
            home.substrate = depth->least + (depth->most - depth->least) * part;
            if (part == 0.0) home.substrate.value += 1e-9;
            if (part == 1.0) home.substrate.value -= 1e-9;
            if (home.substrate < depth->least || home.substrate > depth->most) continue;
            RC_ASSERT(fitOf(dweller, home, rules()).isGood());
        }
        home.substrate = depth->most + Millimetres{1};
        RC_ASSERT(!fitOf(dweller, home, rules()).isGood());
        home.substrate = depth->least - Millimetres{1};
        if (home.substrate > Millimetres{0}) RC_ASSERT(!fitOf(dweller, home, rules()).isGood());
    });
    ok &= rc::check("up to its largest span a home is large enough, and above not", [=] {
        auto dweller = anyDweller();
        const auto home = anyHome();
        const auto largest = largestSpan(dweller, home);
        const auto isLarge = [&](double span) {
            dweller.span = {span};
            const auto fit = fitOf(dweller, home, rules());
            return std::none_of(fit.findings.begin(), fit.findings.end(), [](const Finding& f) {
                // Ground asked for as a part of the height does not depend on the span.
                return f.verdict == Verdict::amiss && f.point != Point::drop &&
                       f.point != Point::ground;
            });
        };
        if (!largest || *largest <= Millimetres{0}) return;
        RC_ASSERT(isLarge(largest->value * .999));
        dweller.span = *largest * 1.001;
        RC_ASSERT(!fitOf(dweller, home, rules()).isGood());
    });
    return ok;
}

/// The same by simulation: moult after moult until it no longer fits.
std::vector<double> simulated(const Dweller& dweller, double largest, const MoultOutlook& moults,
                              const GrowthOutlook& growth, int runs) {
    std::mt19937_64 random(4);
    std::normal_distribution<double> normal;
    std::vector<double> days;
    for (int run = 0; run < runs; ++run) {
        double span = dweller.span.value * std::exp(growth.spanError * normal(random));
        const double start = std::log(dweller.span.value);
        double day = 0;
        double median = moults.nextDays;
        double spread = moults.nextSpread;
        for (int moult = 1;; ++moult) {
            if (moult > moultsAhead) {
                day = 1e9;
                break;
            }
            day += median * std::exp(spread * normal(random));
            spread = moults.laterSpread;
            median = moult == 1 ? moults.laterDays : median * moults.lengthening;
            double step = std::log(growth.ratio);
            if (growth.limit) {
                const double pull = step / (std::log(growth.limit->value) - start);
                step = pull * (std::log(growth.limit->value) - std::log(span));
            }
            // Nobody shrinks.
            span *= std::exp(std::max(0.0, step + growth.spread * normal(random)));
            if (span > largest) break;
        }
        days.push_back(day);
    }
    std::sort(days.begin(), days.end());
    return days;
}

void checkOutgrown(Checks& checks) {
    struct Case {
        double span, largest;
        MoultOutlook moults;
        GrowthOutlook growth;
    };
    const GrowthOutlook steady{1.3, .06, .03, std::nullopt};
    const GrowthOutlook slowing{1.3, .06, .03, Millimetres{160}};
    for (const auto& c :
         {Case{60, 70, {40, .3, 90, .3, 1.1}, steady}, Case{60, 95, {40, .3, 90, .3, 1.1}, steady},
          Case{30, 100, {20, .4, 60, .35, 1.25}, slowing},
          Case{60, 78, {15, .5, 120, .25, 1.2}, slowing}}) {
        const auto dweller = dwellerOf(Habit::terrestrial, Age::juvenile, c.span);
        const auto home = homeOf(c.largest * 3, c.largest * 2, 900, 400);
        const auto answer = outgrown(dweller, home, c.moults, c.growth).value();
        const auto days = simulated(dweller, c.largest, c.moults, c.growth, 100'000);
        const auto at = [&](double share) {
            return days[static_cast<std::size_t>(share * static_cast<double>(days.size()))];
        };
        const auto close = [&](std::optional<int> day, double share, const char* what) {
            std::cout << what << ": " << day.value() << " (simulated " << at(share) << ")\n";
            checks.near(day.value(), at(share), 1 + .02 * at(share), what);
        };
        close(answer.early, .1, "10 of 100 outgrown");
        close(answer.median, .5, "half of them outgrown");
        close(answer.late, .9, "90 of 100 outgrown");
        checks.that(isSpoken(answer.why), "a reason");
    }
    const auto grownUp = dwellerOf(Habit::terrestrial, Age::adult, 150);
    const auto forLife = outgrown(grownUp, homeOf(600, 400, 300, 150), {300, .3, 400, .3, 1},
                                  {1.02, .02, .02, Millimetres{160}});
    checks.that(!forLife->median && forLife->chanceEver < .2 && isSpoken(forLife->why), "for life");
    const auto now = outgrown(grownUp, homeOf(300, 200, 300, 150), {}, {});
    checks.that(now->now && now->median == 0 && isSpoken(now->why), "outgrown already");
    checks.that(!outgrown(grownUp, homeOf(0, 0, 0), {}, {}), "nothing recorded");
    // Przibram's ratio 2^(1/3) of a sure moult: 50 mm become 63 mm.
    const GrowthOutlook sure{std::cbrt(2.0), 0, 0, std::nullopt};
    const auto sling = dwellerOf(Habit::terrestrial, Age::juvenile, 50);
    const auto next = outgrown(sling, homeOf(62.9 * 3, 150, 300, 200), {30, 0, 60, 0, 1}, sure);
    checks.that(next->median == 30 && next->late == 30, "with the next moult");
    const auto after = outgrown(sling, homeOf(63.1 * 3, 150, 300, 200), {30, 0, 60, 0, 1}, sure);
    checks.that(after->median == 90, "with the one after");
}

void checkGround(Checks& checks) {
    const auto home = homeOf(400, 300, 300);
    const auto ground = groundOf(home, {100}, "moist", false, rules()).value();
    checks.near(ground.volume.value, 12, 1e-12, "400 x 300 x 100 mm are 12 litres");
    checks.near(ground.loose.value, 13.2, 1e-12, "poured with a tenth more");
    checks.near(ground.parts.at(0).loose.value, 9.9, 1e-12, "three parts of four");
    checks.that(ground.parts[0].bricks == 2 && ground.parts[1].bricks == 0, "two bricks");
    checks.near(ground.parts[0].expanded.value, 18, 1e-12, "that expand to 18 litres");
    checks.near(ground.wet.value, 9.9 * .45 + 3.3 * .5, 1e-12, "and weigh 6 kg");
    checks.that(isSpoken(ground.amount), "an amount");
    for (const auto habit : {Habit::terrestrial, Habit::arboreal, Habit::fossorial}) {
        for (const auto damp : {Damp::dry, Damp::moderate, Damp::moist, Damp::swamp}) {
            const auto made = groundOf(home, {100}, mixFor(habit, damp), true, rules());
            double parts = 0;
            for (const auto& part : made.value().parts) parts += part.loose.value;
            checks.near(parts, made.value().loose.value, 1e-9, "parts make the whole");
        }
    }
    const auto refused = groundOf(home, {0}, "moist", false, rules());
    checks.that(!refused && isSpoken(refused.error().message), "no depth, no ground");
    checks.that(!groundOf(home, {100}, "gravel", false, rules()), "no such mix");
    // 4 mm glass around 400 x 300 x 300 mm: 408 x 308 x 308 less 36 litres, at 2.5 kg a litre.
    const auto glass = emptyMass(home, {4}, "glass", rules()).value();
    checks.near(glass.value, (40.8 * 30.8 * 30.8 / 1000 - 36) * 2.5, 1e-9, "an empty glass home");
    checks.that(!emptyMass(home, {4}, "slate", rules()), "no such walls");
}

void checkSpeed(Checks& checks) {
    const auto begin = std::chrono::steady_clock::now();
    int outgrownCount = 0;
    for (int i = 0; i < 20'000; ++i) {
        const auto dweller = dwellerOf(Habit::terrestrial, Age::juvenile, 20.0 + i % 90);
        const auto answer = outgrown(dweller, homeOf(300, 200, 200, 100), {40, .3, 80, .3, 1.1},
                                     {1.25, .05, .03, Millimetres{180}});
        outgrownCount += answer->now ? 1 : 0;
    }
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
    checks.that(outgrownCount > 0 && outgrownCount < 20'000, "twenty thousand forecasts");
    std::cout << "20,000 forecasts: " << took.count() << " ms\n";
}

}  // namespace

int main() {
    Checks checks;
    checkFit(checks);
    checkOutgrown(checks);
    checkGround(checks);
    checkSpeed(checks);
    bool ok = checks.ok(70);
    ok &= fitsHold();
    return ok ? 0 : 1;
}
