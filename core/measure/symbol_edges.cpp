#include "measure/symbol_edges.h"

#include <algorithm>
#include <cmath>

#include "measure/edge_fit.h"
#include "measure/homography.h"
#include "measure/symbol_patch.h"

namespace burrow::measure {
namespace {

using tags::Symbol;

/// From modules, counted from the symbol's top left corner, to its place on the sheet and back.
Homography toSheet(const MatBox& place, int modules) {
    const double m = place.width.value / modules;
    return {m, 0, place.x.value, 0, m, place.y.value, 0, 0, 1};
}
Homography toModules(const MatBox& place, int modules) {
    const double m = modules / place.width.value;
    return {m, 0, -m * place.x.value, 0, m, -m * place.y.value, 0, 0, 1};
}

std::optional<Homography> cornersToPhoto(const tags::FoundSymbol& found, double side) {
    const std::array<PointPair, 4> pairs{{{{0, 0}, found.corners[0]},
                                          {{side, 0}, found.corners[1]},
                                          {{side, side}, found.corners[2]},
                                          {{0, side}, found.corners[3]}}};
    const auto h = directHomography(pairs);
    return h ? std::optional(*h) : std::nullopt;
}

/// Pixels from one upright and one level edge to the next, a module apart.
struct Spacing {
    double across = 0;  ///< between upright edges
    double along = 0;   ///< between level edges
};
Spacing spacingOf(const Homography& modulesToPhoto, int modules) {
    const double middle = 0.5 * modules;
    const auto x0 = mapped(modulesToPhoto, {middle - 0.5, middle});
    const auto x1 = mapped(modulesToPhoto, {middle + 0.5, middle});
    const auto y0 = mapped(modulesToPhoto, {middle, middle - 0.5});
    const auto y1 = mapped(modulesToPhoto, {middle, middle + 0.5});
    const double area = std::abs((x1.x - x0.x) * (y1.y - y0.y) - (x1.y - x0.y) * (y1.x - y0.x));
    return {area / std::hypot(y1.x - y0.x, y1.y - y0.y),
            area / std::hypot(x1.x - x0.x, x1.y - x0.y)};
}

/// One edge of the pattern.
struct Border {
    bool isUpright = false;
    int line = 0;   ///< which grid line, from 0
    int place = 0;  ///< which module along it
    int polarity = 1;
};

std::vector<Border> bordersOf(const Symbol& symbol) {
    const int size = symbol.size();
    const auto isDark = [&](int column, int row) {
        return column >= 0 && row >= 0 && column < size && row < size && symbol.isDark(column, row);
    };
    std::vector<Border> borders;
    for (int line = 0; line <= size; ++line) {
        for (int place = 0; place < size; ++place) {
            const bool left = isDark(line - 1, place);
            const bool right = isDark(line, place);
            if (left != right) borders.push_back({true, line, place, left ? 1 : -1});
            const bool above = isDark(place, line - 1);
            const bool under = isDark(place, line);
            if (above != under) borders.push_back({false, line, place, above ? 1 : -1});
        }
    }
    return borders;
}

/// What a comparison of the two patches around an edge gives.
struct Shift {
    double modules = 0;
    double contrast = 0;
    double squares = 0;  ///< what is left unexplained
};

/// The picture is taken for a + b T(x - shift), T being the drawing: linear in a, b and b times shift.
Shift shiftAt(const Patch& seen, const Patch& ideal, const Border& border) {
    const int s = seen.perModule();
    const int half = std::max(2, static_cast<int>(std::lround(0.8 * s)));
    const int middle = (border.line + patchMargin) * s;
    const int from = (border.place + patchMargin) * s + s / 5;
    const int to = (border.place + patchMargin + 1) * s - s / 5;
    const auto mean = [&](const Patch& patch, int at) {
        double sum = 0;
        for (int i = from; i < to; ++i) sum += border.isUpright ? patch.at(at, i) : patch.at(i, at);
        return sum / (to - from);
    };
    constexpr int longest = 40;
    std::array<double, longest> value{}, model{}, slope{};
    const int count = std::min(2 * half, longest - 2);
    double previous = mean(ideal, middle - half - 1);
    double current = mean(ideal, middle - half);
    double sumValue = 0, sumModel = 0, sumSlope = 0;
    for (int i = 0; i < count; ++i) {
        const auto at = static_cast<std::size_t>(i);
        const double next = mean(ideal, middle - half + i + 1);
        value[at] = mean(seen, middle - half + i);
        model[at] = current;
        slope[at] = 0.5 * (next - previous) * s;
        previous = current;
        current = next;
        sumValue += value[at];
        sumModel += model[at];
        sumSlope += slope[at];
    }
    double mm = 0, ms = 0, ss = 0, mv = 0, sv = 0, vv = 0;
    for (std::size_t i = 0; i < static_cast<std::size_t>(count); ++i) {
        const double v = value[i] - sumValue / count;
        const double m = model[i] - sumModel / count;
        const double d = slope[i] - sumSlope / count;
        mm += m * m;
        ms += m * d;
        ss += d * d;
        mv += m * v;
        sv += d * v;
        vv += v * v;
    }
    const double determinant = mm * ss - ms * ms;
    if (!(determinant > 0)) return {};
    const double b = (ss * mv - ms * sv) / determinant;
    const double c = (mm * sv - ms * mv) / determinant;
    return {b > 0 ? -c / b : 0, b, std::max(0.0, vv - b * mv - c * sv)};
}

/// Blurs, in pixels, that are tried; a parabola finds those between.
constexpr std::array blurs{0.45, 0.65, 0.9, 1.2, 1.6, 2.1, 2.8, 3.8};
using Squares = std::array<double, blurs.size()>;

/// The lowest point of the parabola through the least and its neighbours, over the logarithm.
double bestBlur(const Squares& squares, std::size_t tried) {
    const auto best = static_cast<std::size_t>(
        std::min_element(squares.begin(), squares.begin() + static_cast<std::ptrdiff_t>(tried)) -
        squares.begin());
    if (best == 0 || best + 1 >= tried) return blurs[best];
    const double x0 = std::log(blurs[best - 1]), x1 = std::log(blurs[best]),
                 x2 = std::log(blurs[best + 1]);
    const double a = (squares[best - 1] - squares[best]) / (x0 - x1);
    const double b = (squares[best + 1] - squares[best]) / (x2 - x1);
    const double bend = (b - a) / (x2 - x0);
    if (!(bend > 0)) return blurs[best];
    return std::exp(std::clamp(x1 - (a + bend * (x1 - x0)) / (2 * bend), x0, x2));
}

struct Blur {
    double upright = 0;  ///< of upright edges, pixels across them
    double level = 0;
};

/// With which blur the drawing explains the edges of either direction best.
Blur blurOf(const Patch& seen, const Symbol& symbol, const std::vector<Border>& borders,
            const Spacing& spacing) {
    Squares upright{}, level{};
    std::size_t tried = 0;
    while (tried < blurs.size()) {
        const auto ideal = drawn(symbol, seen.perModule(), blurs[tried] / spacing.across,
                                 blurs[tried] / spacing.along);
        // A quarter of them says enough.
        for (std::size_t k = 0; k < borders.size(); k += 4) {
            auto& squares = borders[k].isUpright ? upright : level;
            squares[tried] += shiftAt(seen, ideal, borders[k]).squares;
        }
        ++tried;
        const auto grows = [&](const Squares& s) {
            return tried > 1 && s[tried - 1] > s[tried - 2];
        };
        if (grows(upright) && grows(level)) break;
    }
    return {bestBlur(upright, tried), bestBlur(level, tried)};
}

/// What each module shows, where the symbol was not drawn by us: darker or lighter than its
/// neighbourhood's middle.
Symbol patternSeen(const Patch& seen, int modules) {
    const int s = seen.perModule();
    std::vector<float> centres(static_cast<std::size_t>(modules) *
                               static_cast<std::size_t>(modules));
    const auto at = [&](int column, int row) -> float& {
        return centres[static_cast<std::size_t>(row * modules + column)];
    };
    for (int row = 0; row < modules; ++row) {
        for (int column = 0; column < modules; ++column) {
            at(column, row) =
                seen.at((column + patchMargin) * s + s / 2, (row + patchMargin) * s + s / 2);
        }
    }
    Symbol symbol(modules);
    constexpr int reach = 4;
    for (int row = 0; row < modules; ++row) {
        for (int column = 0; column < modules; ++column) {
            float least = 255, most = 0;
            for (int y = std::max(0, row - reach); y <= std::min(modules - 1, row + reach); ++y) {
                for (int x = std::max(0, column - reach);
                     x <= std::min(modules - 1, column + reach); ++x) {
                    least = std::min(least, at(x, y));
                    most = std::max(most, at(x, y));
                }
            }
            symbol.setDark(column, row, at(column, row) < 0.5F * (least + most));
        }
    }
    return symbol;
}

constexpr double leastAgreement = 0.6;

/// Our own encoder's symbol for the text, if that is what stands there, else what is seen.
std::optional<Symbol> patternOf(const Patch& seen, const Symbol& own, const Spacing& spacing) {
    const double blur = std::max(0.3, 1.0 / std::min(spacing.across, spacing.along));
    const auto fits = [&](const Symbol& symbol) {
        return agreement(seen, drawn(symbol, seen.perModule(), blur, blur)) > leastAgreement;
    };
    if (fits(own)) return own;
    const auto other = patternSeen(seen, own.size());
    return fits(other) ? std::optional(other) : std::nullopt;
}

class Closely {
public:
    Closely(const pictures::Raster& photo, const MatBox& place, int index, const Symbol& symbol,
            const Homography& start)
        : photo_(photo),
          place_(place),
          index_(index),
          symbol_(symbol),
          borders_(bordersOf(symbol)),
          toPhoto_(start) {}

