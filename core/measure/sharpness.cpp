#include "measure/sharpness.h"

#include <cstdlib>

namespace burrow::measure {
namespace {

/// The step between pixels so far apart that only few exceed. An edge is straddled by as many pairs as
/// they are pixels apart, so of wider pairs more are passed over.
int steepest(const GreyCopy& picture, int apart) {
    std::array<std::size_t, 256> counts{};
    std::size_t all = 0;
    for (int y = 0; y < picture.height; y += 2) {
        const auto* row =
            &picture.pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width)];
        for (int x = 0; x + apart < picture.width; ++x, ++all) {
            ++counts[static_cast<std::size_t>(std::abs(row[x + apart] - row[x]))];
        }
    }
    std::size_t above = 0;
    int step = 255;
    const std::size_t passed = all * static_cast<std::size_t>(apart) / 5000;
    while (step > 0 && (above += counts[static_cast<std::size_t>(step)]) < passed) --step;
    return step;
}

}  // namespace

bool looksBlurred(const GreyCopy& picture, const MeasureRules& rules) {
    constexpr int apart = 8;
    return steepest(picture, 1) < rules.sharpEdge * steepest(picture, apart);
}

}  // namespace burrow::measure
