// Looks for tags in a film: the same path as the camera's, where there is no camera. For tests, and to
// show the app at a desk.
#pragma once

#include <QMediaPlayer>
#include <QTimer>
#include <QUrl>

#include "camera/frame_scanner.h"

namespace burrow {

/// Plays the film once at its own speed and is Idle when it is over. Broken where it cannot be played.
/// Needs Qt's ffmpeg backend; that of Qt 6.4 now and then never begins, and is then asked again.
class VideoScanner final : public FrameScanner {
    Q_OBJECT

public:
    explicit VideoScanner(const QUrl& film, Decoder decoder = usualDecoder(),
                          QObject* parent = nullptr);

private:
    void open() override;
    void close() override;
    void applyTorch(bool) override {}
    void play();
    void onStall();

    const QUrl film_;
    QMediaPlayer player_;
    QTimer stall_;  ///< runs out where no picture comes
    int begun_ = 0;
};

}  // namespace burrow
