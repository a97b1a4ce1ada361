// Sheets as drawing commands: what stands on them, and where.
#include <QtTest>

#include <algorithm>

#include "../documents/ink.h"
#include "../documents/page_text.h"
#include "../documents/pictures.h"
#include "../documents/plain_measure.h"
#include "../documents/samples.h"
#include "documents/carewords.h"
#include "documents/cautions.h"
#include "support/assets.h"

using namespace burrow;
using namespace burrow::documents;
using test::commandsOf;
using test::textsOf;

namespace {

bool contains(const std::vector<std::string>& texts, std::string_view part) {
    return std::any_of(texts.begin(), texts.end(),
                       [part](const std::string& t) { return t.find(part) != std::string::npos; });
}

}  // namespace

class TestDocuments : public QObject {
    Q_OBJECT

    const Words words = test::englishWords();
    const test::PlainMeasure measure{};

    [[nodiscard]] std::vector<Page> sheets(Paper paper, const std::vector<TagLabel>& labels) const {
        return tagSheets("Kiln Row", paper, labels, words, measure).value();
    }

private slots:
    // ISO 216 for A4 and A5; the letter of ANSI/ASME Y14.1 is 8.5 by 11 inches.
    void paperSizes() {
        QCOMPARE(blankPage(Paper::a4).width, Millimetres{210});
        QCOMPARE(blankPage(Paper::a4).height, Millimetres{297});
        QCOMPARE(blankPage(Paper::a5).width, Millimetres{148});
        QCOMPARE(blankPage(Paper::a5).height, Millimetres{210});
        QCOMPARE(blankPage(Paper::letter).width.value, 8.5 * 25.4);
        QCOMPARE(blankPage(Paper::letter).height.value, 11 * 25.4);
    }

    void aPointIsASeventySecondOfAnInch() { QCOMPARE(toMillimetres(Points{72}).value, 25.4); }

    void shrinksBeforeItShortens() {
        const Text text{{}, "0123456789", {Face::work, Weight::regular, {10}}, Align::left, {14}};
        const auto smaller = fitLine(measure, text, {7});
        QCOMPARE(smaller.text, text.text);
        QCOMPARE(smaller.style.size, Points{8.75});
        const auto shorter = fitLine(measure, text, {9});
        QCOMPARE(shorter.style.size, Points{9});
        QCOMPARE(shorter.text, std::string("01234567…"));
        QVERIFY(measure.width(shorter.text, shorter.style) <= text.room);
        auto narrow = text;
        narrow.room = Millimetres{0.1};
        QCOMPARE(fitLine(measure, narrow, {9}).text, std::string());
        auto broken = text;
        broken.text = " a\nb\t";
        QCOMPARE(fitLine(measure, broken, {9}).text, std::string("a b"));
        auto greek = text;
        greek.text = "λλλλλλλλλλλ";
        QCOMPARE(fitLine(measure, greek, {10}).text, std::string("λλλλλλλ…"));
    }

    void wrapsAtSpaces() {
        const Text text{{{1}, {2}},
                        "Poecilotheria tigrinawesseli",
                        {Face::latin, Weight::medium, {10}},
                        Align::left,
                        {30}};
        const auto one = fitLines(measure, text, {6}, 2, {3});
        QCOMPARE(one.size(), std::size_t{1});
        const auto two = fitLines(measure, text, {8}, 2, {3});
        QCOMPARE(two.size(), std::size_t{2});
        QCOMPARE(two[0].text, std::string("Poecilotheria"));
        QCOMPARE(two[1].text, std::string("tigrinawesseli"));
        QCOMPARE(two[1].baseline.y, Millimetres{5});
        // 8.5 pt is the largest step that is no higher than the pitch of 3 mm.
        QCOMPARE(two[0].style.size, Points{8.5});
        auto long3 = text;
        long3.text = "one two three four five six seven";
        long3.room = Millimetres{15};
        const auto cut = fitLines(measure, long3, {8}, 2, {3});
        QCOMPARE(cut.size(), std::size_t{2});
        QVERIFY(cut[1].text.ends_with("…"));
    }

    void sheetsHoldWhatThePaperTakes() {
        auto labels = test::labels();
        QCOMPARE(sheets(Paper::a4, labels).size(), std::size_t{1});
        QCOMPARE(commandsOf<SymbolMark>(sheets(Paper::a4, labels)[0]).size(), std::size_t{27});
        QCOMPARE(commandsOf<SymbolMark>(sheets(Paper::letter, labels)[0]).size(), std::size_t{24});
        labels.push_back(labels.front());
        const auto two = sheets(Paper::a4, labels);
        QCOMPARE(two.size(), std::size_t{2});
        QCOMPARE(commandsOf<SymbolMark>(two[1]).size(), std::size_t{1});
        QVERIFY(contains(textsOf(two[1]), "Kiln Row, tag sheet 2 of 2"));
        QVERIFY(sheets(Paper::a4, {}).empty());
    }

