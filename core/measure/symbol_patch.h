// A symbol's surroundings brought upright, and what they would look like ideally.
#pragma once

#include <vector>

#include "measure/plane.h"
#include "pictures/raster.h"
#include "tags/symbol.h"

namespace burrow::measure {

/// Modules beside the symbol that belong to the patch.
inline constexpr int patchMargin = 2;

/// A square of samples, `perModule` to a module, around a symbol with its margin.
class Patch {
public:
    Patch(int modules, int perModule)
        : perModule_(perModule),
          side_((modules + 2 * patchMargin) * perModule),
          values_(static_cast<std::size_t>(side_) * static_cast<std::size_t>(side_)) {}

    [[nodiscard]] int perModule() const { return perModule_; }
    [[nodiscard]] int side() const { return side_; }
    [[nodiscard]] float at(int x, int y) const { return values_[index(x, y)]; }
    float& at(int x, int y) { return values_[index(x, y)]; }
    /// The place of a sample in modules from the symbol's top left corner.
    [[nodiscard]] double place(int index) const { return (index + 0.5) / perModule_ - patchMargin; }

private:
    [[nodiscard]] std::size_t index(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(side_) +
               static_cast<std::size_t>(x);
    }

    int perModule_;
    int side_;
    std::vector<float> values_;
};

/// The brightness of a pixel, 0 to 255, between the pixels too; outside the photo that of its rim. It is
/// the green one, which has the least noise in a camera and nearly all of the brightness in a JPEG.
[[nodiscard]] float brightnessAt(const pictures::Raster& photo, ImagePoint point);

/// Samples the photo; `toPhoto` maps modules from the symbol's top left corner to pixels.
[[nodiscard]] Patch sampled(const pictures::Raster& photo, const Homography& toPhoto, int modules,
                            int perModule);

/// The symbol drawn with 0 for dark and 1 for light, smeared by normal distributions with these
/// standard deviations, in modules.
[[nodiscard]] Patch drawn(const tags::Symbol& symbol, int perModule, double blurX, double blurY);

/// How well two patches agree, as a correlation coefficient.
[[nodiscard]] double agreement(const Patch& a, const Patch& b);

}  // namespace burrow::measure
