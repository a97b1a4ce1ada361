#include "measure/beside.h"

#include <algorithm>
#include <cmath>

#include "measure/symbol_edges.h"

namespace burrow::measure {
namespace {

bool isOn(const MatBox& place, MatPoint point) {
    constexpr Millimetres margin{2};
    return point.x >= place.x - margin && point.y >= place.y - margin &&
           point.x <= place.x + place.width + margin && point.y <= place.y + place.height + margin;
}

/// The tag's four corners in the mat's plane, or nothing where one is not on its place.
std::optional<std::array<MatPoint, 4>> cornersOn(const MatBox& place, const Survey& survey,
                                                 const Homography& local, double side) {
    constexpr std::array<ImagePoint, 4> square{{{0, 0}, {1, 0}, {1, 1}, {0, 1}}};
    std::array<MatPoint, 4> corners{};
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const auto seen = mapped(local, {side * square[i].x, side * square[i].y});
        const auto at = matOf(survey.projection(), seen);
        if (!at || !isOn(place, *at)) return std::nullopt;
        corners[i] = *at;
    }
    return corners;
}

Message words(double off) {
    return {"measure.copied", {{"percent", std::round(1000 * std::abs(off)) / 10}}};
}

/// By how much the two may differ where both are what they say.
double expected(const PrintScale& print, const MeasureRules& rules) {
    return std::hypot(rules.tagPrint, rules.tagSeen, print.deviation);
}

}  // namespace

std::optional<TagBeside> tagBeside(const pictures::Raster& photo, const Survey& survey,
                                   const std::vector<FoundTag>& tags) {
    if (!survey.mat) return std::nullopt;
    const auto& place = layoutOf(survey.mat->paper).tag;
    for (const auto& tag : tags) {
        // Only a tag on its place is worth looking at closely.
        const auto middle = matOf(survey.projection(), tag.symbol.centre());
        if (!middle || !isOn(place, *middle)) continue;
        const double side = tag.tag.side.value;
        const auto symbol = edgesOf(photo, tag.symbol, {{0}, {0}, {side}, {side}}, 0);
        if (!symbol) continue;
        const auto corners = cornersOn(place, survey, symbol->local, side);
        if (!corners) continue;
        double around = 0;
        for (std::size_t i = 0; i < 4; ++i) {
            const auto& a = (*corners)[i];
            const auto& b = (*corners)[(i + 1) % 4];
            around += std::hypot(a.x.value - b.x.value, a.y.value - b.y.value);
        }
        return TagBeside{tag.tag.code, around / (4 * side)};
    }
    return std::nullopt;
}

double copiedBy(const Survey& survey, const PrintScale& print) {
    return survey.beside ? survey.beside->ratio * print.factor - 1 : 0;
}

Result<PrintScale> agreed(const Survey& survey, const PrintScale& print,
                          const MeasureRules& rules) {
    const double off = copiedBy(survey, print);
    if (std::abs(off) > 3 * expected(print, rules)) return fail(Trouble::badInput, words(off));
    auto result = print;
    if (copyWarning(survey, print, rules)) result.deviation = std::hypot(print.deviation, off);
    return result;
}

std::optional<Message> copyWarning(const Survey& survey, const PrintScale& print,
                                   const MeasureRules& rules) {
    const double off = copiedBy(survey, print);
    if (std::abs(off) <= expected(print, rules)) return std::nullopt;
    return words(off);
}

}  // namespace burrow::measure
