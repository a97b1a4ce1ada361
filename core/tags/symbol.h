// The square on a tag: QR symbols as ISO/IEC 18004 describes them, written with error correction
// level M and read from any plain grey picture. Functions only; safe from any thread.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace burrow::tags {

/// Modules of space that a reader needs around a symbol.
inline constexpr int quietZone = 4;

/// The modules of a symbol without the quiet zone.
class Symbol {
public:
    explicit Symbol(int size)
        : size_(size), dark_(static_cast<std::size_t>(size) * static_cast<std::size_t>(size)) {}

    /// Modules along one side.
    [[nodiscard]] int size() const { return size_; }
    [[nodiscard]] int version() const { return (size_ - 17) / 4; }
    [[nodiscard]] bool isDark(int column, int row) const { return dark_[index(column, row)]; }
    void setDark(int column, int row, bool dark) { dark_[index(column, row)] = dark; }

    friend bool operator==(const Symbol&, const Symbol&) = default;

private:
    [[nodiscard]] std::size_t index(int column, int row) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(size_) +
               static_cast<std::size_t>(column);
    }

    int size_;
    std::vector<bool> dark_;
};

/// The smallest symbol that holds the text (UTF-8), from version 2 on: the alignment pattern of
/// version 2 gives a reader better corners. Fails with `badInput` for a text that is empty, so
/// short that it would make a symbol of version 1, or too long for any.
[[nodiscard]] Result<Symbol> encode(std::string_view text);

/// Somebody else's grey picture, one byte per pixel, 0 is black. Must outlive the call it is given
/// to.
struct LumaView {
    const std::uint8_t* pixels = nullptr;  ///< of the top left corner
    int width = 0;
    int height = 0;
    int stride = 0;  ///< bytes from one row to the next
};

/// In pixels; the middle of the top left pixel is (0.5, 0.5).
struct ImagePoint {
    double x = 0;
    double y = 0;

    friend bool operator==(const ImagePoint&, const ImagePoint&) = default;
};

struct FoundSymbol {
    std::string bytes;
    /// Outer corners of the symbol as it was written: top left, top right, bottom right, bottom
    /// left. Whole pixels, good to about one; refine them where geometry matters.
    std::array<ImagePoint, 4> corners;

    [[nodiscard]] ImagePoint centre() const;
};

/// `fast` for frames of a running camera, `thorough` for a still picture.
enum class Effort { fast, thorough };

/// Every QR symbol that can be read. Never fails: a picture that makes no sense shows no symbols.
[[nodiscard]] std::vector<FoundSymbol> decode(const LumaView& picture, Effort effort);

/// The symbol whose centre is nearest to where the keeper points, or nullptr where there is none.
[[nodiscard]] const FoundSymbol* nearestCentre(std::span<const FoundSymbol> found,
                                               ImagePoint centre);

}  // namespace burrow::tags