    void everySquareHoldsOnlyItsCode() {
        const auto labels = test::labels();
        const auto marks = commandsOf<SymbolMark>(sheets(Paper::a4, labels)[0]);
        for (std::size_t i = 0; i < marks.size(); ++i) {
            QCOMPARE(marks[i].side, Millimetres{20});
            QCOMPARE(marks[i].symbol.size(), 25);
            const auto found =
                tags::decode(test::Picture(marks[i].symbol, 3).view(), tags::Effort::fast);
            QCOMPARE(found.size(), std::size_t{1});
            QCOMPARE(found[0].bytes, tags::payload(labels[i].code, Millimetres{20}));
        }
    }

    void nothingEntersTheQuietZone() {
        for (const auto& page : test::everyPage(words, measure)) {
            for (const auto& mark : commandsOf<SymbolMark>(page)) {
                const auto quiet =
                    (tags::quietZone / static_cast<double>(mark.symbol.size())) * mark.side;
                const Box zone{mark.corner.x - quiet, mark.corner.y - quiet, mark.side + 2 * quiet,
                               mark.side + 2 * quiet};
                for (const auto& text : commandsOf<Text>(page)) {
                    QVERIFY2(!test::overlap(zone, test::inkOf(text, text.room)) ||
                                 !test::overlap(
                                     zone, test::inkOf(text, measure.width(text.text, text.style))),
                             text.text.c_str());
                }
                for (const auto& sign : commandsOf<CautionSign>(page)) {
                    QVERIFY(!test::overlap(zone, sign.box));
                }
                for (const auto& line : commandsOf<Line>(page)) {
                    QVERIFY(!test::overlap(zone, test::inkOf(line)));
                }
                for (const auto& rectangle : commandsOf<Rectangle>(page)) {
                    // An outline goes around the zone or stays away from it.
                    const auto& box = rectangle.box;
                    const auto half = 0.5 * rectangle.outline->width;
                    const bool around =
                        box.x + half < zone.x && box.right() - half > zone.right() &&
                        box.y + half < zone.y && box.bottom() - half > zone.bottom();
                    QVERIFY((around && !rectangle.fill) || !test::overlap(zone, box));
                }
            }
        }
    }

    void textsOfATagKeepApart() {
        const auto page = sheets(Paper::a4, test::labels())[0];
        QCOMPARE(test::clashOn(page, measure, Millimetres{5}), std::string());
    }

    void aTagNamesItsSubject() {
        const auto labels = test::labels();
        const auto texts = textsOf(sheets(Paper::a4, labels)[0]);
        for (const auto& label : labels) {
            QVERIFY2(contains(texts, label.number), label.number.c_str());
        }
        for (const char* part :
             {"Brachypelma hamorii", "tigrinawesseli", "diamantinensis", "female", "male",
              "unsexed", "group", "lot", "strong venom", "venom", "sting", "fast", "hairs",
              "Print at 100 %", "Cut on the grey lines"}) {
            QVERIFY2(contains(texts, part), part);
        }
        // The number is to be readable at 60 cm. Common practice, no source: height 1/200 of the
        // distance; the capitals of the code face are two thirds of its size.
        for (const auto& text : commandsOf<Text>(sheets(Paper::a4, labels)[0])) {
            const bool isNumber = text.style.face == Face::code;
            if (isNumber) QVERIFY(toMillimetres(text.style.size) >= Millimetres{3 * 1.5});
        }
    }

    void blankStockShowsItsCode() {
        const auto codes = test::codes(3);
        const auto page = blankTagSheets("Kiln Row", Paper::a4, codes, words, measure)->front();
        const auto texts = textsOf(page);
        for (const auto& code : codes) QVERIFY(contains(texts, tags::displayCode(code)));
        const auto lines = commandsOf<Line>(page);
        QCOMPARE(std::count_if(lines.begin(), lines.end(),
                               [](const Line& l) { return l.stroke.pattern == Pattern::dotted; }),
                 6);
    }

