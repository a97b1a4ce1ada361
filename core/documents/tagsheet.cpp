#include "documents/tagsheet.h"

#include <algorithm>
#include <cmath>

#include "documents/cautions.h"
#include "tags/code.h"
#include "tags/symbol.h"

namespace burrow::documents {
namespace {

using namespace literals;

constexpr Millimetres tagWidth = 62_mm;
constexpr Millimetres tagHeight = 29_mm;
constexpr Stroke cutLine{0.2_mm, Ink::grey};

/// Heading and proof bar stand above the tags, the instructions below.
constexpr Millimetres above = 15_mm;
constexpr Millimetres below = 12_mm;
/// What hardly any printer reaches at the sides.
constexpr Millimetres side = 8_mm;

// Places inside a tag, from its top left corner.
constexpr Millimetres textLeft = 2.4_mm;
constexpr Millimetres textRight = 34.8_mm;
constexpr Millimetres ruleAt = 12.3_mm;
/// The square stands in the middle, so far from the right edge that the cut line keeps out of its
/// quiet zone.
constexpr Millimetres squareLeft = 38.5_mm;
constexpr Millimetres squareTop = 4.5_mm;
constexpr Millimetres markHeight = 3.5_mm;
constexpr Millimetres markGap = 0.7_mm;
constexpr Millimetres lowestMark = 24.1_mm;

struct Grid {
    std::size_t columns;
    std::size_t rows;
    Millimetres left;
    Millimetres top;

