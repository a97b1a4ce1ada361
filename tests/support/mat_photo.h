// Photos of a mat by a camera of which everything is known: a drawn sheet, a pinhole with one radial
// term, uneven light, a shadow, blur, noise and JPEG. No Qt.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include "measure/mat.h"
#include "measure/plane.h"
#include "pictures/raster.h"
#include "support/mat_curl.h"
#include "support/mat_sheet.h"

namespace burrow::test {

/// How a photo is taken.
struct Shot {
    double megapixels = 12;
    double focal = 26;  ///< mm, where the longer side of the picture is 36 mm
    bool isPortrait = true;
    double tilt = 0;     ///< degrees from looking straight down
    double azimuth = 0;  ///< degrees: towards which side it is tilted
    double roll = 0;     ///< degrees
    double fill = 0.92;  ///< of the picture, that what must be seen takes
    double aside = 0;    ///< by how much it is not in the middle, in parts of the picture
    double cut = 0;      ///< the same without stepping back for it, so that a part is outside
    double radial = 0;
    double blur = 0.5;        ///< standard deviation, pixels
    double noise = 2;         ///< standard deviation, of 255
    int quality = 90;         ///< of the JPEG; 0 for none
    double unevenness = 0.3;  ///< by how much light falls off across the picture
    bool isShaded = false;    ///< a shadow with a hard edge over a part of it
    double exposure = 1;
    std::array<double, 3> cast{1, 1, 1};  ///< colour of the light, linear
    Curl curl;                            ///< of the sheet
    std::uint32_t seed = 1;

    /// In pixels.
    [[nodiscard]] double focalLength() const { return focal / 36.0 * longSide(); }
    [[nodiscard]] int longSide() const {
        return static_cast<int>(std::lround(std::sqrt(megapixels * 1e6 * 4 / 3)));
    }
    [[nodiscard]] int width() const { return isPortrait ? longSide() * 3 / 4 : longSide(); }
    [[nodiscard]] int height() const { return isPortrait ? longSide() : longSide() * 3 / 4; }
};

/// The camera that takes the shot: everything within `seen` is in the picture.
inline measure::Projection cameraOf(const Shot& shot, const MatBox& seen) {
    const double degree = std::numbers::pi / 180;
    const double focal = shot.focalLength();
    const double a = shot.azimuth * degree, t = shot.tilt * degree, r = shot.roll * degree;
    // Turned about an axis in the sheet, then about the line of sight.
    const double ux = std::cos(a), uy = std::sin(a), c = std::cos(t), s = std::sin(t);
    const std::array<std::array<double, 3>, 2> axes{
        {{c + ux * ux * (1 - c), ux * uy * (1 - c), -uy * s},
         {ux * uy * (1 - c), c + uy * uy * (1 - c), ux * s}}};
    std::array<std::array<double, 3>, 2> turned{};
    for (std::size_t i = 0; i < 2; ++i) {
        turned[i] = {std::cos(r) * axes[i][0] - std::sin(r) * axes[i][1],
                     std::sin(r) * axes[i][0] + std::cos(r) * axes[i][1], axes[i][2]};
    }
    const auto centre = seen.centre();
    const double cx = 0.5 * shot.width(), cy = 0.5 * shot.height();
    const auto at = [&](double distance, double aside) {
        measure::Homography h{};
        for (std::size_t i = 0; i < 2; ++i) {
            h[i] = focal * turned[i][0] + cx * turned[i][2];
            h[3 + i] = focal * turned[i][1] + cy * turned[i][2];
            h[6 + i] = turned[i][2];
        }
        const double z = distance - turned[0][2] * centre.x.value - turned[1][2] * centre.y.value;
        const double x = aside * shot.width() / focal * distance - turned[0][0] * centre.x.value -
                         turned[1][0] * centre.y.value;
        const double y = aside * shot.height() / focal * distance - turned[0][1] * centre.x.value -
                         turned[1][1] * centre.y.value;
        h[2] = focal * x + cx * z;
        h[5] = focal * y + cy * z;
        h[8] = z;
        for (auto& value : h) value /= z;
        return measure::Projection{
            h, measure::Radial::about(shot.width(), shot.height(), shot.radial)};
    };
    const auto isWithin = [&](double distance) {
        const auto projection = at(distance, shot.aside);
        for (const double dx : {0.0, seen.width.value}) {
            for (const double dy : {0.0, seen.height.value}) {
                const auto p = measure::photoOf(
                    projection, {seen.x + Millimetres{dx}, seen.y + Millimetres{dy}});
                const auto& h = projection.toPicture;
                const double w = h[6] * (seen.x.value + dx) + h[7] * (seen.y.value + dy) + 1;
                if (!(w > 0) || std::abs(p.x - cx) > shot.fill * cx ||
                    std::abs(p.y - cy) > shot.fill * cy) {
                    return false;
                }
            }
        }
        return true;
    };
    double near = 20, far = 5000;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (near + far);
        (isWithin(middle) ? far : near) = middle;
    }
    return at(far, shot.aside + shot.cut);
}

