// A keeper's own spreadsheet: what its columns stand for, and what has to be asked.
#include <QtTest>

#include "exchange/mapping_terms.h"
#include "support/book.h"
#include "support/husbandry.h"

using namespace burrow;
using namespace burrow::exchange;
using namespace burrow::test;
using Kind = MapQuestion::Kind;

namespace {

const CivilDay today = parseIsoDate("2026-05-08").value();

/// A list as a hobbyist keeps it: other names, days first, species in four spellings, sizes in inches.
constexpr std::string_view list =
    "Nr.,Scientific name,Sex,Born,Bought,From,Size (in),Last molt,Last fed,Shelf,Colour,Remarks\n"
    "1,Brachypelma hamorii,F,14.3.2021,1.6.2021,Fair,5 1/2,1.2.2026,2.5.2026,A,red,calm\n"
    "2,B. hamorii,male,2.3.2022,3.3.2022,,4,,3.5.2026,A,,\n"
    "3,brachypelma hamori,\xE2\x99\x82,?,25.12.2022,,\"4\xC2\xBD\"\"\",,n/a,B,,\n"
    "4,Mexican red knee,?,,,,12 cm,,,B,,\"=1+1\"\n"
    "5,Brachypelma hamorei,mm,,,,,,,B,,\n"
    ",,,,,,,,,,,\n";

const ColumnMapping& column(const Mapping& mapping, const char* name) {
    static const ColumnMapping none;
    for (const auto& each : mapping.columns) {
        if (each.column == name) return each;
    }
    return none;
}

std::vector<MapQuestion> asked(const MapReview& review, Kind kind) {
    std::vector<MapQuestion> questions;
    for (const auto& question : review.questions) {
        if (question.kind == kind) questions.push_back(question);
    }
    return questions;
}

}  // namespace

class TestMapping : public QObject {
    Q_OBJECT

    Profiles profiles_ = shippedProfiles();

    Mapping propose(std::string_view text) {
        return proposeMapping(readSheet(text).value(), profiles_, today);
    }
    MapReview review(const Mapping& mapping, std::string_view text) {
        return reviewMapping(mapping, readSheet(text).value(), profiles_);
    }
    /// What comes into a book from the sheet.
    BringReport bringMapped(TestBook& room, std::string_view text, const Mapping& mapping) {
        const auto tables = applyMapping(text, mapping).value();
        std::vector<CsvSource> sources;
        for (const auto& table : tables)
            sources.push_back({table.kind, table.text, &table.original});
        return bring(room.book, sources, {}).value();
    }

private slots:
    void readsAHobbyistsList() {
        const auto mapping = propose(list);
        QCOMPARE(mapping.kind, CsvKind::animals);
        QCOMPARE(column(mapping, "Nr.").target, std::string("code"));
        QCOMPARE(column(mapping, "Scientific name").target, std::string("species"));
        QCOMPARE(column(mapping, "Born").target, std::string("hatched_on"));
        QCOMPARE(column(mapping, "Born").date, DateOrder::dayFirst);
        QCOMPARE(column(mapping, "Bought").target, std::string("acquired_on"));
        QCOMPARE(column(mapping, "Bought").date, DateOrder::dayFirst);
        QCOMPARE(column(mapping, "From").target, std::string("source"));
        QCOMPARE(column(mapping, "Size (in)").target, std::string("span_mm"));
        QCOMPARE(column(mapping, "Size (in)").unit, LengthUnit::inch);
        QCOMPARE(column(mapping, "Shelf").target, std::string("shelf"));
        QCOMPARE(column(mapping, "Colour").target, std::string());
        QCOMPARE(column(mapping, "Remarks").target, std::string("note"));
        // Three spellings mean the species; the fourth is asked about.
        QCOMPARE(mapping.species.at("B. hamorii"), std::string("Brachypelma hamorii"));
        QCOMPARE(mapping.species.at("brachypelma hamori"), std::string("Brachypelma hamorii"));
        QCOMPARE(mapping.species.at("Mexican red knee"), std::string("Brachypelma hamorii"));
        const auto seen = review(mapping, list);
        const auto species = asked(seen, Kind::species);
        QCOMPARE(species.size(), 1U);
        QCOMPARE(species[0].value, std::string("Brachypelma hamorei"));
        QCOMPARE(species[0].choices.at(0), std::string("Brachypelma hamorii"));
        QVERIFY(!species[0].isOpen);
    }

