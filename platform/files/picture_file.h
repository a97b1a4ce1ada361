// Decodes pictures that may come from anywhere.
#pragma once

#include <QImage>
#include <optional>

#include "base/files.h"
#include "pictures/inspect.h"

namespace burrow {

/// Inspects first, then decodes; upright where `upright` is set, else as stored. Fails with `badInput`
/// for what cannot be decoded. With `side` it is decoded at once to at most so many pixels a side, which
/// takes a fraction of the time and memory.
Result<QImage> decodePicture(std::span<const std::uint8_t> bytes, bool upright,
                             std::optional<int> side = std::nullopt);

}  // namespace burrow
