#include "ports/photo_view.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QFile>
#include <QImageReader>
#include <QPainter>
#include <QPointer>
#include <QThreadPool>

#include "ports/contrast.h"
#include "ports/warmth.h"

namespace burrow {
namespace {

/// Qt's own limit of 128 MB ends at 33 megapixels; the book takes in twice as many (pictures::Limits).
void allowLargePictures() {
    constexpr int allocationLimitMb = 512;
    static const bool isAllowed = [] {
        QImageReader::setAllocationLimit(allocationLimitMb);
        return true;
    }();
    static_cast<void>(isAllowed);
}

/// The picture inside a "data:image/jpeg;base64,..." address.
QByteArray embedded(const QUrl& source) {
    const auto text = source.path(QUrl::FullyEncoded).toLatin1();
    return QByteArray::fromBase64(text.mid(text.indexOf(',') + 1));
}

QImage pictureFrom(const QUrl& source, int longestSide) {
    QByteArray data;
    QBuffer buffer(&data);
    QFile file(source.toLocalFile());
    QImageReader reader(&file);
    if (source.scheme() == QStringLiteral("data")) {
        data = embedded(source);
        buffer.open(QIODevice::ReadOnly);
        reader.setDevice(&buffer);
    }
    reader.setAutoTransform(true);
    const auto size = reader.size();
    if (longestSide > 0 && std::max(size.width(), size.height()) > longestSide) {
        reader.setScaledSize(size.scaled(longestSide, longestSide, Qt::KeepAspectRatio));
    }
    return reader.read();
}

}  // namespace

void PhotoView::setSource(const QUrl& source) {
    if (source_ == source) return;
    source_ = source;
    read();
    emit sourceChanged();
}

void PhotoView::setLongestSide(int pixels) {
    if (longestSide_ == pixels) return;
    longestSide_ = pixels;
    read();
    emit sourceChanged();
}

void PhotoView::setWarm(bool warm) {
    if (warm_ == warm) return;
    warm_ = warm;
    update();
    emit warmChanged();
}

void PhotoView::setContrast(bool contrast) {
    if (contrast_ == contrast) return;
    contrast_ = contrast;
    update();
    emit contrastChanged();
}

void PhotoView::componentComplete() {
    ZoomView::componentComplete();
    read();
}

void PhotoView::read() {
    if (!isComponentComplete()) return;
    isRead_ = false;
    picture_ = {};
    contrasted_ = {};
    renew();
    emit pictureChanged();
    if (source_.isEmpty()) return;
    allowLargePictures();
    QThreadPool::globalInstance()->start(
        [guard = QPointer(this), source = source_, longest = longestSide_] {
            const auto picture = pictureFrom(source, longest);
            QMetaObject::invokeMethod(
                QCoreApplication::instance(),
                [guard, source, picture] {
                    if (guard) guard->show(source, picture);
                },
                Qt::QueuedConnection);
        });
}

void PhotoView::show(const QUrl& source, const QImage& picture) {
    if (source != source_) return;
    picture_ = picture;
    isRead_ = true;
    renew();
    emit pictureChanged();
}

void PhotoView::draw(QPainter& painter, const QRectF& rect) {
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    if (contrast_ && contrasted_.isNull()) contrasted_ = withContrast(picture_);
    painter.drawImage(rect, contrast_ ? contrasted_ : picture_);
    if (warm_) warm(painter, rect);
}

}  // namespace burrow
