// Photos of a mat by a camera of which everything is known: a drawn sheet, a pinhole with one radial
// term, uneven light, a shadow, blur, noise and JPEG. No Qt.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <string>
#include <vector>

#include "measure/mat.h"
#include "measure/plane.h"
#include "pictures/raster.h"
#include "tags/code.h"
#include "tags/symbol.h"

namespace burrow::test {

using measure::ImagePoint;
using measure::MatBox;
using measure::MatPoint;

/// A sheet as reflectance, 0 to 255 for none to all of the light, so many dots to a millimetre; shapes
/// cover dots by their share of them.
class Sheet {
public:
    Sheet(Millimetres width, Millimetres height, double perMm, std::uint32_t printer = 7)
        : perMm_(perMm),
          width_(static_cast<int>(std::ceil(width.value * perMm))),
          height_(static_cast<int>(std::ceil(height.value * perMm))),
          dots_(static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_), paper),
          printer_(printer) {}

    static constexpr std::uint8_t paper = 205;
    static constexpr std::uint8_t ink = 12;

    [[nodiscard]] double width() const { return width_ / perMm_; }
    [[nodiscard]] double height() const { return height_ / perMm_; }

    /// In millimetres.
    void fill(double x0, double y0, double x1, double y1, std::uint8_t value) {
        const auto columns = shares(x0, x1, width_);
        const auto rows = shares(y0, y1, height_);
        for (const auto& [y, down] : rows) {
            for (const auto& [x, right] : columns) blend(x, y, value, down * right);
        }
    }
    void fill(const MatBox& box, std::uint8_t value) {
        fill(box.x.value, box.y.value, (box.x + box.width).value, (box.y + box.height).value,
             value);
    }
    /// Of a printer with so many dots to a millimetre, each line is anywhere within half a dot of its
    /// place; 0 is a perfect one.
    void draw(const tags::Symbol& symbol, const MatBox& box, double dotsPerMm = 0) {
        const double module = box.width.value / symbol.size();
        std::uniform_real_distribution<double> off(-0.5, 0.5);
        std::vector<double> columns, rows;
        for (int i = 0; i <= symbol.size(); ++i) {
            const double dot = dotsPerMm > 0 ? 1 / dotsPerMm : 0;
            columns.push_back(box.x.value + i * module + dot * off(printer_));
            rows.push_back(box.y.value + i * module + dot * off(printer_));
        }
        const auto at = [](const std::vector<double>& lines, int i) {
            return lines[static_cast<std::size_t>(i)];
        };
        for (int row = 0; row < symbol.size(); ++row) {
            for (int column = 0; column < symbol.size(); ++column) {
                const int start = column;
                while (column < symbol.size() && symbol.isDark(column, row)) ++column;
                if (column == start) continue;
                fill(at(columns, start), at(rows, row), at(columns, column), at(rows, row + 1),
                     ink);
            }
        }
    }
    /// Sixteen points of each dot decide how much of it is covered.
    void ellipse(MatPoint centre, double halfWidth, double halfHeight, std::uint8_t value) {
        const int x0 = dot(centre.x.value - halfWidth), x1 = dot(centre.x.value + halfWidth) + 1;
        const int y0 = dot(centre.y.value - halfHeight), y1 = dot(centre.y.value + halfHeight) + 1;
        for (int y = std::max(0, y0); y <= std::min(height_ - 1, y1); ++y) {
            for (int x = std::max(0, x0); x <= std::min(width_ - 1, x1); ++x) {
                int covered = 0;
                for (int i = 0; i < 16; ++i) {
                    const double dx =
                        ((x + (i % 4 + 0.5) / 4) / perMm_ - centre.x.value) / halfWidth;
                    const double dy =
                        ((y + (i / 4 + 0.5) / 4) / perMm_ - centre.y.value) / halfHeight;
                    covered += dx * dx + dy * dy <= 1;
                }
                blend(x, y, value, covered / 16.0);
            }
        }
    }
    /// Between the middles of dots by straight lines; outside the sheet is a dark table.
    [[nodiscard]] float at(double xMm, double yMm) const {
        const double x = xMm * perMm_ - 0.5, y = yMm * perMm_ - 0.5;
        if (!(x >= 0 && y >= 0 && x < width_ - 1 && y < height_ - 1)) return table;
        const int column = static_cast<int>(x), row = static_cast<int>(y);
        const auto right = static_cast<float>(x - column), down = static_cast<float>(y - row);
        const auto* p = &dots_[index(column, row)];
        const float top = p[0] + right * static_cast<float>(p[1] - p[0]);
        const auto* q = p + width_;
        const float bottom = q[0] + right * static_cast<float>(q[1] - q[0]);
        return top + down * (bottom - top);
    }

private:
    static constexpr float table = 70;

