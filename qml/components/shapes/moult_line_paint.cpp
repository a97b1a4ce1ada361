// How the moult line looks in its three sizes.
#include <QFontMetricsF>
#include <QLinearGradient>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "moult_line_shape.h"
#include "paint.h"

namespace burrow {
namespace {

/// How much of a tick's height its hardening block takes.
constexpr qreal kHatchShare = 0.56;

}  // namespace

MoultLineShape::Frame MoultLineShape::frame() const {
    Frame at;
    at.left = 1;
    at.right = width() - 1;
    if (size_ == OnPage) {
        // Two lines of text frame the drawing: the forecast above, the days below.
        at.top = tickLine_ + 14;
        at.base = height() - tickLine_ - 28;
        at.tallest = (at.base - at.top) * 0.88;
        at.dots = at.base + 9;
        at.lead = 7, at.tail = 16, at.stub = 48;
        at.axisPen = 2, at.tickPen = 3, at.ring = 6.5, at.ringPen = 2.5;
        at.dot = 2.6, at.dotPitch = 6.2, at.leastHatch = 6, at.hatchPitch = 3.2;
    } else if (size_ == InHeader) {
        at.top = 2;
        at.base = height() - 12;
        at.tallest = (at.base - at.top) * 0.84;
        at.dots = at.base + 5;
        at.lead = 14, at.tail = 6, at.stub = 38;
        at.axisPen = 2, at.tickPen = 2.5, at.ring = 4, at.ringPen = 2;
        at.dot = 1.5, at.dotPitch = 4.2, at.leastHatch = 6, at.hatchPitch = 2.6;
    } else {
        at.top = 1;
        at.base = height() - 9;
        at.tallest = at.base - 3;
        at.dots = at.base + 5;
        at.lead = 3, at.tail = 1, at.stub = 9;
        at.axisPen = 2, at.tickPen = 2.25, at.ring = 3.75, at.ringPen = 1.75;
        at.dot = 1.2, at.dotPitch = 3.2, at.leastHatch = 4, at.hatchPitch = 2.4;
    }
    return at;
}

void MoultLineShape::paintBand(QPainter& painter, const Frame& at) const {
    const qreal middle = std::round(xOf(forecast_.median)) + 0.5;
    const qreal left = std::min(xOf(forecast_.from), middle - 4);
    const qreal right = std::max(xOf(forecast_.to), middle + 4);
    const qreal peak = (middle - left) / (right - left);
    QLinearGradient fade(left, 0, right, 0);
    fade.setColorAt(0, paint::faded(est_, 0));
    fade.setColorAt(peak * 0.45, paint::faded(est_, bandPeak_ * 0.7));
    fade.setColorAt(peak, paint::faded(est_, bandPeak_));
    fade.setColorAt(1 - (1 - peak) * 0.45, paint::faded(est_, bandPeak_ * 0.7));
    fade.setColorAt(1, paint::faded(est_, 0));
    painter.fillRect(QRectF(QPointF(left, at.top), QPointF(std::min(right, width()), at.base)),
                     fade);
    if (size_ != OnPage) {
        return paint::dashed(painter, {middle, at.top}, {middle, at.base}, ink_, 1.75, 2);
    }
    paint::dashed(painter, {middle, at.top}, {middle, at.base}, ink_, 2.25, 3);
    painter.setPen(QPen(est_, 2));
    for (const qreal x : {xOf(forecast_.from), xOf(forecast_.to)}) {
        const qreal snapped = std::round(x);
        painter.drawLine(QPointF(snapped, at.base - 7), QPointF(snapped, at.base));
    }
}

void MoultLineShape::paintAxis(QPainter& painter, const Frame& at) const {
    const qreal now = xOf(nowDay_);
    painter.fillRect(QRectF(at.left, at.base - 1, now - at.left, at.axisPen),
                     size_ == OnPage ? ink_ : soft_);
    paint::dashed(painter, {now + at.ring + 1, at.base}, {at.right, at.base}, edge_, 2,
                  size_ == OnPage ? 3 : 2);
}

void MoultLineShape::paintMarks(QPainter& painter, const Frame& at) const {
    qreal most = 0;
    for (const Mark& mark : marks_) most = std::max(most, mark.height);
    const qreal now = xOf(nowDay_);
    for (qsizetype i = firstShown(); i < marks_.size(); ++i) {
        const Mark& mark = marks_[i];
        const qreal x = std::round(xOf(mark.day) * 2) / 2;
        const qreal tall =
            std::round(std::max(4.0, most > 0 ? at.tallest * mark.height / most : 0));
        if (mark.hardening > 0) {
            const qreal limit = i + 1 < marks_.size() ? xOf(marks_[i + 1].day) - at.tickPen
                                : mark.day + mark.hardening < nowDay_ ? now - at.ring
                                                                      : width();
            // A span that is still open is drawn wide enough to show behind the ring.
            const qreal least =
                mark.day + mark.hardening < nowDay_ ? at.leastHatch : now - x + 2 * at.ring;
            const qreal wide =
                std::min(std::max(least, xOf(mark.day + mark.hardening) - x), limit - x);
            QPainterPath block;
            const qreal top = std::round(at.base - tall * kHatchShare);
            block.addRect(QRectF(QPointF(x, top), QPointF(x + wide, at.base - 1)));
            paint::hatch(painter, block, hatch_, at.hatchPitch, 1.1);
        }
        painter.fillRect(QRectF(x - at.tickPen / 2, at.base - tall, at.tickPen, tall), ink_);
        if (mark.photo && size_ == OnPage) {
            // A small frame on top: there is a photo.
            painter.setPen(QPen(ink_, 1.5));
            painter.setBrush(hole_);
            painter.drawRect(QRectF(x - 3.25, at.base - tall - 4, 6.5, 6.5));
        }
    }
}

// Feedings closer than a dot is wide share one dot; it is open when most of them were refused.
void MoultLineShape::paintFeedings(QPainter& painter, const Frame& at) const {
    QMap<int, int> balance;
    for (const Feeding& feeding : feedings_) {
        if (feeding.day > nowDay_ || feeding.day < firstDay()) continue;
        const int slot = static_cast<int>(std::floor((xOf(feeding.day) - at.left) / at.dotPitch));
        balance[slot] += feeding.took ? 1 : -1;
    }
    for (auto [slot, sum] : balance.asKeyValueRange()) {
        const QPointF centre(at.left + (slot + 0.5) * at.dotPitch, at.dots);
        if (sum > 0) {
            paint::disc(painter, centre, at.dot, soft_);
        } else {
            paint::ring(painter, centre, at.dot + 0.4, 1.1, soft_, Qt::transparent);
        }
    }
}

// In a row there is room for the last few only, side by side up to now.
void MoultLineShape::paintRecentFeedings(QPainter& painter, const Frame& at) const {
    const qsizetype count = std::min<qsizetype>(feedings_.size(), kRowFeedings);
    for (qsizetype i = 0; i < count; ++i) {
        const Feeding& feeding = feedings_[feedings_.size() - 1 - i];
        const QPointF centre(xOf(nowDay_) - at.ring - 1 - static_cast<qreal>(i) * at.dotPitch,
                             at.dots);
        if (feeding.took) {
            paint::disc(painter, centre, at.dot, soft_);
        } else {
            paint::ring(painter, centre, at.dot + 0.4, 0.9, soft_, Qt::transparent);
        }
    }
}

void MoultLineShape::paintText(QPainter& painter, const QString& text, const QRectF& box,
                               const QColor& color) const {
    painter.setFont(tickFont_);
    painter.setPen(color);
    painter.drawText(box, Qt::AlignCenter | Qt::TextDontClip, text);
}

void MoultLineShape::paintLabels(QPainter& painter, const Frame& at) const {
    const QFontMetricsF metrics(tickFont_);
    const auto box = [&](qreal x, const QString& text, qreal top) {
        const qreal wide = metrics.horizontalAdvance(text);
        const qreal left = std::clamp(x - wide / 2, 0.0, std::max(0.0, width() - wide));
        return QRectF(std::round(left), top, wide, tickLine_);
    };
    const qreal below = at.base + 22;
    QList<QRectF> taken;
    if (!nowLabel_.isEmpty()) {
        taken.append(box(xOf(nowDay_), nowLabel_, below));
        paintText(painter, nowLabel_, taken.last(), ink_);
    }
    for (const Label& label : labels_) {
        const qreal x = xOf(label.day);
        if (x < at.left || x > at.right) continue;
        const QRectF room = box(x, label.text, below);
        const bool free = std::none_of(taken.begin(), taken.end(), [&](const QRectF& other) {
            return room.adjusted(-8, 0, 8, 0).intersects(other);
        });
        if (!free) continue;
        taken.append(room);
        paintText(painter, label.text, room, soft_);
    }
    if (hasForecast() && !forecastLabel_.isEmpty()) {
        paintText(painter, forecastLabel_,
                  box((xOf(forecast_.from) + xOf(forecast_.to)) / 2, forecastLabel_, 0), est_);
    }
}

void MoultLineShape::paint(QPainter* painter) {
    const Frame at = frame();
    if (hasForecast()) paintBand(*painter, at);
    paintAxis(*painter, at);
    paintMarks(*painter, at);
    if (size_ == InRow) {
        paintRecentFeedings(*painter, at);
    } else {
        paintFeedings(*painter, at);
    }
    paint::ring(*painter, {xOf(nowDay_), at.base}, at.ring, at.ringPen, ink_, hole_);
    if (size_ == OnPage) paintLabels(*painter, at);
    if (current_ >= 0 && current_ < marks_.size()) {
        const qreal x = xOf(marks_[current_].day);
        painter->setPen(QPen(ink_, 3));
        painter->setBrush(Qt::NoBrush);
        painter->drawRoundedRect(QRectF(QPointF(x - 9, at.top), QPointF(x + 9, at.base + 16)), 6,
                                 6);
    }
}

}  // namespace burrow
