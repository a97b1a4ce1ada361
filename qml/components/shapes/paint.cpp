#include "paint.h"

#include <QMetaProperty>
#include <QPainter>
#include <cmath>

namespace burrow::paint {

void hatch(QPainter& painter, const QPainterPath& area, const QColor& color, qreal pitch,
           qreal pen) {
    const QRectF box = area.boundingRect();
    // A line that rises to the right holds x + y constant.
    const qreal step = pitch * std::sqrt(2.0);
    const qreal first = std::floor((box.left() + box.top()) / step) * step;
    const qreal last = box.right() + box.bottom();
    painter.save();
    painter.setClipPath(area, Qt::IntersectClip);
    painter.setPen(QPen(color, pen));
    for (qreal sum = first; sum <= last; sum += step) {
        painter.drawLine(QPointF(sum - box.bottom(), box.bottom()),
                         QPointF(sum - box.top(), box.top()));
    }
    painter.restore();
}

void dashed(QPainter& painter, QPointF from, QPointF to, const QColor& color, qreal pen,
            qreal dash) {
    QPen dashes(color, pen, Qt::CustomDashLine, Qt::FlatCap);
    dashes.setDashPattern({dash / pen, dash / pen});
    painter.setPen(dashes);
    painter.drawLine(from, to);
}

void ring(QPainter& painter, QPointF centre, qreal radius, qreal pen, const QColor& stroke,
          const QColor& fill) {
    painter.setPen(QPen(stroke, pen));
    painter.setBrush(fill);
    painter.drawEllipse(centre, radius - pen / 2, radius - pen / 2);
}

void disc(QPainter& painter, QPointF centre, qreal radius, const QColor& fill) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(fill);
    painter.drawEllipse(centre, radius, radius);
}

QColor faded(QColor color, qreal alpha) {
    color.setAlphaF(static_cast<float>(alpha));
    return color;
}

QVariant field(const QVariant& entry, const char* name) {
    if (entry.canConvert<QVariantMap>()) return entry.toMap().value(QLatin1StringView(name));
    const QMetaObject* type = entry.metaType().metaObject();
    const int index = type ? type->indexOfProperty(name) : -1;
    return index < 0 ? QVariant() : type->property(index).readOnGadget(entry.constData());
}

}  // namespace burrow::paint
