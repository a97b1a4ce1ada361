#include "ports/picture_view.h"

#include <QPainter>

#include "ports/warmth.h"

namespace burrow {

PictureView::PictureView(QQuickItem* parent) : ZoomView(parent) {}

void PictureView::setPicture(const Picture& picture) {
    if (picture_ == picture) return;
    const bool fits = picture_.image().size() == picture.image().size();
    picture_ = picture;
    // The same thing in another light stays where it is.
    if (fits) {
        update();
    } else {
        renew();
    }
    emit pictureChanged();
}

void PictureView::setWarm(bool warm) {
    if (warm_ == warm) return;
    warm_ = warm;
    update();
    emit warmChanged();
}

qreal PictureView::pixelSize() const {
    const auto width = picture_.image().width();
    return width > 0 ? contentRect().width() / width : 0;
}

QPointF PictureView::partAt(const QPointF& place) const {
    const auto rect = contentRect();
    if (rect.isEmpty()) return {};
    return {(place.x() - rect.x()) / rect.width(), (place.y() - rect.y()) / rect.height()};
}

void PictureView::draw(QPainter& painter, const QRectF& rect) {
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.drawImage(rect, picture_.image());
    if (warm_) warm(painter, rect);
}

}  // namespace burrow
