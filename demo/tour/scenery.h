// What stands in front of the camera in the tour: drawn, invented, and the same on every run.
#pragma once

#include <QImage>

namespace burrow::demo {

/// Upright, as a phone is held.
inline constexpr QSize frameSize{720, 1280};

/// The lid of a tub on a shelf, in warm light.
[[nodiscard]] QImage tubLid();
/// A shed skin spread on paper, inside up.
[[nodiscard]] QImage spreadMoult(const QSize& size);

}  // namespace burrow::demo
