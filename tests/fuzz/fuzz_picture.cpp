// Pictures from elsewhere, before anything decodes them.
#include "fuzz/target.h"
#include "pictures/inspect.h"

using namespace burrow::pictures;

FUZZ_TARGET(picture) {
    const auto info = inspect(burrow::fuzz::asBytes(bytes));
    if (!info) return;
    BURROW_REQUIRE(info->width > 0 && info->height > 0);
    BURROW_REQUIRE(info->pixels() <= Limits().pixels);
    BURROW_REQUIRE(info->orientation >= 1 && info->orientation <= 8);
}
