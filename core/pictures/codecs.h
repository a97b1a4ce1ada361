// The decoders behind decode(), one for each format. inspect() has accepted the bytes before.
#pragma once

#include "pictures/raster.h"

namespace burrow::pictures {

Result<Raster> decodeJpeg(std::span<const std::uint8_t> bytes, const PictureInfo& info,
                          const Limits& limits);
Result<Raster> decodePng(std::span<const std::uint8_t> bytes, const PictureInfo& info);

}  // namespace burrow::pictures
