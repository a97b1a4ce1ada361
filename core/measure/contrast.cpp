#include "measure/contrast.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace burrow::measure {
namespace {

using Curve = std::array<std::uint8_t, 256>;

/// A place mirrored at the rim without repeating it: 3 2 1 | 0 1 2 3 | 2 1 0.
int mirrored(int at, int count) {
    if (count == 1) return 0;
    const int period = 2 * (count - 1);
    const int folded = at % period;
    return folded < count ? folded : period - folded;
}

/// Cuts off what occurs too often and spreads it: evenly, and what is left over at even distances.
void clip(std::array<int, 256>& histogram, int most) {
    int cut = 0;
    for (auto& count : histogram) {
        cut += std::max(0, count - most);
        count = std::min(count, most);
    }
    for (auto& count : histogram) count += cut / 256;
    const int left = cut % 256;
    if (left == 0) return;
    const int step = std::max(1, 256 / left);
    int given = 0;
    for (int i = 0; i < 256 && given < left; i += step, ++given) {
        ++histogram[static_cast<std::size_t>(i)];
    }
}

class Tiles {
public:
    Tiles(const tags::LumaView& picture, const ContrastOptions& options)
        : picture_(picture),
          options_(options),
          width_((picture.width + options.columns - 1) / options.columns),
          height_((picture.height + options.rows - 1) / options.rows) {
        // As OpenCV has it, both sides are filled up where either does not divide.
        if (picture.width % options.columns != 0 || picture.height % options.rows != 0) {
            width_ = picture.width / options.columns + 1;
            height_ = picture.height / options.rows + 1;
        }
        for (int row = 0; row < options.rows; ++row) {
            for (int column = 0; column < options.columns; ++column) {
                curves_.push_back(curveOf(column, row));
            }
        }
    }

    [[nodiscard]] std::uint8_t at(int x, int y) const {
        const float across = static_cast<float>(x) * (1.0F / static_cast<float>(width_)) - 0.5F;
        const float along = static_cast<float>(y) * (1.0F / static_cast<float>(height_)) - 0.5F;
        const int left = static_cast<int>(std::floor(across));
        const int above = static_cast<int>(std::floor(along));
        const float right = across - static_cast<float>(left);
        const float down = along - static_cast<float>(above);
        const auto value = picture_.pixels[static_cast<std::ptrdiff_t>(y) * picture_.stride + x];
        const auto from = [&](int column, int row) {
            column = std::clamp(column, 0, options_.columns - 1);
            row = std::clamp(row, 0, options_.rows - 1);
            return static_cast<float>(
                curves_[static_cast<std::size_t>(row * options_.columns + column)][value]);
        };
        const float top = from(left, above) * (1 - right) + from(left + 1, above) * right;
        const float bottom =
            from(left, above + 1) * (1 - right) + from(left + 1, above + 1) * right;
        return static_cast<std::uint8_t>(
            std::clamp(std::lrint(top * (1 - down) + bottom * down), 0L, 255L));
    }

private:
    [[nodiscard]] Curve curveOf(int column, int row) const {
        std::array<int, 256> histogram{};
        for (int y = row * height_; y < (row + 1) * height_; ++y) {
            const auto* line =
                picture_.pixels +
                static_cast<std::ptrdiff_t>(mirrored(y, picture_.height)) * picture_.stride;
            for (int x = column * width_; x < (column + 1) * width_; ++x) {
                ++histogram[line[mirrored(x, picture_.width)]];
            }
        }
        const int area = width_ * height_;
        if (options_.clip > 0) {
            clip(histogram, std::max(1, static_cast<int>(options_.clip * area / 256)));
        }
        Curve curve{};
        const float scale = 255.0F / static_cast<float>(area);
        int sum = 0;
        for (std::size_t i = 0; i < curve.size(); ++i) {
            sum += histogram[i];
            curve[i] = static_cast<std::uint8_t>(
                std::clamp(std::lrint(static_cast<float>(sum) * scale), 0L, 255L));
        }
        return curve;
    }

    const tags::LumaView& picture_;
    const ContrastOptions& options_;
    int width_;
    int height_;
    std::vector<Curve> curves_;
};

}  // namespace

std::vector<std::uint8_t> equalised(const tags::LumaView& picture, const ContrastOptions& options) {
    std::vector<std::uint8_t> result;
    if (picture.pixels == nullptr || picture.width < 1 || picture.height < 1 ||
        options.columns < 1 || options.rows < 1) {
        return result;
    }
    const Tiles tiles(picture, options);
    result.reserve(static_cast<std::size_t>(picture.width) *
                   static_cast<std::size_t>(picture.height));
    for (int y = 0; y < picture.height; ++y) {
        for (int x = 0; x < picture.width; ++x) result.push_back(tiles.at(x, y));
    }
    return result;
}

pictures::Raster withLocalContrast(const pictures::Raster& picture,
                                   const ContrastOptions& options) {
    std::vector<std::uint8_t> grey;
    grey.reserve(picture.stride() / 3 * static_cast<std::size_t>(picture.height()));
    for (int y = 0; y < picture.height(); ++y) {
        const auto* pixel = picture.row(y);
        for (int x = 0; x < picture.width(); ++x, pixel += 3) {
            grey.push_back(static_cast<std::uint8_t>(
                (299 * pixel[0] + 587 * pixel[1] + 114 * pixel[2] + 500) / 1000));
        }
    }
    const auto better =
        equalised({grey.data(), picture.width(), picture.height(), picture.width()}, options);
    pictures::Raster result(picture.width(), picture.height());
    std::size_t at = 0;
    for (int y = 0; y < picture.height() && !better.empty(); ++y) {
        const auto* pixel = picture.row(y);
        auto* out = result.row(y);
        for (int i = 0; i < 3 * picture.width(); ++i) {
            const auto place = at + static_cast<std::size_t>(i) / 3;
            out[i] = static_cast<std::uint8_t>(
                std::clamp(pixel[i] + better[place] - grey[place], 0, 255));
        }
        at += static_cast<std::size_t>(picture.width());
    }
    return result;
}

}  // namespace burrow::measure
