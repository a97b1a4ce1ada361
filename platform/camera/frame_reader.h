// Decodes frames beside the interface.
#pragma once

#include <QByteArray>
#include <QList>
#include <QPointF>
#include <QVideoFrame>
#include <functional>
#include <optional>
#include <vector>

#include "camera/frame_worker.h"
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

/// Decodes one frame at a time in a thread of its own (FrameWorker).
class FrameReader {
public:
    /// Called in the reader's thread, once for each frame that was accepted.
    using Report = std::function<void(std::optional<Reading>, int run)>;

    FrameReader(Decoder decoder, Report report);

    /// Returns at once, false when the frame was dropped. `run` comes back with the report, and by then
    /// the next frame is welcome.
    [[nodiscard]] bool offer(const QVideoFrame& frame, int run) {
        return worker_.offer(frame, run);
    }

private:
    FrameWorker worker_;
};

}  // namespace burrow
