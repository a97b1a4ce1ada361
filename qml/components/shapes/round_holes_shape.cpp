#include "round_holes_shape.h"

#include <QPainter>
#include <algorithm>

#include "paint.h"

namespace burrow {

RoundHolesShape::RoundHolesShape(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &RoundHolesShape::changed, this, [this] { update(); });
}

void RoundHolesShape::paintBar(QPainter& painter) const {
    const auto passed = std::count_if(holes_.begin(), holes_.end(), [](const QString& hole) {
        return hole == QLatin1String("done") || hole == QLatin1String("slash");
    });
    const qreal share = static_cast<qreal>(passed) / static_cast<qreal>(holes_.size());
    const QRectF bar(0, height() / 2 - 2, width(), 4);
    painter.setPen(Qt::NoPen);
    painter.setBrush(paint::faded(edge_, 0.5));
    painter.drawRoundedRect(bar, 2, 2);
    painter.setBrush(ink_);
    painter.drawRoundedRect(QRectF(bar.left(), bar.top(), bar.width() * share, 4), 2, 2);
    paint::disc(painter, QPointF(std::clamp(bar.width() * share, 4.5, width() - 4.5), height() / 2),
                4.5, act_);
}

void RoundHolesShape::paintHole(QPainter& painter, const QString& hole, QPointF centre,
                                qreal radius) const {
    if (hole == QLatin1String("done")) {
        paint::disc(painter, centre, radius, ink_);
    } else if (hole == QLatin1String("current")) {
        paint::disc(painter, centre, std::min(4.5, radius * 1.8), act_);
    } else if (hole == QLatin1String("slash")) {
        painter.setPen(QPen(ink_, 1.5, Qt::SolidLine, Qt::RoundCap));
        painter.drawLine(centre + QPointF(-radius, radius) * 0.8,
                         centre + QPointF(radius, -radius) * 0.8);
    } else {
        paint::ring(painter, centre, radius, 1.25, edge_, Qt::transparent);
    }
}

void RoundHolesShape::paint(QPainter* painter) {
    if (holes_.isEmpty()) return;
    if (holes_.size() > kMostHoles) return paintBar(*painter);
    const qreal pitch = std::min(widest_, width() / static_cast<qreal>(holes_.size()));
    const qreal radius = std::min(largest_, pitch * 0.36);
    for (qsizetype i = 0; i < holes_.size(); ++i) {
        const QPointF centre((static_cast<qreal>(i) + 0.5) * pitch, height() / 2);
        paintHole(*painter, holes_[i], centre, radius);
    }
}

}  // namespace burrow
