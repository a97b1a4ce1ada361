#include "camera/camera_photographer.h"

#include <chrono>
#include <utility>

namespace burrow {
namespace {

/// Longer than a phone takes to focus and expose in a dim room (common practice, no source).
constexpr std::chrono::seconds longestWait{4};

qint64 pixels(const QSize& size) { return qint64{size.width()} * size.height(); }

}  // namespace

CameraPhotographer::CameraPhotographer(CameraScanner& scanner, QObject* parent)
    : FramePhotographer(scanner, parent), camera_(scanner) {
    capture_.setQuality(QImageCapture::VeryHighQuality);
    camera_.session().setImageCapture(&capture_);
    patience_.setSingleShot(true);
    patience_.setInterval(longestWait);
    connect(&patience_, &QTimer::timeout, this, &CameraPhotographer::instead);
    // Queued: an answer may come before capture() has returned its number.
    connect(
        &capture_, &QImageCapture::imageCaptured, this,
        [this](int id, const QImage& preview) {
            if (id == awaited_) preview_ = preview;
        },
        Qt::QueuedConnection);
    connect(&capture_, &QImageCapture::imageAvailable, this, &CameraPhotographer::received,
            Qt::QueuedConnection);
    connect(
        &capture_, &QImageCapture::errorOccurred, this,
        [this](int id) {
            if (id == awaited_) instead();
        },
        Qt::QueuedConnection);
}

CameraPhotographer::~CameraPhotographer() { camera_.session().setImageCapture(nullptr); }

void CameraPhotographer::take() {
    if (busy()) return;
    setBusy(true);
    if (!capture_.isReadyForCapture()) {
        takeFrame();
        return;
    }
    preview_ = {};
    awaited_ = capture_.capture();
    if (awaited_ < 0) {
        takeFrame();
    } else {
        patience_.start();
    }
}

void CameraPhotographer::received(int id, const QVideoFrame& still) {
    if (awaited_ < 0 || id != awaited_) return;
    if (!still.isValid() || pixels(still.size()) < pixels(camera_.latestFrame().size())) {
        instead();
        return;
    }
    awaited_ = -1;
    preview_ = {};
    patience_.stop();
    keep(still);
}

void CameraPhotographer::instead() {
    if (std::exchange(awaited_, -1) < 0) return;
    patience_.stop();
    const auto preview = std::exchange(preview_, {});
    if (!preview.isNull() && pixels(preview.size()) >= pixels(camera_.latestFrame().size())) {
        keep(preview);
    } else {
        takeFrame();
    }
}

}  // namespace burrow
