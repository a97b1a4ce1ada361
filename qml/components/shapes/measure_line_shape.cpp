#include "measure_line_shape.h"

#include <QPainter>
#include <QPainterPath>
#include <cmath>

namespace burrow {

MeasureLineShape::MeasureLineShape(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &MeasureLineShape::changed, this, [this] { update(); });
}

void MeasureLineShape::paint(QPainter* painter) {
    const auto way = to_ - from_;
    const auto length = std::hypot(way.x(), way.y());
    QPainterPath path;
    path.moveTo(from_);
    path.lineTo(to_);
    if (length > 0) {
        const auto across = QPointF(-way.y(), way.x()) / length * (barLength_ / 2);
        for (const auto& end : {from_, to_}) {
            path.moveTo(end - across);
            path.lineTo(end + across);
        }
    }
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setBrush(Qt::NoBrush);
    painter->setPen(QPen(halo_, lineWidth_ * 2, Qt::SolidLine, Qt::FlatCap));
    painter->drawPath(path);
    painter->setPen(QPen(ink_, lineWidth_, Qt::SolidLine, Qt::FlatCap));
    painter->drawPath(path);
}

}  // namespace burrow