    void refusesWhatIsNoCode() {
        auto labels = test::labels();
        labels[3].code = "7Q2MZX84";
        QCOMPARE(tagSheets("Kiln Row", Paper::a4, labels, words, measure).error().message.id,
                 std::string("tag.typed.check"));
        auto sheet = test::slingSheet();
        sheet.code = "NOT A CODE";
        QCOMPARE(careSheet(sheet, words, measure).error().trouble, Trouble::badInput);
        sheet.code.reset();
        QVERIFY(commandsOf<SymbolMark>(careSheet(sheet, words, measure).value()).empty());
    }

    void everyTextHasItsWords() {
        for (const auto& page : test::everyPage(words, measure)) {
            for (const auto& text : textsOf(page)) {
                QVERIFY2(text.find('[') == std::string::npos, text.c_str());
                QVERIFY2(text.find("…") == std::string::npos, text.c_str());
            }
        }
    }

    void careSheetSaysWhatMatters() {
        const auto texts = textsOf(careSheet(test::slingSheet(), words, measure).value());
        for (const char* part : {"KR-331",
                                 "Caribena versicolor",
                                 "Kiln Row",
                                 "16 May 2026",
                                 "Unsexed, 11 mm",
                                 "Last moult 27 April 2026",
                                 "Last meal 8 May 2026",
                                 "hatched Nov 2025",
                                 "sold",
                                 "Housing",
                                 "Warmth",
                                 "23 to 26 °C",
                                 "Damp",
                                 "Dampen every 7 days",
                                 "Feeding",
                                 "Every 4 days: 1 cricket, 4 mm",
                                 "24 h",
                                 "After a moult",
                                 "No food for 5 days",
                                 "Refuses food",
                                 "Handling",
                                 "eye doctor",
                                 "Questions: ",
                                 "rev 6",
                                 "1/1"}) {
            QVERIFY2(contains(texts, part), part);
        }
        QVERIFY(!contains(texts, "CITES"));
    }

    void theLastMealWasEaten() {
        auto sheet = test::slingSheet();
        sheet.meals = {{test::on(2026, 5, 2), "cricket", {}, 1, Outcome::part},
                       {test::on(2026, 5, 9), "cricket", {}, 1, Outcome::refused},
                       {test::on(2026, 5, 12), "cricket", {}, 1, Outcome::leftIn}};
        QCOMPARE(recentLine(sheet, words),
                 std::string("Last moult 27 April 2026. Last meal 2 May 2026."));
        sheet.moults.clear();
        sheet.meals.clear();
        QCOMPARE(recentLine(sheet, words), std::string());
    }

    void careSheetOfADangerousOne() {
        const auto page = careSheet(test::crowdedSheet(), words, measure).value();
        const auto texts = textsOf(page);
        for (const char* part :
             {"Poecilotheria tigrinawesseli", "seek medical care at once", "After a sting",
              "CITES Appendix II as of 26 November 2019", "162.5 mm long", "now",
              "Every 10 to 14 days: 2 crickets, 22 mm"}) {
            QVERIFY2(contains(texts, part), part);
        }
        const auto signs = commandsOf<CautionSign>(page);
        QCOMPARE(signs.size(), std::size_t{3});
        for (const auto& sign : signs) QCOMPARE(sign.ink, Ink::white);
    }

    // What is not known must not read as harmless.
    void careSheetOfAnUnknownSpecies() {
        const auto page = careSheet(test::unknownSheet(), words, measure).value();
        const auto texts = textsOf(page);
        for (const char* part : {"Unheardofia incognita", "Species not known here",
                                 "seek medical care", "Do not handle it", "check local law"}) {
            QVERIFY2(contains(texts, part), part);
        }
        QVERIFY(!contains(texts, "°C"));
        QCOMPARE(commandsOf<CautionSign>(page).size(), std::size_t{1});
        QCOMPARE(test::clashOn(page, measure, Millimetres{5}), std::string());
    }

    void smallestText() {
        for (const auto& sheet : {test::slingSheet(), test::crowdedSheet()}) {
            for (const auto& text : commandsOf<Text>(careSheet(sheet, words, measure).value())) {
                const bool footer = text.baseline.y > Millimetres{194};
                QVERIFY2(text.style.size >= Points{footer ? 8.0 : 10.0}, text.text.c_str());
            }
        }
    }

    void careSheetTextsKeepApart() {
        auto fullest = test::crowdedSheet();
        fullest.profile->hairs.value = Hairs::abdomen;
        const std::string more = " And more words than one line takes, for two of them.";
        fullest.profile->handling += more;
        fullest.profile->housing += more;
        fullest.feeding.prey = "crickets, or roaches, or locusts, whatever is at hand";
        for (const auto& sheet : {test::slingSheet(), test::crowdedSheet(), fullest}) {
            const auto page = careSheet(sheet, words, measure).value();
            QCOMPARE(test::clashOn(page, measure, Millimetres{5}), std::string());
        }
    }

