#include "camera/frame_reader.h"

#include <utility>

#include "camera/luminance.h"

namespace burrow {

// Measured: of labels 180 to 300 pixels wide in frames of 1080p, turned at random, `fast` reads half
// and `thorough` all, for 7 ms instead of 5.
Decoder usualDecoder() {
    return
        [](const tags::LumaView& picture) { return tags::decode(picture, tags::Effort::thorough); };
}

std::optional<Reading> read(const QVideoFrame& frame, const Decoder& decoder) {
    const Luminance luminance(frame);
    const auto view = luminance.view();
    if (view.pixels == nullptr) return std::nullopt;
    const auto found = decoder(view);
    const auto* nearest = tags::nearestCentre(found, {view.width / 2.0, view.height / 2.0});
    if (nearest == nullptr) return std::nullopt;
    Reading reading{QByteArray::fromStdString(nearest->bytes), {}};
    for (const auto& corner : nearest->corners) {
        reading.corners.append(
            luminance.toShown().map(QPointF(corner.x / view.width, corner.y / view.height)));
    }
    return reading;
}

FrameReader::FrameReader(Decoder decoder, Report report)
    : decoder_(std::move(decoder)), report_(std::move(report)), thread_([this] { workLoop(); }) {}

FrameReader::~FrameReader() {
    {
        const std::lock_guard lock(mutex_);
        ending_ = true;
    }
    called_.notify_one();
    thread_.join();
}

bool FrameReader::offer(const QVideoFrame& frame, int run) {
    {
        const std::lock_guard lock(mutex_);
        if (std::exchange(busy_, true)) return false;
        work_ = Work{frame, run};
    }
    called_.notify_one();
    return true;
}

void FrameReader::workLoop() {
    std::unique_lock lock(mutex_);
    while (true) {
        called_.wait(lock, [this] { return ending_ || work_; });
        if (ending_) return;
        auto work = *std::exchange(work_, std::nullopt);
        lock.unlock();
        auto reading = read(work.frame, decoder_);
        work.frame = {};  // the source may have few of them
        lock.lock();
        busy_ = false;
        lock.unlock();
        report_(std::move(reading), work.run);
        lock.lock();
    }
}

}  // namespace burrow
