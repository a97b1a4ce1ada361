// Grey pictures with symbols in them, made module by module.
#pragma once

#include <cstdint>
#include <vector>

#include "tags/symbol.h"

namespace burrow::test {

class Picture {
public:
    Picture(int width, int height)
        : width_(width),
          height_(height),
          pixels_(static_cast<std::size_t>(width) * static_cast<std::size_t>(height), 255) {}

    /// One symbol with its quiet zone.
    Picture(const tags::Symbol& symbol, int pixelsPerModule)
        : Picture((symbol.size() + 2 * tags::quietZone) * pixelsPerModule,
                  (symbol.size() + 2 * tags::quietZone) * pixelsPerModule) {
        const int edge = tags::quietZone * pixelsPerModule;
        draw(symbol, edge, edge, pixelsPerModule);
    }

    void draw(const tags::Symbol& symbol, int left, int top, int pixelsPerModule) {
        const int side = symbol.size() * pixelsPerModule;
        for (int y = 0; y < side; ++y) {
            for (int x = 0; x < side; ++x) {
                if (symbol.isDark(x / pixelsPerModule, y / pixelsPerModule))
                    at(left + x, top + y) = 0;
            }
        }
    }

    /// A quarter turn clockwise.
    [[nodiscard]] Picture turnedRight() const {
        Picture result(height_, width_);
        for (int y = 0; y < height_; ++y) {
            for (int x = 0; x < width_; ++x) result.at(height_ - 1 - y, x) = pixels_[index(x, y)];
        }
        return result;
    }

    [[nodiscard]] tags::LumaView view() const { return {pixels_.data(), width_, height_, width_}; }

private:
    [[nodiscard]] std::size_t index(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
               static_cast<std::size_t>(x);
    }
    std::uint8_t& at(int x, int y) { return pixels_[index(x, y)]; }

    int width_;
    int height_;
    std::vector<std::uint8_t> pixels_;
};

/// Where a point of a width by height picture is after that many quarter turns clockwise.
inline tags::ImagePoint turned(tags::ImagePoint point, int turns, double width, double height) {
    for (; turns > 0; --turns) {
        point = {height - point.y, point.x};
        std::swap(width, height);
    }
    return point;
}

}  // namespace burrow::test
