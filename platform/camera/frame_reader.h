// Decodes frames beside the interface.
#pragma once

#include <QByteArray>
#include <QList>
#include <QPointF>
#include <QVideoFrame>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "tags/symbol.h"

namespace burrow {

/// Called in the thread of the reader only.
using Decoder = std::function<std::vector<tags::FoundSymbol>(const tags::LumaView&)>;

/// What reads tags in frames of a running camera.
[[nodiscard]] Decoder usualDecoder();

/// The symbol nearest the middle of a frame.
struct Reading {
    QByteArray payload;
    QList<QPointF> corners;  ///< as Scanner::sighted gives them
};

/// Nothing where the frame shows no symbol or cannot be read. Safe from any thread.
[[nodiscard]] std::optional<Reading> read(const QVideoFrame& frame, const Decoder& decoder);

/// One thread that decodes one frame at a time. A frame that is offered meanwhile is dropped, never
/// kept for later: what the keeper sees now is what counts. Joins its thread when it is destroyed,
/// which takes no longer than the frame in hand.
class FrameReader {
public:
    /// Called in the reader's thread, once for each frame that was accepted.
    using Report = std::function<void(std::optional<Reading>, int run)>;

    FrameReader(Decoder decoder, Report report);
    ~FrameReader();
    FrameReader(const FrameReader&) = delete;
    FrameReader& operator=(const FrameReader&) = delete;

    /// Returns at once, false when the frame was dropped. `run` comes back with the report, and by then
    /// the next frame is welcome.
    [[nodiscard]] bool offer(const QVideoFrame& frame, int run);

private:
    struct Work {
        QVideoFrame frame;
        int run;
    };

    void workLoop();

    const Decoder decoder_;
    const Report report_;
    std::mutex mutex_;
    std::condition_variable called_;
    std::optional<Work> work_;
    bool busy_ = false;
    bool ending_ = false;
    std::thread thread_;
};

}  // namespace burrow
