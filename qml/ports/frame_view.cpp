#include "ports/frame_view.h"

#include <QPainter>

#include "ports/frames.h"

namespace burrow {

FrameView::FrameView(QQuickItem* parent) : QQuickPaintedItem(parent) {
    connect(&sink_, &QVideoSink::videoFrameChanged, this, &FrameView::take);
}

QList<QPointF> FrameView::toItem(const QList<QPointF>& places) const {
    QList<QPointF> inItem;
    for (const auto& place : places) {
        inItem.append(contentRect_.topLeft() +
                      QPointF(place.x() * contentRect_.width(), place.y() * contentRect_.height()));
    }
    return inItem;
}

void FrameView::paint(QPainter* painter) {
    if (!frame_.isValid()) return;
    painter->setRenderHint(QPainter::SmoothPixmapTransform);
    painter->drawImage(contentRect_, shownImage(frame_));
}

void FrameView::geometryChange(const QRectF& newGeometry, const QRectF& oldGeometry) {
    QQuickPaintedItem::geometryChange(newGeometry, oldGeometry);
    lay();
}

void FrameView::take(const QVideoFrame& frame) {
    frame_ = frame;
    shape_ = shownFromStored(frame).mapRect(QRectF(QPointF(), QSizeF(frame.size()))).size();
    lay();
    update();
}

void FrameView::lay() {
    QRectF rect;
    if (frame_.isValid()) {
        rect.setSize(shape_.scaled(size(), Qt::KeepAspectRatioByExpanding));
        rect.moveCenter(boundingRect().center());
    }
    if (rect == contentRect_) return;
    contentRect_ = rect;
    emit contentRectChanged();
}

}  // namespace burrow
