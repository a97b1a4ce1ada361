#include "hatch_shape.h"

#include <QPainter>

#include "paint.h"

namespace burrow {

HatchShape::HatchShape(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &HatchShape::changed, this, [this] { update(); });
}

void HatchShape::paint(QPainter* painter) {
    const QRectF box = boundingRect();
    QPainterPath area;
    if (corner_ > 0) {
        // Wider than the item by one corner, so that only the left corners are round.
        QPainterPath rounded;
        rounded.addRoundedRect(box.adjusted(0, 0, corner_, 0), corner_, corner_);
        area.addRect(box);
        area = area.intersected(rounded);
    } else {
        area.addRect(box);
    }
    paint::hatch(*painter, area, color_, pitch_, pen_);
}

}  // namespace burrow
