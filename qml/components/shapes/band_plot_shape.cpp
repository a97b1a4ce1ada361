#include "band_plot_shape.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "paint.h"

namespace burrow {
namespace {

constexpr int kMostLines = 4;
/// The band beside its line.
constexpr qreal kBandAlpha = 0.28;

QString number(qreal value, qreal step) {
    return QString::number(value, 'f',
                           step < 1 ? static_cast<int>(-std::floor(std::log10(step))) : 0);
}

}  // namespace

BandPlotShape::BandPlotShape(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &BandPlotShape::changed, this, [this] { update(); });
}

void BandPlotShape::setPoints(const QVariantList& points) {
    if (points == pointsGiven_) return;
    pointsGiven_ = points;
    points_.clear();
    for (const QVariant& entry : points) {
        points_.append({paint::field(entry, "at").toReal(), paint::field(entry, "low").toReal(),
                        paint::field(entry, "middle").toReal(),
                        paint::field(entry, "high").toReal(), paint::field(entry, "gap").toBool()});
    }
    emit changed();
}

void BandPlotShape::setLabels(const QVariantList& labels) {
    if (labels == labelsGiven_) return;
    labelsGiven_ = labels;
    labels_.clear();
    for (const QVariant& entry : labels) {
        labels_.append(
            {paint::field(entry, "at").toReal(), paint::field(entry, "text").toString()});
    }
    emit changed();
}

BandPlotShape::Cut BandPlotShape::cutFor(qreal least, qreal most) {
    if (!(most > least)) {
        least -= 1;
        most += 1;
    }
    qreal power = std::pow(10.0, std::floor(std::log10(most - least)) - 1);
    for (;; power *= 10) {
        for (const qreal digit : {1.0, 2.0, 5.0}) {
            const qreal step = digit * power;
            const Cut cut{std::floor(least / step + 1e-9) * step,
                          std::ceil(most / step - 1e-9) * step, step};
            if (std::round((cut.most - cut.least) / step) <= kMostLines - 1) return cut;
        }
    }
}

BandPlotShape::Axes BandPlotShape::axes() const {
    Axes at{};
    qreal least = hasWanted_ ? wantedLow_ : 1e9;
    qreal most = hasWanted_ ? wantedHigh_ : -1e9;
    for (const Point& point : points_) {
        least = std::min(least, point.low);
        most = std::max(most, point.high);
    }
    at.cut = points_.isEmpty() && !hasWanted_ ? Cut{} : cutFor(least, most);
    const QFontMetricsF metrics(tickFont_);
    qreal widest = 0;
    for (qreal line = at.cut.least; line <= at.cut.most + 1e-9; line += at.cut.step) {
        widest = std::max(widest, metrics.horizontalAdvance(number(line, at.cut.step)));
    }
    at.left = std::ceil(widest) + 8;
    at.right = width() - 2;
    at.top = std::ceil(tickLine_ / 2);
    at.base = height() - tickLine_ - 10.5;
    return at;
}

void BandPlotShape::paintGrid(QPainter& painter, const Axes& at) const {
    painter.setFont(tickFont_);
    const int lines = static_cast<int>(std::round((at.cut.most - at.cut.least) / at.cut.step));
    for (int line = 0; line <= lines; ++line) {
        const qreal value = at.cut.least + line * at.cut.step;
        const qreal y = line == 0 ? at.base : std::round(at.y(value)) + 0.5;
        painter.setPen(QPen(line == 0 ? edge_ : rule_, line == 0 ? 1.5 : 1));
        painter.drawLine(QPointF(at.left, y), QPointF(at.right, y));
        painter.setPen(soft_);
        painter.drawText(QRectF(0, y - tickLine_ / 2, at.left - 8, tickLine_),
                         Qt::AlignRight | Qt::AlignVCenter | Qt::TextDontClip,
                         number(value, at.cut.step));
    }
}

void BandPlotShape::paintLabels(QPainter& painter, const Axes& at) const {
    const QFontMetricsF metrics(tickFont_);
    painter.setFont(tickFont_);
    qreal freeFrom = 0;
    for (const Label& label : labels_) {
        const qreal x = std::round(at.x(label.at)) + 0.5;
        const qreal wide = metrics.horizontalAdvance(label.text);
        const qreal left = std::clamp(x - wide / 2, 0.0, std::max(0.0, width() - wide));
        if (left < freeFrom) continue;
        painter.setPen(QPen(edge_, 1.5));
        painter.drawLine(QPointF(x, at.base), QPointF(x, at.base + 4));
        painter.setPen(soft_);
        painter.drawText(QRectF(left, height() - tickLine_, wide, tickLine_),
                         Qt::AlignCenter | Qt::TextDontClip, label.text);
        freeFrom = left + wide + 8;
    }
}

void BandPlotShape::paintWanted(QPainter& painter, const Axes& at) const {
    if (!hasWanted_) return;
    for (const qreal value : {wantedLow_, wantedHigh_}) {
        const qreal y = std::round(at.y(value)) + 0.5;
        paint::dashed(painter, {at.left, y}, {at.right, y}, edge_, 1.5, 4);
    }
}

void BandPlotShape::paintBand(QPainter& painter, const Axes& at) const {
    painter.setBrush(Qt::NoBrush);
    for (int from = 0; from < points_.size();) {
        int end = from + 1;
        while (end < points_.size() && !points_[end].gap) ++end;
        QPainterPath area(QPointF(at.x(points_[from].at), at.y(points_[from].high)));
        QPainterPath middle(QPointF(at.x(points_[from].at), at.y(points_[from].middle)));
        for (int i = from + 1; i < end; ++i) {
            area.lineTo(at.x(points_[i].at), at.y(points_[i].high));
            middle.lineTo(at.x(points_[i].at), at.y(points_[i].middle));
        }
        for (int i = end - 1; i >= from; --i) {
            area.lineTo(at.x(points_[i].at), at.y(points_[i].low));
        }
        area.closeSubpath();
        if (end - from == 1) {
            // A lone reading would be a line of no length.
            paint::disc(painter, middle.currentPosition(), 3.75, ink_);
        } else {
            painter.fillPath(area, paint::faded(ink_, kBandAlpha));
            painter.setPen(QPen(ink_, 2.25, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
            painter.drawPath(middle);
        }
        from = end;
    }
}

void BandPlotShape::paint(QPainter* painter) {
    const Axes at = axes();
    paintGrid(*painter, at);
    paintLabels(*painter, at);
    paintWanted(*painter, at);
    paintBand(*painter, at);
}

}  // namespace burrow