    [[nodiscard]] int dot(double mm) const { return static_cast<int>(std::floor(mm * perMm_)); }
    [[nodiscard]] std::size_t index(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
               static_cast<std::size_t>(x);
    }
    void blend(int x, int y, std::uint8_t value, double share) {
        auto& at = dots_[index(x, y)];
        at = static_cast<std::uint8_t>(std::lround(at + share * (value - at)));
    }
    [[nodiscard]] std::vector<std::pair<int, double>> shares(double from, double to,
                                                             int most) const {
        std::vector<std::pair<int, double>> result;
        for (int i = dot(from); i <= dot(to); ++i) {
            const double share =
                std::min<double>(i + 1, to * perMm_) - std::max<double>(i, from * perMm_);
            if (share > 0 && i >= 0 && i < most) result.emplace_back(i, std::min(1.0, share));
        }
        return result;
    }

    double perMm_;
    int width_;
    int height_;
    std::vector<std::uint8_t> dots_;
    std::mt19937 printer_;
};

/// What stands on a drawn mat besides the mat itself.
struct SheetOptions {
    std::string name = "7Q2M";
    bool hasTag = false;  ///< an enclosure's tag of 20 mm in its place
    double copiedAt = 1;  ///< the mat, not the tag that lies on it: 0.97 is a copy at 97 percent
    double dotsPerMm = 600 / 25.4;  ///< of the printer; 0 is a perfect one
    double perMm = 20;
    std::uint32_t printer = 7;  ///< seed of where its lines fall
};
inline constexpr const char* enclosureCode = "7Q2MZX89";

/// The mat with a moult drawn into it: a carapace of 15 by 12 mm, legs of ruled lines.
inline Sheet matSheet(measure::MatPaper paper, const SheetOptions& options = {}) {
    const auto& layout = measure::layoutOf(paper);
    Sheet sheet(layout.width, layout.height, options.perMm, options.printer);
    for (const auto corner : measure::matCorners) {
        const auto symbol =
            tags::encode(measure::matPayload({paper, corner, options.name})).value();
        sheet.draw(symbol, layout.square(corner), options.dotsPerMm);
    }
    sheet.fill(layout.grey, 34);  // 13.3 percent
    for (int mm = 0; mm <= 100; ++mm) {
        const double x = layout.ruler.x.value + mm, y = layout.ruler.y.value;
        sheet.fill(x - 0.1, y - (mm % 10 == 0 ? 4 : 2), x + 0.1, y, Sheet::ink);
    }
    if (options.hasTag) {
        const auto at = layout.tag;
        const auto symbol = tags::encode(tags::payload(enclosureCode, tags::printedSide)).value();
        // On a smaller sheet the same tag takes more of it.
        const Millimetres side{20 / options.copiedAt};
        sheet.draw(symbol, {at.x + Millimetres{38.5}, at.y + Millimetres{4.5}, side, side},
                   options.dotsPerMm);
    }
    const auto middle = layout.moult.centre();
    sheet.ellipse(middle, 6, 7.5, 50);
    sheet.ellipse({middle.x, middle.y + Millimetres{18}}, 9, 11, 70);
    for (int leg = 0; leg < 4; ++leg) {
        const double y = middle.y.value - 6 + 4 * leg;
        sheet.fill(middle.x.value - 40, y, middle.x.value - 7, y + 1.2, 60);
        sheet.fill(middle.x.value + 7, y, middle.x.value + 40, y + 1.2, 60);
    }
    return sheet;
}

/// A sheet with one enclosure's tag of 20 mm in its middle.
inline Sheet tagOnly(std::uint32_t printer = 7, double perMm = 20, double dotsPerMm = 600 / 25.4) {
    Sheet sheet({100}, {80}, perMm, printer);
    const auto symbol = tags::encode(tags::payload(enclosureCode, tags::printedSide)).value();
    sheet.draw(symbol, {{40}, {30}, {20}, {20}}, dotsPerMm);
    return sheet;
}

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
    std::uint32_t seed = 1;

    [[nodiscard]] int longSide() const {
        return static_cast<int>(std::lround(std::sqrt(megapixels * 1e6 * 4 / 3)));
    }
    [[nodiscard]] int width() const { return isPortrait ? longSide() * 3 / 4 : longSide(); }
    [[nodiscard]] int height() const { return isPortrait ? longSide() : longSide() * 3 / 4; }
};

/// The camera that takes the shot: everything within `seen` is in the picture.
inline measure::Projection cameraOf(const Shot& shot, const MatBox& seen) {
    const double degree = std::numbers::pi / 180;
    const double focal = shot.focal / 36.0 * shot.longSide();
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
    const auto onSheet = [&](int i, int k) {
        const ImagePoint at{static_cast<double>(i * mesh), static_cast<double>(k * mesh)};
        return measure::mapped(back, measure::undistorted(camera.radial, at).value_or(at));
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

}  // namespace burrow::test
