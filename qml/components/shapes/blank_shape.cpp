#include "blank_shape.h"

#include <QPainter>
#include <algorithm>

#include "paint.h"

namespace burrow {
namespace {

constexpr qreal kMargin = 18;
constexpr qreal kPen = 1.5;
constexpr qreal kDash = 4;

void dashedBox(QPainter& painter, const QRectF& box, const QColor& color) {
    paint::dashed(painter, box.topLeft(), box.topRight(), color, kPen, kDash);
    paint::dashed(painter, box.topRight(), box.bottomRight(), color, kPen, kDash);
    paint::dashed(painter, box.bottomLeft(), box.bottomRight(), color, kPen, kDash);
    paint::dashed(painter, box.topLeft(), box.bottomLeft(), color, kPen, kDash);
}

}  // namespace

BlankShape::BlankShape(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &BlankShape::changed, this, [this] { update(); });
}

void BlankShape::paintLine(QPainter& painter, qreal base, qreal tallest) const {
    const qreal now = kMargin + 26;
    painter.fillRect(QRectF(kMargin, base - 1, now - kMargin, 2), ink_);
    paint::dashed(painter, {now + 8, base}, {width() - kMargin, base}, edge_, kPen, 3);
    constexpr qreal places[] = {0.22, 0.39, 0.58, 0.79};
    constexpr qreal shares[] = {0.34, 0.5, 0.74, 1.0};
    for (int i = 0; i < 4; ++i) {
        const qreal x = qRound(kMargin + (width() - 2 * kMargin) * places[i]) + 0.5;
        paint::dashed(painter, {x, base - tallest * shares[i]}, {x, base}, edge_, kPen, 3);
    }
    paint::ring(painter, {now, base}, 7, 2.5, ink_, hole_);
}

void BlankShape::paintLabel(QPainter& painter) const {
    paint::ring(painter, {kMargin + 19, 39}, 19, 2, edge_, hole_);
    for (int digit = 0; digit < 3; ++digit) {
        dashedBox(painter, QRectF(kMargin + 56.5 + digit * 48, 13.5, 39, 51), edge_);
    }
    painter.fillRect(QRectF(0, 84, width(), 2), rule_);
    const qreal wide = width() - 2 * kMargin;
    paint::dashed(painter, {kMargin, 132}, {kMargin + wide * 0.67, 132}, edge_, kPen, kDash);
    paint::dashed(painter, {kMargin, 166}, {kMargin + wide * 0.5, 166}, edge_, kPen, kDash);
    paintLine(painter, height() - 34, 44);
}

void BlankShape::paintShelf(QPainter& painter) const {
    constexpr int kHoles = 7;
    for (int row = 0; row < 2; ++row) {
        const qreal y = height() * (row == 0 ? 0.3 : 0.72);
        for (int i = 0; i < kHoles; ++i) {
            const qreal x = kMargin + (width() - 2 * kMargin) * (i + 0.5) / kHoles;
            paint::disc(painter, {x, y}, std::min(8.0, height() * 0.09), edge_);
        }
        paint::dashed(painter, {kMargin, y + height() * 0.19},
                      {width() - kMargin, y + height() * 0.19}, edge_, kPen, kDash);
    }
}

void BlankShape::paint(QPainter* painter) {
    if (kind_ == QLatin1String("line")) return paintLine(*painter, height() - 20, height() - 40);
    if (kind_ == QLatin1String("shelf")) return paintShelf(*painter);
    paintLabel(*painter);
}

}  // namespace burrow
