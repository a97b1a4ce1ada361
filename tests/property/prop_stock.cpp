// Sums of chances against exact reference values and every case tried, and what prey weighs.
#include <rapidcheck.h>

#include <algorithm>
#include <functional>

#include "stock/acceptance.h"
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

/// Poisson-binomial values on which R's PoissonBinomial 1.2.5 (dpbinom, ppbinom with method
/// "Convolve") and exact fractions agree.
void checkReferenceValues(Checks& checks) {
    const auto three = poissonBinomial(std::vector<double>{.1, .2, .3});
    const std::vector<double> ofThree{.504, .398, .092, .006};
    for (int k = 0; k <= 3; ++k) {
        checks.near(three.chance(k), ofThree[static_cast<std::size_t>(k)], 1e-15, "of three");
    }
    const auto five = poissonBinomial(std::vector<double>{.1, .25, .5, .7, .9});
    const std::vector<double> ofFive{.010125, .129375, .38325, .36275, .106625, .007875};
    for (int k = 0; k <= 5; ++k) {
        checks.near(five.chance(k), ofFive[static_cast<std::size_t>(k)], 1e-15, "of five");
    }
    checks.near(five.mean(), 2.45, 1e-14, "mean of five");
    checks.near(five.variance(), .8275, 1e-14, "variance of five");
    std::vector<double> chances;
    for (int i = 0; i < 50; ++i) chances.push_back(.05 + .9 * i / 49);
    const auto fifty = poissonBinomial(chances);
    checks.near(fifty.atMost(20), .065908676648718, 5e-15, "at most 20 of fifty");
    checks.near(fifty.atMost(25), .566343982559818, 5e-15, "at most 25 of fifty");
    checks.near(fifty.atMost(30), .967402117068064, 5e-15, "at most 30 of fifty");
    checks.near(fifty.chance(25), .13268797, 5e-9, "25 of fifty");
    checks.that(fifty.quantile(.05) == 20 && fifty.quantile(.5) == 25 && fifty.quantile(.95) == 30,
                "quantiles of fifty");
    checks.that(poissonBinomial({}).quantile(.5) == 0, "of none");
    checks.near(poissonBinomial(std::vector<double>{0, 1, 1}).chance(2), 1, 0, "certain ones");
    // Beta(1, 1) makes every number as likely (Laplace's rule of succession).
    const auto even = betaBinomial(9, 1, 1);
    for (int k = 0; k <= 9; ++k) checks.near(even.chance(k), .1, 1e-15, "uniform");
    // n a/(a+b) and n p q (a+b+n)/(a+b+1), the textbook moments.
    const auto skewed = betaBinomial(12, 3.5, 1.5);
    checks.near(skewed.mean(), 12 * .7, 1e-12, "mean of a beta-binomial");
    checks.near(skewed.variance(), 12 * .7 * .3 * 17 / 6, 1e-11, "variance of a beta-binomial");
}

