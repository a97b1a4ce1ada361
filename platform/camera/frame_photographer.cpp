#include "camera/frame_photographer.h"

#include <QBuffer>

namespace burrow {
namespace {

/// Edges stay sharp enough to be measured and a photo of two megapixels stays under 1 MB (common
/// practice, no source).
constexpr int jpegQuality = 92;

QByteArray packed(const QImage& picture) {
    QByteArray jpeg;
    QBuffer buffer(&jpeg);
    buffer.open(QIODevice::WriteOnly);
    if (!picture.save(&buffer, "JPEG", jpegQuality)) jpeg.clear();
    return jpeg;
}

}  // namespace

FramePhotographer::FramePhotographer(const Scanner& scanner, QObject* parent)
    : Photographer(parent), scanner_(scanner) {
    pool_.setMaxThreadCount(1);
}

void FramePhotographer::take() {
    if (busy()) return;
    setBusy(true);
    takeFrame();
}

void FramePhotographer::takeFrame() { keep(scanner_.latestPicture()); }

void FramePhotographer::keep(const QImage& picture) {
    pool_.start([this, picture] {
        QMetaObject::invokeMethod(
            this, [this, jpeg = packed(picture)] { answer(jpeg); }, Qt::QueuedConnection);
    });
}

void FramePhotographer::answer(const QByteArray& jpeg) {
    setBusy(false);
    if (jpeg.isEmpty()) {
        emit refused(QStringLiteral("camera.noPicture"));
    } else {
        emit taken(jpeg);
    }
}

}  // namespace burrow
