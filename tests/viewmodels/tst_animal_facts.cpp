// What is known of an animal, group or lot, line by line; also of those who died or left.
#include "viewmodels/animalmodel.h"
#include "viewmodels/keeping.h"

using namespace burrow;
using namespace burrow::test;

namespace {

class Page : public AnimalModel {
public:
    Page(DeskFixture& at, SubjectId id) {
        setDesk(&at.desk);
        setSubject(at.id(id));
        at.settle();
    }
    [[nodiscard]] QVariantMap line(const char* name) const { return lineNamed(facts(), name); }
    [[nodiscard]] QString value(const char* name) const {
        return line(name).value("value").toString();
    }
    [[nodiscard]] QString sub(const char* name) const { return line(name).value("sub").toString(); }
};

}  // namespace

class TestAnimalFacts : public QObject {
    Q_OBJECT

private slots:
    void whatIsNotRecordedLeadsToTheForm() {
        DeskFixture at;
        at.openRoom();
        const Page page(at, at.hamorii);
        for (const char* name : {"Source", "Hatched", "Enclosure"}) {
            const auto line = page.line(name);
            QVERIFY2(line.value("missing").toBool(), name);
            QCOMPARE(line.value("page").toString(), QString("AnimalFormPage"));
            QCOMPARE(line.value("properties").toMap().value("subject").toString(),
                     at.id(at.hamorii));
        }
        QVERIFY(page.line("Here since").isEmpty());
    }

    void itsAgeIsInMonthsThenInYears_data() {
        QTest::addColumn<QString>("hatched");
        QTest::addColumn<QString>("age");
        QTest::newRow("weeks") << "2026-04-09"
                               << "";
        QTest::newRow("a month to the day") << "2026-04-08"
                                            << "1 month old";
        QTest::newRow("over new year") << "2025-11-09"
                                       << "5 months old";
        QTest::newRow("almost two years") << "2024-05-09"
                                          << "23 months old";
        QTest::newRow("two years") << "2024-05-08"
                                   << "2 years old";
        QTest::newRow("a leap day") << "2020-02-29"
                                    << "6 years old";
        QTest::newRow("not yet") << "2027-01-01"
                                 << "";
    }
    void itsAgeIsInMonthsThenInYears() {
        QFETCH(QString, hatched);
        QFETCH(QString, age);
        DeskFixture at;
        at.openRoom();
        set(at, at.hamorii, {{"hatched", hatched.toStdString()}});
        QCOMPARE(Page(at, at.hamorii).sub("Hatched"), age);
    }

    void itsParentsAreOneTapAway() {
        DeskFixture at;
        at.openRoom();
        set(at, at.hamorii,
            {{"mother", at.gone.text()}, {"father", SubjectId{Uuid::named("nobody")}.text()}});
        const Page page(at, at.hamorii);
        QCOMPARE(page.value("Mother"), QString("331"));
        QCOMPARE(page.sub("Mother"), QString("Caribena versicolor"));
        QCOMPARE(page.line("Mother").value("properties").toMap().value("subject").toString(),
                 at.id(at.gone));
        QCOMPARE(page.value("Father"), QString("No longer in the book"));
        QVERIFY(page.line("Father").value("page").toString().isEmpty());
    }

    void itsCareIsSaidInDays() {
        DeskFixture at;
        at.openRoom();
        const Page page(at, at.hamorii);
        // Starting intervals of an adult: common practice, no source.
        QCOMPARE(page.value("Feeding"), QString("Every 10 to 14 days"));
        QVERIFY(page.sub("Feeding").contains("cricket"));
        QVERIFY(!page.value("Water").isEmpty() && !page.value("Damp").isEmpty());
    }

    void itsHomeSaysItsSizeAndSinceWhen() {
        DeskFixture at;
        at.openRoom();
        Enclosure home;
        home.name = "E-12";
        home.length = home.width = home.height = Millimetres{305};
        home.place = Place::parse("B / 7");
        const auto id = addEnclosure(at, home);
        log(at, at.hamorii, FactKind::rehoused, 3, {.enclosure = id});
        const Page page(at, at.hamorii);
        QCOMPARE(page.value("Enclosure"), QString("30.5 by 30.5 by 30.5 cm"));
        QCOMPARE(page.sub("Enclosure"), QString("E-12. Rehoused 5 May"));
        QCOMPARE(page.line("Enclosure").value("page").toString(), QString("EnclosurePage"));
        QCOMPARE(page.place(), QString("Kiln Row\nShelf B, tub 7"));
    }

    void itsCautionsSayWhatToDo() {
        DeskFixture at;
        at.openRoom();
        const Page page(at, at.hamorii);
        QVERIFY(page.value("Caution").contains("hairs", Qt::CaseInsensitive));
        QVERIFY(page.sub("Caution").contains("eye", Qt::CaseInsensitive));
        // All Brachypelma are listed (CITES, as in force since 26 November 2019).
        QCOMPARE(page.value("Listing"), QString("CITES Appendix II"));
        QCOMPARE(Page(at, at.pulchra).value("Listing"), QString("Not found in CITES Appendix II"));
    }

