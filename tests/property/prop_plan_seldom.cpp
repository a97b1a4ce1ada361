// What comes up seldom, explanations and the plan run forward, by hand-worked tables.
// 8 May 2026 is a Friday. Every rule is common practice, no source, unless a source stands beside it.
#include "husbandry/preview.h"
#include "support/tub.h"

using namespace burrow;
using namespace burrow::test;

namespace {

void breeding() {
    const auto male = Tub(adult).with([](Subject& s) {
        s.sex = Sex::male;
        s.mature = true;
    });
    const auto paired = Tub(adult).fed("2026-04-01").fact("2026-05-01", Kind::paired);
    auto newMale = Tub(male).fact("2026-05-01", Kind::spermWeb);
    newMale.subject.quarantined = true;
    newMale.quarantinedSince = day("2026-04-20");
    check({
        {"with a sac she is left alone for 75 days",
         Tub(adult).fed("2026-04-01").fact("2026-05-01", Kind::sacLaid), Care::feed, "2026-05-08",
         "2026-07-15 2026-07-15 2026-07-27",
         "Hold. Egg sac since 1 May, leave her alone. Water only until 15 July"},
        {"unless it is out",
         Tub(adult)
             .fed("2026-04-01")
             .fact("2026-05-01", Kind::sacLaid)
             .fact("2026-05-07", Kind::sacOut),
         Care::feed, "2026-05-08", "2026-04-11 2026-04-13 2026-04-15",
         "Feed. Ate 37 days ago, usual gap is 12"},
        {"a sac is taken after 25 to 35 days", Tub(adult).fact("2026-05-01", Kind::sacLaid),
         Care::breeding, "2026-05-26", "2026-05-26 2026-05-31 2026-06-05",
         "Take the egg sac. Egg sac for 25 days, it can be taken now"},
        {"a charged male is to be paired", Tub(male).fact("2026-05-01", Kind::spermWeb),
         Care::breeding, "2026-05-08", "2026-05-02 2026-05-16 2026-05-31",
         "Pair. Sperm web 7 days ago, he is charged"},
        {"not out of quarantine", newMale, Care::breeding, "2026-05-08",
         "2026-05-20 2026-05-20 2026-05-31", "Hold. In quarantine since 20 April. Opens 20 May"},
        {"who was paired is not charged",
         Tub(male).fact("2026-05-01", Kind::spermWeb).fact("2026-05-02", Kind::paired),
         Care::breeding, "2026-05-08", "-",
         "Nothing to do. Mature, no sperm web seen since he was last paired"},
        {"paired once", paired, Care::breeding, "2026-05-08", "2026-05-08 2026-05-15 2026-05-22",
         "Pair again. Paired once, 7 days ago"},
        {"then a sac is waited for", paired, Care::breeding, "2026-05-23",
         "2026-05-31 2026-08-14 2026-10-28", "Wait. Paired 22 days ago. Look for a sac 31 May"},
        {"and looked for time and again", Tub(paired).fact("2026-06-02", Kind::seen, count(1)),
         Care::breeding, "2026-06-05", "2026-06-09 2026-06-12 2026-06-16",
         "Wait. Paired 35 days ago. Look for a sac Tuesday"},
        {"a moult costs her the sperm", Tub(paired).fact("2026-05-05", Kind::moulted),
         Care::breeding, "2026-05-08", "-", "Nothing to do. Not paired, no sac"},
    });
}

void countingAndMeasuring() {
    const auto group = [](int heads) {
        return Tub(juvenile).with([heads](Subject& s) {
            s.form = Form::group;
            s.headcount = heads;
            s.acquired = day("2026-04-01");
        });
    };
    auto lot = group(40);
    lot.subject.form = Form::lot;
    auto unsized = Tub(juvenile);
    unsized.digest = {};
    unsized.subject.acquired = day("2026-05-01");
    check({
        {"never counted", group(5), Care::headcount, "2026-05-08",
         "2026-04-15 2026-04-18 2026-04-22", "Count them. Not counted since 1 April"},
        {"a lot sooner", lot, Care::headcount, "2026-04-07", "2026-04-08 2026-04-11 2026-04-15",
         "Wait. Not counted yet. Due Wednesday"},
        {"all seen", group(5).fact("2026-05-01", Kind::seen, count(5)), Care::headcount,
         "2026-05-08", "2026-05-15 2026-05-18 2026-05-22",
         "Wait. All 5 seen 7 days ago. Due 15 May"},
        {"some not seen", group(5).fact("2026-05-01", Kind::seen, count(3)), Care::headcount,
         "2026-05-08", "2026-05-04 2026-05-06 2026-05-08",
         "Count them. Saw 3 of 5 7 days ago, count again"},
        {"one animal", Tub(juvenile), Care::headcount, "2026-05-08", "-",
         "Nothing to do. One animal, there is nobody to count"},
        {"a first size within a month", unsized, Care::measure, "2026-05-15",
         "2026-05-15 2026-05-23 2026-05-31",
         "Measure. No size recorded since 1 May, so its stage is a guess"},
        {"no size since the moult", Tub(juvenile).fact("2026-05-01", Kind::moulted), Care::measure,
         "2026-05-12", "2026-05-11 2026-05-18 2026-06-01",
         "Measure. Moulted 11 days ago, no size since"},
        {"not while it is soft", Tub(juvenile).fact("2026-05-01", Kind::moulted), Care::measure,
         "2026-05-08", "2026-05-11 2026-05-18 2026-06-01",
         "Wait. Moulted 7 days ago. Measure from Monday"},
        {"nor in premoult",
         Tub(juvenile).fact("2026-03-01", Kind::moulted).fact("2026-05-02", Kind::premoultSign),
         Care::measure, "2026-05-08", "2026-05-30 2026-05-30 2026-05-30",
         "Hold. Premoult since 2 May, leave it alone. Opens 30 May"},
        {"measured at the moult", Tub(juvenile).fact("2026-05-01", Kind::moulted, span(64)),
         Care::measure, "2026-05-08", "-",
         "Nothing to do. Measured 1 May, it grows only when it moults"},
        {"a group whose age is known",
         [&] {
             auto tub = group(5);
             tub.digest = {};
             tub.subject.hatched = day("2026-01-01");
             return tub;
         }(),
         Care::measure, "2026-05-08", "-", "Nothing to do. Judged by their age, no size is needed"},
        {"a group grows unseen", group(5).fact("2026-02-01", Kind::measured, span(30)),
         Care::measure, "2026-05-08", "2026-04-02 2026-04-17 2026-05-02",
         "Measure. Measured 96 days ago, they have grown"},
    });
}

void quarantine() {
    auto held = Tub(juvenile).with([](Subject& s) {
        s.quarantined = true;
        s.acquired = day("2026-03-01");
    });
    auto ill = held;
    ill.quarantinedSince = day("2026-05-01");
    check({
        {"30 to 60 days from the day it came", held, Care::quarantine, "2026-05-08",
         "2026-03-31 2026-04-15 2026-04-30",
         "End the quarantine. In quarantine for 68 days, since 1 March"},
        {"or from the day it was put there", ill, Care::quarantine, "2026-05-08",
         "2026-05-31 2026-06-15 2026-06-30", "Wait. In quarantine since 1 May. Can end 31 May"},
        {"not in quarantine", Tub(juvenile), Care::quarantine, "2026-05-08", "-",
         "Nothing to do. Not in quarantine"},
    });
    expect("what is late is one step more urgent",
           std::string(name(answerOf(held, Care::quarantine, "2026-05-08").priority)), "usual");
}

void homes() {
    const auto home = [](double span, double length, double height = 0) {
        auto tub = Tub(span);
        tub.home = HomeSize{{length}, {length / 2}, {height}, {0}};
        return tub;
    };
    auto next = home(100, 320).fact("2026-05-01", Kind::moulted, span(100));
    check({
        {"three spans of floor", home(100, 299), Care::rehouse, "2026-05-08",
         "2020-01-01 2020-01-16 2020-01-31", "Rehouse. 100 mm, its home is too small"},
        {"are enough", home(100, 300), Care::rehouse, "2026-05-08", "-",
         "Nothing to do. Its home is large enough for 100 mm"},
        {"a climber needs height", home(100, 300, 299).of("Caribena versicolor"), Care::rehouse,
         "2026-05-08", "2020-01-01 2020-01-16 2020-01-31",
         "Rehouse. 100 mm, its home is too small"},
        {"no sizes", home(100, 0), Care::rehouse, "2026-05-08", "-",
         "Nothing to do. No sizes of its home are recorded"},
        {"no home", Tub(100), Care::rehouse, "2026-05-08", "-",
         "Nothing to do. No sizes of its home are recorded"},
        // An adult of unknown species: 365 days to the next moult, one in ten of them over after
        // 365 * 9^(-1/6.046) = 253.8 days, 10 January 2027. It grows to 126 mm and needs 378.
        {"before it grows out of it", next, Care::rehouse, "2026-05-20",
         "2026-12-11 2026-12-26 2027-01-10",
         "Wait. Its home will be too small after the next moult, about 1 May 2027, an estimate. "
         "Due "
         "11 December"},
        {"never while it is soft", home(100, 200).fact("2026-05-01", Kind::moulted, span(100)),
         Care::rehouse, "2026-05-08", "2026-05-15 2026-05-16 2026-05-31",
         "Hold. Soft since its moult of 1 May. Opens 15 May"},
    });
}

void loans() {
    FactBody until;
    until.until = day("2026-06-01");
    auto lent = Tub(adult).fact("2026-05-01", Kind::lent, until);
    lent.subject.standing = Standing::onLoan;
    check({
        {"until the day it is to be back", lent, Care::feed, "2026-05-08",
         "2026-06-01 2026-06-01 2026-06-01", "Wait. Away on loan since 1 May, back 1 June"},
        {"and longer", lent, Care::water, "2026-06-08", "-",
         "Nothing to do. Away on loan since 1 May, was to be back 1 June"},
    });
}

void explanations() {
    auto tub = Tub(juvenile).fed("2026-05-01", 6).of("Brachypelma hamorii");
    tub.place = Place::parse("Nursery / A / 2 / 3");
    const std::vector<OwnRule> own{{"feed.interval.juvenile@place:nursery", "5-6"},
                                   {"feed.factor@species:Brachypelma hamorii", "1.5"}};
    const auto rules = sharedRules().with(own).value();
    const auto why = explain(Care::feed, tub.all(), rules, on("2026-05-08"), plainForecast());
    std::string from;
    for (const auto& rule : why.rules) {
        if (rule.origin == RuleOrigin::assets) continue;
        from += rule.id + " " + valueText(rule.value) + " " + std::string(name(rule.origin)) + " " +
                rule.scope + "; ";
    }
    expect(
        "where values come from", from,
        "feed.factor 1.5 species Brachypelma hamorii; feed.interval.juvenile 5-6 place nursery; ");
    std::string working;
    for (const auto& line : why.working)
        working += sharedWords().say(line, day("2026-05-08")) + "; ";
    // 5 to 6 days times 1.5 times 0.7 are 5.25 to 6.3.
    expect(
        "the working", working,
        "Juvenile, 60 mm of about 140 mm when grown; Usual gap between meals of its stage: 5 to 6 "
        "days; Times 1.5, your own factor; Times 0.7, by the size of its last meal; ");
    const auto layers = rules.layers("feed.interval.juvenile", tub.all().ruleSubject());
    expect("taken back, the shipped value holds", valueText(layers.back().value), "7-10");
}

void forward() {
    auto tub = Tub(juvenile).fed("2026-05-01").fact("2026-05-01", Kind::watered);
    tub.fact("2026-05-01", Kind::dampened);
    const auto today = on("2026-05-02");
    const auto input = tub.all();
    std::string days;
    for (const auto& task : comingTasks(input, sharedRules(), today, 21, plainForecast())) {
        days += std::string(name(task.care)) + " " + isoDate(task.day).substr(5) + "; ";
    }
    // Meals every 8 days, water every 6, damp after 17: the middles of the rules.
    expect("three weeks", days,
           "water 05-07; feed 05-09; water 05-13; feed 05-17; damp 05-18; water 05-19; ");
    const std::vector<OwnRule> own{{"feed.factor", "2"}};
    const auto slower = sharedRules().with(own).value();
    const auto preview =
        previewRules(std::span(&input, 1), sharedRules(), slower, today, 21, plainForecast());
    std::string said;
    for (const auto& line : preview.lines) {
        said += sharedWords().say(line.says(), today.today) + "; ";
    }
    expect("half as many meals", said, "Feeding once instead of 2 times, first 18 May; ");
}

}  // namespace

int main() {
    breeding();
    countingAndMeasuring();
    quarantine();
    homes();
    loans();
    explanations();
    forward();
    return verdictOfTables();
}
