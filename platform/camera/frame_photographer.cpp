#include "camera/frame_photographer.h"

#include <QBuffer>
#include <utility>

#include "camera/frames.h"

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

QByteArray packedStill(const QVideoFrame& still) {
    if (still.pixelFormat() != QVideoFrameFormat::Format_Jpeg) return packed(shownImage(still));
    // Packed again, edges would lose what the lens has seen.
    QVideoFrame frame = still;
    if (!frame.map(QVideoFrame::ReadOnly)) return {};
    QByteArray jpeg(reinterpret_cast<const char*>(frame.bits(0)), frame.mappedBytes(0));
    frame.unmap();
    return jpeg;
}

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
    keep([picture] { return packed(picture); });
}

void FramePhotographer::keep(const QVideoFrame& still) {
    keep([still] { return packedStill(still); });
}

void FramePhotographer::keep(std::function<QByteArray()> pack) {
    pool_.start([this, pack = std::move(pack)] {
        QMetaObject::invokeMethod(
            this, [this, jpeg = pack()] { answer(jpeg); }, Qt::QueuedConnection);
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
