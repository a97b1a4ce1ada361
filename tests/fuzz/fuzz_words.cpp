// Small things that people type or files hold: moments, days, places, numbers, identifiers.
#include "base/civil.h"
#include "base/hash.h"
#include "base/ids.h"
#include "base/text.h"
#include "base/zone.h"
#include "fuzz/target.h"
#include "model/place.h"

using namespace burrow;

FUZZ_TARGET(words) {
    static const Zone berlin = Zone::named("Europe/Berlin").value();
    if (const auto moment = parseIsoMoment(bytes)) {
        const auto at = berlin.resolve(*moment);
        const auto read = parseIsoMoment(isoInstant(at));
        BURROW_REQUIRE(read.has_value() || at.ms < -62'135'596'800'000 ||
                       at.ms >= 253'402'300'800'000);
    }
    if (const auto day = parseIsoDate(bytes)) BURROW_REQUIRE(parseIsoDate(isoDate(*day)) == day);
    const auto place = Place::parse(bytes);
    BURROW_REQUIRE(Place::parse(place.text()).text() == place.text());
    if (const auto uuid = Uuid::parse(bytes)) BURROW_REQUIRE(Uuid::parse(uuid->text()) == uuid);
    if (const auto hash = Sha256::parse(bytes)) BURROW_REQUIRE(Sha256::parse(hash->hex()) == hash);
}
