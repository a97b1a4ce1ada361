// Photos for eyes that are used to the dark.
#pragma once

#include <QPainter>

namespace burrow {

/// What white becomes: blue stays well under the 0.76 of red that the dim theme allows.
inline constexpr QColor warmWhite(206, 154, 100);

/// Darkens what was drawn there, and takes blue out of it.
inline void warm(QPainter& painter, const QRectF& rect) {
    painter.setCompositionMode(QPainter::CompositionMode_Multiply);
    painter.fillRect(rect, warmWhite);
    painter.setCompositionMode(QPainter::CompositionMode_SourceOver);
}

}  // namespace burrow