bool sumsAreExact() {
    bool ok = rc::check("the Poisson-binomial is the sum over all cases", [] {
        std::vector<double> chances;
        const auto count = *rc::gen::inRange<std::size_t>(0, 11);
        for (std::size_t i = 0; i < count; ++i)
            chances.push_back(*rc::gen::inRange(0, 101) / 100.0);
        std::vector<double> expected(count + 1, 0);
        for (unsigned set = 0; set < 1U << count; ++set) {
            double chance = 1;
            std::size_t ones = 0;
            for (std::size_t i = 0; i < count; ++i) {
                const bool isOne = (set >> i & 1U) != 0;
                chance *= isOne ? chances[i] : 1 - chances[i];
                ones += isOne ? 1 : 0;
            }
            expected[ones] += chance;
        }
        const auto counts = poissonBinomial(chances);
        for (std::size_t k = 0; k <= count; ++k) {
            RC_ASSERT(std::abs(counts.chance(static_cast<int>(k)) - expected[k]) < 1e-14);
        }
    });
    ok &= rc::check("with one chance it is the binomial, whichever way it is summed", [] {
        const int tries = *rc::gen::inRange(1, 200);
        const double chance = *rc::gen::inRange(1, 100) / 100.0;
        const auto direct = binomial(tries, chance);
        const std::vector<double> chances(static_cast<std::size_t>(tries), chance);
        const auto summed = poissonBinomial(chances);
        const auto repeated = Counts(0, {1 - chance, chance}).repeated(tries);
        for (int k = 0; k <= tries; ++k) {
            RC_ASSERT(std::abs(direct.chance(k) - summed.chance(k)) < 1e-12);
            RC_ASSERT(std::abs(direct.chance(k) - repeated.chance(k)) < 1e-12);
        }
    });
    ok &= rc::check("what is used up is the sum over every course that the offers can take", [] {
        Offers offers;
        offers.count = *rc::gen::inRange(0, 7);
        offers.each = *rc::gen::inRange(1, 4);
        offers.chance = *rc::gen::element(1.0, .8, .3);
        offers.lostIfRefused = *rc::gen::element(0.0, .3, 1.0);
        const double yes = *rc::gen::inRange(1, 40) / 4.0;
        const double no = *rc::gen::inRange(1, 40) / 4.0;
        // One offer after another, each outcome changing what is believed (Pólya's urn).
        std::vector<double> expected(static_cast<std::size_t>(offers.count) + 1, 0);
        const std::function<void(int, double, double, std::size_t, double)> go =
            [&](int left, double y, double n, std::size_t used, double chance) {
                if (left == 0) {
                    expected[used] += chance;
                    return;
                }
                const double accepts = y / (y + n);
                const double uses = offers.chance;
                const double loses = offers.chance * offers.lostIfRefused;
                go(left - 1, y + 1, n, used + 1, chance * accepts * uses);
                go(left - 1, y + 1, n, used, chance * accepts * (1 - uses));
                go(left - 1, y, n + 1, used + 1, chance * (1 - accepts) * loses);
                go(left - 1, y, n + 1, used, chance * (1 - accepts) * (1 - loses));
            };
        go(offers.count, yes, no, 0, 1);
        const auto used = usedUp(offers, yes, no);
        for (std::size_t k = 0; k < expected.size(); ++k) {
            const auto prey = static_cast<int>(k) * offers.each;
            RC_ASSERT(std::abs(used.chance(prey) - expected[k]) < 1e-12);
        }
        RC_ASSERT(std::abs(used.mean() - expectedUse(offers, yes / (yes + no))) < 1e-10);
    });
    ok &= rc::check("the middle holds its share, and no shorter end would", [] {
        std::vector<double> chances;
        for (int i = *rc::gen::inRange(0, 60); i > 0; --i) {
            chances.push_back(*rc::gen::inRange(0, 101) / 100.0);
        }
        const auto counts = poissonBinomial(chances);
        const auto middle = counts.middle(.8);
        RC_ASSERT(counts.atMost(middle.most) - counts.atMost(middle.least - 1) >= .8 - 1e-9);
        RC_ASSERT(counts.atMost(middle.least - 1) < .1);
        RC_ASSERT(counts.atMost(middle.most - 1) < .9);
    });
    return ok;
}

/// Masses against a published regression of 1976 for insects in general, from memory: dry mass in mg
/// 0.0305 mm^2.62 (Rogers, Hinds & Buschbom), with 30 % dry matter (common practice, no source).
void checkMasses(Checks& checks) {
    for (const auto* kind : {"cricket", "locust", "roach", "mealworm", "other"}) {
        for (const double length : {8.0, 15.0, 25.0}) {
            const double general = .0305 * std::pow(length, 2.62) / .3 / 1000;
            const double ratio = feeders().mass(kind, {length}).value / general;
            const double most = std::string(kind) == "mealworm" ? 6 : 2.5;  // a long thin larva
            checks.that(ratio < most && ratio > 1 / most, std::string("mass of a ") + kind);
        }
    }
    const Portion meal{"cricket", {20}, 1};
    const auto flies = insteadOf(meal, "fruit_fly", {3}, feeders());
    checks.near(massOf(flies, feeders()) / massOf(meal, feeders()), 1, .01, "a meal of flies");
    const auto roach = insteadOf(meal, "roach", {40}, feeders());
    checks.that(roach.count == 1 && roach.length < Millimetres{22}, "one roach, no heavier");
    checks.near(massOf(roach, feeders()) / massOf(meal, feeders()), 1, 1e-9, "of the same mass");
    checks.that(feeders().bands()[feeders().band("cricket", {8})].name == "medium",
                "8 mm is medium");
    checks.that(feeders().bands()[feeders().band("cricket", {.2})].name == "pinhead", "tiny");
    checks.that(feeders().bands()[feeders().band("cricket", {90})].name == "grown", "too long");
    checks.that(feeders().bands()[feeders().band("silkworm", {9})].kind == "other",
                "unknown kinds");
    checks.that(feeders().prior("adult", "Grammostola rosea").id == "adult.Grammostola",
                "by genus");
    checks.that(feeders().prior("adult", "Nhandu chromatus").id == "adult", "by stage");
    checks.that(feeders().prior("egg", "").id == "juvenile", "a stage nobody knows");
    for (const auto& band : feeders().bands()) {
        checks.that(words().knows("band." + band.name) && words().knows("prey." + band.kind),
                    band.name);
    }
    auto broken = slurp(std::string(BURROW_ASSETS_DIR) + "/rules/tables/prey.json");
    broken.replace(broken.find("\"least_mm\": 8"), 13, "\"least_mm\": 9");
    const auto refused = Feeders::fromJson(broken);
    checks.that(!refused && isSpoken(refused.error().message), "bands with a gap are refused");
    checks.that(!Feeders::fromJson("[]"), "another file is refused");
}

}  // namespace

int main() {
    Checks checks;
    checkReferenceValues(checks);
    checkMasses(checks);
    bool ok = checks.ok(70);
    ok &= sumsAreExact();
    return ok ? 0 : 1;
}
