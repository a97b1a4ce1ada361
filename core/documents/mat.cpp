#include "documents/mat.h"

#include "tags/symbol.h"

namespace burrow::documents {
namespace {

using namespace literals;
using measure::MatBox;
using measure::MatLayout;

struct Pen {
    Page& page;
    const Words& words;
    const TextMeasure& measure;

    void line(Point baseline, const Message& message, Points size, Align align, Millimetres room,
              Weight weight = Weight::regular) const {
        page.add(fitLine(
            measure, {baseline, words.say(message, {}), {Face::work, weight, size}, align, room},
            6_pt));
    }
};

Box boxOf(const MatBox& box) { return {box.x, box.y, box.width, box.height}; }

/// Marks of a millimetre, longer ones at five and ten; the outer edges of the first and the last are a
/// bar apart.
void addRuler(const Pen& pen, const MatLayout& layout) {
    constexpr Millimetres thin = 0.15_mm;
    const auto zero = layout.ruler;
    const auto end = zero.x + measure::barLength;
    pen.page.add(Line{{zero.x, zero.y}, {end, zero.y}, {0.3_mm}});
    const int marks = static_cast<int>(measure::barLength.value);
    for (int mark = 0; mark <= marks; ++mark) {
        const Millimetres length = mark % 10 == 0 ? 5_mm : mark % 5 == 0 ? 3.5_mm : 2_mm;
        auto x = zero.x + Millimetres{static_cast<double>(mark)};
        if (mark == 0) x = x + 0.5 * thin;
        if (mark == marks) x = x - 0.5 * thin;
        pen.page.add(Line{{x, zero.y - length}, {x, zero.y}, {thin}});
        if (mark % 10 != 0) continue;
        pen.page.add(Text{{x, zero.y + 3_mm},
                          std::to_string(mark),
                          {Face::code, Weight::regular, 7_pt},
                          Align::centre,
                          8_mm});
    }
}

void addPlaces(const Pen& pen, const MatLayout& layout) {
    constexpr Stroke place{0.2_mm, Ink::grey, Pattern::dashed};
    pen.page.add(Rectangle{boxOf(layout.moult), 2_mm, {}, place});
    pen.page.add(Rectangle{boxOf(layout.tag), 1_mm, {}, place});
    pen.line({layout.moult.x + 2_mm, layout.moult.y + 4_mm}, {"matSheet.moult"}, 8_pt, Align::left,
             layout.moult.width - 4_mm);
    pen.line({layout.tag.x + 2_mm, layout.tag.y + 4_mm}, {"matSheet.tag"}, 8_pt, Align::left,
             layout.tag.width - 4_mm);
}

/// The grey patch, and beside it what to know before the first photo.
void addFoot(const Pen& pen, const MatLayout& layout, const measure::MatName& name) {
    const auto& grey = layout.grey;
    pen.page.add(Rectangle{boxOf(grey), 0_mm, Ink::grey, {}});
    const auto left = grey.x + grey.width + 2_mm;
    const auto room = layout.squares[2].x - 4_mm - left;
    const std::array lines{
        Message{"matSheet.print"}, Message{"matSheet.bar", {{"mm", measure::barLength.value}}},
        Message{"matSheet.copy"},
        Message{"matSheet.grey", {{"level", static_cast<std::int64_t>(measure::greyLevel)}}},
        Message{"matSheet.name", {{"name", name}}}};
    constexpr Millimetres pitch = 3.4_mm;
    auto baseline = grey.y + 2.4_mm;
    for (const auto& message : lines) {
        const auto text = pen.words.say(message, {});
        for (const auto& line : fitLines(
                 pen.measure,
                 {{left, baseline}, text, {Face::work, Weight::regular, 7.5_pt}, Align::left, room},
                 6_pt, 2, pitch)) {
            pen.page.add(line);
            baseline = line.baseline.y + pitch;
        }
    }
}

}  // namespace

Result<Page> matPage(measure::MatPaper paper, const measure::MatName& name, const Words& words,
                     const TextMeasure& measure) {
    if (!measure::isMatName(name)) {
        return fail(Trouble::badInput, {"measure.badName", {{"name", name}}});
    }
    const auto& layout = measure::layoutOf(paper);
    auto page = blankPage(paper == measure::MatPaper::a5 ? Paper::a5 : Paper::a4);
    const Pen pen{page, words, measure};
    for (const auto corner : measure::matCorners) {
        BURROW_TRY(auto symbol, tags::encode(measure::matPayload({paper, corner, name})));
        const auto box = layout.square(corner);
        page.add(SymbolMark{{box.x, box.y}, box.width, std::move(symbol)});
    }
    addPlaces(pen, layout);
    addRuler(pen, layout);
    addFoot(pen, layout, name);
    return page;
}

}  // namespace burrow::documents
