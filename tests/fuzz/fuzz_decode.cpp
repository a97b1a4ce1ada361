// Pictures from elsewhere as pixels, and what is measured in them.
#include "fuzz/target.h"
#include "measure/survey.h"
#include "pictures/raster.h"

using namespace burrow;

FUZZ_TARGET(decode) {
    constexpr pictures::Limits small{1'000'000, 250'000};
    const auto photo = pictures::decode(burrow::fuzz::asBytes(bytes), small);
    if (!photo) return;
    BURROW_REQUIRE(photo->width() > 0 && photo->height() > 0);
    BURROW_REQUIRE(std::int64_t{photo->width()} * photo->height() <= small.pixels);
    const auto found = measure::survey(*photo);
    if (!found) return;
    BURROW_REQUIRE(found->pixelsPerMm >= measure::shippedRules().leastPixelsPerMm);
    BURROW_REQUIRE(found->residual >= 0);
}
