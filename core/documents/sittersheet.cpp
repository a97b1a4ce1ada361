#include "documents/sittersheet.h"

#include "documents/cautions.h"
#include "documents/flow.h"

namespace burrow::documents {
namespace {

using namespace literals;

constexpr Stroke frame{0.5_mm};
constexpr Stroke hairline{0.2_mm, Ink::grey};

constexpr TextStyle titleStyle{Face::work, Weight::bold, 20_pt};
constexpr TextStyle headingStyle{Face::work, Weight::bold, 13_pt};
constexpr TextStyle strongStyle{Face::work, Weight::bold, 10.5_pt};
constexpr TextStyle textStyle{Face::work, Weight::regular, 10.5_pt};
constexpr TextStyle numberStyle{Face::code, Weight::bold, 11_pt};
constexpr TextStyle speciesStyle{Face::latin, Weight::medium, 11_pt};
constexpr TextStyle footStyle{Face::work, Weight::regular, 8_pt};
constexpr Points leastSize = 8_pt;

constexpr Millimetres boxSide = 3.2_mm;
constexpr Millimetres boxIndent = 5.5_mm;

constexpr Millimetres tubWidth = 15_mm;
constexpr Millimetres tubHeight = 6.4_mm;
constexpr Millimetres tubGap = 1.4_mm;

class Writer {
public:
    Writer(const SitterSheet& sheet, Paper paper, const Words& words, const TextMeasure& measure)
        : sheet_(sheet), words_(words), measure_(measure), flow_(paper, measure) {}

    std::vector<Page> write() {
        head();
        always();
        shutHomes();
        for (const auto& visit : sheet_.visits) this->visit(visit);
        map();
        cautions();
        auto pages = std::move(flow_).finish();
        for (std::size_t i = 0; i < pages.size(); ++i) foot(pages[i], i + 1, pages.size());
        return pages;
    }

private:
    [[nodiscard]] std::string say(std::string_view id) const { return words_.say(id); }
    [[nodiscard]] std::string day(CivilDay day) const { return words_.longDay(day); }

    void heading(const std::string& text, Millimetres with) {
        flow_.skip(3.5_mm);
        flow_.keepTogether(Flow::pitch(headingStyle) + with + 2_mm);
        flow_.paragraph(text, headingStyle);
        flow_.page().add(Line{
            {flow_.left(), flow_.top() + 0.6_mm}, {flow_.right(), flow_.top() + 0.6_mm}, frame});
        flow_.skip(2_mm);
    }

    void head() {
        flow_.paragraph(say("sitter.title"), titleStyle);
        flow_.skip(1_mm);
        flow_.paragraph(
            words_.say(
                {"sitter.days",
                 {{"room", sheet_.room}, {"from", day(sheet_.from)}, {"to", day(sheet_.to)}}},
                sheet_.date),
            textStyle);
        flow_.skip(2_mm);
        const auto top = flow_.top();
        flow_.skip(2_mm);
        constexpr Millimetres indent = 3_mm;
        flow_.paragraph(say("sitter.call"), strongStyle, indent);
        flow_.paragraph(sheet_.contact.empty() ? say("sitter.call.blank") : sheet_.contact,
                        textStyle, indent);
        if (!sheet_.call.empty()) flow_.paragraph(sheet_.call, textStyle, indent);
        flow_.paragraph(say("sitter.emergency"), strongStyle, indent);
        flow_.skip(2_mm);
        flow_.page().add(
            Rectangle{{flow_.left(), top, flow_.width(), flow_.top() - top}, {0.7}, {}, frame});
    }

    void always() {
        heading(say("sitter.always"), 10_mm);
        for (const auto* id :
             {"sitter.always.look", "sitter.always.shut", "sitter.always.moult",
              "sitter.always.leftovers", "sitter.always.escaped", "sitter.always.doubt"}) {
            flow_.paragraph(say(id), textStyle);
            flow_.skip(0.6_mm);
        }
    }

    void shutHomes() {
        if (sheet_.shut.empty()) return;
        heading(
            words_.say({"sitter.shut", {{"count", static_cast<std::int64_t>(sheet_.shut.size())}}},
                       sheet_.date),
            12_mm);
        flow_.paragraph(say("sitter.shut.why"), textStyle);
        flow_.skip(1_mm);
        const auto numberWidth = 17_mm;
        for (const auto& home : sheet_.shut) {
            const auto whyHeight = flow_.heightOf(home.why, textStyle, numberWidth);
            flow_.keepTogether(Flow::pitch(speciesStyle) + whyHeight + 1.5_mm);
            const auto half = 0.5 * (flow_.width() - numberWidth);
            flow_.cell(home.number, numberStyle, flow_.left(), numberWidth - 1_mm, leastSize);
            flow_.cell(home.species, speciesStyle, flow_.left() + numberWidth, half - 2_mm,
                       leastSize);
            flow_.cell(home.place, textStyle, flow_.left() + numberWidth + half, half, leastSize);
            flow_.skip(Flow::pitch(speciesStyle));
            flow_.paragraph(home.why, textStyle, numberWidth);
            rule();
        }
    }

