// What squares of mats say, and printed mats as settings of a book: the first line is a square or the
// setting's name, the rest its text.
#include <cmath>

#include "fuzz/target.h"
#include "room/mats.h"

using namespace burrow;

FUZZ_TARGET(mats) {
    const auto end = bytes.find('\n');
    const auto name = bytes.substr(0, end);
    const auto text = end == std::string_view::npos ? std::string_view() : bytes.substr(end + 1);
    if (const auto mark = measure::parseMatPayload(name)) {
        BURROW_REQUIRE(measure::matPayload(*mark) == name);
    }
    if (const auto mat = readMat(name, text)) {
        BURROW_REQUIRE(settingOf(mat->name) == name);
        // A bar of more digits than are printed comes back as near as makes no difference.
        const auto again = readMat(name, matText(*mat));
        BURROW_REQUIRE(again && again->paper == mat->paper);
        BURROW_REQUIRE(again->bar.has_value() == mat->bar.has_value());
        if (mat->bar) BURROW_REQUIRE(std::abs(again->bar->value - mat->bar->value) < 1e-9);
    }
    if (const auto bar = readBar(text)) {
        BURROW_REQUIRE(bar->value >= 80 && bar->value <= 120);
    }
}
