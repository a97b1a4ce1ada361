#include "punch_shape.h"

#include <QMetaEnum>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "paint.h"

namespace burrow {
namespace {

using Kind = PunchShape::Kind;

void drawTriangle(QPainter& painter, QRectF box, qreal pen, const QColor& tone,
                  const QColor& hole) {
    const qreal inset = pen * 0.75;
    const qreal height = box.height() * 0.88;
    const qreal top = box.top() + (box.height() - height) / 2;
    QPainterPath path(QPointF(box.center().x(), top + inset));
    path.lineTo(box.right() - inset, top + height - inset);
    path.lineTo(box.left() + inset, top + height - inset);
    path.closeSubpath();
    painter.setPen(QPen(tone, pen, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(hole);
    painter.drawPath(path);
    const qreal x = box.center().x();
    painter.drawLine(QPointF(x, top + height * 0.42), QPointF(x, top + height * 0.62));
    paint::disc(painter, QPointF(x, top + height * 0.79), pen * 0.62, tone);
}

void drawGroup(QPainter& painter, QPointF centre, qreal radius, const QColor& tone) {
    const qreal away = radius * 0.46;
    for (const qreal degrees : {-90.0, 30.0, 150.0}) {
        const qreal angle = degrees * M_PI / 180;
        paint::disc(painter, centre + away * QPointF(std::cos(angle), std::sin(angle)),
                    radius * 0.19, tone);
    }
}

void drawInside(QPainter& painter, Kind kind, QPointF centre, qreal radius, qreal pen,
                const QColor& tone) {
    const qreal inner = radius - pen;
    if (kind == Kind::hold) {
        QPainterPath circle;
        circle.addEllipse(centre, inner, inner);
        painter.save();
        painter.translate(centre);
        circle.translate(-centre);
        paint::hatch(painter, circle, tone, std::max(3.0, radius * 0.31), radius * 0.135);
        painter.restore();
    } else if (kind == Kind::premoult) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(tone);
        painter.drawPie(QRectF(centre.x() - radius + pen / 2, centre.y() - radius + pen / 2,
                               2 * radius - pen, 2 * radius - pen),
                        180 * 16, 180 * 16);
    } else if (kind == Kind::group) {
        drawGroup(painter, centre, radius, tone);
    } else if (kind == Kind::sac) {
        paint::disc(painter, centre, radius * 0.44, tone);
    }
}

}  // namespace

PunchShape::PunchShape(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &PunchShape::changed, this, [this] { update(); });
}

QString PunchShape::kindName() const {
    return QString::fromLatin1(QMetaEnum::fromType<Kind>().valueToKey(static_cast<int>(kind_)));
}

void PunchShape::setKindName(const QString& name) {
    bool known = false;
    const int value = QMetaEnum::fromType<Kind>().keyToValue(qPrintable(name), &known);
    // Empty while what it belongs to is still read.
    if (!known && !name.isEmpty()) qWarning("There is no punch called \"%s\"", qPrintable(name));
    const Kind kind = known ? static_cast<Kind>(value) : Kind::none;
    if (kind == kind_) return;
    kind_ = kind;
    update();
    emit kindChanged();
}

void PunchShape::paint(QPainter* painter) {
    const qreal side = std::min(width(), height());
    const QRectF box((width() - side) / 2, (height() - side) / 2, side, side);
    const QPointF centre = box.center();
    const qreal radius = side / 2;
    const qreal pen = std::clamp(side / 12, 1.5, 3.0);
    switch (kind_) {
        case Kind::none: return;
        case Kind::look: return drawTriangle(*painter, box, pen, tone_, hole_);
        case Kind::done:
        case Kind::current: return paint::disc(*painter, centre, radius, tone_);
        case Kind::sold:
            return painter->fillRect(box.adjusted(side / 10, side / 10, -side / 10, -side / 10),
                                     tone_);
        case Kind::slash:
            painter->setPen(QPen(tone_, pen, Qt::SolidLine, Qt::RoundCap));
            return painter->drawLine(box.bottomLeft() + QPointF(pen, -pen) * 2,
                                     box.topRight() + QPointF(-pen, pen) * 2);
        default:
            paint::ring(*painter, centre, radius, pen, tone_, hole_);
            drawInside(*painter, kind_, centre, radius, pen, tone_);
    }
}

}  // namespace burrow
