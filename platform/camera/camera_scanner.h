// Looks for tags with the camera of the device.
#pragma once

#include <QCamera>
#include <QMediaCaptureSession>
#include <QMediaDevices>
#include <QTimer>
#include <memory>

#include "camera/frame_scanner.h"

namespace burrow {

/// Uses the camera at the back, or the system's usual one. Focus follows by itself and prefers what is
/// near, where the camera can; exposure is the camera's own. Qt knows no levels of a torch: it is lit
/// as the camera does it.
///
/// NoCamera while there is none and after it was unplugged, and starts by itself when one comes.
/// NotAllowed when the keeper or the system says no. Broken when the camera reports an error, or gives
/// no picture for eight seconds.
class CameraScanner final : public FrameScanner {
    Q_OBJECT

public:
    explicit CameraScanner(Decoder decoder = usualDecoder(), QObject* parent = nullptr);

    /// For whoever takes photos with the same camera. Lives as long as the scanner.
    [[nodiscard]] QMediaCaptureSession& session() { return session_; }

private:
    void open() override;
    void close() override;
    void applyTorch(bool on) override;
    void openCamera();
    void listen();
    void suit();
    void devicesChanged();

    QMediaDevices devices_;
    QTimer patience_;
    QMediaCaptureSession session_;
    std::unique_ptr<QCamera> camera_;
};

}  // namespace burrow