    [[nodiscard]] std::size_t size() const { return columns * rows; }
    [[nodiscard]] Point corner(std::size_t index) const {
        const std::size_t row = index / columns;
        const std::size_t column = index % columns;
        return {left + static_cast<double>(column) * tagWidth,
                top + static_cast<double>(row) * tagHeight};
    }
    [[nodiscard]] Millimetres right() const {
        return left + static_cast<double>(columns) * tagWidth;
    }
    [[nodiscard]] Millimetres bottom() const { return top + static_cast<double>(rows) * tagHeight; }
};

Grid gridOn(const Page& page) {
    const auto count = [](Millimetres room, Millimetres each) { return std::floor(room / each); };
    const double columns = count(page.width - 2 * side, tagWidth);
    const double rows = count(page.height - above - below, tagHeight);
    return {static_cast<std::size_t>(columns), static_cast<std::size_t>(rows),
            0.5 * (page.width - columns * tagWidth), above};
}

/// What every tag of a sheet is drawn with.
struct Pen {
    Page& page;
    const Words& words;
    const TextMeasure& measure;
};

/// A bar whose outer edges are 50 mm apart.
void addProofBar(Page& page, Millimetres right) {
    constexpr Millimetres length = 50_mm;
    constexpr Millimetres y = 8.6_mm;
    constexpr Stroke stroke{0.3_mm};
    const auto left = right - length;
    page.add(Line{{left, y}, {right, y}, stroke});
    for (const auto x : {left + 0.5 * stroke.width, right - 0.5 * stroke.width}) {
        page.add(Line{{x, y - 1.5_mm}, {x, y + 1.5_mm}, stroke});
    }
}

void addMargins(const Pen& pen, const Grid& grid, const std::string& heading,
                const std::string& instructions) {
    constexpr Millimetres baseline = 9.8_mm;
    const auto barLeft = grid.right() - 50_mm;
    pen.page.add(fitLine(
        pen.measure,
        {{grid.left, baseline}, heading, {Face::work, Weight::bold, 10_pt}, Align::left, 72_mm},
        8_pt));
    pen.page.add(fitLine(pen.measure,
                         {{barLeft - 2_mm, baseline},
                          pen.words.say("tagSheet.proof"),
                          {Face::work, Weight::regular, 10_pt},
                          Align::right,
                          barLeft - grid.left - 76_mm},
                         8_pt));
    addProofBar(pen.page, grid.right());
    for (const auto& line : fitLines(pen.measure,
                                     {{grid.left, grid.bottom() + 5.6_mm},
                                      instructions,
                                      {Face::work, Weight::regular, 9_pt},
                                      Align::left,
                                      grid.right() - grid.left},
                                     8_pt, 2, 4_mm)) {
        pen.page.add(line);
    }
}

/// The outline to cut, the mark to punch and the square: what every tag has.
void addTagFrame(const Pen& pen, Point at, const tags::Symbol& symbol) {
    pen.page.add(Rectangle{{at.x, at.y, tagWidth, tagHeight}, {}, {}, cutLine});
    const Point hole{at.x + 4.2_mm, at.y + 4.4_mm};
    constexpr Millimetres radius = 1.9_mm;
    constexpr Stroke fine{0.2_mm};
    pen.page.add(Disc{hole, radius, {}, fine});
    pen.page.add(Line{{hole.x - 0.6 * radius, hole.y}, {hole.x + 0.6 * radius, hole.y}, fine});
    pen.page.add(Line{{hole.x, hole.y - 0.6 * radius}, {hole.x, hole.y + 0.6 * radius}, fine});
    pen.page.add(SymbolMark{{at.x + squareLeft, at.y + squareTop}, symbolSide, symbol});
}

std::string subjectWord(const TagLabel& label, const Words& words) {
    if (label.form == Form::group) return words.say("tagSheet.group");
    if (label.form == Form::lot) return words.say("tagSheet.lot");
    switch (label.sex) {
        case Sex::female: return words.say("tagSheet.female");
        case Sex::male: return words.say("tagSheet.male");
        case Sex::unknown: break;
    }
    return words.say("tagSheet.unsexed");
}

/// A caution's box with its word, as wide as that needs.
struct Mark {
    Caution caution;
    Text word;
    Millimetres width;
};

std::vector<Mark> marksOf(const Pen& pen, const TagLabel& label, Points size) {
    std::vector<Mark> marks;
    for (const auto caution : label.cautions) {
        Text word{{},
                  cautionWord(caution, pen.words),
                  {Face::work, Weight::semibold, size, cautionInk(caution)}};
        word.room = pen.measure.width(word.text, word.style);
        marks.push_back({caution, word, word.room + 4.6_mm});
    }
    return marks;
}

Millimetres widthOf(std::span<const Mark> marks) {
    Millimetres sum;
    for (const auto& mark : marks) sum = sum + mark.width + markGap;
    return marks.empty() ? sum : sum - markGap;
}

/// From right to left along the row whose boxes start at `top`.
void addMarks(Page& page, std::span<Mark> marks, Point at, Millimetres top) {
    auto right = at.x + textRight;
    for (std::size_t i = marks.size(); i-- > 0;) {
        auto& mark = marks[i];
        const Box box{right - mark.width, at.y + top, mark.width, markHeight};
        addCautionBox(page, mark.caution, box, {box.x + 0.8_mm, box.y + 0.6_mm, 2.3_mm, 2.2_mm},
                      0.25_mm);
        mark.word.baseline = {box.x + 3.6_mm, box.bottom() - 1_mm};
        page.add(mark.word);
        right = box.x - markGap;
    }
}

/// The lowest rows of a tag: sex or form at the left, cautions at the right, on a row of their own
/// below it where they need one. Gives the room above the uppermost row.
Millimetres addFootRows(const Pen& pen, Point at, const TagLabel& label) {
    constexpr TextStyle style{Face::work, Weight::regular, 8.5_pt};
    constexpr Millimetres room = textRight - textLeft;
    const auto word = subjectWord(label, pen.words);
    const auto beside = room - pen.measure.width(word, style) - 1_mm;
    auto marks = marksOf(pen, label, 7.5_pt);
    const bool oneRow = widthOf(marks) <= beside;
    if (!oneRow && widthOf(marks) > room) marks = marksOf(pen, label, 7_pt);
    // The first that fit take the lowest row; what is left stands beside the word.
    std::span<Mark> lower(marks);
    while (!oneRow && widthOf(lower) > room) lower = lower.first(lower.size() - 1);
    const auto upper = std::span<Mark>(marks).subspan(lower.size());
    addMarks(pen.page, lower, at, lowestMark);
    const auto top = oneRow ? lowestMark : lowestMark - markHeight - markGap;
    if (!oneRow) addMarks(pen.page, upper, at, top);
    pen.page.add(fitLine(pen.measure,
                         {{at.x + textLeft, at.y + top + 2.6_mm},
                          word,
                          style,
                          Align::left,
                          oneRow ? beside + 1_mm : room - widthOf(upper)},
                         7_pt));
    return top;
}

void addTag(const Pen& pen, Point at, const TagLabel& label, const tags::Symbol& symbol) {
    constexpr Millimetres numberLeft = 8_mm;
    addTagFrame(pen, at, symbol);
    pen.page.add(fitLine(pen.measure,
                         {{at.x + numberLeft, at.y + 10_mm},
                          label.number,
                          {Face::code, Weight::bold, 32_pt},
                          Align::left,
                          textRight - numberLeft},
                         9_pt));
    pen.page.add(Line{{at.x, at.y + ruleAt}, {at.x + textRight, at.y + ruleAt}, {0.3_mm}});
    const auto footTop = addFootRows(pen, at, label);
    auto binomial = fitLines(pen.measure,
                             {{at.x + textLeft, at.y + 15.3_mm},
                              label.species,
                              {Face::latin, Weight::medium, 10.5_pt},
                              Align::left,
                              textRight - textLeft},
                             8.5_pt, 2, 3.2_mm);
    // A single line hangs in the middle between the rule and what stands below.
    if (binomial.size() == 1) {
        binomial[0].baseline.y = at.y + 0.5 * (ruleAt + footTop) + 1.1_mm;
    }
    for (const auto& line : binomial) pen.page.add(line);
}

void addDots(Page& page, Point from, Millimetres length) {
    page.add(Line{from, {from.x + length, from.y}, {0.3_mm, Ink::black, Pattern::dotted}});
}

void addBlankTag(const Pen& pen, Point at, std::string_view code, const tags::Symbol& symbol) {
    addTagFrame(pen, at, symbol);
    addDots(pen.page, {at.x + 8.4_mm, at.y + 11.2_mm}, textRight - 8.4_mm);
    addDots(pen.page, {at.x + textLeft, at.y + 19.4_mm}, textRight - textLeft);
    pen.page.add(fitLine(pen.measure,
                         {{at.x + textLeft, at.y + 26.4_mm},
                          tags::displayCode(code),
                          {Face::code, Weight::semibold, 11_pt},
                          Align::left,
                          textRight - textLeft},
                         9_pt));
}

Result<tags::Symbol> squareOf(std::string_view code) {
    if (!tags::isCode(code)) {
        return fail(Trouble::badInput, {"tag.typed.check", {{"code", std::string(code)}}});
    }
    return tags::encode(tags::payload(code, symbolSide));
}

/// What sets animals' tags and blank stock apart in heading and instructions.
struct SheetKind {
    std::string heading;
    std::string instructions;
};

/// Where and in whose words sheets are made.
struct Making {
    std::string room;
    Paper paper;
    const Words& words;
    const TextMeasure& measure;
};

/// Lays out `count` tags; `add(pen, corner, index)` draws one.
template <class AddTag>
Result<std::vector<Page>> layOut(const Making& making, const SheetKind& kind, std::size_t count,
                                 AddTag add) {
    const auto grid = gridOn(blankPage(making.paper));
    const auto pageCount = (count + grid.size() - 1) / grid.size();
    std::vector<Page> pages;
    for (std::size_t number = 0; number < pageCount; ++number) {
        pages.push_back(blankPage(making.paper));
        const Pen pen{pages.back(), making.words, making.measure};
        const Message heading{kind.heading,
                              {{"room", making.room},
                               {"page", static_cast<std::int64_t>(number + 1)},
                               {"pages", static_cast<std::int64_t>(pageCount)}}};
        addMargins(pen, grid, making.words.say(heading, {}), making.words.say(kind.instructions));
        const auto first = number * grid.size();
        for (auto i = first; i < std::min(count, first + grid.size()); ++i) {
            BURROW_DO(add(pen, grid.corner(i - first), i));
        }
    }
    return pages;
}

}  // namespace

Result<std::vector<Page>> tagSheets(std::string_view room, Paper paper,
                                    std::span<const TagLabel> labels, const Words& words,
                                    const TextMeasure& measure) {
    const Making making{std::string(room), paper, words, measure};
    return layOut(making, {"tagSheet.heading", "tagSheet.instructions"}, labels.size(),
                  [labels](const Pen& pen, Point at, std::size_t index) -> Done {
                      BURROW_TRY(const auto symbol, squareOf(labels[index].code));
                      addTag(pen, at, labels[index], symbol);
                      return {};
                  });
}

Result<std::vector<Page>> blankTagSheets(std::string_view room, Paper paper,
                                         std::span<const std::string> codes, const Words& words,
                                         const TextMeasure& measure) {
    const Making making{std::string(room), paper, words, measure};
    return layOut(making, {"tagSheet.blankHeading", "tagSheet.blankInstructions"}, codes.size(),
                  [codes](const Pen& pen, Point at, std::size_t index) -> Done {
                      BURROW_TRY(const auto symbol, squareOf(codes[index]));
                      addBlankTag(pen, at, codes[index], symbol);
                      return {};
                  });
}

}  // namespace burrow::documents
