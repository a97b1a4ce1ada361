#include "camera/frame_worker.h"

#include <utility>

namespace burrow {

FrameWorker::FrameWorker(Job job) : job_(std::move(job)), thread_([this] { workLoop(); }) {}

FrameWorker::~FrameWorker() {
    {
        const std::lock_guard lock(mutex_);
        ending_ = true;
    }
    called_.notify_one();
    thread_.join();
}

bool FrameWorker::offer(const QVideoFrame& frame, int run) {
    {
        const std::lock_guard lock(mutex_);
        if (std::exchange(busy_, true)) return false;
        work_ = Work{frame, run};
    }
    called_.notify_one();
    return true;
}

void FrameWorker::workLoop() {
    std::unique_lock lock(mutex_);
    while (true) {
        called_.wait(lock, [this] { return ending_ || work_; });
        if (ending_) return;
        auto work = *std::exchange(work_, std::nullopt);
        lock.unlock();
        const auto report = job_(work.frame, work.run);
        work.frame = {};  // the source may have few of them
        lock.lock();
        busy_ = false;
        lock.unlock();
        if (report) report();
        lock.lock();
    }
}

}  // namespace burrow
