// The keeper's own feeders: counts and prices as the book holds them, what is left of a count by hand, and what
// the room will need. The intervals themselves are held against simulated rooms in prop_shopping.
#include "room/larder.h"

#include <cmath>

#include "room/prey_need.h"
#include "support/looking_ahead.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const stock::Feeders& feeders() {
    static const auto shared =
        stock::Feeders::fromJson(slurp(std::string(BURROW_ASSETS_DIR) + "/rules/tables/prey.json"))
            .value();
    return shared;
}

std::size_t band(const char* key) { return *bandNamed(key, feeders()); }

void textsReadBack() {
    CountedFeeders counted;
    counted.count = *rc::gen::inRange(0, 1'000'001);
    counted.length = {*rc::gen::inRange(1, 800) * 0.25};
    counted.counted = {*rc::gen::inRange(10'000, 40'000)};
    counted.offered = *rc::gen::inRange(0, 500);
    RC_ASSERT(readCount(countText(counted)) == counted);

    stock::Price price{{}, {}, *rc::gen::inRange(1, 5000), {*rc::gen::inRange(0, 1'000'000)}};
    const auto read = readPrice(priceText(price));
    RC_ASSERT(read && read->packOf == price.packOf && read->cost == price.cost);
}

void oddTextsAreNone() {
    const auto text = *rc::gen::element<std::string>(
        "", ",", "40", "40, 6 mm", "-1, 6 mm, 2026-05-08", "4.5, 6 mm, 2026-05-08",
        "40, 6, 2026-05-08", "40, 0 mm, 2026-05-08", "40, 6 mm, 2026-02-30",
        "40, 6 mm, 2026-05-08, many offered", "40, 6 mm, 2026-05-08, 1 offered, more",
        "1e9, 6 mm, 2026-05-08", "nan, 6 mm, 2026-05-08", "40, inf mm, 2026-05-08");
    RC_ASSERT(!readCount(text));
    const auto cost = *rc::gen::element<std::string>("", "free", "-1 for 2", "3 for 0", "3 for",
                                                     "for 3", "1e7 for 1", "nan", "2 for 1.5");
    RC_ASSERT(!readPrice(cost));
}

void checkTyped(Checks& checks) {
    const auto spelled = readPrice("4,50/100");
    checks.that(spelled && spelled->cost.value == 450 && spelled->packOf == 100,
                "a comma and a stroke");
    const auto one = readPrice(" 0.05 ");
    checks.that(one && one->cost.value == 5 && one->packOf == 1, "one by itself");
}

/// 100 crickets of 6 mm, 10 days ago: 3 % die each day, the rest grows 0.4 mm a day.
void checkStock(Checks& checks) {
    AheadBook at;
    const auto animal = at.tub("214", "Brachypelma hamorii", "A / 1", 140);
    at.set({{"feeders.cricket.small", countText({0, 100, {6}, at.today() - 10, 0})}});
    auto lines = stockToday(at.room(), feeders());
    checks.that(lines.size() == 1 && lines[0].band == band("cricket.medium"),
                "they have grown into the next size");
    checks.near(lines[0].length.value, 10, 1e-9, "their length");
    checks.near(lines[0].count, 100 * std::pow(0.97, 10), 1e-9, "their number");

    at.ate(animal, -5, 2);
    lines = stockToday(at.room(), feeders());
    const double left = 100 * std::pow(0.97, 10) - 2 * std::pow(0.97, 5);
    checks.near(lines[0].count, left, 1e-9, "less two that would have lived five days longer");
    checks.near(lines[0].used, 2, 1e-9, "and it says so");

    // A refused one is lost in three of ten cases.
    at.on(animal, FactKind::offered, -1,
          {.prey = "crickets", .count = 1, .outcome = Outcome::refused});
    lines = stockToday(at.room(), feeders());
    checks.near(lines[0].count, left - 0.3 * 0.97, 1e-9, "less a part of what was refused");

    // Another kind is another tub.
    at.on(animal, FactKind::offered, -1, {.prey = "locust", .outcome = Outcome::ate});
    checks.near(stockToday(at.room(), feeders())[0].count, left - 0.3 * 0.97, 1e-9,
                "not less for a locust");
}

