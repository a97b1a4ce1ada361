// A mat and a tag as they are printed: drawn sheets, for photos by a camera of which everything is known.
// No Qt.
#pragma once

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "measure/mat.h"
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

}  // namespace burrow::test
