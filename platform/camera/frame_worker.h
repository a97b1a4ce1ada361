// Looks at frames beside the interface.
#pragma once

#include <QVideoFrame>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>

namespace burrow {

/// One thread that looks at one frame at a time. A frame that is offered meanwhile is dropped, never
/// kept for later: what the keeper sees now is what counts. Joins its thread when it is destroyed,
/// which takes no longer than the frame in hand.
class FrameWorker {
public:
    /// What to tell of a frame.
    using Report = std::function<void()>;
    /// Called in the worker's thread, once for each frame that was accepted. Its report is called
    /// there too, and by then the next frame is welcome.
    using Job = std::function<Report(const QVideoFrame& frame, int run)>;

    explicit FrameWorker(Job job);
    ~FrameWorker();
    FrameWorker(const FrameWorker&) = delete;
    FrameWorker& operator=(const FrameWorker&) = delete;

    /// Returns at once, false when the frame was dropped.
    [[nodiscard]] bool offer(const QVideoFrame& frame, int run);

private:
    struct Work {
        QVideoFrame frame;
        int run;
    };

    void workLoop();

    const Job job_;
    std::mutex mutex_;
    std::condition_variable called_;
    std::optional<Work> work_;
    bool busy_ = false;
    bool ending_ = false;
    std::thread thread_;
};

}  // namespace burrow
