// What stands in front of the camera in the tour: drawn, invented, and the same on every run.
#pragma once

#include <QImage>
#include <array>

namespace burrow::demo {

/// Upright, as a phone is held.
inline constexpr QSize frameSize{720, 1280};

/// The lid of a tub on a shelf, in warm light.
[[nodiscard]] QImage tubLid();

/// How long the carapace of the drawn moult is, in mm, and where its ends lie on the mat.
inline constexpr double drawnCarapace = 16.2;
[[nodiscard]] std::array<QPointF, 2> carapaceOnMat();
/// A shed skin spread on an A5 mat, inside up, with its animal's tag beside it, photographed by hand.
[[nodiscard]] QImage moultOnMat(const QImage& mat, const QImage& tag);

}  // namespace burrow::demo
