#include "camera/video_scanner.h"

#include <utility>

namespace burrow {

VideoScanner::VideoScanner(const QUrl& film, Decoder decoder, QObject* parent)
    : FrameScanner(std::move(decoder), parent), film_(film) {
    player_.setVideoSink(&sink());
}

void VideoScanner::open() {
    // Queued, because a player must not be stopped from within its own signals.
    connect(
        &player_, &QMediaPlayer::errorOccurred, this,
        [this, current = run()] { giveUp(State::Broken, current); }, Qt::QueuedConnection);
    connect(
        &player_, &QMediaPlayer::mediaStatusChanged, this,
        [this, current = run()](QMediaPlayer::MediaStatus status) {
            if (status == QMediaPlayer::EndOfMedia) giveUp(State::Idle, current);
        },
        Qt::QueuedConnection);
    player_.setSource(film_);
    player_.play();
}

void VideoScanner::close() {
    player_.disconnect(this);
    player_.stop();
    player_.setSource({});
}

}  // namespace burrow
