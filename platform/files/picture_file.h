// Decodes pictures that may come from anywhere.
#pragma once

#include <QImage>

#include "base/files.h"
#include "pictures/inspect.h"

namespace burrow {

/// Inspects first, then decodes; upright where `upright` is set, else as stored. Fails with `badInput`
/// for what cannot be decoded.
Result<QImage> decodePicture(std::span<const std::uint8_t> bytes, bool upright);

}  // namespace burrow
