#include "measure/find.h"

#include <algorithm>
#include <cmath>

#include "measure/homography.h"
#include "measure/two_threads.h"

namespace burrow::measure {
namespace {

using tags::Effort;

/// The longest sides, in pixels, in which it is looked for: squares are some hundred pixels wide in the
/// first, and hardly ever wanted finer than in the second.
constexpr int quickSide = 1600;
constexpr int finerSide = 2600;

bool isSamePlace(const tags::FoundSymbol& a, const tags::FoundSymbol& b) {
    const auto p = a.centre();
    const auto q = b.centre();
    const double side =
        std::hypot(a.corners[0].x - a.corners[2].x, a.corners[0].y - a.corners[2].y);
    return std::hypot(p.x - q.x, p.y - q.y) < 0.5 * side;
}

template <class Found>
bool isKnown(const std::vector<Found>& all, const tags::FoundSymbol& symbol) {
    return std::any_of(all.begin(), all.end(), [&](const Found& each) {
        return each.symbol.bytes == symbol.bytes && isSamePlace(each.symbol, symbol);
    });
}

/// Twice as wide and high, between pixels by straight lines: where modules have few pixels, more of the
/// symbols are read.
GreyCopy enlarged(const GreyCopy& copy) {
    GreyCopy result{2 * copy.width, 2 * copy.height, 1, {}};
    result.pixels.reserve(4 * copy.pixels.size());
    // The middles of the new pixels lie a quarter beside those of the old.
    const auto near = [](int at, int most) {
        return std::clamp(at / 2 + (at % 2 == 0 ? -1 : 1), 0, most);
    };
    const auto value = [&](int x, int y) {
        return int{copy.pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(copy.width) +
                               static_cast<std::size_t>(x)]};
    };
    for (int y = 0; y < result.height; ++y) {
        const int row = y / 2, otherRow = near(y, copy.height - 1);
        for (int x = 0; x < result.width; ++x) {
            const int column = x / 2, otherColumn = near(x, copy.width - 1);
            const int sum = 9 * value(column, row) + 3 * value(otherColumn, row) +
                            3 * value(column, otherRow) + value(otherColumn, otherRow);
            result.pixels.push_back(static_cast<std::uint8_t>((sum + 8) / 16));
        }
    }
    return result;
}

/// A part of the photo in grey, at its full size.
GreyCopy cutOut(const pictures::Raster& photo, int left, int top, int right, int bottom) {
    GreyCopy copy{right - left, bottom - top, 1, {}};
    copy.pixels.reserve(static_cast<std::size_t>(copy.width) *
                        static_cast<std::size_t>(copy.height));
    for (int y = top; y < bottom; ++y) {
        const auto* pixel = photo.row(y) + 3 * left;
        for (int x = left; x < right; ++x, pixel += 3) {
            copy.pixels.push_back(pixel[1]);
        }
    }
    return copy;
}

/// With three corners known it is clear where the fourth must be: there every pixel is looked at.
void lookForMissing(FoundMarks& marks, const pictures::Raster& photo) {
    const auto& first = marks.mat.front().mark;
    const auto& layout = layoutOf(first.paper);
    std::vector<PointPair> pairs;
    for (const auto& [mark, symbol] : marks.mat) {
        if (mark.paper != first.paper) return;
        const auto box = layout.square(mark.corner);
        const double x = box.x.value, y = box.y.value, side = box.width.value;
        pairs.push_back({{x, y}, symbol.corners[0]});
        pairs.push_back({{x + side, y}, symbol.corners[1]});
        pairs.push_back({{x + side, y + side}, symbol.corners[2]});
        pairs.push_back({{x, y + side}, symbol.corners[3]});
    }
    const auto h = directHomography(pairs);
    if (!h) return;
    for (const auto corner : matCorners) {
        const auto has = [&](const FoundMark& each) { return each.mark.corner == corner; };
        if (std::any_of(marks.mat.begin(), marks.mat.end(), has)) continue;
        const auto box = layout.square(corner);
        const double margin = 0.6 * box.width.value;
        double left = photo.width(), right = 0, top = photo.height(), bottom = 0;
        for (const double dx : {-margin, box.width.value + margin}) {
            for (const double dy : {-margin, box.height.value + margin}) {
                const auto at = mapped(*h, {box.x.value + dx, box.y.value + dy});
                left = std::min(left, at.x);
                right = std::max(right, at.x);
                top = std::min(top, at.y);
                bottom = std::max(bottom, at.y);
            }
        }
        const auto inside = [](double value, int most) {
            return static_cast<int>(std::clamp(value, 0.0, static_cast<double>(most)));
        };
        const int x = inside(left, photo.width()), y = inside(top, photo.height());
        const auto copy =
            cutOut(photo, x, y, inside(right, photo.width()), inside(bottom, photo.height()));
        if (copy.width < 25 || copy.height < 25) continue;
        addMarks(marks, tags::decode(copy.view(), Effort::thorough), 1,
                 {static_cast<double>(x), static_cast<double>(y)});
    }
}

}  // namespace

