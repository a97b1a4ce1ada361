#include "camera/camera_scanner.h"

#include <algorithm>
#include <chrono>
#include <utility>
#include <vector>

#include "camera/camera_access.h"
#include "camera/camera_format.h"

namespace burrow {
namespace {

/// Cameras of phones answer within one or two seconds (common practice, no source).
constexpr std::chrono::seconds longestWait{8};

/// Null where there is no camera.
QCameraDevice cameraToUse() {
    const auto all = QMediaDevices::videoInputs();
    const auto atTheBack = std::find_if(all.begin(), all.end(), [](const QCameraDevice& device) {
        return device.position() == QCameraDevice::BackFace;
    });
    return atTheBack == all.end() ? QMediaDevices::defaultVideoInput() : *atTheBack;
}

/// A phone's system takes stills of its own, whatever the frames are.
constexpr bool hasStills =
#if defined(Q_OS_ANDROID) || defined(Q_OS_IOS)
    true;
#else
    false;
#endif

void chooseFormat(QCamera& camera, Looking looking) {
    const auto formats = camera.cameraDevice().videoFormats();
    std::vector<FormatOffer> offers;
    for (const auto& format : formats) {
        offers.push_back({format.resolution(), format.maxFrameRate(),
                          format.pixelFormat() == QVideoFrameFormat::Format_Jpeg});
    }
    if (const auto best = suitableFormat(offers, looking)) {
        camera.setCameraFormat(formats[*best]);
    }
}

}  // namespace

CameraScanner::CameraScanner(Decoder decoder, QObject* parent)
    : FrameScanner(std::move(decoder), parent) {
    session_.setVideoSink(&sink());
    patience_.setSingleShot(true);
    patience_.setInterval(longestWait);
    connect(&patience_, &QTimer::timeout, this, [this] {
        if (state() == State::Starting) giveUp(State::Broken, run());
    });
    connect(&devices_, &QMediaDevices::videoInputsChanged, this, &CameraScanner::devicesChanged);
}

void CameraScanner::open() {
    askForCamera(this, [this, current = run()](bool allowed) {
        if (current != run()) return;
        if (allowed) {
            openCamera();
        } else {
            giveUp(State::NotAllowed, current);
        }
    });
}

void CameraScanner::openCamera() {
    // Without this test Qt's GStreamer backend delivers pictures of a camera that is not there.
    const auto device = cameraToUse();
    if (device.isNull()) {
        giveUp(camerasAreBarred(QDir("/dev")) ? State::NotAllowed : State::NoCamera, run());
        return;
    }
    camera_ = std::make_unique<QCamera>(device);
    listen();
    chooseFormat(*camera_, matWanted() && !hasStills ? Looking::forPhotos : Looking::forTags);
    session_.setCamera(camera_.get());
    camera_->start();
    suit();
    patience_.start();
}

void CameraScanner::listen() {
    connect(
        camera_.get(), &QCamera::errorOccurred, this,
        [this, current = run()](QCamera::Error error) {
            if (error == QCamera::NoError) return;
            const bool there = QMediaDevices::videoInputs().contains(camera_->cameraDevice());
            giveUp(there ? State::Broken : State::NoCamera, current);
        },
        Qt::QueuedConnection);
    // What a camera can do is known to some only once it runs.
    connect(camera_.get(), &QCamera::activeChanged, this, &CameraScanner::suit);
    connect(camera_.get(), &QCamera::supportedFeaturesChanged, this, &CameraScanner::suit);
}

void CameraScanner::suit() {
    if (camera_->isFocusModeSupported(QCamera::FocusModeAutoNear)) {
        camera_->setFocusMode(QCamera::FocusModeAutoNear);
    }
    setTorchAvailable(camera_->isTorchModeSupported(QCamera::TorchOn));
    if (torchAvailable()) applyTorch(torchOn());
}

void CameraScanner::close() {
    patience_.stop();
    session_.setCamera(nullptr);
    if (camera_ == nullptr) return;
    camera_->disconnect(this);
    camera_->stop();
    // close() may have been called while the camera was telling something.
    camera_.release()->deleteLater();
}

void CameraScanner::applyTorch(bool on) {
    if (camera_ != nullptr) camera_->setTorchMode(on ? QCamera::TorchOn : QCamera::TorchOff);
}

void CameraScanner::devicesChanged() {
    if (state() == State::NoCamera) {
        if (!cameraToUse().isNull()) start();
    } else if (camera_ != nullptr &&
               !QMediaDevices::videoInputs().contains(camera_->cameraDevice())) {
        giveUp(State::NoCamera, run());
    }
}

}  // namespace burrow
