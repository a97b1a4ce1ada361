#include "ports/zoom_view.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

namespace burrow {
namespace {

/// Two steps double the size.
const qreal step = std::sqrt(2.0);
/// Where millimetres count, a part of the picture may be looked at closer than the whole suggests: until one
/// of its pixels is so many units wide.
constexpr qreal widestPixel = 8;

/// Where a length begins so that no room is left empty, and a shorter one stands in the middle.
qreal placed(qreal wanted, qreal length, qreal room) {
    if (length <= room) return (room - length) / 2;
    return std::clamp(wanted, room - length, 0.0);
}

}  // namespace

ZoomView::ZoomView(QQuickItem* parent) : QQuickPaintedItem(parent) {}

QRectF ZoomView::contentRect() const {
    const auto whole = shape();
    if (whole.isEmpty() || size().isEmpty()) return {};
    const auto fitted = whole.scaled(size(), Qt::KeepAspectRatio);
    const auto large = fitted * zoom_;
    return {placed(width() / 2 - centre_.x() * large.width(), large.width(), width()),
            placed(height() / 2 - centre_.y() * large.height(), large.height(), height()),
            large.width(), large.height()};
}

void ZoomView::paint(QPainter* painter) {
    const auto rect = contentRect();
    if (rect.isEmpty()) return;
    painter->setClipRect(boundingRect());
    draw(*painter, rect);
}

void ZoomView::changed() {
    // What can't be reached is not aimed at, so that the way back is as long as the way there.
    const auto rect = contentRect();
    if (!rect.isEmpty()) {
        centre_ = {(width() / 2 - rect.x()) / rect.width(),
                   (height() / 2 - rect.y()) / rect.height()};
    }
    update();
    emit viewChanged();
}

void ZoomView::setZoom(qreal zoom) {
    zoom = std::clamp(zoom, least(), most());
    if (zoom == zoom_) return;
    zoom_ = zoom;
    changed();
}

qreal ZoomView::fittedPerMm() const {
    const auto whole = shape();
    if (whole.isEmpty() || size().isEmpty()) return 0;
    return unit_ * whole.scaled(size(), Qt::KeepAspectRatio).width() / whole.width();
}

qreal ZoomView::closestPerMm() const {
    return std::max(mostZoom * fittedPerMm(), widestPixel * unit_);
}

qreal ZoomView::least() const {
    const auto fitted = fittedPerMm();
    if (fitted <= 0 || leastPerMm_ <= 0) return 1;
    return std::min(1.0, leastPerMm_ / fitted);
}

qreal ZoomView::most() const {
    const auto fitted = fittedPerMm();
    if (fitted <= 0) return mostZoom;
    return std::max(closestPerMm(), mostPerMm_) / fitted;
}

void ZoomView::setUnit(qreal unit) {
    if (!(unit >= 0) || unit == unit_) return;
    unit_ = unit;
    zoom_ = std::clamp(zoom_, least(), most());
    changed();
}

void ZoomView::setPerMm(qreal perMm) {
    const auto fitted = fittedPerMm();
    if (fitted > 0 && perMm > 0) setZoom(perMm / fitted);
}

void ZoomView::setReach(qreal leastPerMm, qreal mostPerMm) {
    if (leastPerMm_ == leastPerMm && mostPerMm_ == mostPerMm) return;
    leastPerMm_ = leastPerMm;
    mostPerMm_ = mostPerMm;
    zoom_ = std::clamp(zoom_, least(), most());
    changed();
}

void ZoomView::showMm(qreal millimetres) {
    if (millimetres > 0) setPerMm(std::min(width(), height()) / millimetres);
}

void ZoomView::show(qreal zoom, const QPointF& centre) {
    zoom_ = std::clamp(zoom, least(), most());
    centre_ = centre;
    changed();
}

void ZoomView::closer() { setZoom(zoom_ * step); }
void ZoomView::farther() { setZoom(zoom_ / step); }

void ZoomView::whole() {
    zoom_ = 1;
    centre_ = {0.5, 0.5};
    changed();
}

void ZoomView::renew() { whole(); }

void ZoomView::lookAt(const QPointF& place) {
    shift(width() / 2 - place.x(), height() / 2 - place.y());
}

void ZoomView::shift(qreal dx, qreal dy) {
    const auto rect = contentRect();
    if (rect.isEmpty()) return;
    centre_ -= QPointF(dx / rect.width(), dy / rect.height());
    changed();
}

void ZoomView::zoomAt(qreal zoom, const QPointF& place) {
    const auto before = contentRect();
    if (before.isEmpty()) return;
    const QPointF part((place.x() - before.x()) / before.width(),
                       (place.y() - before.y()) / before.height());
    zoom_ = std::clamp(zoom, least(), most());
    const auto large = before.size() * (shape().scaled(size(), Qt::KeepAspectRatio).width() *
                                        zoom_ / before.width());
    centre_ = part + QPointF((width() / 2 - place.x()) / large.width(),
                             (height() / 2 - place.y()) / large.height());
    changed();
}

void ZoomView::geometryChange(const QRectF& newGeometry, const QRectF& oldGeometry) {
    QQuickPaintedItem::geometryChange(newGeometry, oldGeometry);
    changed();
}

}  // namespace burrow
