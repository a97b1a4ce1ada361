// A picture in memory as measuring and flattening want it: RGB, a byte each, sRGB.
#pragma once

#include <cstdint>
#include <memory>

#include "base/file_writer.h"
#include "pictures/inspect.h"

namespace burrow::pictures {

/// Owns its pixels; moves, and is not copied by accident. A few bytes after the last pixel may be read,
/// so that a pixel can be fetched as four bytes.
class Raster {
public:
    Raster() = default;
    /// What the pixels hold is not said before they are written.
    Raster(int width, int height)
        : width_(width),
          height_(height),
          pixels_(std::make_unique_for_overwrite<std::uint8_t[]>(sizeOf(width, height) + slack)) {
        for (std::size_t i = 0; i < slack; ++i) pixels_[sizeOf(width, height) + i] = 0;
    }

    [[nodiscard]] int width() const { return width_; }
    [[nodiscard]] int height() const { return height_; }
    [[nodiscard]] bool isEmpty() const { return width_ == 0 || height_ == 0; }
    [[nodiscard]] std::size_t stride() const { return static_cast<std::size_t>(width_) * 3; }
    [[nodiscard]] std::uint8_t* row(int y) {
        return pixels_.get() + static_cast<std::size_t>(y) * stride();
    }
    [[nodiscard]] const std::uint8_t* row(int y) const {
        return pixels_.get() + static_cast<std::size_t>(y) * stride();
    }

private:
    static constexpr std::size_t slack = 8;
    static std::size_t sizeOf(int width, int height) {
        return static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 3;
    }

    int width_ = 0;
    int height_ = 0;
    std::unique_ptr<std::uint8_t[]> pixels_;
};

/// The pixels as they are stored, whatever EXIF says of the way up; transparent ones on white. inspect()
/// is asked first, so nothing larger than the limits is decoded. Fails with `badInput` for what it
/// refuses, for a picture that is damaged inside, and for a JPEG in several scans (a progressive one)
/// whose parts would need more memory than the limits allow.
Result<Raster> decode(std::span<const std::uint8_t> bytes, const Limits& limits = {});

/// Without any metadata. Fails with `badInput` where the picture is empty or too large for the format.
Result<Bytes> encodeJpeg(const Raster& picture, int quality);
Result<Bytes> encodePng(const Raster& picture);
/// The same piece by piece as it is made, so that it is never held as a whole. Fails as the sink does, too.
Done writePng(const Raster& picture, ByteSink& sink);

}  // namespace burrow::pictures