    void rule() {
        flow_.page().add(Line{
            {flow_.left(), flow_.top() + 0.5_mm}, {flow_.right(), flow_.top() + 0.5_mm}, hairline});
        flow_.skip(1.2_mm);
    }

    void visit(const SitterSheet::Visit& visit) {
        heading(day(visit.day), 12_mm);
        for (const auto& shelf : visit.shelves) {
            flow_.keepTogether(2 * Flow::pitch(textStyle));
            flow_.paragraph(shelf.place, strongStyle);
            for (const auto& line : shelf.lines) {
                flow_.keepTogether(flow_.heightOf(line, textStyle, boxIndent));
                const auto top = flow_.top() + 0.7_mm;
                flow_.page().add(
                    Rectangle{{flow_.left(), top, boxSide, boxSide}, {}, {}, Stroke{0.3_mm}});
                flow_.paragraph(line, textStyle, boxIndent);
                flow_.skip(0.5_mm);
            }
            flow_.skip(0.8_mm);
        }
    }

    void map() {
        heading(say("sitter.map"), 24_mm);
        flow_.paragraph(say("sitter.map.key"), textStyle);
        flow_.skip(1.5_mm);
        for (const auto& shelf : sheet_.map) {
            flow_.keepTogether(Flow::pitch(strongStyle) + tubHeight + tubGap);
            flow_.paragraph(shelf.place, strongStyle);
            auto x = flow_.left();
            for (const auto& tub : shelf.tubs) {
                if (x + tubWidth > flow_.right()) {
                    x = flow_.left();
                    flow_.skip(tubHeight + tubGap);
                    flow_.keepTogether(tubHeight + tubGap);
                }
                this->tub(tub, x);
                x = x + tubWidth + tubGap;
            }
            flow_.skip(tubHeight + tubGap + 1_mm);
        }
    }

    void tub(const SitterSheet::Tub& tub, Millimetres x) {
        const Box box{x, flow_.top(), tubWidth, tubHeight};
        const auto fill = tub.isShut ? std::optional(Ink::black) : std::nullopt;
        flow_.page().add(Rectangle{box, {0.6}, fill, Stroke{0.3_mm}});
        auto style = numberStyle;
        style.ink = tub.isShut ? Ink::white : Ink::black;
        flow_.page().add(fitLine(measure_,
                                 {{x + 0.5 * tubWidth, flow_.top() + 4.6_mm},
                                  tub.number,
                                  style,
                                  Align::centre,
                                  tubWidth - 1.4_mm},
                                 6_pt));
    }

    void cautions() {
        if (sheet_.cautions.empty()) return;
        heading(say("sitter.cautions"), 16_mm);
        constexpr Millimetres height = 13_mm;
        for (const auto caution : sheet_.cautions) {
            flow_.keepTogether(height + 1.6_mm);
            const auto top = flow_.top();
            addCautionBox(flow_.page(), caution, {flow_.left(), top, flow_.width(), height},
                          {flow_.left() + 3.6_mm, top + 2.2_mm, 9.4_mm, 8.6_mm}, 0.6_mm);
            auto strong = strongStyle;
            auto plain = textStyle;
            strong.ink = plain.ink = cautionInk(caution);
            const auto x = flow_.left() + 16.6_mm;
            const auto room = flow_.right() - x - 3_mm;
            flow_.page().add(fitLine(
                measure_,
                {{x, top + 5.5_mm}, cautionHeading(caution, words_), strong, Align::left, room},
                leastSize));
            flow_.page().add(fitLine(
                measure_,
                {{x, top + 10.4_mm}, cautionAdvice(caution, words_), plain, Align::left, room},
                leastSize));
            flow_.skip(height + 1.6_mm);
        }
    }

    void foot(Page& page, std::size_t number, std::size_t count) const {
        const auto top = flow_.bottom() + 2_mm;
        page.add(Line{{flow_.left(), top}, {flow_.right(), top}, hairline});
        const auto line = words_.say({"sitter.foot",
                                      {{"room", sheet_.room},
                                       {"day", day(sheet_.date)},
                                       {"page", static_cast<std::int64_t>(number)},
                                       {"count", static_cast<std::int64_t>(count)}}},
                                     sheet_.date);
        const auto lines = {line, say("sitter.estimate"), say("careSheet.practice")};
        auto baseline = top + 3.4_mm;
        for (const auto& text : lines) {
            page.add(fitLine(
                measure_, {{flow_.left(), baseline}, text, footStyle, Align::left, flow_.width()},
                6_pt));
            baseline = baseline + 3.4_mm;
        }
    }

    const SitterSheet& sheet_;
    const Words& words_;
    const TextMeasure& measure_;
    Flow flow_;
};

}  // namespace

Result<std::vector<Page>> sitterSheets(const SitterSheet& sheet, Paper paper, const Words& words,
                                       const TextMeasure& measure) {
    if (sheet.map.empty()) return fail(Trouble::badInput, {"print.nothing"});
    return Writer(sheet, paper, words, measure).write();
}

}  // namespace burrow::documents