    /// "1.2.2026" and "2.5.2026": nothing under these says whether the day comes first, so it is asked.
    void whatCanBeReadInTwoWaysIsAsked() {
        auto mapping = propose(list);
        const auto open = asked(review(mapping, list), Kind::dateOrder);
        QCOMPARE(open.size(), 2U);
        QVERIFY(review(mapping, list).isOpen());
        for (const auto& question : open) {
            QVERIFY(question.isOpen);
            QCOMPARE(question.choices, (std::vector<std::string>{"day_first", "month_first"}));
        }
        const auto refused = applyMapping(list, mapping);
        QCOMPARE(refused.error().message.id, std::string("map.openDate"));
        for (auto& each : mapping.columns) {
            if (!each.date && each.target.starts_with("last_")) each.date = DateOrder::dayFirst;
        }
        QVERIFY(!review(mapping, list).isOpen());
    }

    void bringsAHobbyistsListIn() {
        auto mapping = propose(list);
        for (auto& each : mapping.columns) {
            if (each.target.starts_with("last_")) each.date = DateOrder::dayFirst;
        }
        mapping.species["Brachypelma hamorei"] = "Brachypelma hamorii";
        TestBook room;
        const auto report = bringMapped(room, list, mapping);
        QVERIFY(report.isDone);
        QCOMPARE(report.animals, 5);
        QCOMPARE(report.events, 1 + 2 + 4);
        const auto first = room.kept(subjectsNumbered(room.book, "1")->front());
        QCOMPARE(first.subject.hatched, civilDay({2021, 3, 14}));
        QCOMPARE(first.subject.note, std::string("calm; Colour: red"));
        QCOMPARE(first.digest.span->value, 139.7);  // 5 1/2 inches
        QCOMPARE(first.digest.lastMoult(), civilDay({2026, 2, 1}));
        QCOMPARE(first.digest.lastAccepted->day, *civilDay({2026, 5, 2}));
        const auto fourth = room.kept(subjectsNumbered(room.book, "4")->front());
        QCOMPARE(fourth.digest.span->value, 120.0);  // its own unit counts
        QCOMPARE(fourth.subject.note, std::string("=1+1"));
        const auto fifth = room.kept(subjectsNumbered(room.book, "5")->front());
        QCOMPARE(fifth.subject.sex, Sex::male);
        QVERIFY(fifth.subject.mature);  // "mm" says both
        const auto all = roster(room.book).value();
        for (const auto& kept : all) {
            QCOMPARE(kept.subject.species, std::string("Brachypelma hamorii"));
        }
    }

    void badRowsAreToldAsTheKeeperKnowsThem() {
        const std::string_view text =
            "Nr,Species,Gender,Born\n"
            "1,A b,f,2021-03-14\n"
            "\n"
            "2,A b,f,last spring\n"
            "3,A b\n"
            "4,A b,f,2021-04-14\n";
        const auto mapping = propose(text);
        TestBook room;
        const auto tables = applyMapping(text, mapping).value();
        const auto report =
            bring(room.book, {{tables[0].kind, tables[0].text, &tables[0].original}}, {}).value();
        QCOMPARE(report.badRows, 2);
        QCOMPARE(report.bad[0].line, 4);
        QCOMPARE(report.bad[0].column, std::string("Born"));
        QCOMPARE(report.bad[0].raw, std::string("2,A b,f,last spring"));
        QCOMPARE(report.bad[1].line, 5);
        QCOMPARE(report.bad[1].reason.id, std::string("csv.cellCount"));
    }

