#include "step_plot_shape.h"

#include <QFontMetricsF>
#include <QLinearGradient>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "paint.h"

namespace burrow {
namespace {

constexpr int kMostLines = 4;
/// Room above the highest value.
constexpr qreal kHeadroom = 1.04;

QString number(qreal value, qreal step) {
    if (value == 0) return QStringLiteral("0");
    return QString::number(value, 'f',
                           step < 1 ? static_cast<int>(-std::floor(std::log10(step))) : 0);
}

}  // namespace

StepPlotShape::StepPlotShape(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &StepPlotShape::changed, this, [this] { update(); });
}

void StepPlotShape::setPoints(const QVariantList& points) {
    if (points == pointsGiven_) return;
    pointsGiven_ = points;
    points_.clear();
    for (const QVariant& entry : points) {
        points_.append({paint::field(entry, "day").toInt(), paint::field(entry, "value").toReal()});
    }
    emit changed();
}

void StepPlotShape::setBand(const QVariantList& band) {
    if (band == bandGiven_) return;
    bandGiven_ = band;
    band_.clear();
    for (const QVariant& entry : band) {
        band_.append({paint::field(entry, "day").toInt(), paint::field(entry, "low").toReal(),
                      paint::field(entry, "median").toReal(),
                      paint::field(entry, "high").toReal()});
    }
    emit changed();
}

void StepPlotShape::setLabels(const QVariantList& labels) {
    if (labels == labelsGiven_) return;
    labelsGiven_ = labels;
    labels_.clear();
    for (const QVariant& entry : labels) {
        labels_.append(
            {paint::field(entry, "day").toInt(), paint::field(entry, "text").toString()});
    }
    emit changed();
}

qreal StepPlotShape::gridStep(qreal most) {
    if (!(most > 0)) return 1;
    qreal power = std::pow(10.0, std::floor(std::log10(most)) - 1);
    for (;; power *= 10) {
        for (const qreal digit : {1.0, 2.0, 5.0}) {
            if (std::floor(most / (digit * power) + 1e-9) <= kMostLines) return digit * power;
        }
    }
}

qreal StepPlotShape::mostValue() const {
    qreal most = 0;
    for (const Point& point : points_) most = std::max(most, point.value);
    for (const Reach& reach : band_) most = std::max(most, reach.high);
    return most > 0 ? most * kHeadroom : 1;
}

qreal StepPlotShape::Axes::x(qreal day) const {
    return lastDay > firstDay ? left + (right - left) * (day - firstDay) / (lastDay - firstDay)
                              : left;
}

qreal StepPlotShape::Axes::y(qreal value) const { return base - (base - top) * value / most; }

StepPlotShape::Axes StepPlotShape::axes() const {
    Axes at;
    at.most = mostValue();
    const QFontMetricsF metrics(tickFont_);
    const qreal step = gridStep(at.most);
    const qreal highest = std::floor(at.most / step) * step;
    at.left = std::ceil(metrics.horizontalAdvance(number(highest, step))) + 8;
    at.right = width() - 2;
    at.top = std::ceil(tickLine_ / 2);
    at.base = height() - tickLine_ - 10.5;
    at.firstDay = points_.isEmpty() ? nowDay_ : points_.first().day;
    at.lastDay = std::max(nowDay_, band_.isEmpty() ? nowDay_ : band_.last().day);
    // A little air on both sides, so that the first square and the ring stand clear of the edges.
    const qreal air = (at.lastDay - at.firstDay) * 0.02;
    at.firstDay -= air;
    at.lastDay += band_.isEmpty() ? air : 0;
    return at;
}

