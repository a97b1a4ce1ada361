// Takes photos with the camera that the scanner looks through.
#pragma once

#include <QImageCapture>
#include <QTimer>

#include "camera/camera_scanner.h"
#include "camera/frame_photographer.h"

namespace burrow {

/// Asks the camera for a still picture, and hands it on as the camera packed it. Before it most backends
/// show a preview, which on phones is only a frame. Where no still comes within four seconds, or a smaller
/// one than the frames are, the preview is kept instead, or the newest frame.
class CameraPhotographer final : public FramePhotographer {
    Q_OBJECT

public:
    /// Does not own the scanner, which must outlive it.
    explicit CameraPhotographer(CameraScanner& scanner, QObject* parent = nullptr);
    ~CameraPhotographer() override;

    void take() override;

private:
    void received(int id, const QVideoFrame& still);
    void instead();

    CameraScanner& camera_;
    QImageCapture capture_;
    QTimer patience_;
    QImage preview_;    ///< of the picture that is awaited
    int awaited_ = -1;  ///< the number of the picture that was asked for, -1 when none was
};

}  // namespace burrow
