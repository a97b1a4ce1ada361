// Pictures from elsewhere as pixels, and what is measured in them.
#include <cmath>

#include "fuzz/target.h"
#include "measure/flatten.h"
#include "measure/length.h"
#include "measure/survey.h"
#include "pictures/raster.h"

using namespace burrow;

namespace {

void lengths(const measure::Survey& survey) {
    const double width = survey.photoWidth, height = survey.photoHeight;
    const measure::ImagePoint points[]{
        {0, 0}, {width, height}, {0.5 * width, 0.5 * height}, {0.5 * width + 9, 0.5 * height}};
    measure::LengthOptions options;
    options.pointDeviation = 0.5;
    options.height = {Millimetres{2}, Millimetres{0.5}};
    for (const auto& from : points) {
        for (const auto& to : points) {
            const auto length = measure::lengthBetween(survey, from, to, options);
            if (!length) continue;
            BURROW_REQUIRE(std::isfinite(length->value.value) && length->value.value > 0);
            BURROW_REQUIRE(length->low <= length->value && length->value <= length->high);
            BURROW_REQUIRE(length->low.value >= 0 && std::isfinite(length->high.value));
        }
    }
}

void flattened(const pictures::Raster& photo, const measure::Survey& survey) {
    measure::FlattenOptions options;
    options.pixelsPerMm = 2;
    if (const auto balance = measure::balanceOf(photo, survey)) options.balance = *balance;
    const auto flat = measure::flatten(photo, survey, options);
    BURROW_REQUIRE(flat.has_value());
    const auto size = std::int64_t{flat->width()} * flat->height();
    BURROW_REQUIRE(size > 0 && size <= 600 * 600);
}

}  // namespace

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
    lengths(*found);
    flattened(*photo, *found);
}