void StepPlotShape::paintGrid(QPainter& painter, const Axes& at) const {
    painter.setFont(tickFont_);
    const qreal step = gridStep(at.most);
    for (int line = 0; line * step <= at.most + 1e-9; ++line) {
        const qreal y = line == 0 ? at.base : std::round(at.y(line * step)) + 0.5;
        painter.setPen(QPen(line == 0 ? edge_ : rule_, line == 0 ? 1.5 : 1));
        painter.drawLine(QPointF(at.left, y), QPointF(at.right, y));
        painter.setPen(soft_);
        painter.drawText(QRectF(0, y - tickLine_ / 2, at.left - 8, tickLine_),
                         Qt::AlignRight | Qt::AlignVCenter | Qt::TextDontClip,
                         number(line * step, step));
    }
}

void StepPlotShape::paintLabels(QPainter& painter, const Axes& at) const {
    const QFontMetricsF metrics(tickFont_);
    painter.setFont(tickFont_);
    qreal freeFrom = 0;
    for (const Label& label : labels_) {
        const qreal x = std::round(at.x(label.day)) + 0.5;
        const qreal wide = metrics.horizontalAdvance(label.text);
        const qreal left = std::clamp(x - wide / 2, 0.0, std::max(0.0, width() - wide));
        if (x < at.left || x > at.right || left < freeFrom) continue;
        painter.setPen(QPen(edge_, 1.5));
        painter.drawLine(QPointF(x, at.base), QPointF(x, at.base + 4));
        painter.setPen(soft_);
        painter.drawText(QRectF(left, height() - tickLine_, wide, tickLine_),
                         Qt::AlignCenter | Qt::TextDontClip, label.text);
        freeFrom = left + wide + 8;
    }
}

void StepPlotShape::paintBand(QPainter& painter, const Axes& at) const {
    if (band_.isEmpty()) return;
    QPainterPath low(QPointF(at.x(band_.first().day), at.y(band_.first().low)));
    QPainterPath high(QPointF(at.x(band_.first().day), at.y(band_.first().high)));
    QPainterPath median(QPointF(at.x(band_.first().day), at.y(band_.first().median)));
    for (const Reach& reach : band_) {
        low.lineTo(at.x(reach.day), at.y(reach.low));
        high.lineTo(at.x(reach.day), at.y(reach.high));
        median.lineTo(at.x(reach.day), at.y(reach.median));
    }
    QPainterPath area = high;
    area.connectPath(low.toReversed());
    QLinearGradient fade(at.x(band_.first().day), 0, at.x(band_.last().day), 0);
    fade.setColorAt(0, paint::faded(est_, bandPeak_));
    fade.setColorAt(1, paint::faded(est_, bandPeak_ * 0.3));
    painter.fillPath(area, fade);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(est_, 1.5));
    painter.drawPath(low);
    painter.drawPath(high);
    QPen dashes(est_, 2.25, Qt::CustomDashLine, Qt::FlatCap);
    dashes.setDashPattern({4 / 2.25, 3 / 2.25});
    painter.setPen(dashes);
    painter.drawPath(median);
}

void StepPlotShape::paintSteps(QPainter& painter, const Axes& at) const {
    if (points_.isEmpty()) return;
    QPainterPath stair(QPointF(at.x(points_.first().day), at.y(points_.first().value)));
    for (const Point& point : points_) {
        stair.lineTo(at.x(point.day), stair.currentPosition().y());
        stair.lineTo(at.x(point.day), at.y(point.value));
    }
    const QPointF now(at.x(nowDay_), stair.currentPosition().y());
    stair.lineTo(now);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(ink_, 2.5, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.drawPath(stair);
    for (const Point& point : points_) {
        painter.fillRect(QRectF(at.x(point.day) - 3.75, at.y(point.value) - 3.75, 7.5, 7.5), ink_);
    }
    paint::ring(painter, now, 6, 2.5, ink_, hole_);
}

void StepPlotShape::paint(QPainter* painter) {
    const Axes at = axes();
    paintGrid(*painter, at);
    paintLabels(*painter, at);
    paintBand(*painter, at);
    paintSteps(*painter, at);
}

}  // namespace burrow
