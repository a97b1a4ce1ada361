// Keeps the frame that the scanner showed last.
#pragma once

#include <QImage>
#include <QThreadPool>
#include <QVideoFrame>
#include <functional>

#include "ports/photographer.h"
#include "ports/scanner.h"

namespace burrow {

/// A still as a JPEG: the camera's own bytes where it packed one, which may say how it is turned, else
/// upright. Empty where it can't be read. Safe from any thread.
[[nodiscard]] QByteArray packedStill(const QVideoFrame& still);

/// Works with every scanner. The picture is as large as the frames are. Packing it takes a thread of
/// its own, which is joined when the photographer is destroyed.
class FramePhotographer : public Photographer {
    Q_OBJECT

public:
    /// Does not own the scanner, which must outlive it.
    explicit FramePhotographer(const Scanner& scanner, QObject* parent = nullptr);

    void take() override;

protected:
    void takeFrame();
    /// Answers with the picture, or refuses where it is null.
    void keep(const QImage& picture);
    void keep(const QVideoFrame& still);

private:
    void keep(std::function<QByteArray()> pack);
    void answer(const QByteArray& jpeg);

    const Scanner& scanner_;
    QThreadPool pool_;  ///< last, so that it ends first
};

}  // namespace burrow