std::size_t FoundMarks::corners() const {
    std::array<bool, 4> isSeen{};
    for (const auto& each : mat) isSeen[static_cast<std::size_t>(each.mark.corner)] = true;
    return static_cast<std::size_t>(std::count(isSeen.begin(), isSeen.end(), true));
}

bool readsBetterMirrored(const FoundMarks& marks, const tags::LumaView& picture) {
    GreyCopy turned{picture.width, picture.height, 1, {}};
    turned.pixels.reserve(static_cast<std::size_t>(picture.width) *
                          static_cast<std::size_t>(picture.height));
    for (int y = 0; y < picture.height; ++y) {
        const auto* row = picture.pixels + static_cast<std::ptrdiff_t>(y) * picture.stride;
        for (int x = picture.width; x-- > 0;) turned.pixels.push_back(row[x]);
    }
    FoundMarks other;
    addMarks(other, tags::decode(turned.view(), Effort::fast), 1, {});
    return other.corners() > marks.corners() ||
           (marks.mat.empty() && other.tags.size() > marks.tags.size());
}

GreyCopy greyCopy(const pictures::Raster& photo, int longest) {
    GreyCopy copy;
    const int side = std::max(photo.width(), photo.height());
    copy.factor = std::max(1, (2 * side + longest) / (2 * longest));
    const int f = copy.factor;
    copy.width = photo.width() / f;
    copy.height = photo.height() / f;
    copy.pixels.resize(static_cast<std::size_t>(copy.width) *
                       static_cast<std::size_t>(copy.height));
    // Every second row of larger squares is enough, and so is green, which has the least noise.
    const int skip = f >= 3 ? 2 : 1;
    constexpr int green = 1;
    const auto count = static_cast<std::uint32_t>(f * ((f + skip - 1) / skip));
    constexpr int bandRows = 32;
    const auto bands = static_cast<std::size_t>((copy.height + bandRows - 1) / bandRows);
    onTwoThreads(bands, [&](std::size_t band) {
        std::vector<std::uint32_t> sums(static_cast<std::size_t>(copy.width));
        const int first = static_cast<int>(band) * bandRows;
        for (int y = first; y < std::min(copy.height, first + bandRows); ++y) {
            std::fill(sums.begin(), sums.end(), 0U);
            for (int i = 0; i < f; i += skip) {
                const auto* pixel = photo.row(y * f + i) + green;
                for (auto& sum : sums) {
                    std::uint32_t across = 0;
                    for (int k = 0; k < f; ++k, pixel += 3) across += *pixel;
                    sum += across;
                }
            }
            auto* out = copy.pixels.data() + static_cast<std::ptrdiff_t>(y) * copy.width;
            for (const auto sum : sums) *out++ = static_cast<std::uint8_t>(sum / count);
        }
    });
    return copy;
}

void addMarks(FoundMarks& marks, std::span<const tags::FoundSymbol> symbols, double factor,
              ImagePoint offset) {
    for (auto symbol : symbols) {
        for (auto& corner : symbol.corners) {
            corner = {factor * corner.x + offset.x, factor * corner.y + offset.y};
        }
        if (const auto mark = parseMatPayload(symbol.bytes)) {
            if (!isKnown(marks.mat, symbol)) marks.mat.push_back({*mark, symbol});
        } else if (const auto reading = tags::parsePayload(symbol.bytes);
                   const auto* own = std::get_if<tags::OwnTag>(&reading)) {
            if (!isKnown(marks.tags, symbol)) marks.tags.push_back({*own, symbol});
        }
    }
}

FoundMarks findMarks(const pictures::Raster& photo) {
    FoundMarks marks;
    const auto look = [&](const GreyCopy& copy, Effort effort) {
        addMarks(marks, tags::decode(copy.view(), effort), copy.factor, {});
        return marks.corners() == 4;
    };
    const auto quick = greyCopy(photo, quickSide);
    if (look(quick, Effort::fast) || look(quick, Effort::thorough)) return marks;
    if (marks.corners() == 3) lookForMissing(marks, photo);
    if (marks.corners() == 4) return marks;
    if (quick.factor > 1 && look(greyCopy(photo, finerSide), Effort::thorough)) return marks;
    if (marks.corners() == 3) lookForMissing(marks, photo);
    constexpr int small = 2200;  // on the longer side
    if (marks.corners() < 4 && std::max(photo.width(), photo.height()) <= small) {
        const auto large = enlarged(greyCopy(photo, small));
        addMarks(marks, tags::decode(large.view(), Effort::thorough), 0.5, {});
        if (marks.corners() == 4) return marks;
    }
    marks.isMirrored = readsBetterMirrored(marks, quick.view());
    return marks;
}

}  // namespace burrow::measure
