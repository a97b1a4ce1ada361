#include "documents/caresheet.h"

#include <algorithm>

#include "documents/carewords.h"
#include "documents/cautions.h"
#include "documents/tagsheet.h"
#include "tags/code.h"

namespace burrow::documents {
namespace {

using namespace literals;

constexpr Millimetres left = 8_mm;
constexpr Millimetres right = 140_mm;
constexpr Millimetres width = right - left;

constexpr Millimetres headerTop = 9_mm;
constexpr Millimetres headerHeight = 28_mm;
/// The square, its quiet zone of four modules and the frame's line.
constexpr Millimetres squareCell = 27.2_mm;
constexpr Stroke frame{0.5_mm};
constexpr Stroke hairline{0.2_mm, Ink::grey};

constexpr Millimetres rulesTop = 84_mm;
constexpr Millimetres ruleNameWidth = 25_mm;
constexpr Millimetres ruleLine = 4.6_mm;
constexpr Millimetres widestRulePad = 6.4_mm;
/// Less than this between two rules and they run into each other.
constexpr Millimetres leastRulePad = 1.6_mm;

constexpr Millimetres cautionHeight = 13_mm;
constexpr Millimetres cautionGap = 1.6_mm;
constexpr Millimetres footTop = 194_mm;

/// Text is never under 10 pt on this sheet, except in its footer.
constexpr Points leastSize = 10_pt;

struct Pen {
    Page& page;
    const CareSheet& sheet;
    const Words& words;
    const TextMeasure& measure;

