// Who moves where and in which order, against every way tried and an independent solver.
#include <rapidcheck.h>

#include <algorithm>
#include <chrono>
#include <map>
#include <numeric>
#include <random>
#include <set>

#include "homes/matching.h"
#include "homes/rehousing.h"
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

Enclosure homeOf(double length, double width, double height) {
    Enclosure home;
    home.name = "Tub";
    home.length = {length};
    home.width = {width};
    home.height = {height};
    return home;
}

/// The same instance as the reference below: a linear congruential generator, row by row.
struct Instance {
    CostTable costs{0, 0};
    std::vector<std::int64_t> without;
};

Instance instanceOf(std::uint64_t seed, std::size_t rows, std::size_t columns, int top, int gap) {
    Instance made{CostTable(rows, columns), std::vector<std::int64_t>(rows, 1'000'000)};
    for (std::size_t row = 0; row < rows; ++row) {
        for (std::size_t column = 0; column < columns; ++column) {
            seed = seed * 6364136223846793005U + 1442695040888963407U;
            const auto cost = static_cast<int>((seed >> 33U) % static_cast<std::uint64_t>(top));
            const bool isSet = gap >= 0 ? gap == 0 || cost % gap != 0 : cost % -gap == 0;
            if (isSet) made.costs.set(row, column, cost);
        }
    }
    return made;
}

std::int64_t totalOf(const Instance& instance, int& placed) {
    const auto columns = leastCost(instance.costs, instance.without);
    std::set<std::size_t> taken;
    std::int64_t total = 0;
    for (std::size_t row = 0; row < columns.size(); ++row) {
        if (!columns[row]) {
            total += instance.without[row];
            continue;
        }
        if (!taken.insert(*columns[row]).second) return -1;
        total += instance.costs.at(row, *columns[row]);
        ++placed;
    }
    return total;
}