    /// An animal and what its row says of its last meal stand or fall together, and are told once.
    void anAnimalsRowIsBadAsAWhole() {
        const std::string_view text =
            "Nr,Species,Sex,Last fed,Size cm\n"
            "1,A b,f,2026-05-01,12\n"
            "2,A b,both,2026-05-01,12\n"
            "3,A b,f,2026-05-01,big\n";
        const auto mapping = propose(text);
        QCOMPARE(column(mapping, "Last fed").target, std::string("last_fed"));
        const auto tables = applyMapping(text, mapping).value();
        TestBook room;
        std::vector<CsvSource> sources;
        for (const auto& table : tables)
            sources.push_back({table.kind, table.text, &table.original});
        BringOptions skipping;
        skipping.skipBad = true;
        const auto report = bring(room.book, sources, skipping).value();
        QCOMPARE(report.animals, 1);
        QCOMPARE(report.events, 2);
        QCOMPARE(report.badRows, 2);
        QCOMPARE(report.bad[0].raw, std::string("2,A b,both,2026-05-01,12"));
        QCOMPARE(report.bad[1].raw, std::string("3,A b,f,2026-05-01,big"));
        QCOMPARE(report.bad[1].column, std::string("Size cm"));
    }

    void feedingLogs() {
        const std::string_view text =
            "ID,Date,Time,Food,Qty,Ate?\n"
            "1,5/13/2026,9:14 pm,cricket,2,yes\n"
            "1,5/2/2026,,cricket,1,n\n"
            "1,5/1/2026,,roach,1,nibbled\n";
        auto mapping = propose(text);
        QCOMPARE(mapping.kind, CsvKind::events);
        QCOMPARE(column(mapping, "Date").date, DateOrder::monthFirst);
        const auto seen = review(mapping, text);
        QCOMPARE(asked(seen, Kind::event).size(), 1U);
        QCOMPARE(asked(seen, Kind::event)[0].choices[0], std::string("offered"));
        const auto words = asked(seen, Kind::word);
        QCOMPARE(words.size(), 1U);
        QCOMPARE(words[0].value, std::string("nibbled"));
        mapping.event = "offered";
        mapping.words["outcome"]["nibbled"] = "part";
        QVERIFY(review(mapping, text).questions.empty());
        TestBook room;
        const auto subject = room.add("1", "A b");
        QVERIFY(bringMapped(room, text, mapping).isDone);
        const auto facts = history(room.book, subject, wholeHistory).value();
        QCOMPARE(isoInstant(facts[0].happenedAt), std::string("2026-05-13T21:14:00Z"));
        QCOMPARE(*facts[1].body.outcome, Outcome::refused);
        QCOMPARE(*facts[2].body.outcome, Outcome::part);
    }

    void enclosuresWithUnits() {
        const std::string_view text = "Name,Length cm,Width cm,Height,Shelf\nT1,30,20,20,A\n";
        auto mapping = propose(text);
        QCOMPARE(mapping.kind, CsvKind::enclosures);
        QCOMPARE(column(mapping, "Length cm").unit, LengthUnit::cm);
        const auto open = asked(review(mapping, text), Kind::unit);
        QCOMPARE(open.size(), 1U);
        QVERIFY(open[0].isOpen);
        QCOMPARE(applyMapping(text, mapping).error().message.id, std::string("map.openUnit"));
        mapping.columns[3].unit = LengthUnit::inch;
        TestBook room;
        QVERIFY(bringMapped(room, text, mapping).isDone);
        const auto home = enclosures(room.book)->front();
        QCOMPARE(home.length.value, 300.0);
        QCOMPARE(home.height.value, 508.0);
        QCOMPARE(home.place.text(), std::string("A"));
    }

    void genusAndSpeciesInTwoColumns() {
        const std::string_view text =
            "Tag,Genus,Species,Room,Shelf\n1,Grammostola,pulchra,Warm,2\n";
        const auto mapping = propose(text);
        TestBook room;
        QVERIFY(bringMapped(room, text, mapping).isDone);
        const auto kept = roster(room.book)->front();
        QCOMPARE(kept.subject.species, std::string("Grammostola pulchra"));
        QCOMPARE(kept.subject.place.room, std::string("Warm"));
        QCOMPARE(kept.subject.place.shelf, std::string("2"));
    }

