#include "measure/hint.h"

#include <algorithm>
#include <cmath>

#include "measure/find.h"
#include "measure/homography.h"

namespace burrow::measure {
namespace {

int valueAt(const tags::LumaView& frame, double x, double y) {
    const int column = std::clamp(static_cast<int>(x), 0, frame.width - 1);
    const int row = std::clamp(static_cast<int>(y), 0, frame.height - 1);
    return frame.pixels[static_cast<std::ptrdiff_t>(row) * frame.stride + column];
}

/// Of the outer edges of a square's finder pattern: how much of the step happens within one pixel.
struct Steepness {
    double step = 0;  ///< from quiet zone to the dark frame
    double steepest = 0;
};
Steepness steepnessAt(const tags::LumaView& frame, const tags::FoundSymbol& symbol,
                      double modules) {
    // Across the upper and the left edge of the finder pattern at the first corner, from two modules
    // outside to the middle of its dark frame.
    const auto& c = symbol.corners;
    Steepness result;
    for (const auto& [along, across] : {std::pair{1, 3}, std::pair{3, 1}}) {
        const auto& a = c[static_cast<std::size_t>(along)];
        const auto& b = c[static_cast<std::size_t>(across)];
        const double dx = (b.x - c[0].x) / modules, dy = (b.y - c[0].y) / modules;
        const double sx = c[0].x + 3.5 * (a.x - c[0].x) / modules;
        const double sy = c[0].y + 3.5 * (a.y - c[0].y) / modules;
        const double length = std::hypot(dx, dy);
        const int steps = static_cast<int>(std::ceil(2.5 * length));
        int light = 0, dark = 255, steepest = 0, before = -1;
        for (int i = 0; i <= steps; ++i) {
            const double t = -2.0 + 2.5 * i / steps;
            const int value = valueAt(frame, sx + t * dx, sy + t * dy);
            light = std::max(light, value);
            dark = std::min(dark, value);
            if (before >= 0) steepest = std::max(steepest, before - value);
            before = value;
        }
        result.step = std::max(result.step, static_cast<double>(light - dark));
        result.steepest = std::max(result.steepest, static_cast<double>(steepest));
    }
    return result;
}

void lookAt(const tags::LumaView& frame, const FoundMarks& marks, const MeasureRules& rules,
            LiveHint& live) {
    double contrast = 255;
    live.sharpness = 1;
    for (const auto& [mark, symbol] : marks.mat) {
        const auto corner = static_cast<std::size_t>(mark.corner);
        live.isSeen[corner] = true;
        live.squares[corner] = symbol.corners;
        constexpr double modules = 25;  // version 2, which holds what a mat's squares say
        const auto steep = steepnessAt(frame, symbol, modules);
        contrast = std::min(contrast, steep.step);
        live.sharpness = std::min(live.sharpness, steep.step > 0 ? steep.steepest / steep.step : 0);
    }
    if (contrast < rules.hintContrast) live.hint = Hint::dim;
    if (live.sharpness < rules.hintSharpness) live.hint = Hint::blurred;
}

/// How level and how large the whole mat is seen.
void lookAtWhole(const tags::LumaView& frame, const FoundMarks& marks, const MeasureRules& rules,
                 LiveHint& live) {
    std::vector<PointPair> pairs;
    double left = frame.width, right = 0, top = frame.height, bottom = 0;
    const auto& layout = layoutOf(marks.mat.front().mark.paper);
    for (const auto& [mark, symbol] : marks.mat) {
        const auto box = layout.square(mark.corner);
        for (std::size_t i = 0; i < 4; ++i) {
            const double dx = i == 1 || i == 2 ? box.width.value : 0;
            const double dy = i >= 2 ? box.height.value : 0;
            pairs.push_back({{box.x.value + dx, box.y.value + dy}, symbol.corners[i]});
            left = std::min(left, symbol.corners[i].x);
            right = std::max(right, symbol.corners[i].x);
            top = std::min(top, symbol.corners[i].y);
            bottom = std::max(bottom, symbol.corners[i].y);
        }
    }
    const auto h = directHomography(pairs);
    if (!h) return;
    const auto stretch = stretchAt({*h, Radial::about(frame.width, frame.height)},
                                   {0.5 * layout.width, 0.5 * layout.height});
    live.level = stretch.most > 0 ? stretch.least / stretch.most : 0;
    const double share = std::max((right - left) / frame.width, (bottom - top) / frame.height);
    if (share < rules.hintShare) live.hint = Hint::far;
    if (live.level < rules.leastLevel) live.hint = Hint::tilted;
}

}  // namespace

Message LiveHint::message() const {
    switch (hint) {
        case Hint::noMat: return {"measure.hint.noMat"};
        case Hint::corners:
            return {"measure.hint.corners",
                    {{"count",
                      static_cast<std::int64_t>(std::count(isSeen.begin(), isSeen.end(), true))}}};
        case Hint::twoMats: return {"measure.hint.twoMats"};
        case Hint::mirrored: return {"measure.hint.mirrored"};
        case Hint::tilted: return {"measure.hint.tilted"};
        case Hint::blurred: return {"measure.hint.blurred"};
        case Hint::dim: return {"measure.hint.dim"};
        case Hint::far: return {"measure.hint.far"};
        case Hint::ready: break;
    }
    return {"measure.hint.ready"};
}

LiveHint hintFor(const tags::LumaView& frame, const MeasureRules& rules) {
    LiveHint live;
    FoundMarks marks;
    addMarks(marks, tags::decode(frame, tags::Effort::fast), 1, {});
    if (marks.mat.empty()) return live;
    const auto& first = marks.mat.front().mark;
    live.hint = Hint::ready;
    lookAt(frame, marks, rules, live);
    const bool isOneMat =
        std::all_of(marks.mat.begin(), marks.mat.end(), [&](const FoundMark& each) {
            return each.mark.paper == first.paper && each.mark.name == first.name;
        });
    if (marks.corners() == matCorners.size()) lookAtWhole(frame, marks, rules, live);
    if (marks.corners() < matCorners.size()) {
        live.hint = readsBetterMirrored(marks, frame) ? Hint::mirrored : Hint::corners;
    }
    if (!isOneMat || marks.mat.size() > marks.corners()) live.hint = Hint::twoMats;
    return live;
}

}  // namespace burrow::measure