/// What was offered before a count on the same day is not taken from it, what is offered after it is.
void checkCounting(Checks& checks) {
    AheadBook at;
    const auto animal = at.tub("214", "Brachypelma hamorii", "A / 1", 140);
    at.set({{"feeders.cricket.small", countText({0, 100, {6}, at.today() - 10, 0})}});
    at.ate(animal, 0, 3, 10);
    at.set(countedFields(at.room(), feeders(), band("cricket.medium"), 50));
    const auto info = at.room().info();
    checks.that(info.other("feeders.cricket.small").empty(), "the old count is gone");
    checks.that(info.other("feeders.cricket.medium") == "50, 10 mm, 2026-05-08, 3 offered",
                "the new one stands under the size of today");
    checks.near(stockToday(at.room(), feeders())[0].count, 50, 1e-9, "all fifty are there");
    at.ate(animal, 0, 4, 10);
    checks.near(stockToday(at.room(), feeders())[0].count, 46, 1e-9, "four were offered since");
    at.set(boughtFields(at.room(), feeders(), band("cricket.medium"), 100));
    checks.near(stockToday(at.room(), feeders())[0].count, 146, 1e-9, "a hundred more");
    at.set(countedFields(at.room(), feeders(), band("cricket.medium"), std::nullopt));
    checks.that(stockToday(at.room(), feeders()).empty(), "they are no longer counted");
    at.set({{"feeders.cricket.small", "some"}, {"price.roach.grown", "cheap"}});
    checks.that(larderOf(at.room().info(), feeders()).unreadable.size() == 2,
                "what can't be read is passed over and named");
}

void checkUndone(Checks& checks) {
    AheadBook at;
    at.set(countedFields(at.room(), feeders(), band("roach.large"), 20));
    at.set(countedFields(at.room(), feeders(), band("roach.large"), 19));
    must(at.book.undo());
    checks.near(stockToday(at.room(), feeders())[0].count, 20, 1e-9, "a tap is taken back");
}

void checkOutlook(Checks& checks) {
    AheadBook at;
    const auto adult = at.tub("214", "Brachypelma hamorii", "A / 1", 140);
    at.tub("260", "Neoholothele incei", "A / 2", 40, Form::group, 10);
    for (int day = -60; day <= -12; day += 12) at.ate(adult, day, 1, 20);
    at.set(priceFields(feeders(), band("cricket.grown"), readPrice("4.50 for 10")));
    const auto room = at.room();
    const auto outlook = preyOutlook(room, feeders(), 28, plainForecast());
    checks.that(outlook.eaters == 2 && outlook.meals >= 4, "both eat several times in four weeks");
    checks.that(outlook.interval.least <= outlook.mean && outlook.mean <= outlook.interval.most,
                "the mean lies within");
    checks.that(!outlook.list.purchases.empty(), "nothing is there, so something is to buy");
    int most = 0;
    for (const auto& need : preyNeeds(room, 28, plainForecast())) {
        most += need.each * static_cast<int>(need.days.size());
        checks.that(need.chance > 0 && need.chance <= 1, "a chance");
        checks.that(need.record.accepted <= need.record.offers, "a record");
    }
    checks.that(outlook.interval.most <= most, "never more than is offered");
    const auto none = preyOutlook(room, feeders(), 0, plainForecast());
    checks.that(none.meals == 0 && none.list.purchases.empty(), "no days, no prey");
}

void stockIsNeverNegativeAndTapsCount() {
    AheadBook at;
    at.fillAtRandom();
    const auto size = *rc::gen::inRange<std::size_t>(0, feeders().bands().size());
    const auto& bandOf = feeders().bands()[size];
    CountedFeeders counted{size, *rc::gen::inRange(0, 60), bandOf.least,
                           at.today() - *rc::gen::inRange(0, 60), 0};
    at.set({{"feeders." + bandKey(bandOf), countText(counted)}});
    const auto lines = stockToday(at.room(), feeders());
    RC_ASSERT(lines.size() == 1);
    RC_ASSERT(lines[0].count >= 0 && lines[0].count <= counted.count + 1e-9);
    const int next = *rc::gen::inRange(0, 100);
    at.set(countedFields(at.room(), feeders(), lines[0].band, next));
    const auto after = stockToday(at.room(), feeders());
    RC_ASSERT(after.size() == 1 && after[0].band == lines[0].band);
    // Parts of refused prey are rounded in the count.
    RC_ASSERT(std::abs(after[0].count - next) <= 0.5 + 1e-9);
}

}  // namespace

int main() {
    Checks checks;
    checkTyped(checks);
    checkStock(checks);
    checkCounting(checks);
    checkUndone(checks);
    checkOutlook(checks);
    bool ok = checks.ok(25);
    ok &= rc::check("counts and prices read back", textsReadBack);
    ok &= rc::check("odd texts are none", oddTextsAreNone);
    setenv("RC_PARAMS", "max_success=40", 1);
    ok &= rc::check("stock is never negative, and a count is what was counted",
                    stockIsNeverNegativeAndTapsCount);
    return ok ? 0 : 1;
}