    void aSpeciesThatIsNotKnownIsNotCalledHarmless() {
        DeskFixture at;
        at.openRoom();
        set(at, at.hamorii, {{"species", "Theraphosidae sp."}});
        const Page page(at, at.hamorii);
        QCOMPARE(page.binomial(), QString("Theraphosidae sp."));
        QCOMPARE(page.cautions(), (QStringList{"Not known"}));
        QVERIFY(!page.sub("Caution").isEmpty());
        QVERIFY(page.line("Listing").isEmpty());
    }

    // --- groups and lots -----------------------------------------------------------------------

    void aGroupCountsWhoWasPutInAndWhoIsLeft() {
        DeskFixture at;
        at.openRoom();
        {
            const Page page(at, at.group);
            QCOMPARE(page.side(), QString("Group"));
            QCOMPARE(page.value("On the books"), QString("12"));
            QCOMPARE(page.sub("On the books"), QString("12 put in"));
            QCOMPARE(page.value("Last count"), QString("Never counted"));
        }
        log(at, at.group, FactKind::died, 200, {.count = 2, .cause = "dried out"});
        log(at, at.group, FactKind::sold, 100, {.count = 3});
        log(at, at.group, FactKind::seen, 400, {.count = 11});
        const Page page(at, at.group);
        QCOMPARE(page.about(), QString("12 put in, 7 on the books"));
        QCOMPARE(page.sub("On the books"), QString("12 put in, 5 died or left"));
        QCOMPARE(page.value("Last count"), QString("11"));
        QCOMPARE(page.sub("Last count"), QString("3 April 2025"));
        QVERIFY(page.isKept());  // those who left are some of them, not the group
        QVERIFY(page.line("Sold").isEmpty());
    }

    void aLotThatIsSoldDownIsGone() {
        DeskFixture at;
        at.openRoom();
        Subject lot;
        lot.number = "500";
        lot.species = "Tliltocatl albopilosus";
        lot.form = Form::lot;
        lot.headcount = 60;
        const auto id = addSubject(at, lot);
        QCOMPARE(Page(at, id).side(), QString("Lot"));
        log(at, id, FactKind::sold, 40, {.count = 25, .party = "a stall at the fair"});
        log(at, id, FactKind::died, 30, {.count = 5});
        QVERIFY(Page(at, id).isKept());
        log(at, id, FactKind::given, 1, {.count = 30, .party = "a school"});
        const Page page(at, id);
        QVERIFY(!page.isKept());
        QCOMPARE(page.side(), QString("Given away"));
        QCOMPARE(page.value("Given away"), QString("7 May 2026"));
        QCOMPARE(page.sub("Given away"), QString("30 of them, to a school"));
        QCOMPARE(page.about(), QString("60 put in, 0 on the books"));
    }

    // --- those who died or left ----------------------------------------------------------------

    void whoWasSoldSaysWhenAndNeedsNoCare() {
        DeskFixture at;
        at.openRoom();
        const Page page(at, at.gone);
        QVERIFY(!page.isKept());
        QCOMPARE(page.side(), QString("Sold"));
        QCOMPARE(page.punch(), QString("sold"));
        QCOMPARE(page.verb(), QString("Sold 28 April."));
        QVERIFY(page.reason().isEmpty());
        QCOMPARE(page.value("Sold"), QString("28 April 2026"));
        QCOMPARE(page.line("Sold").value("page").toString(), QString("EntryPage"));
        QVERIFY(page.line("Feeding").isEmpty());
        QVERIFY(!page.value("Caution").isEmpty());
        QCOMPARE(column(page.why(), "name"),
                 (QStringList{"Feeding", "Leftovers", "Water", "Damp", "Looking in", "Moult",
                              "Head count", "Measuring", "Breeding", "Rehousing", "Quarantine"}));
        QCOMPARE(column(page.why(), "value").first(), QString("Nothing to do"));
    }

    void whoDiedGrowsNoOlder() {
        DeskFixture at;
        at.openRoom();
        set(at, at.hamorii, {{"hatched", "2020-05-01"}});
        log(at, at.hamorii, FactKind::died, 366, {.cause = "old age"});
        const Page page(at, at.hamorii);
        QCOMPARE(page.sub("Died"), QString("old age"));
        QCOMPARE(page.sub("Hatched"), QString("5 years old"));
        QCOMPARE(page.punch(), QString("slash"));
    }

    void whoIsOnLoanIsStillKept() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::lent, 3,
            {.party = "the keeper of 031", .until = civilDay({2026, 8, 1})});
        const Page page(at, at.hamorii);
        QVERIFY(page.isKept());
        QCOMPARE(page.side(), QString("On loan"));
        QCOMPARE(page.value("On loan since"), QString("5 May 2026"));
        QCOMPARE(page.sub("On loan since"), QString("to the keeper of 031, until 1 August"));
        QCOMPARE(page.reason(), QString("Away on loan since 5 May, back 1 August"));
        log(at, at.hamorii, FactKind::returned, 0);
        QVERIFY(page.side().isEmpty() && page.line("On loan since").isEmpty());
    }

    void quarantineShowsOnTheLabel() {
        DeskFixture at;
        at.openRoom();
        set(at, at.hamorii, {{"quarantined", true}});
        const Page page(at, at.hamorii);
        QCOMPARE(page.side(), QString("Quarantine"));
        QCOMPARE(page.place(), QString("Shelf A, tub 1"));
    }
};

QTEST_GUILESS_MAIN(TestAnimalFacts)
#include "tst_animal_facts.moc"
