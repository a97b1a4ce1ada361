// Takes photos with the camera that the scanner looks through.
#pragma once

#include <QImageCapture>
#include <QTimer>

#include "camera/camera_scanner.h"
#include "camera/frame_photographer.h"

namespace burrow {

/// Asks the camera for a still picture. Not every camera and backend answers, so where none comes
/// within four seconds, or a smaller one than the frames are, the newest frame is kept instead.
class CameraPhotographer final : public FramePhotographer {
    Q_OBJECT

public:
    /// Does not own the scanner, which must outlive it.
    explicit CameraPhotographer(CameraScanner& scanner, QObject* parent = nullptr);
    ~CameraPhotographer() override;

    void take() override;

private:
    void received(int id, const QImage& picture);
    void instead();

    CameraScanner& camera_;
    QImageCapture capture_;
    QTimer patience_;
    int awaited_ = -1;  ///< the number of the picture that was asked for, -1 when none was
};

}  // namespace burrow