    void longRulesTakeTwoLines() {
        auto sheet = test::slingSheet();
        sheet.profile->housing =
            "Tall tub, 10 by 10 by 20 cm, holes on two sides, cork to climb and "
            "leaves to hide in.";
        const auto texts = textsOf(careSheet(sheet, words, measure).value());
        QVERIFY(contains(texts, "Tall tub"));
        QVERIFY(contains(texts, "to hide in."));
        QVERIFY(!contains(texts, "…"));
        sheet.profile->housing.clear();
        QVERIFY(!contains(textsOf(careSheet(sheet, words, measure).value()), "Housing"));
    }

    void whatWasNotLookedUpIsNotCalledFree() {
        auto sheet = test::slingSheet();
        sheet.span = Millimetres{40};
        sheet.profile->order = Order::vinegaroon;
        sheet.profile->listing.value = Listing::notChecked;
        const auto texts = textsOf(careSheet(sheet, words, measure).value());
        QVERIFY(contains(texts, "Ask the seller for its papers"));
        QVERIFY(contains(texts, "40 mm long"));
        QVERIFY(contains(texts, "Sprays acid"));
    }

    void cautionsAreReversedOrOutlined() {
        QVERIFY(isReversed(Caution::strongVenom) && isReversed(Caution::sting) &&
                isReversed(Caution::fast));
        QVERIFY(!isReversed(Caution::hairs) && !isReversed(Caution::venom));
        QVERIFY(!isReversed(Caution::spray));
        QVERIFY(cautionHeading(Caution::spray, words).find("eye doctor") != std::string::npos);
        for (const auto caution :
             {Caution::strongVenom, Caution::venom, Caution::sting, Caution::fast}) {
            QVERIFY(cautionHeading(caution, words).find("seek medical care") != std::string::npos);
        }
        QVERIFY(cautionHeading(Caution::hairs, words).find("eye doctor") != std::string::npos);
    }

    void moultLineGrowsWithTheAnimal() {
        auto line = MoultLine{};
        line.hatched = test::on(2025, 1, 1);
        line.end = test::on(2025, 12, 31);
        line.hardeningDays = 5;
        line.moults = {{test::on(2025, 3, 1), Millimetres{10}, std::nullopt},
                       {test::on(2025, 6, 1), std::nullopt, std::nullopt},
                       {test::on(2025, 9, 1), Millimetres{20}, std::nullopt},
                       {test::on(2026, 2, 1), Millimetres{30}, std::nullopt}};
        line.meals = {{test::on(2025, 5, 1), "cricket", {}, 1, Outcome::refused},
                      {test::on(2025, 4, 1), "cricket", {}, 1, Outcome::ate},
                      {test::on(2025, 4, 2), "cricket", {}, 1, Outcome::refused},
                      {test::on(2025, 7, 1), "cricket", {}, 1, Outcome::leftIn}};
        Page page{{148}, {210}, {}};
        addMoultLine(page, line, {{10}, {62}, {128}, {19}}, words, measure);

        std::vector<double> heights;
        for (const auto& each : commandsOf<Line>(page)) {
            if (each.from.x == each.to.x) heights.push_back((each.from.y - each.to.y).value);
        }
        // What lies after the end of the line is not drawn; what was not measured is lowest.
        QCOMPARE(heights.size(), std::size_t{3});
        QVERIFY(heights[1] < heights[0] && heights[0] < heights[2]);
        QCOMPARE(commandsOf<Hatch>(page).size(), std::size_t{3});
        std::vector<bool> filled;
        for (const auto& disc : commandsOf<Disc>(page)) filled.push_back(disc.fill == Ink::black);
        // Two meals a day apart share a dot, prey that was left in has none, and the ring is last.
        QCOMPARE(filled, (std::vector<bool>{true, false, false}));
        QVERIFY(!contains(textsOf(page), "moult"));
    }

    void moultLineWithoutMoults() {
        MoultLine line;
        line.end = test::on(2025, 12, 31);
        Page page{{148}, {210}, {}};
        addMoultLine(page, line, {{10}, {62}, {128}, {19}}, words, measure);
        QVERIFY(contains(textsOf(page), "No moult on record yet"));
        QVERIFY(contains(textsOf(page), "since Dec 2025"));
    }
};

QTEST_APPLESS_MAIN(TestDocuments)
#include "tst_documents.moc"