    void animalsWithoutNumbersAreNumbered() {
        const std::string_view text =
            "Species,Sex\nGrammostola pulchra,f\nAvicularia avicularia,m\n";
        auto mapping = propose(text);
        const auto missing = asked(review(mapping, text), Kind::missing);
        QCOMPARE(missing.size(), 1U);
        QCOMPARE(missing[0].value, std::string("code"));
        QVERIFY(missing[0].isOpen);
        mapping.numberFrom = 9;
        QVERIFY(!review(mapping, text).isOpen());
        TestBook room;
        QVERIFY(bringMapped(room, text, mapping).isDone);
        QCOMPARE(subjectsNumbered(room.book, "010")->size(), 1U);
    }

    void twoColumnsForOneThingAreAsked() {
        const std::string_view text = "Nr,Species,Sex\n1,A b,f\n";
        auto mapping = propose(text);
        mapping.columns[2].target = "code";
        const auto twice = asked(review(mapping, text), Kind::twice);
        QCOMPARE(twice.size(), 1U);
        QVERIFY(twice[0].isOpen);
    }

    void columnsOfOtherContentStayNotes() {
        // "Fed" may be a day, but here it is a word; "Hatched" is a place.
        const std::string_view text =
            "Nr,Species,Fed,Hatched\n1,A b,yes,at home\n2,A b,no,at home\n";
        const auto mapping = propose(text);
        QCOMPARE(column(mapping, "Fed").target, std::string());
        QCOMPARE(column(mapping, "Hatched").target, std::string());
    }

    void wordsOfAnotherLanguageAreAskedAbout() {
        const std::string_view text =
            "Nr,Species,Sex\n1,A b,weiblich\n2,A b,weiblich\n3,A b,Bock\n";
        auto mapping = propose(text);
        QCOMPARE(column(mapping, "Sex").target, std::string("sex"));
        const auto words = asked(review(mapping, text), Kind::word);
        QCOMPARE(words.size(), 2U);
        QCOMPARE(words[1].value, std::string("weiblich"));
        QCOMPARE(words[1].count, 2);
        mapping.words["sex"] = {{"weiblich", "female"}, {"Bock", "male"}};
        QVERIFY(asked(review(mapping, text), Kind::word).empty());
        TestBook room;
        QVERIFY(bringMapped(room, text, mapping).isDone);
        QCOMPARE(room.kept(subjectsNumbered(room.book, "3")->front()).subject.sex, Sex::male);
    }

    void previewShowsWhatBecomesOfCells() {
        const auto mapping = propose(list);
        const auto seen = review(mapping, list);
        const auto& sizes = seen.columns.at(6);
        QCOMPARE(sizes.filled, 4);
        QCOMPARE(sizes.unread, 0);
        QCOMPARE(sizes.samples.at(0).written, std::string("5 1/2"));
        QCOMPARE(sizes.samples.at(0).becomes, std::string("139.7"));
        const auto& born = seen.columns.at(3);
        QCOMPARE(born.unknown, 1);
        QCOMPARE(born.samples.at(0).becomes, std::string("2021-03-14"));
        QCOMPARE(seen.columns.at(1).samples.at(1).becomes, std::string("Brachypelma hamorii"));
    }

