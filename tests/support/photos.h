// Small JPEG files made byte by byte, and a developer that needs no decoder.
#pragma once

#include <string_view>

#include "pictures/store.h"

namespace burrow::test {

/// A JPEG in the eyes of pictures::inspect (ISO/IEC 10918-1, annex B): frame, scan, end. What it shows is
/// `text`, as entropy-coded data that nobody decodes.
inline Bytes jpegSaying(std::string_view text, int width = 640, int height = 480) {
    const auto high = [](int value) { return static_cast<std::uint8_t>(value >> 8); };
    const auto low = [](int value) { return static_cast<std::uint8_t>(value & 0xFF); };
    Bytes bytes{0xFF,        0xD8,       0xFF, 0xC0, 0,    11, 8,    high(height), low(height),
                high(width), low(width), 1,    1,    0x11, 0,  0xFF, 0xDA,         0,
                8,           1,          1,    0,    0,    63, 0};
    for (const char c : text) bytes.push_back(static_cast<std::uint8_t>(c));
    bytes.push_back(0xFF);
    bytes.push_back(0xD9);
    return bytes;
}

/// Its small copies are JPEGs that say how large they are and what of.
class PlainDeveloper final : public pictures::Developer {
public:
    Result<Developed> develop(std::span<const std::uint8_t> bytes,
                              const pictures::PictureInfo& info) override {
        BURROW_TRY(auto small, reduce(bytes, info, pictures::thumbnailSide));
        return Developed{Bytes(bytes.begin(), bytes.end()), std::move(small), info.width,
                         info.height};
    }
    Result<Bytes> reduce(std::span<const std::uint8_t> bytes, const pictures::PictureInfo& /*info*/,
                         int side) override {
        ++reductions;
        return jpegSaying("small " + Sha256::of(bytes).hex().substr(0, 16), side, side / 2);
    }
    int reductions = 0;
};

}  // namespace burrow::test