/// What must be in the picture: the squares with their quiet zones.
inline MatBox seenOf(measure::MatPaper paper) {
    const auto& layout = measure::layoutOf(paper);
    const auto edge = layout.squares[0].x - Millimetres{4};
    return {edge, edge, layout.width - 2 * edge,
            layout.squares[2].y + layout.squareSide + Millimetres{4} - edge};
}

inline CurledSheet curledSheet(const Sheet& sheet, const Shot& shot,
                               const measure::Projection& camera) {
    return {shot.curl, sheet.width(), sheet.height(), camera, shot.focalLength()};
}

namespace detail {

inline void smear(std::vector<float>& plane, int width, int height, double deviation) {
    if (deviation <= 0) return;
    const int reach = static_cast<int>(std::ceil(3.5 * deviation));
    std::vector<float> weights;
    float sum = 0;
    for (int i = -reach; i <= reach; ++i) {
        weights.push_back(static_cast<float>(std::exp(-0.5 * i * i / (deviation * deviation))));
        sum += weights.back();
    }
    for (auto& weight : weights) weight /= sum;
    std::vector<float> line;
    const auto pass = [&](float* at, int count, std::ptrdiff_t step) {
        line.resize(static_cast<std::size_t>(count + 2 * reach));
        for (int i = -reach; i < count + reach; ++i) {
            line[static_cast<std::size_t>(i + reach)] = at[std::clamp(i, 0, count - 1) * step];
        }
        for (int i = 0; i < count; ++i) {
            float value = 0;
            for (std::size_t k = 0; k < weights.size(); ++k) {
                value += weights[k] * line[static_cast<std::size_t>(i) + k];
            }
            at[i * step] = value;
        }
    };
    for (int y = 0; y < height; ++y)
        pass(&plane[static_cast<std::size_t>(y) * static_cast<std::size_t>(width)], width, 1);
    // Down the columns row by row, which memory likes better.
    std::vector<float> out(plane.size());
    for (int y = 0; y < height; ++y) {
        float* to = &out[static_cast<std::size_t>(y) * static_cast<std::size_t>(width)];
        for (int k = -reach; k <= reach; ++k) {
            const float weight = weights[static_cast<std::size_t>(k + reach)];
            const float* from = &plane[static_cast<std::size_t>(std::clamp(y + k, 0, height - 1)) *
                                       static_cast<std::size_t>(width)];
            for (int x = 0; x < width; ++x) to[x] += weight * from[x];
        }
    }
    plane.swap(out);
}

inline std::uint8_t encoded(double linear) {
    const double l = std::clamp(linear, 0.0, 1.0);
    const double v = l <= 0.0031308 ? 12.92 * l : 1.055 * std::pow(l, 1 / 2.4) - 0.055;
    return static_cast<std::uint8_t>(std::lround(255 * v));
}

/// Light that reaches each pixel, before blur: the mean of four points of it. Where they lie on the
/// sheet is reckoned on a net whose meshes are so small that straight lines between do.
inline std::vector<float> exposed(const Sheet& sheet, const Shot& shot,
                                  const measure::Projection& camera) {
    const int width = shot.width(), height = shot.height();
    const auto back = measure::inverse(camera.toPicture).value();
    constexpr int mesh = 8;
    const auto curled = curledSheet(sheet, shot, camera);
    const auto onSheet = [&](int i, int k) {
        const ImagePoint at{static_cast<double>(i * mesh), static_cast<double>(k * mesh)};
        const auto plane =
            measure::mapped(back, measure::undistorted(camera.radial, at).value_or(at));
        if (shot.curl.lift == 0) return plane;
        const auto printed = curled.printedAt({{plane.x}, {plane.y}});
        return ImagePoint{printed.x.value, printed.y.value};
    };
    std::vector<float> plane(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
    std::vector<ImagePoint> upper, lower;
    for (int i = 0; i < width / mesh + 2; ++i) lower.push_back(onSheet(i, 0));
    for (int y = 0; y < height; ++y) {
        if (y % mesh == 0) {
            upper = lower;
            for (std::size_t i = 0; i < lower.size(); ++i) {
                lower[i] = onSheet(static_cast<int>(i), y / mesh + 1);
            }
        }
        float* out = &plane[static_cast<std::size_t>(y) * static_cast<std::size_t>(width)];
        for (int x = 0; x < width; ++x) {
            const auto i = static_cast<std::size_t>(x / mesh);
            const auto &a = upper[i], &b = upper[i + 1], &c = lower[i], &d = lower[i + 1];
            float sum = 0;
            for (const double dy : {0.25, 0.75}) {
                const double s = (y % mesh + dy) / mesh;
                const double leftX = a.x + s * (c.x - a.x), rightX = b.x + s * (d.x - b.x);
                const double leftY = a.y + s * (c.y - a.y), rightY = b.y + s * (d.y - b.y);
                for (const double dx : {0.25, 0.75}) {
                    const double r = (x % mesh + dx) / mesh;
                    sum += sheet.at(leftX + r * (rightX - leftX), leftY + r * (rightY - leftY));
                }
            }
            out[x] = sum / (4 * 255);
        }
    }
    return plane;
}

}  // namespace detail

/// The photo before it is made a file.
inline pictures::Raster developed(const Sheet& sheet, const Shot& shot,
                                  const measure::Projection& camera) {
    const int width = shot.width(), height = shot.height();
    auto plane = detail::exposed(sheet, shot, camera);
    std::mt19937 engine(shot.seed);
    std::uniform_real_distribution<double> any(0, 1);
    const double direction = 2 * std::numbers::pi * any(engine);
    const double shadeAt = 0.3 + 0.4 * any(engine), shadeTo = 2 * std::numbers::pi * any(engine);
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            const double u = static_cast<double>(x) / width - 0.5,
                         v = static_cast<double>(y) / height - 0.5;
            double light =
                shot.exposure *
                (1 + shot.unevenness * (u * std::cos(direction) + v * std::sin(direction)));
            if (shot.isShaded && u * std::cos(shadeTo) + v * std::sin(shadeTo) > shadeAt - 0.4)
                light *= 0.4;
            plane[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                  static_cast<std::size_t>(x)] *= static_cast<float>(light);
        }
    }
    detail::smear(plane, width, height, shot.blur);
    std::vector<float> noise(1U << 16U);
    std::normal_distribution<float> normal(0, static_cast<float>(std::max(1e-9, shot.noise)));
    for (auto& value : noise) value = normal(engine);
    std::vector<std::uint8_t> curve(4097);
    for (std::size_t i = 0; i < curve.size(); ++i)
        curve[i] = detail::encoded(static_cast<double>(i) / 4096);
    pictures::Raster photo(width, height);
    for (int y = 0; y < height; ++y) {
        auto* out = photo.row(y);
        auto random = static_cast<std::uint32_t>(engine());
        for (int x = 0; x < width; ++x) {
            const float value =
                plane[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                      static_cast<std::size_t>(x)];
            for (std::size_t channel = 0; channel < 3; ++channel) {
                random = random * 1664525U + 1013904223U;
                const double linear = std::clamp(value * shot.cast[channel], 0.0, 1.0) * 4096;
                const float coded = static_cast<float>(curve[static_cast<std::size_t>(linear)]) +
                                    noise[random >> 16U];
                *out++ = static_cast<std::uint8_t>(std::clamp(coded + 0.5F, 0.0F, 255.0F));
            }
        }
    }
    return photo;
}

