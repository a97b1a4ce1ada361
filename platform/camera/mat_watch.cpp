#include "camera/mat_watch.h"

#include <utility>

#include "camera/luminance.h"

namespace burrow {

MatWatch::MatWatch(MatLook look, Report report)
    : worker_([look = std::move(look), report = std::move(report)](const QVideoFrame& frame,
                                                                   int run) -> FrameWorker::Report {
          const Luminance luminance(frame);
          const auto view = luminance.view();
          if (view.pixels == nullptr) return {};
          return [report, run, sight = look(view)] { report(sight, run); };
      }) {}

}  // namespace burrow