/// Totals from scipy 1.10.1 (python3-scipy of Debian 12): linear_sum_assignment of the same costs with
/// one more column of 1,000,000 for each row, forbidden pairs at 1e15.
void checkAssignment(Checks& checks) {
    struct Reference {
        std::uint64_t seed;
        std::size_t rows, columns;
        int top, gap;
        std::int64_t total;
        int placed;
    };
    for (const auto& r : {Reference{1, 5, 5, 100, 0, 60, 5}, Reference{2, 20, 30, 1000, 0, 576, 20},
                          Reference{3, 40, 25, 1000, 0, 15'000'876, 25},
                          Reference{4, 100, 100, 5000, 3, 11'778, 100},
                          Reference{5, 150, 80, 50, 2, 70'000'092, 80},
                          Reference{6, 300, 300, 100'000, 0, 173'144, 300},
                          Reference{7, 200, 400, 1000, 10, 662, 200},
                          Reference{8, 60, 60, 1000, -40, 16'018'000, 44},
                          Reference{9, 200, 150, 1000, -90, 65'053'730, 135}}) {
        int placed = 0;
        const auto total = totalOf(instanceOf(r.seed, r.rows, r.columns, r.top, r.gap), placed);
        checks.that(total == r.total && placed == r.placed,
                    "instance " + std::to_string(r.seed) + ": " + std::to_string(total));
    }
}

std::int64_t leastOfAll(const Instance& instance, std::size_t row, std::vector<bool>& taken) {
    if (row == instance.costs.rows()) return 0;
    auto least = instance.without[row] + leastOfAll(instance, row + 1, taken);
    for (std::size_t column = 0; column < instance.costs.columns(); ++column) {
        if (taken[column] || instance.costs.at(row, column) == CostTable::forbidden) continue;
        taken[column] = true;
        least =
            std::min(least, instance.costs.at(row, column) + leastOfAll(instance, row + 1, taken));
        taken[column] = false;
    }
    return least;
}

bool matchingIsLeast() {
    bool ok = rc::check("least cost, as every way tried", [] {
        const auto rows = *rc::gen::inRange<std::size_t>(0, 6);
        const auto columns = *rc::gen::inRange<std::size_t>(0, 6);
        Instance instance{CostTable(rows, columns), {}};
        for (std::size_t row = 0; row < rows; ++row) {
            instance.without.push_back(*rc::gen::inRange(0, 60));
            for (std::size_t column = 0; column < columns; ++column) {
                if (*rc::gen::inRange(0, 3) == 0) continue;
                instance.costs.set(row, column, *rc::gen::inRange(0, 40));
            }
        }
        std::vector<bool> taken(columns, false);
        int placed = 0;
        RC_ASSERT(totalOf(instance, placed) == leastOfAll(instance, 0, taken));
    });
    ok &= rc::check("nobody gets a home that does not fit, and none would do for who has none", [] {
        std::vector<Seeker> seekers;
        std::vector<EmptyHome> homes;
        for (std::size_t i = *rc::gen::inRange<std::size_t>(0, 10); i > 0; --i) {
            seekers.push_back({i,
                               {*rc::gen::element(Habit::terrestrial, Habit::arboreal),
                                *rc::gen::element(Age::sling, Age::adult),
                                {*rc::gen::inRange(10, 160) * 1.0}},
                               *rc::gen::inRange(0, 4)});
        }
        for (int i = *rc::gen::inRange(0, 10); i > 0; --i) {
            homes.push_back({homeOf(*rc::gen::inRange(50, 500), *rc::gen::inRange(50, 400),
                                    *rc::gen::inRange(50, 500)),
                             std::nullopt});
            if (*rc::gen::arbitrary<bool>()) homes.back().madeFor = Habit::arboreal;
        }
        const auto placements = matchHomes(seekers, homes, rules());
        const auto suits = [&](const Seeker& seeker, const EmptyHome& home) {
            const bool isForIt = !home.madeFor || *home.madeFor == seeker.dweller.habit;
            return isForIt && groundFor(seeker.dweller, home.home, rules());
        };
        std::set<std::size_t> taken;
        for (std::size_t i = 0; i < seekers.size(); ++i) {
            RC_ASSERT(isSpoken(placements[i].why));
            RC_ASSERT(placements[i].who == seekers[i].who);
            if (!placements[i].home) continue;
            RC_ASSERT(taken.insert(*placements[i].home).second);
            RC_ASSERT(suits(seekers[i], homes[*placements[i].home]));
        }
        for (std::size_t i = 0; i < seekers.size(); ++i) {
            if (placements[i].home) continue;
            for (std::size_t home = 0; home < homes.size(); ++home) {
                RC_ASSERT(taken.contains(home) || !suits(seekers[i], homes[home]));
                if (!suits(seekers[i], homes[home])) continue;
                // Whoever has it is as urgent.
                const auto holder = std::find_if(placements.begin(), placements.end(),
                                                 [&](const auto& p) { return p.home == home; });
                RC_ASSERT(seekers[static_cast<std::size_t>(holder - placements.begin())].urgency >=
                          seekers[i].urgency);
            }
        }
    });
    return ok;
}

void checkRehousing(Checks& checks) {
    const auto plan = [](std::vector<Move> moves, std::vector<std::size_t> occupied = {}) {
        return rehousing(moves, occupied, rules()).value();
    };
    const auto order = [](const Rehousing& rehousing) {
        std::vector<std::size_t> who;
        for (const auto& step : rehousing.steps) who.push_back(step.who);
        return who;
    };
    using Order = std::vector<std::size_t>;
    // 1 waits for 2, which waits for 3, which goes into an empty home.
    const std::vector<Move> chain{{1, 10, 20, {}, {}}, {2, 20, 30, {}, {}}, {3, 30, 40, {}, {}}};
    const auto chained = plan(chain);
    checks.that(order(chained) == Order{3, 2, 1} && chained.spareTubs == 0,
                "from the end of the chain");
    const std::vector<Move> circle{{1, 10, 20, {}, {}}, {2, 20, 30, {}, {}}, {3, 30, 10, {}, {}}};
    const auto turned = plan(circle);
    checks.that(order(turned) == Order{1, 3, 2, 1} && turned.spareTubs == 1,
                "a circle needs a spare tub");
    checks.that(turned.steps[0].kind == StepKind::intoSpare &&
                    turned.steps[3].kind == StepKind::outOfSpare && isSpoken(turned.summary),
                "out of it at the end");
    auto held = chain;
    held[2].held = Held::premoult;
    const auto waiting = plan(held);
    checks.that(waiting.steps.empty() && waiting.waiting.size() == 3,
                "all wait for one in premoult");
    checks.that(waiting.waiting[1].waitsFor == 3 && waiting.waiting[2].waitsFor == 2,
                "and for whom");
    for (const auto& one : waiting.waiting) checks.that(isSpoken(one.why), "a reason to wait");
    checks.that(plan(chain, {40}).waiting.size() == 3, "or for a home that stays occupied");
    const std::vector<Move> shared{{1, 10, 20, {}, {}}, {2, 11, 20, {}, {}}};
    const auto refused = rehousing(shared, {}, rules());
    checks.that(!refused && isSpoken(refused.error().message), "two into one home are refused");
    const Manner wild{Habit::arboreal,    Age::adult, Temperament::defensive, true, false,
                      Venom::significant, false};
    const auto cautions = cautionsFor(wild, rules());
    checks.that(cautions.size() == 5 && cautions[0].id == "homes.caution.strong_venom",
                "gravest first");
    for (const auto& row : rules().tables().rows("cautions")) {
        checks.that(isSpoken({"homes.caution." + row.id}), row.id);
    }
}

bool movesHold() {
    return rc::check(
        "nobody moves into a home that is not empty, and all who can be moved are", [] {
            const auto count = *rc::gen::inRange<std::size_t>(0, 14);
            std::vector<std::size_t> targets(count + 4);
            std::iota(targets.begin(), targets.end(), 0);
            std::vector<Move> moves;
            for (std::size_t i = 0; i < count; ++i) {
                std::swap(targets[i], targets[*rc::gen::inRange<std::size_t>(i, targets.size())]);
                Move move{i, i, targets[i], {}, {}};
                if (*rc::gen::inRange(0, 4) == 0) move.from = i / 2;  // some share a home
                if (move.from == move.to) move.from = 100 + i;
                if (*rc::gen::inRange(0, 8) == 0) move.held = Held::sac;
                moves.push_back(move);
            }
            const auto plan = rehousing(moves, {}, rules()).value();
            std::map<std::size_t, std::set<std::size_t>> inside;
            for (const auto& move : moves) inside[move.from].insert(move.who);
            std::set<std::size_t> spare;
            std::set<std::size_t> done;
            std::size_t mostSpare = 0;
            for (const auto& step : plan.steps) {
                const auto& move = moves[step.who];
                RC_ASSERT(!move.held && step.to == move.to && step.from == move.from);
                if (step.kind == StepKind::outOfSpare) RC_ASSERT(spare.erase(step.who) == 1);
                if (step.kind != StepKind::outOfSpare)
                    RC_ASSERT(inside[move.from].erase(step.who) == 1);
                if (step.kind == StepKind::intoSpare) {
                    spare.insert(step.who);
                    mostSpare = std::max(mostSpare, spare.size());
                    continue;
                }
                RC_ASSERT(inside[step.to].empty());
                inside[step.to].insert(step.who);
                done.insert(step.who);
            }
            RC_ASSERT(spare.empty());
            RC_ASSERT(static_cast<int>(mostSpare) == plan.spareTubs);
            RC_ASSERT(done.size() + plan.waiting.size() == count);
            // Who waits without being held waits for a home that someone stays in.
            for (const auto& waiting : plan.waiting) {
                RC_ASSERT(!done.contains(waiting.who));
                RC_ASSERT(moves[waiting.who].held || !inside[moves[waiting.who].to].empty());
            }
        });
}

void checkSpeed(Checks& checks) {
    std::mt19937_64 random(3);
    std::vector<Seeker> seekers;
    std::vector<EmptyHome> homes;
    for (std::size_t i = 0; i < 1000; ++i) {
        const auto habit = static_cast<Habit>(random() % 3);
        seekers.push_back(
            {i, {habit, Age::juvenile, {20.0 + static_cast<double>(random() % 80)}}, 0});
        const auto size = [&] { return 100.0 + static_cast<double>(random() % 300); };
        homes.push_back({homeOf(size(), size(), size()), std::nullopt});
    }
    const auto begin = std::chrono::steady_clock::now();
    const auto placements = matchHomes(seekers, homes, rules());
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
    const auto placed = std::count_if(placements.begin(), placements.end(),
                                      [](const Placement& p) { return p.home.has_value(); });
    checks.that(placed > 300, "a thousand matched");
    std::cout << "1,000 seekers and homes: " << placed << " placed, " << took.count() << " ms\n";
}

}  // namespace

int main() {
    Checks checks;
    checkAssignment(checks);
    checkRehousing(checks);
    checkSpeed(checks);
    bool ok = checks.ok(25);
    ok &= matchingIsLeast();
    ok &= movesHold();
    return ok ? 0 : 1;
}