    void savedAndReadAgain() {
        auto mapping = propose(list);
        mapping.columns[9].isLeftOut = true;
        mapping.words["sex"]["girl"] = "female";
        mapping.numberFrom = 7;
        auto read = mappingFromJson(mappingToJson(mapping)).value();
        mapping.columns[9].target.clear();  // of a column that is left out nothing else is kept
        QVERIFY(read == mapping);
        // The columns are found by name, whatever their order by then.
        const std::string_view later = "Sex,New,Species,Nr\nf,x,A b,1\n";
        Mapping small;
        small.columns = {{"Nr", "code"}, {"Species", "species"}, {"Sex", "sex"}};
        TestBook room;
        QVERIFY(bringMapped(room, later, small).isDone);
        QCOMPARE(roster(room.book)->front().subject.note, std::string("New: x"));
        const auto gone = applyMapping("Nr,Sex\n1,f\n", small);
        QCOMPARE(gone.error().message.id, std::string("map.columnGone"));
    }

    void foreignMappingsAreRefused_data() {
        QTest::addColumn<QByteArray>("text");
        const auto row = [](const char* name, const char* text) {
            QTest::newRow(name) << QByteArray(text);
        };
        row("no JSON", "{");
        row("no mapping", "{}");
        row("list", "[]");
        row("version", R"({"format":"burrowbook mapping","version":2,"kind":"animals"})");
        row("kind", R"({"format":"burrowbook mapping","version":1,"kind":"tags","columns":[]})");
        row("columns",
            R"({"format":"burrowbook mapping","version":1,"kind":"animals","columns":7})");
        row("target",
            R"({"format":"burrowbook mapping","version":1,"kind":"animals","columns":[{"column":"a","to":"colour"}]})");
        row("order",
            R"({"format":"burrowbook mapping","version":1,"kind":"animals","columns":[{"column":"a","to":"hatched_on","dates":"any"}]})");
        row("species",
            R"({"format":"burrowbook mapping","version":1,"kind":"animals","columns":[],"species":{"a":1}})");
        row("event",
            R"({"format":"burrowbook mapping","version":1,"kind":"events","columns":[],"event":"danced"})");
        row("number",
            R"({"format":"burrowbook mapping","version":1,"kind":"animals","columns":[],"number_from":-1})");
        row("day",
            R"({"format":"burrowbook mapping","version":1,"kind":"animals","columns":[],"sizes_on":"8.5."})");
    }
    void foreignMappingsAreRefused() {
        QFETCH(QByteArray, text);
        const auto read = mappingFromJson(text.toStdString());
        QVERIFY(!read);
        QCOMPARE(read.error().message.id, std::string("map.noMapping"));
    }

    void columnNames_data() {
        QTest::addColumn<QString>("column");
        QTest::addColumn<QString>("target");
        const auto row = [](const char* column, const char* target) {
            QTest::newRow(column) << column << target;
        };
        row("Leg-Span (cm):", "span_mm");
        row("DATE AQUIRED", "acquired_on");  // a slip of the fingers
        row("Specis", "species");
        row("hatched_on", "hatched_on");
        row("Note", "note");
        row("Nose", "");  // short words are not guessed
        row("", "");
    }
    void columnNames() {
        QFETCH(QString, column);
        QFETCH(QString, target);
        const auto named = targetNamed(CsvKind::animals, column.toStdString());
        QCOMPARE(QString::fromStdString(named.value_or("")), target);
    }

    /// Every word of the tables is one that bring() reads.
    void wordsAreThoseOfTheTables() {
        for (const auto& kind : factKinds()) {
            QCOMPARE(wordMeant(CsvKind::events, "event", kind.name), std::string(kind.name));
        }
        QCOMPARE(wordMeant(CsvKind::events, "event", "Molt"), std::string("moulted"));
        QCOMPARE(wordMeant(CsvKind::animals, "status", "Alive, Quarantine"),
                 std::string("here, quarantine"));
        QCOMPARE(wordMeant(CsvKind::animals, "sex", "0.1.0"), std::string("female"));
        QVERIFY(!wordMeant(CsvKind::animals, "status", "flying"));
        for (const auto& target : mapTargets(CsvKind::animals)) {
            for (const auto& word : wordsOf(CsvKind::animals, target.name)) {
                QCOMPARE(wordMeant(CsvKind::animals, target.name, word), word);
            }
        }
    }
};

QTEST_APPLESS_MAIN(TestMapping)
#include "tst_mapping.moc"
