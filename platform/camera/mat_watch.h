// Looks for a mat in the frames of a running camera.
#pragma once

#include "camera/frame_worker.h"
#include "ports/mat_sight.h"

namespace burrow {

/// Called in the watch's thread only.
using MatLook = std::function<MatSight(const tags::LumaView&)>;

/// Looks at one frame at a time in a thread of its own (FrameWorker).
class MatWatch {
public:
    /// Called in the watch's thread, once for each frame that was accepted and could be read.
    using Report = std::function<void(const MatSight&, int run)>;

    MatWatch(MatLook look, Report report);

    /// Returns at once, false when the frame was dropped. `run` comes back with the report.
    [[nodiscard]] bool offer(const QVideoFrame& frame, int run) {
        return worker_.offer(frame, run);
    }

private:
    FrameWorker worker_;
};

}  // namespace burrow
