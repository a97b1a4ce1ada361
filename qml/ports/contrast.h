// What a pale picture hides, made easier to see.
#pragma once

#include <QImage>

namespace burrow {

/// The same picture with its greys spread over the whole range: of the luminance (Rec. ITU-R BT.601) the
/// darkest and the lightest hundredth become black and white, and colours go along. A picture without
/// detail stays as it is.
[[nodiscard]] QImage withContrast(const QImage& picture);

}  // namespace burrow
