// Shopping lists by hand, and their intervals against simulated rooms. With BURROW_ROOMS=1500 as many
// rooms of each sort are simulated.
#include <rapidcheck.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <map>
#include <numeric>
#include <random>

#include "stock/shopping.h"
#include "support/assets.h"
#include "support/checks.h"

using namespace burrow;
using namespace burrow::test;
using namespace burrow::stock;

namespace {

const Feeders& feeders() {
    static const auto shared =
        Feeders::fromJson(slurp(std::string(BURROW_ASSETS_DIR) + "/rules/tables/prey.json"))
            .value();
    return shared;
}

const Words& words() {
    static const auto shared = englishWords();
    return shared;
}

bool isSpoken(const Message& message) {
    const auto text = words().say(message, CivilDay{20'000});
    return !text.empty() && text.find('[') == std::string::npos;
}

const CivilDay today = *civilDay({2026, 5, 8});

Need needOf(std::size_t who, double length, std::vector<int> days) {
    Need need;
    need.who = who;
    need.kind = "cricket";
    need.length = {length};
    need.stage = "adult";
    need.isKilled = true;
    for (const int day : days) need.days.push_back(today + day);
    return need;
}

/// Killed prey is used up whatever happens, so the numbers are certain and can be followed by hand.
void checkShopping(Checks& checks) {
    const ShoppingAsk ask{today, 14, .8};
    const std::vector<Need> needs{needOf(1, 10, {0, 6}), needOf(2, 11, {0}), needOf(3, 22, {20})};
    const auto list = shoppingList(needs, {}, {}, ask, feeders());
    checks.that(list.uses.size() == 1, "what falls after the time is left out");
    checks.near(list.uses[0].mean, 3, 1e-12, "three medium crickets");
    checks.that(list.uses[0].interval == Range<int>{3, 3}, "certainly");
    // Bought today: two used at once, one after 6 days of 3 % losses: 2 + 1 / 0.97^6 = 3.20.
    checks.that(list.purchases.size() == 1 && list.purchases[0].enough == 4, "four, as some die");
    checks.that(list.unpriced == 1 && isSpoken(list.summary), "without a price");

    const std::vector<Batch> stock{{"cricket", {9}, 2, today}};
    const std::vector<Price> prices{{"cricket", "medium", 3, {250}}};
    const auto less = shoppingList(needs, stock, prices, ask, feeders());
    checks.near(less.uses[0].fromStock, 2, 1e-12, "two are there");
    checks.that(less.purchases.at(0).enough == 2 && less.purchases[0].packs == 1, "one pack");
    checks.that(less.cost == Cents{250}, "and its cost");

    // 9 mm grow into the large ones (14 mm) in 13 days: too late for day 7, in time for day 13.
    const auto large = [](int day) { return std::vector<Need>{needOf(1, 15, {day})}; };
    const std::vector<Batch> many{{"cricket", {9}, 40, today}};
    checks.near(shoppingList(large(7), many, {}, ask, feeders()).uses[0].fromStock, 0, 0,
                "too small");
    const auto grown = shoppingList(large(13), many, {}, ask, feeders());
    checks.near(grown.uses[0].fromStock, 1, 1e-12, "grown into its size");
    checks.that(grown.purchases.empty() && grown.summary.id == "stock.summary.enough",
                "nothing to buy");

    // Medium ones of 11 mm stay medium for 7 days: what is needed later is bought later.
    const std::vector<Need> spread{needOf(1, 10, {0, 12})};
    const auto twice = shoppingList(spread, {}, {}, ask, feeders());
    checks.that(twice.purchases.size() == 2 && twice.purchases[1].day == today + 12,
                "two purchases");
    checks.that(isSpoken(twice.purchases[0].why) && isSpoken(twice.purchases[1].why),
                "with reasons");
    const auto shrunk = projected({"cricket", {9}, 100, today - 10}, today, feeders());
    checks.near(shrunk.count, 100 * std::pow(.97, 10), 1e-9, "losses day by day");
    checks.near(shrunk.length.value, 13, 1e-9, "growth day by day");
    checks.that(shoppingList({}, {}, {}, ask, feeders()).summary.id == "stock.summary.nobody",
                "nobody");
}

bool listsHold() {
    return rc::check("uses and purchases agree, more stock never asks for more", [] {
        std::vector<Need> needs;
        const auto count = *rc::gen::inRange<std::size_t>(0, 12);
        for (std::size_t i = 0; i < count; ++i) {
            auto need = needOf(i, *rc::gen::inRange(2, 40), {});
            need.isKilled = *rc::gen::arbitrary<bool>();
            need.kind = *rc::gen::element<std::string>("cricket", "roach", "fruit_fly", "waxworm");
            need.each = *rc::gen::inRange(1, 4);
            need.stage = *rc::gen::element<std::string>("sling", "adult", "mature_male");
            need.record.offers = *rc::gen::inRange(0, 9);
            need.record.accepted = *rc::gen::inRange(0, need.record.offers + 1);
            for (int k = *rc::gen::inRange(0, 5); k > 0; --k) {
                need.days.push_back(today + *rc::gen::inRange(-2, 30));
            }
            needs.push_back(need);
        }
        std::vector<Batch> stock;
        const ShoppingAsk ask{today, *rc::gen::inRange(1, 28), .8};
        const auto enough = [&](const ShoppingList& list) {
            return std::accumulate(list.purchases.begin(), list.purchases.end(), 0,
                                   [](int sum, const Purchase& p) { return sum + p.enough; });
        };
        const auto list = shoppingList(needs, stock, {}, ask, feeders());
        double mean = 0;
        for (const auto& use : list.uses) {
            mean += use.mean;
            RC_ASSERT(use.interval.least <= use.interval.most);
            RC_ASSERT(std::abs(use.fromStock) < 1e-9);
        }
        RC_ASSERT(std::abs(totalUse(needs, ask, feeders()).mean() - mean) < 1e-6);
        for (const auto& purchase : list.purchases) {
            RC_ASSERT(purchase.least <= purchase.enough);
            RC_ASSERT(purchase.day >= today && purchase.day < today + ask.days);
            RC_ASSERT(isSpoken(purchase.why));
        }
        stock.push_back(
            {"cricket", {*rc::gen::inRange(2, 25) * 1.0}, *rc::gen::inRange(0, 60), today});
        RC_ASSERT(enough(shoppingList(needs, stock, {}, ask, feeders())) <= enough(list) + 2);
    });
}

/// A made-up room: its own mean acceptance, animals spread around it, eight offers on record and some
/// ahead.
struct Room {
    std::vector<Need> needs;
    int used = 0;
};

double betaDraw(std::mt19937_64& random, double yes, double no) {
    std::gamma_distribution<double> a(yes, 1);
    std::gamma_distribution<double> b(no, 1);
    const double x = a(random);
    return x / (x + b(random));
}

Room simulate(std::mt19937_64& random, int animals, int recorded, double likeness) {
    Room room;
    std::normal_distribution<double> normal;
    const std::vector<std::string> stages{"sling", "juvenile", "adult", "mature_male"};
    std::map<std::string, double> shares;
    for (const auto& stage : stages) {
        const auto& prior = feeders().prior(stage, "");
        const double odds =
            std::log(prior.share / (1 - prior.share)) + prior.spread * normal(random);
        shares[stage] = 1 / (1 + std::exp(-odds));
    }
    std::uniform_real_distribution<double> chance;
    for (int i = 0; i < animals; ++i) {
        auto need = needOf(static_cast<std::size_t>(i), 10, {});
        need.isKilled = false;
        need.stage = stages[random() % 10 < 5 ? 0 : 1 + random() % 3];
        need.each = 1 + static_cast<int>(random() % 2);
        need.chance = random() % 4 == 0 ? .6 : 1;
        const double strength = feeders().prior(need.stage, "").offers * likeness;
        const double share = shares[need.stage];
        const double own = betaDraw(random, strength * share, strength * (1 - share));
        const auto drawn = [&] { return chance(random) < own; };
        for (int k = 0; k < recorded; ++k) need.record.accepted += drawn() ? 1 : 0;
        need.record.offers = recorded;
        const double lost = feeders().keeping("cricket").lossPerRefusal;
        for (int k = 0; k < 1 + static_cast<int>(random() % 3); ++k) {
            need.days.push_back(today + k * 4);
            if (chance(random) >= need.chance) continue;
            if (drawn() || chance(random) < lost) room.used += need.each;
        }
        room.needs.push_back(std::move(need));
    }
    return room;
}

struct Coverage {
    double exact = 0;  ///< with ends that count in part, so that exactly 80 % is promised
    double whole = 0;  ///< of the whole-number interval, which holds a little more
};

/// The interval is of whole numbers and so holds at least its share. To judge the distribution itself
/// the ends count in part: with v uniform, P(X < x) + v P(X = x) lies between 0.1 and 0.9 in 80 % of
/// cases (the randomised probability integral transform; Czado, Gneiting & Held 2009, Biometrics
/// 65:1254-1261).
Coverage backTest(std::uint64_t seed, int rooms, int animals, int recorded, double likeness) {
    std::mt19937_64 random(seed);
    std::uniform_real_distribution<double> part;
    const ShoppingAsk ask{today, 14, .8};
    Coverage coverage;
    for (int i = 0; i < rooms; ++i) {
        const auto room = simulate(random, animals, recorded, likeness);
        const auto total = totalUse(room.needs, ask, feeders());
        const double below = total.atMost(room.used - 1);
        const double level = below + part(random) * total.chance(room.used);
        if (level >= .1 && level <= .9) coverage.exact += 1.0 / rooms;
        const auto middle = total.middle(.8);
        if (room.used >= middle.least && room.used <= middle.most) coverage.whole += 1.0 / rooms;
    }
    return coverage;
}

void checkIntervals(Checks& checks) {
    const char* asked = std::getenv("BURROW_ROOMS");
    const int rooms = asked != nullptr ? std::atoi(asked) : 400;
    struct Case {
        const char* what;
        int animals, recorded;
        double likeness;
    };
    // Rooms of a new book and old ones, small and large, and animals more or less alike than believed.
    for (const auto& room :
         {Case{"30 animals, nothing recorded", 30, 0, 1},
          Case{"30 animals, 8 offers each", 30, 8, 1},
          Case{"150 animals, nothing recorded", 150, 0, 1},
          Case{"150 animals, 3 offers each", 150, 3, 1},
          Case{"150 animals, 8 offers each", 150, 8, 1}, Case{"150 animals, more alike", 150, 8, 4},
          Case{"150 animals, less alike", 150, 8, .3}}) {
        const auto coverage =
            backTest(20'260'508, rooms, room.animals, room.recorded, room.likeness);
        checks.near(coverage.exact, .8, .04, std::string("80 % interval, ") + room.what);
        checks.that(coverage.whole > .77, std::string("whole numbers hold no less, ") + room.what);
        std::cout << room.what << ": " << 100 * coverage.exact << " % (whole numbers "
                  << 100 * coverage.whole << " %)\n";
    }
}

void checkSpeed(Checks& checks) {
    std::mt19937_64 random(1);
    const auto room = simulate(random, 20'000, 8, 1);
    const ShoppingAsk ask{today, 28, .8};
    const auto begin = std::chrono::steady_clock::now();
    const auto list = shoppingList(room.needs, {}, {}, ask, feeders());
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
    checks.that(list.uses.size() == 1, "twenty thousand summed");
    std::cout << "20,000 subjects: " << list.uses[0].mean << " prey, "
              << list.uses[0].interval.least << " to " << list.uses[0].interval.most << ", "
              << took.count() << " ms\n";
}

}  // namespace

int main() {
    Checks checks;
    checkShopping(checks);
    checkSpeed(checks);
    checkIntervals(checks);
    bool ok = checks.ok(30);
    ok &= listsHold();
    return ok ? 0 : 1;
}
