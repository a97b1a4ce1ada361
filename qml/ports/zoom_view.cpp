#include "ports/zoom_view.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

namespace burrow {
namespace {

/// Two steps double the size.
const qreal step = std::sqrt(2.0);

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
    zoom = std::clamp(zoom, 1.0, mostZoom);
    if (zoom == zoom_) return;
    zoom_ = zoom;
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
    zoom_ = std::clamp(zoom, 1.0, mostZoom);
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
