// Frames as they are meant to be seen. A camera that is built in sideways, or faces its user, stores
// pictures turned or mirrored and says so; these are the only functions that need to know.
// Safe from any thread.
#pragma once

#include <QImage>
#include <QSizeF>
#include <QTransform>
#include <QVideoFrame>

namespace burrow {

/// Leads from a place in the stored picture to the same place in the picture as it is shown; both run
/// from (0, 0) at the top left to (1, 1).
[[nodiscard]] QTransform shownFromStored(const QVideoFrame& frame);

/// The frame as it is shown; null where it cannot be read.
[[nodiscard]] QImage shownImage(const QVideoFrame& frame);

/// How large the frame is as it is shown; not valid where the frame is not.
[[nodiscard]] QSizeF shownSize(const QVideoFrame& frame);

}  // namespace burrow
