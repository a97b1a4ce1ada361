#include "camera/frame_scanner.h"

#include <utility>

#include "camera/frames.h"
#include "ports/frame_view.h"

namespace burrow {

FrameScanner::FrameScanner(Decoder decoder, QObject* parent)
    : Scanner(parent), reader_(std::move(decoder), [this](std::optional<Reading> reading, int run) {
          QMetaObject::invokeMethod(
              this, [this, reading = std::move(reading), run] { take(reading, run); },
              Qt::QueuedConnection);
      }) {
    connect(&sink_, &QVideoSink::videoFrameChanged, this, &FrameScanner::keepNewest,
            Qt::DirectConnection);
}

FrameScanner::~FrameScanner() = default;

QImage FrameScanner::latestPicture() const { return shownImage(latest_); }

void FrameScanner::start() {
    if (isOpen()) return;
    ++run_;
    setState(State::Starting);
    open();
}

void FrameScanner::stop() {
    if (isOpen()) {
        end(State::Idle);
    } else {
        setState(State::Idle);
    }
}

void FrameScanner::giveUp(State why, int run) {
    if (run == run_ && isOpen()) end(why);
}

void FrameScanner::end(State state) {
    ++run_;
    close();
    {
        const std::lock_guard lock(mutex_);
        newest_ = {};
    }
    latest_ = {};
    show({});
    const bool held = std::exchange(steadiness_, {}).holds();
    setState(state);
    if (held) emit lost();
}

void FrameScanner::keepNewest(const QVideoFrame& frame) {
    const std::lock_guard lock(mutex_);
    newest_ = frame;
    if (std::exchange(called_, true)) return;
    QMetaObject::invokeMethod(this, &FrameScanner::handOn, Qt::QueuedConnection);
}

void FrameScanner::handOn() {
    QVideoFrame frame;
    {
        const std::lock_guard lock(mutex_);
        frame = std::exchange(newest_, {});
        called_ = false;
    }
    if (!isOpen() || !frame.isValid()) return;
    const int run = run_;
    setState(State::Running);
    if (run != run_) return;
    latest_ = frame;
    if (reader_.offer(frame, run)) ++framesRead_;
    if (matWanted()) {
        if (!watch_) {
            watch_ = std::make_unique<MatWatch>(&matSightOf, [this](const MatSight& sight,
                                                                    int seenIn) {
                QMetaObject::invokeMethod(
                    this, [this, sight, seenIn] { takeMat(sight, seenIn); }, Qt::QueuedConnection);
            });
        }
        if (watch_->offer(frame, run)) ++matsLookedFor_;
    }
    show(frame);
}

/// Hands a frame to the viewfinder; one that is not valid clears it.
void FrameScanner::show(const QVideoFrame& frame) {
    if (auto* sink = qobject_cast<QVideoSink*>(viewfinder())) {
        sink->setVideoFrame(frame);
    } else if (auto* view = qobject_cast<FrameView*>(viewfinder())) {
        view->show({shownSize(frame), [frame] { return shownImage(frame); }});
    }
}

void FrameScanner::takeMat(const MatSight& sight, int run) {
    if (run == run_ && matWanted()) emit matSeen(sight);
}

void FrameScanner::take(const std::optional<Reading>& reading, int run) {
    if (run != run_) return;
    const auto news = steadiness_.next(reading ? std::optional(reading->payload) : std::nullopt);
    if (news.lost) emit lost();
    if (!reading) return;
    emit glimpsed(reading->corners);
    if (news.sighted && run == run_) emit sighted(reading->payload, reading->corners);
}

}  // namespace burrow