    void line(Point baseline, const std::string& text, TextStyle style, Align align,
              Millimetres room, Points least = leastSize) const {
        if (text.empty()) return;
        page.add(fitLine(measure, {baseline, text, style, align, room}, least));
    }
};

std::string fullNumber(const CareSheet& sheet) {
    return sheet.roomCode.empty() ? sheet.number : sheet.roomCode + "-" + sheet.number;
}

/// The square of the animal's tag at the right; gives where the rest of the label ends.
Result<Millimetres> addSquare(const Pen& pen) {
    const auto& code = pen.sheet.code;
    if (!code) return right;
    if (!tags::isCode(*code)) {
        return fail(Trouble::badInput, {"tag.typed.check", {{"code", *code}}});
    }
    BURROW_TRY(auto symbol, tags::encode(tags::payload(*code, symbolSide)));
    const auto edge = right - squareCell;
    pen.page.add(Line{{edge, headerTop}, {edge, headerTop + headerHeight}, frame});
    const Point corner{edge + 0.5 * (squareCell - symbolSide),
                       headerTop + 0.5 * (headerHeight - symbolSide)};
    pen.page.add(SymbolMark{corner, symbolSide, std::move(symbol)});
    return edge;
}

Done addHeader(const Pen& pen) {
    pen.page.add(Rectangle{{left, headerTop, width, headerHeight}, {0.7}, {}, frame});
    BURROW_TRY(const auto edge, addSquare(pen));
    constexpr Millimetres divider = headerTop + 15_mm;
    constexpr Millimetres senderWidth = 34_mm;
    constexpr Millimetres numberLeft = left + 14.5_mm;
    pen.page.add(Line{{left, divider}, {edge, divider}, frame});
    pen.page.add(Disc{{left + 7.8_mm, headerTop + 7.6_mm}, 3.1_mm, {}, Stroke{0.3_mm}});
    const auto senderRight = edge - 4_mm;
    pen.line({numberLeft, headerTop + 11_mm}, fullNumber(pen.sheet),
             {Face::code, Weight::bold, 29_pt}, Align::left,
             senderRight - senderWidth - 2_mm - numberLeft, 11_pt);
    pen.line({senderRight, headerTop + 6.6_mm}, pen.sheet.room, {Face::work, Weight::bold, 11_pt},
             Align::right, senderWidth);
    pen.line({senderRight, headerTop + 11.4_mm}, printedDay(pen.sheet.date, pen.words),
             {Face::work, Weight::regular, 10_pt}, Align::right, senderWidth);
    pen.line({left + 4.6_mm, headerTop + 23.4_mm},
             pen.sheet.profile ? pen.sheet.profile->name : pen.sheet.species,
             {Face::latin, Weight::medium, 22_pt}, Align::left, edge - left - 8_mm, 12_pt);
    return {};
}

void addTitle(const Pen& pen) {
    pen.line({left, 48.4_mm}, pen.words.say("careSheet.title"), {Face::work, Weight::bold, 21_pt},
             Align::left, 70_mm);
    pen.line({right, 48.4_mm}, pen.words.say("careSheet.keep"),
             {Face::work, Weight::regular, 10.5_pt}, Align::right, 56_mm);
    constexpr TextStyle style{Face::work, Weight::regular, 11_pt};
    pen.line({left, 54.4_mm}, subjectLine(pen.sheet, pen.words), style, Align::left, width);
    pen.line({left, 59.4_mm}, recentLine(pen.sheet, pen.words), style, Align::left, width);
}

void addMoults(const Pen& pen) {
    const auto& sheet = pen.sheet;
    const MoultLine line{sheet.hatched,       sheet.acquired, sheet.moults, sheet.meals,
                         sheet.hardeningDays, sheet.date,     sheet.sold};
    addMoultLine(pen.page, line, {left, 62_mm, width, 19_mm}, pen.words, pen.measure);
}

/// A rule whose line has been broken to its room; baselines are relative to the first.
struct FittedRule {
    std::string name;
    std::vector<Text> lines;
};

std::vector<FittedRule> fitRules(const Pen& pen, std::size_t most) {
    std::vector<FittedRule> rules;
    for (auto& rule : careRules(pen.sheet, pen.words)) {
        const Text line{{left + ruleNameWidth, {}},
                        std::move(rule.line),
                        {Face::work, Weight::regular, 10.75_pt},
                        Align::left,
                        width - ruleNameWidth};
        rules.push_back(
            {std::move(rule.name), fitLines(pen.measure, line, leastSize, most, ruleLine)});
    }
    return rules;
}

/// What is left between two rules when they fill `room`.
Millimetres padOf(const std::vector<FittedRule>& rules, Millimetres room) {
    for (const auto& rule : rules) room = room - static_cast<double>(rule.lines.size()) * ruleLine;
    return std::min(widestRulePad, (1.0 / static_cast<double>(rules.size())) * room);
}

/// Gives where the last rule ends.
Millimetres addRules(const Pen& pen, Millimetres lowest) {
    auto rules = fitRules(pen, 2);
    auto pad = padOf(rules, lowest - rulesTop);
    if (pad < leastRulePad) {
        rules = fitRules(pen, 1);
        pad = padOf(rules, lowest - rulesTop);
    }
    auto top = rulesTop;
    pen.page.add(Line{{left, top}, {right, top}, {0.5_mm}});
    for (const auto& rule : rules) {
        const auto baseline = top + 0.5 * pad + 3.5_mm;
        pen.line({left, baseline}, rule.name, {Face::work, Weight::bold, 10_pt}, Align::left,
                 ruleNameWidth - 1_mm);
        for (auto line : rule.lines) {
            line.baseline.y = line.baseline.y + baseline;
            pen.page.add(std::move(line));
        }
        top = top + pad + static_cast<double>(rule.lines.size()) * ruleLine;
        pen.page.add(Line{{left, top}, {right, top}, hairline});
    }
    return top;
}

void addCaution(const Pen& pen, Caution caution, Millimetres top) {
    const Box box{left, top, width, cautionHeight};
    addCautionBox(pen.page, caution, box, {left + 3.6_mm, top + 2.2_mm, 9.4_mm, 8.6_mm}, 0.6_mm);
    constexpr Millimetres textLeft = left + 16.6_mm;
    constexpr Millimetres room = right - textLeft - 3_mm;
    const auto ink = cautionInk(caution);
    pen.line({textLeft, top + 5.5_mm}, cautionHeading(caution, pen.words),
             {Face::work, Weight::bold, 11_pt, ink}, Align::left, room);
    pen.line({textLeft, top + 10.4_mm}, cautionAdvice(caution, pen.words),
             {Face::work, Weight::regular, 10.5_pt, ink}, Align::left, room);
}

void addFooter(const Pen& pen) {
    constexpr Millimetres codeWidth = 28_mm;
    pen.page.add(Line{{left, footTop}, {right, footTop}, hairline});
    if (!pen.sheet.contact.empty()) {
        pen.line({left, footTop + 4.4_mm},
                 pen.words.say({"careSheet.contact", {{"contact", pen.sheet.contact}}}, {}),
                 {Face::work, Weight::regular, 9.5_pt}, Align::left, width - codeWidth - 2_mm,
                 8_pt);
    }
    pen.line({right, footTop + 4.4_mm},
             pen.words.say({"careSheet.revision",
                            {{"revision", static_cast<std::int64_t>(pen.sheet.revision)}}},
                           {}),
             {Face::code, Weight::medium, 9_pt}, Align::right, codeWidth, 8_pt);
    pen.line({left, footTop + 8.4_mm}, pen.words.say("careSheet.practice"),
             {Face::work, Weight::regular, 8_pt}, Align::left, width, 8_pt);
}

}  // namespace

Result<Page> careSheet(const CareSheet& sheet, const Words& words, const TextMeasure& measure) {
    auto page = blankPage(Paper::a5);
    const Pen pen{page, sheet, words, measure};
    BURROW_DO(addHeader(pen));
    addTitle(pen);
    addMoults(pen);

    const auto cautions =
        sheet.profile ? burrow::cautions(*sheet.profile) : std::vector<Caution>{Caution::unknown};
    const auto trade = tradeLine(sheet, words);
    const auto lowest = trade.empty() ? footTop - 2.5_mm : footTop - 7.6_mm;
    const auto each = cautionHeight + cautionGap;
    const auto height = static_cast<double>(cautions.size()) * each;
    const auto rulesEnd = addRules(pen, lowest - height - 2_mm);
    auto top = std::min(rulesEnd + 4.6_mm, lowest - height + cautionGap);
    for (const auto caution : cautions) {
        addCaution(pen, caution, top);
        top = top + each;
    }
    pen.line({left, footTop - 2.2_mm}, trade, {Face::work, Weight::regular, 10.5_pt}, Align::left,
             width);
    addFooter(pen);
    return page;
}

}  // namespace burrow::documents
