// Looks at the bytes of a picture before anything decodes them: what it is, how large, whether it is
// whole, which way up. The files come from other people's phones and are not to be trusted.
#pragma once

#include <cstdint>
#include <optional>
#include <span>

#include "base/result.h"

namespace burrow::pictures {

enum class Format { jpeg, png };

struct PictureInfo {
    Format format = Format::jpeg;
    int width = 0;  ///< as stored, before any turn
    int height = 0;
    /// EXIF orientation (CIPA DC-008, tag 0x0112): 1 is upright, 2 to 8 turned or mirrored.
    int orientation = 1;
    bool hasLocation = false;  ///< an EXIF GPS directory is in the file
    /// EXIF FocalLengthIn35mmFilm (CIPA DC-008, tag 0xA405), mm; nothing where it is not told.
    std::optional<int> focal35;

    [[nodiscard]] std::int64_t pixels() const { return std::int64_t{width} * height; }
};

/// What is accepted. A phone's picture has 8 to 50 megapixels; decoding needs three bytes for each.
struct Limits {
    std::uint64_t bytes = 64'000'000;
    std::int64_t pixels = 64'000'000;
    /// Bytes that may be held while it is decoded, the pixels among them. JPEGs in several scans need two
    /// to four times as much as others, since their parts come together at the end.
    std::int64_t memory = 225'000'000;
};

/// Fails with `badInput` for what is no JPEG or PNG, ends early, or is larger than the limits allow.
/// Reads marker segments (ISO/IEC 10918-1, annex B) and chunks (ISO/IEC 15948) only.
Result<PictureInfo> inspect(std::span<const std::uint8_t> bytes, const Limits& limits = {});

}  // namespace burrow::pictures