/// As it comes out of the file.
inline pictures::Raster photographed(const Sheet& sheet, const Shot& shot,
                                     const measure::Projection& camera) {
    auto photo = developed(sheet, shot, camera);
    if (shot.quality == 0) return photo;
    return pictures::decode(pictures::encodeJpeg(photo, shot.quality).value()).value();
}

/// An easy one.
inline Shot usualShot() {
    Shot shot;
    shot.megapixels = 3;
    shot.tilt = 12;
    shot.azimuth = 70;
    shot.roll = 4;
    return shot;
}

/// An A5 mat with an enclosure's tag on it, or a copy of the mat under the same tag.
inline Sheet taggedSheet(double copiedAt = 1) {
    SheetOptions options;
    options.hasTag = true;
    options.perMm = 16;
    options.copiedAt = copiedAt;
    return matSheet(measure::MatPaper::a5, options);
}

inline pictures::Raster photoOfMat(const Sheet& sheet, const Shot& shot) {
    return photographed(sheet, shot, cameraOf(shot, seenOf(measure::MatPaper::a5)));
}

/// As in a mirror.
inline pictures::Raster turnedOver(const pictures::Raster& photo) {
    pictures::Raster result(photo.width(), photo.height());
    for (int y = 0; y < photo.height(); ++y) {
        for (int x = 0; x < photo.width(); ++x) {
            std::copy_n(photo.row(y) + 3 * x, 3, result.row(y) + 3 * (photo.width() - 1 - x));
        }
    }
    return result;
}

}  // namespace burrow::test
