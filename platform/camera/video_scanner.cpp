#include "camera/video_scanner.h"

#include <utility>

namespace burrow {
namespace {

/// Pictures come many times a second; without one for so long, in milliseconds, nothing more will come.
constexpr int patience = 10'000;
constexpr int mostTimes = 3;

}  // namespace

VideoScanner::VideoScanner(const QUrl& film, Decoder decoder, QObject* parent)
    : FrameScanner(std::move(decoder), parent), film_(film) {
    player_.setVideoSink(&sink());
    stall_.setSingleShot(true);
    stall_.setInterval(patience);
    connect(&stall_, &QTimer::timeout, this, &VideoScanner::onStall);
    connect(
        &sink(), &QVideoSink::videoFrameChanged, this,
        [this] {
            if (stall_.isActive()) stall_.start();
        },
        Qt::QueuedConnection);
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
    begun_ = 0;
    play();
}

void VideoScanner::play() {
    ++begun_;
    player_.setSource(film_);
    player_.play();
    stall_.start();
}

void VideoScanner::onStall() {
    if (state() != State::Starting) return giveUp(State::Idle, run());
    if (begun_ >= mostTimes) return giveUp(State::Broken, run());
    player_.stop();
    player_.setSource({});
    play();
}

void VideoScanner::close() {
    stall_.stop();
    player_.disconnect(this);
    player_.stop();
    player_.setSource({});
}

}  // namespace burrow
