// Civil days, natural order and identifiers hold for values nobody thought of.
#include <rapidcheck.h>

#include "base/civil.h"
#include "base/ids.h"
#include "base/text.h"
#include "base/zone.h"

using namespace burrow;

namespace {

/// Days of the years 1 to 9999.
rc::Gen<CivilDay> anyDay() {
    return rc::gen::map(rc::gen::inRange(-719'162, 2'932'897),
                        [](int days) { return CivilDay{days}; });
}

}  // namespace

int main() {
    bool ok = true;
    ok &= rc::check("a day survives its written form", [] {
        const auto day = *anyDay();
        RC_ASSERT(parseIsoDate(isoDate(day)) == day);
        RC_ASSERT(civilDay(yearMonthDay(day)) == day);
    });
    ok &= rc::check("the weekday advances by one", [] {
        const auto day = *anyDay();
        RC_ASSERT(weekday(day + 1) == (weekday(day) + 1) % 7);
    });
    ok &= rc::check("natural order is a total order", [] {
        const auto texts = *rc::gen::container<std::vector<std::string>>(
            3, rc::gen::container<std::string>(rc::gen::element('a', 'B', '0', '1', '9', ' ')));
        const auto sign = [](int v) { return (v > 0) - (v < 0); };
        RC_ASSERT(sign(compareNatural(texts[0], texts[1])) ==
                  -sign(compareNatural(texts[1], texts[0])));
        if (compareNatural(texts[0], texts[1]) <= 0 && compareNatural(texts[1], texts[2]) <= 0) {
            RC_ASSERT(compareNatural(texts[0], texts[2]) <= 0);
        }
    });
    ok &= rc::check("identifiers rise even when the clock goes back", [] {
        const auto steps = *rc::gen::container<std::vector<int>>(rc::gen::inRange(-5000, 5000));
        FixedClock clock({1'770'000'000'000});
        SeededRandom random(*rc::gen::arbitrary<std::uint64_t>());
        UuidSource source(clock, random);
        auto last = source.next();
        for (const int step : steps) {
            clock.set({clock.now().ms + step});
            const auto next = source.next();
            RC_ASSERT(last < next);
            RC_ASSERT(next.version() == 7);
            RC_ASSERT(Uuid::parse(next.text()) == next);
            last = next;
        }
    });
    ok &= rc::check("local noon lies on its own day in every zone", [] {
        const auto name = *rc::gen::elementOf(
            std::vector<std::string>{"Europe/Berlin", "America/New_York", "Australia/Lord_Howe",
                                     "Asia/Kolkata", "Pacific/Kiritimati", "UTC"});
        const auto zone = Zone::named(name).value();
        const CivilDay day{*rc::gen::inRange(7'000, 30'000)};
        RC_ASSERT(zone.dayOf(zone.at(day, 12 * 3600)) == day);
    });
    return ok ? 0 : 1;
}
