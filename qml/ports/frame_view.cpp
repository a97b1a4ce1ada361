#include "ports/frame_view.h"

#include <QPainter>
#include <utility>

namespace burrow {

FrameView::FrameView(QQuickItem* parent) : QQuickPaintedItem(parent) {}

QList<QPointF> FrameView::toItem(const QList<QPointF>& places) const {
    QList<QPointF> inItem;
    for (const auto& place : places) {
        inItem.append(contentRect_.topLeft() +
                      QPointF(place.x() * contentRect_.width(), place.y() * contentRect_.height()));
    }
    return inItem;
}

void FrameView::paint(QPainter* painter) {
    if (!frame_.size.isValid()) return;
    painter->setRenderHint(QPainter::SmoothPixmapTransform);
    painter->drawImage(contentRect_, frame_.image());
}

void FrameView::geometryChange(const QRectF& newGeometry, const QRectF& oldGeometry) {
    QQuickPaintedItem::geometryChange(newGeometry, oldGeometry);
    lay();
}

void FrameView::show(ShownFrame frame) {
    frame_ = std::move(frame);
    lay();
    update();
}

void FrameView::lay() {
    QRectF rect;
    if (frame_.size.isValid()) {
        rect.setSize(frame_.size.scaled(size(), Qt::KeepAspectRatioByExpanding));
        rect.moveCenter(boundingRect().center());
    }
    if (rect == contentRect_) return;
    contentRect_ = rect;
    emit contentRectChanged();
}

}  // namespace burrow
