#include "camera/frames.h"

#include <QVideoFrameFormat>

namespace burrow {
namespace {

#if QT_VERSION >= QT_VERSION_CHECK(6, 7, 0)
int quarterTurns(const QVideoFrame& frame) { return static_cast<int>(frame.rotation()) / 90; }
int quarterTurns(const QVideoFrameFormat& format) {
    return static_cast<int>(format.rotation()) / 90;
}
#else
int quarterTurns(const QVideoFrame& frame) { return static_cast<int>(frame.rotationAngle()) / 90; }
int quarterTurns(const QVideoFrameFormat&) { return 0; }
#endif

/// Older versions of Qt turn and mirror in QVideoFrame::toImage() as the frame asks, newer ones leave
/// that to whoever shows it.
bool toImageTurns() {
    static const bool turns = [] {
        QVideoFrame probe(QVideoFrameFormat({4, 2}, QVideoFrameFormat::Format_BGRX8888));
#if QT_VERSION >= QT_VERSION_CHECK(6, 7, 0)
        probe.setRotation(QtVideo::Rotation::Clockwise90);
#else
        probe.setRotationAngle(QVideoFrame::Rotation90);
#endif
        return probe.toImage().width() == 2;
    }();
    return turns;
}

QTransform turned(int quarters) { return QTransform().rotate(90.0 * quarters); }
QTransform mirroredIf(bool sideways) { return QTransform::fromScale(sideways ? -1 : 1, 1); }

}  // namespace

// The order is Qt's: first what the format asks, then what the frame asks, turning before mirroring.
QTransform shownFromStored(const QVideoFrame& frame) {
    const auto format = frame.surfaceFormat();
    const bool upsideDown = format.scanLineDirection() == QVideoFrameFormat::BottomToTop;
    return QTransform::fromTranslate(-0.5, -0.5) * QTransform::fromScale(1, upsideDown ? -1 : 1) *
           turned(quarterTurns(format)) * mirroredIf(format.isMirrored()) *
           turned(quarterTurns(frame)) * mirroredIf(frame.mirrored()) *
           QTransform::fromTranslate(0.5, 0.5);
}

QImage shownImage(const QVideoFrame& frame) {
    auto image = frame.toImage();
    if (image.isNull()) return image;
    if (!toImageTurns()) {
        const auto upright = image.transformed(turned(quarterTurns(frame)));
        return frame.mirrored() ? upright.mirrored(true, false) : upright;
    }
    // What it leaves out is the mirror of the format, which stands before the turn of the frame.
    const bool sideways = quarterTurns(frame) % 2 != 0;
    if (frame.surfaceFormat().isMirrored()) return image.mirrored(!sideways, sideways);
    return image;
}

QSizeF shownSize(const QVideoFrame& frame) {
    if (!frame.isValid()) return {};
    return shownFromStored(frame).mapRect(QRectF(QPointF(), QSizeF(frame.size()))).size();
}

}  // namespace burrow
