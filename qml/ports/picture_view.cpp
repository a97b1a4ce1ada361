#include "ports/picture_view.h"

#include <QPainter>

#include "ports/warmth.h"

namespace burrow {

PictureView::PictureView(QQuickItem* parent) : ZoomView(parent) {}

void PictureView::setPicture(const Picture& picture) {
    if (picture_ == picture) return;
    const bool fits = shown_ == key_ && picture_.image().size() == picture.image().size();
    picture_ = picture;
    shown_ = key_;
    // The same thing in another light stays where it is.
    if (fits) {
        update();
    } else {
        renew();
        const auto seen = seen_.constFind(key_);
        if (seen != seen_.constEnd() && !picture.isEmpty()) show(seen->zoom, seen->centre);
    }
    emit pictureChanged();
}

void PictureView::setKey(const QString& key) {
    if (key_ == key) return;
    if (!picture_.isEmpty() && !shown_.isEmpty()) seen_.insert(shown_, {zoom(), centre()});
    key_ = key;
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
