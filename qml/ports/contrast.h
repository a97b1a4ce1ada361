// What a pale picture hides, made easier to see.
#pragma once

#include <QImage>

namespace burrow {

/// The same picture with its local contrast raised (measure::withLocalContrast), which shows a pale plate
/// beside dark book lungs. Colour differences stay. Null for a null picture. Takes some milliseconds for
/// each megapixel.
[[nodiscard]] QImage withContrast(const QImage& picture);

}  // namespace burrow
