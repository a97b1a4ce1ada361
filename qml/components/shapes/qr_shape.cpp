#include "qr_shape.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

namespace burrow {

QrShape::QrShape(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setFillColor(Qt::white);
    setOpaquePainting(true);
    connect(this, &QrShape::changed, this, [this] { update(); });
}

void QrShape::paint(QPainter* painter) {
    painter->fillRect(boundingRect(), Qt::white);
    const int count = static_cast<int>(std::lround(std::sqrt(modules_.size())));
    if (count == 0 || count * count != modules_.size()) return;
    const qreal ratio = painter->device()->devicePixelRatio() * painter->transform().m11();
    const qreal available = std::min(width(), height()) * ratio;
    const qreal module = std::max(1.0, std::floor(available / (count + 2 * quietZone_))) / ratio;
    const auto snapped = [ratio](qreal v) { return std::round(v * ratio) / ratio; };
    const qreal left = snapped((width() - count * module) / 2);
    const qreal top = snapped((height() - count * module) / 2);
    for (int row = 0; row < count; ++row) {
        for (int column = 0; column < count; ++column) {
            if (modules_.at(row * count + column) == 0) continue;
            painter->fillRect(QRectF(left + column * module, top + row * module, module, module),
                              Qt::black);
        }
    }
}

}  // namespace burrow
