// What a bundle says of itself.
#include "exchange/manifest.h"
#include "fuzz/target.h"

using namespace burrow::exchange;

FUZZ_TARGET(manifest) {
    const auto read = manifestFrom(bytes);
    if (!read) return;
    const auto again = manifestFrom(toText(*read));
    BURROW_REQUIRE(again.has_value());
    BURROW_REQUIRE(*again == *read);
}