    /// Looks with a drawing so soft that edges half a module away are still felt. Each look brings the
    /// homography from modules to the photo up to what was seen; false where too few edges can be told.
    bool lookSoftly();
    /// Looks with a drawing as blurred as the photo is, twice, since the first look moves the patch.
    bool lookSharply();
    [[nodiscard]] SymbolEdges& result() { return result_; }

private:
    bool look(const Patch& seen, const Patch& ideal, double farthest);
    void collect(const std::vector<Shift>& shifts, double farthest);
    [[nodiscard]] bool follow();
    [[nodiscard]] Patch patch(int perModule) const {
        return sampled(photo_, toPhoto_, symbol_.size(), perModule);
    }

    const pictures::Raster& photo_;
    const MatBox& place_;
    int index_;
    const Symbol& symbol_;
    std::vector<Border> borders_;
    Homography toPhoto_;
    SymbolEdges result_;
};

bool Closely::lookSoftly() {
    constexpr int perModule = 5;
    constexpr double softness = 0.4;
    return look(patch(perModule), drawn(symbol_, perModule, softness, softness), 0.6);
}

bool Closely::lookSharply() {
    const auto spacing = spacingOf(toPhoto_, symbol_.size());
    const double tightest = std::min(spacing.across, spacing.along);
    if (!(tightest > 1)) return false;
    const int perModule = std::clamp(static_cast<int>(std::ceil(tightest)), 5, 7);
    const auto seen = patch(perModule);
    const auto blur = blurOf(seen, symbol_, borders_, spacing);
    result_.blur = std::max(blur.upright, blur.level);
    result_.module = tightest;
    const auto ideal =
        drawn(symbol_, perModule, blur.upright / spacing.across, blur.level / spacing.along);
    return look(seen, ideal, 0.4) && look(patch(perModule), ideal, 0.3);
}

bool Closely::look(const Patch& seen, const Patch& ideal, double farthest) {
    std::vector<Shift> shifts;
    shifts.reserve(borders_.size());
    for (const auto& border : borders_) shifts.push_back(shiftAt(seen, ideal, border));
    collect(shifts, farthest);
    return follow();
}

void Closely::collect(const std::vector<Shift>& shifts, double farthest) {
    std::vector<double> contrasts;
    for (const auto& shift : shifts) contrasts.push_back(shift.contrast);
    const auto middle = contrasts.begin() + static_cast<std::ptrdiff_t>(contrasts.size() / 2);
    std::nth_element(contrasts.begin(), middle, contrasts.end());
    result_.contrast = *middle;
    result_.edges.clear();
    const auto sheet = toSheet(place_, symbol_.size());
    constexpr double faint = 0.35;
    for (std::size_t i = 0; i < borders_.size(); ++i) {
        const auto& border = borders_[i];
        const double share = shifts[i].contrast / result_.contrast;
        if (!(share > faint) || std::abs(shifts[i].modules) > farthest) continue;
        const double along = border.place + 0.5;
        const double across = border.line;
        const double found = across + shifts[i].modules;
        const ImagePoint at =
            border.isUpright ? ImagePoint{across, along} : ImagePoint{along, across};
        const ImagePoint seenAt =
            border.isUpright ? ImagePoint{found, along} : ImagePoint{along, found};
        const auto onSheet = mapped(sheet, at);
        constexpr int linesOfDirection = 256;  // more than the largest symbol has
        const int line = (index_ * 2 + (border.isUpright ? 1 : 0)) * linesOfDirection + border.line;
        result_.edges.push_back({{{onSheet.x}, {onSheet.y}},
                                 border.isUpright,
                                 border.polarity,
                                 index_,
                                 line,
                                 mapped(toPhoto_, seenAt),
                                 std::min(1.5, share)});
    }
}

bool Closely::follow() {
    const int modules = symbol_.size();
    auto edges = result_.edges;
    for (auto& edge : edges) edge.symbol = 0;
    const auto start = product(toPhoto_, toModules(place_, modules));
    const auto lens = Radial::about(photo_.width(), photo_.height());
    const auto fit = fitSymbol(edges, start, lens);
    if (!fit) return false;
    result_.local = fit->toPicture;
    result_.noise = fit->noise;
    toPhoto_ = product(result_.local, toSheet(place_, modules));
    return true;
}

}  // namespace

std::optional<SymbolEdges> edgesOf(const pictures::Raster& photo, const tags::FoundSymbol& found,
                                   const MatBox& place, int index) {
    const auto own = tags::encode(found.bytes);
    if (!own) return std::nullopt;
    const auto start = cornersToPhoto(found, own->size());
    if (!start) return std::nullopt;
    const auto spacing = spacingOf(*start, own->size());
    if (!(std::min(spacing.across, spacing.along) > 1)) return std::nullopt;
    constexpr int coarse = 5;
    const auto pattern = patternOf(sampled(photo, *start, own->size(), coarse), *own, spacing);
    if (!pattern) return std::nullopt;
    Closely closely(photo, place, index, *pattern, *start);
    if (!closely.lookSoftly() || !closely.lookSharply()) return std::nullopt;
    return std::move(closely.result());
}

}  // namespace burrow::measure
