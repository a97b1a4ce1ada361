#include "measure/fit_frame.h"

namespace burrow::measure {

Projection projectionOf(const Parameters& p, const FitFrame& frame) {
    const Homography inFrame{p[0], p[1], p[2], p[3], p[4], p[5], p[6], p[7], 1};
    const double s = 1 / frame.extent;
    const Homography before{s, 0, -s * frame.centre.x.value, 0, s, -s * frame.centre.y.value, 0,
                            0, 1};
    const Homography after{
        frame.radius, 0, frame.middle.x, 0, frame.radius, frame.middle.y, 0, 0, 1};
    return {product(after, product(inFrame, before)), {frame.middle, frame.radius, p[8]}};
}

Parameters parametersOf(const Homography& toPicture, const FitFrame& frame) {
    const double r = 1 / frame.radius;
    const Homography before{
        frame.extent, 0, frame.centre.x.value, 0, frame.extent, frame.centre.y.value, 0, 0, 1};
    const Homography after{r, 0, -r * frame.middle.x, 0, r, -r * frame.middle.y, 0, 0, 1};
    const auto h = product(after, product(toPicture, before));
    Parameters p{};
    for (std::size_t i = 0; i < 8; ++i) p[i] = h[i] / h[8];
    return p;
}

}  // namespace burrow::measure
