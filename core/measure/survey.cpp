#include "measure/survey.h"

#include <algorithm>
#include <cmath>

#include "measure/beside.h"
#include "measure/find.h"
#include "measure/homography.h"
#include "measure/screen.h"
#include "measure/sharpness.h"
#include "measure/symbol_edges.h"
#include "measure/two_threads.h"

namespace burrow::measure {
namespace {

using pictures::Raster;

tl::unexpected<Error> refuse(Message message) {
    return fail(Trouble::badInput, std::move(message));
}

double square(double value) { return value * value; }

/// The corners of a square, on the sheet and in the photo.
void addPairs(std::vector<PointPair>& pairs, const FoundMark& square, const MatLayout& layout) {
    const auto box = layout.square(square.mark.corner);
    const double x = box.x.value, y = box.y.value, side = box.width.value;
    const auto& corners = square.symbol.corners;
    pairs.push_back({{x, y}, corners[0]});
    pairs.push_back({{x + side, y}, corners[1]});
    pairs.push_back({{x + side, y + side}, corners[2]});
    pairs.push_back({{x, y + side}, corners[3]});
}

/// How a square is seen, judged by its corners alone.
Stretch roughStretch(const FoundMark& square, const Raster& photo) {
    const auto& layout = layoutOf(square.mark.paper);
    const auto box = layout.square(square.mark.corner);
    std::vector<PointPair> pairs;
    addPairs(pairs, square, layout);
    const auto h = directHomography(pairs);
    return h ? stretchAt({*h, Radial::about(photo.width(), photo.height())}, box.centre())
             : Stretch{};
}

/// Whether the one square that is missing lies within the photo all the same, so that something is on it.
bool isCovered(const std::vector<FoundMark>& squares, const Raster& photo) {
    if (squares.size() + 1 != matCorners.size()) return false;
    const auto& layout = layoutOf(squares.front().mark.paper);
    std::vector<PointPair> pairs;
    for (const auto& square : squares) addPairs(pairs, square, layout);
    const auto h = directHomography(pairs);
    if (!h) return false;
    for (const auto corner : matCorners) {
        const auto has = [&](const FoundMark& each) { return each.mark.corner == corner; };
        if (std::any_of(squares.begin(), squares.end(), has)) continue;
        const auto box = layout.square(corner);
        for (const double dx : {0.0, box.width.value}) {
            for (const double dy : {0.0, box.height.value}) {
                const auto at = mapped(*h, {box.x.value + dx, box.y.value + dy});
                if (!(at.x >= 0 && at.y >= 0 && at.x <= photo.width() && at.y <= photo.height())) {
                    return false;
                }
            }
        }
    }
    return true;
}

/// Why not all squares could be read, from what those that could look like.
Message whyMissing(const std::vector<FoundMark>& squares, const Raster& photo,
                   const MeasureRules& rules) {
    for (const auto& square : squares) {
        const auto stretch = roughStretch(square, photo);
        // Corners alone are not exact: only what is clearly too much is said.
        const double clearly = rules.clearlyBeyond;
        if (stretch.least < clearly * rules.leastLevel * stretch.most) return {"measure.tilted"};
        if (stretch.least < rules.readablePixelsPerMm) return {"measure.far"};
    }
    if (looksBlurred(greyCopy(photo, 1600), rules)) return {"measure.blurred"};
    if (isCovered(squares, photo)) return {"measure.hidden"};
    return {"measure.corners", {{"count", static_cast<std::int64_t>(squares.size())}}};
}

/// The squares, one of each corner, in the order of MatCorner.
Result<std::vector<FoundMark>> wholeMat(const FoundMarks& marks, const Raster& photo,
                                        const MeasureRules& rules) {
    const auto& first = marks.mat.front().mark;
    std::vector<FoundMark> squares;
    for (const auto corner : matCorners) {
        for (const auto& each : marks.mat) {
            if (each.mark.paper != first.paper || each.mark.name != first.name) {
                return refuse({"measure.twoMats"});
            }
            if (each.mark.corner != corner) continue;
            if (!squares.empty() && squares.back().mark.corner == corner) {
                return refuse({"measure.twoMats"});
            }
            squares.push_back(each);
        }
    }
    if (squares.size() == matCorners.size()) return squares;
    return refuse(whyMissing(squares, photo, rules));
}

/// How far the symbols' own homographies lie from the common projection: the sum of squares that is
/// left when both have used up their parameters, over what noise alone would leave.
double bendOf(const std::vector<SymbolEdges>& symbols, const EdgeFit& fit) {
    const auto common = fit.projection();
    double squares = 0;
    for (std::size_t i = 0; i < symbols.size(); ++i) {
        const Projection own{symbols[i].local, Radial{}};
        for (const auto& edge : symbols[i].edges) {
            const auto a = photoOf(own, edge.at);
            const auto b = photoOf(common, edge.at);
            // Half of the distance's square is across the edge, on the average.
            const double weight = edge.weight / fit.noise[i];
            squares +=
                0.5 * weight * weight * ((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y));
        }
    }
    const auto free = 8 * static_cast<double>(symbols.size()) - 9;
    return free > 0 ? squares / (free * fit.clustering) : 0;
}

/// What a symbol's own homography would be if it lay where all together put it: the lens bends it a little,
/// which no homography can.
std::optional<Homography> expectedLocal(const MatBox& box, const Projection& common) {
    constexpr int side = 4;
    std::vector<PointPair> pairs;
    for (int row = 0; row < side; ++row) {
        for (int column = 0; column < side; ++column) {
            const MatPoint at{box.x + box.width * ((column + 0.5) / side),
                              box.y + box.height * ((row + 0.5) / side)};
            pairs.push_back({{at.x.value, at.y.value}, photoOf(common, at)});
        }
    }
    const auto h = directHomography(pairs);
    return h ? std::optional(*h) : std::nullopt;
}

/// How far the squares' corners lie from where all squares together put them, in millimetres, as the root of
/// the mean square. A sheet that is curled shows each of them from another side, in a way that no plane and
/// no lens explains.
double curlOf(const std::vector<SymbolEdges>& symbols, const MatLayout& layout,
              const Projection& common) {
    double squares = 0;
    int count = 0;
    for (std::size_t i = 0; i < symbols.size(); ++i) {
        const auto box = layout.square(matCorners[i]);
        const auto expected = expectedLocal(box, common);
        if (!expected) continue;
        const double perMm = stretchAt(common, box.centre()).least;
        for (const double dx : {0.0, box.width.value}) {
            for (const double dy : {0.0, box.height.value}) {
                const ImagePoint at{box.x.value + dx, box.y.value + dy};
                const auto a = mapped(symbols[i].local, at);
                const auto b = mapped(*expected, at);
                squares += square((a.x - b.x) / perMm) + square((a.y - b.y) / perMm);
                ++count;
            }
        }
    }
    return count > 0 ? std::sqrt(squares / count) : 0;
}

Done checkSymbol(const SymbolEdges& symbol, const MeasureRules& rules) {
    if (symbol.blur > rules.mostBlur * symbol.module) return refuse({"measure.blurred"});
    if (symbol.contrast < rules.leastContrast) return refuse({"measure.dim"});
    return {};
}

/// Words about the mat, or about the tag where it is all that shows.
Message wordsFor(const Survey& found, const char* mat, const char* tag) {
    return {found.scale == ScaleKind::mat ? mat : tag};
}

Done checkStretch(Survey& found, std::span<const MatPoint> places, const MeasureRules& rules) {
    const auto projection = found.projection();
    const auto middle = stretchAt(projection, found.middle);
    if (middle.isMirrored) return refuse({"measure.mirrored"});
    if (!(middle.least > 0) || middle.least < rules.leastLevel * middle.most) {
        return refuse(wordsFor(found, "measure.tilted", "measure.tag.tilted"));
    }
    found.pixelsPerMm = middle.least;
    for (const auto& place : places) {
        if (!(stretchAt(projection, place).least >= rules.leastPixelsPerMm)) {
            return refuse(wordsFor(found, "measure.far", "measure.tag.far"));
        }
    }
    return {};
}

/// By what factor the variances are larger than the scatter of lines says: where the squares disagree
/// beyond it, or where it is less than any printer can do. One of 600 dots to the inch puts a line on a
/// whole dot, evenly within half a dot of its place.
double inflationOf(const EdgeFit& fit, double bend, double pixelsPerMm) {
    constexpr double dot = 25.4 / 600;
    constexpr double printed = dot * dot / 12;
    double seen = 0;
    for (const double noise : fit.noise)
        seen += noise * noise / static_cast<double>(fit.noise.size());
    seen *= fit.clustering * static_cast<double>(fit.lines) / static_cast<double>(fit.used);
    seen /= pixelsPerMm * pixelsPerMm;
    return std::max({1.0, bend, printed / seen});
}

/// One fit with the radial term, which stays as near to nought as the edges let it: what is believed of
/// lenses weighs against them. Leaving it out where it is not beyond chance would be off by just so much as
/// chance allows, and always to the same side.
Done fitBest(const std::vector<SymbolEdges>& symbols, const Homography& start, const Radial& lens,
             const MeasureRules& rules, Survey& found) {
    std::vector<EdgePoint> edges;
    for (const auto& symbol : symbols) {
        edges.insert(edges.end(), symbol.edges.begin(), symbol.edges.end());
    }
    const auto count = static_cast<int>(symbols.size());
    BURROW_TRY(const auto fit, fitEdges(edges, count, start, lens, {0, rules.lensDeviation}));
    found.bend = bendOf(symbols, fit);
    found.frame = fit.frame;
    found.parameters = fit.parameters;
    found.residual = fit.residual;
    const double perMm = stretchAt(fit.projection(), found.middle).least;
    const double inflation = inflationOf(fit, found.bend, perMm);
    found.covariance = fit.covariance;
    for (auto& value : found.covariance) value *= inflation;
    // F with one degree of freedom above; 3.84 is its 95 percent point for many below.
    constexpr double chance = 3.84;
    found.hasRadial = square(fit.parameters[8]) > chance * inflation * fit.variance(8);
    return {};
}

/// Half of the squares in a thread of its own.
std::vector<std::optional<SymbolEdges>> lookClosely(const Raster& photo,
                                                    const std::vector<FoundMark>& squares,
                                                    const MatLayout& layout) {
    std::vector<std::optional<SymbolEdges>> looked(squares.size());
    onTwoThreads(squares.size(), [&](std::size_t i) {
        looked[i] = edgesOf(photo, squares[i].symbol, layout.square(squares[i].mark.corner),
                            static_cast<int>(i));
    });
    return looked;
}

Result<Survey> surveyMat(const Raster& photo, const FoundMarks& marks, Survey found,
                         const MeasureRules& rules) {
    BURROW_TRY(const auto squares, wholeMat(marks, photo, rules));
    const auto& layout = layoutOf(squares.front().mark.paper);
    std::vector<SymbolEdges> symbols;
    std::vector<PointPair> corners;
    std::vector<MatPoint> places;
    auto looked = lookClosely(photo, squares, layout);
    for (std::size_t i = 0; i < squares.size(); ++i) {
        const auto box = layout.square(squares[i].mark.corner);
        auto& symbol = looked[i];
        if (!symbol) return refuse({"measure.hidden"});
        BURROW_DO(checkSymbol(*symbol, rules));
        for (const double dx : {0.0, box.width.value}) {
            for (const double dy : {0.0, box.height.value}) {
                const ImagePoint at{box.x.value + dx, box.y.value + dy};
                corners.push_back({at, mapped(symbol->local, at)});
                places.push_back({{at.x}, {at.y}});
            }
        }
        symbols.push_back(*std::move(symbol));
    }
    found.scale = ScaleKind::mat;
    found.mat = squares.front().mark;
    found.middle = {0.5 * layout.width, 0.5 * layout.height};
    BURROW_TRY(const auto start, fitHomography(corners));
    BURROW_DO(fitBest(symbols, start.homography, Radial::about(photo.width(), photo.height()),
                      rules, found));
    found.curl = curlOf(symbols, layout, found.projection());
    if (std::abs(found.parameters[8]) > rules.mostRadial || found.curl > rules.mostCurl) {
        return refuse({"measure.notFlat"});
    }
    BURROW_DO(checkStretch(found, places, rules));
    if (showsScreen(photo, found, rules)) return refuse({"measure.screen"});
    found.beside = tagBeside(photo, found, marks.tags);
    return found;
}

Result<Survey> surveyTag(const Raster& photo, const FoundTag& tag, Survey found,
                         const MeasureRules& rules) {
    const MatBox place{{0}, {0}, tag.tag.side, tag.tag.side};
    auto symbol = edgesOf(photo, tag.symbol, place, 0);
    if (!symbol) return refuse({"measure.tag.hidden"});
    BURROW_DO(checkSymbol(*symbol, rules));
    found.scale = ScaleKind::tag;
    found.code = tag.tag.code;
    found.middle = place.centre();
    const auto lens = Radial::about(photo.width(), photo.height());
    // Of its own squares a mat speaks.
    if (!fitBest({*symbol}, symbol->local, lens, rules, found))
        return refuse({"measure.tag.unfit"});
    const std::array places{found.middle};
    BURROW_DO(checkStretch(found, places, rules));
    return found;
}

const FoundTag& nearest(const std::vector<FoundTag>& tags, std::optional<ImagePoint> near,
                        const Raster& photo) {
    const auto to = near.value_or(ImagePoint{0.5 * photo.width(), 0.5 * photo.height()});
    return *std::min_element(tags.begin(), tags.end(), [&](const auto& a, const auto& b) {
        const auto p = a.symbol.centre();
        const auto q = b.symbol.centre();
        return std::hypot(p.x - to.x, p.y - to.y) < std::hypot(q.x - to.x, q.y - to.y);
    });
}

}  // namespace

Result<Survey> survey(const Raster& photo, std::optional<ImagePoint> near,
                      const MeasureRules& rules) {
    const auto marks = findMarks(photo);
    if (marks.isMirrored) return refuse({"measure.mirrored"});
    Survey found;
    found.photoWidth = photo.width();
    found.photoHeight = photo.height();
    for (const auto& tag : marks.tags) found.codes.push_back(tag.tag.code);
    if (marks.tags.size() == 1) found.code = marks.tags.front().tag.code;
    if (!marks.mat.empty()) return surveyMat(photo, marks, std::move(found), rules);
    if (!marks.tags.empty()) {
        return surveyTag(photo, nearest(marks.tags, near, photo), std::move(found), rules);
    }
    if (looksBlurred(greyCopy(photo, 1600), rules)) return refuse({"measure.blurred"});
    return refuse({"measure.nothing"});
}

}  // namespace burrow::measure
