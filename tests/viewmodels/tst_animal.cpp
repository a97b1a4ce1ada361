// The page of one animal: its label, its life as drawings, and what is known of it line by line.
#include <QSignalSpy>

#include "viewmodels/animalmodel.h"
#include "viewmodels/keeping.h"

using namespace burrow;
using namespace burrow::test;

namespace {

/// The page of an animal, with its history read.
class Page : public AnimalModel {
public:
    Page(DeskFixture& at, SubjectId id) {
        setDesk(&at.desk);
        setSubject(at.id(id));
        at.settle();
    }
};

QVariantList columnOf(const QVariantList& marks, const char* key) {
    QVariantList values;
    for (const auto& mark : marks) values.append(mark.toMap().value(key));
    return values;
}

int dayAgo(const DeskFixture& at, int days) { return at.desk.today().days - days; }

}  // namespace

class TestAnimal : public QObject {
    Q_OBJECT

private slots:
    void itsLabelIsThereBeforeItsHistory() {
        DeskFixture at;
        at.openRoom();
        AnimalModel page;
        page.setDesk(&at.desk);
        page.setSubject(at.id(at.hamorii));
        QCOMPARE(page.tag(), QString("214"));
        QCOMPARE(page.about(), QString("Adult, unsexed"));
        QCOMPARE(page.size(), QString("140 mm leg span"));
        QCOMPARE(page.place(), QString("Kiln Row\nShelf A, tub 1"));
        QCOMPARE(page.verb(), QString("Feed."));
        QVERIFY(page.cautions().contains("Hairs"));
        QVERIFY(!page.isReady());
        at.settle();
        QVERIFY(page.isReady());
        QCOMPARE(page.entryCount(), 4);
    }

    // --- its moult line ------------------------------------------------------------------------

    void theMoultLineHoldsItsWholeLife() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::moulted, 900, {.carapace = Millimetres{12}});
        log(at, at.hamorii, FactKind::moulted, 500, {.span = Millimetres{90}});
        log(at, at.hamorii, FactKind::moulted, 100);
        for (int week = 1; week <= 12; ++week) {
            log(at, at.hamorii, FactKind::offered, 100 + 7 * week, {.outcome = Outcome::ate});
        }
        const Page page(at, at.hamorii);
        QCOMPARE(columnOf(page.marks(), "day"),
                 (QVariantList{dayAgo(at, 900), dayAgo(at, 500), dayAgo(at, 100)}));
        // 90 mm of span are about 15 mm of carapace: common practice, no source.
        QCOMPARE(columnOf(page.marks(), "height"), (QVariantList{12.0, 15.0, 0.0}));
        QCOMPARE(page.feedings().size(), 13);  // more than the few that rows show
        QCOMPARE(page.feedings().first().toMap().value("day").toInt(), dayAgo(at, 100 + 7 * 12));
        QCOMPARE(page.nowDay(), at.desk.today().days);
        QCOMPARE(page.lineText(), QString("3 moults on record, the last on 28 January."));
    }

    void theLineNamesEveryNewYear() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::moulted, 900);  // in November 2023
        const Page page(at, at.hamorii);
        QCOMPARE(column(page.lineLabels(), "text"), (QStringList{"2024", "2025", "2026"}));
        QCOMPARE(page.lineLabels().first().toMap().value("day").toInt(),
                 civilDay({2024, 1, 1})->days);
    }

    void hardeningEndsWithBlackFangs() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::moulted, 800);
        log(at, at.hamorii, FactKind::moulted, 500);
        log(at, at.hamorii, FactKind::fangsBlack, 494);
        log(at, at.hamorii, FactKind::fangsBlack, 480);  // seen again: the first time counts
        log(at, at.hamorii, FactKind::moulted, 100);     // never seen: as long as the rules say
        const Page page(at, at.hamorii);
        QCOMPARE(columnOf(page.marks(), "hardening"), (QVariantList{14, 6, 14}));
    }

    void aMarkOpensItsMoultAndShowsThatItHasAPhoto() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::moulted, 300);
        log(at, at.hamorii, FactKind::moulted, 30);
        const auto facts = at.history(at.hamorii);
        const auto moult = *std::find_if(facts.begin(), facts.end(), [](const Fact& fact) {
            return fact.kind == FactKind::moulted;
        });
        log(at, at.hamorii, FactKind::photo, 29,
            {.about = moult.id, .role = PhotoRole::moult, .picture = Sha256::of("a moult")});
        const Page page(at, at.hamorii);
        QCOMPARE(columnOf(page.marks(), "photo"), (QVariantList{false, true}));
        QCOMPARE(page.entryOfMark(1), QString::fromStdString(moult.id.text()));
        QVERIFY(page.entryOfMark(0) != page.entryOfMark(1));
        QVERIFY(page.entryOfMark(2).isEmpty() && page.entryOfMark(-1).isEmpty());
    }

    void onlyWhatWasTakenIsFilled() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::offered, 9, {.outcome = Outcome::part});
        log(at, at.hamorii, FactKind::offered, 6, {.outcome = Outcome::refused});
        log(at, at.hamorii, FactKind::offered, 1, {.outcome = Outcome::leftIn});  // not known yet
        const Page page(at, at.hamorii);
        QCOMPARE(columnOf(page.feedings(), "took"), (QVariantList{true, true, false}));
    }

    // --- its growth ----------------------------------------------------------------------------

    void growthIsDrawnFromTheCarapaceWhereItWasMeasuredAsOften() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::moulted, 700, {.carapace = Millimetres{14.5}});
        log(at, at.hamorii, FactKind::moulted, 300,
            {.span = Millimetres{120}, .carapace = Millimetres{19}});
        const Page page(at, at.hamorii);
        QCOMPARE(page.growthUnit(), QString("carapace, mm"));
        QCOMPARE(columnOf(page.growthPoints(), "value"), (QVariantList{14.5, 19.0}));
        QCOMPARE(page.growthText(), QString("2 sizes, carapace, mm: from 14.5 to 19."));
        log(at, at.hamorii, FactKind::measured, 200, {.span = Millimetres{130}});
        QCOMPARE(page.growthUnit(), QString("leg span, mm"));
        QCOMPARE(columnOf(page.growthPoints(), "value"), (QVariantList{120.0, 130.0, 140.0}));
        QCOMPARE(column(page.growthLabels(), "text"), (QStringList{"2026"}));
    }

    void oneSizeIsNoGrowth() {
        DeskFixture at;
        at.openRoom();
        const Page page(at, at.hamorii);
        QVERIFY(page.growthPoints().isEmpty() && page.growthText().isEmpty());
    }

    void aScorpionGrowsInLength() {
        DeskFixture at;
        at.openRoom();
        Subject scorpion;
        scorpion.number = "400";
        scorpion.species = "Pandinus imperator";
        const auto id = addSubject(at, scorpion);
        log(at, id, FactKind::moulted, 200, {.span = Millimetres{70}});
        log(at, id, FactKind::moulted, 20, {.span = Millimetres{84}});
        const Page page(at, id);
        QCOMPARE(page.growthUnit(), QString("body length, mm"));
        // 7 mm of length for each of carapace: common practice, no source.
        QCOMPARE(columnOf(page.marks(), "height"), (QVariantList{10.0, 12.0}));
    }

    // --- why, and what shows its sex -----------------------------------------------------------

    void everyCareSaysWhy() {
        DeskFixture at;
        at.openRoom();
        const Page page(at, at.pulchra);
        QCOMPARE(column(page.why(), "name"),
                 (QStringList{"Feeding", "Leftovers", "Water", "Damp", "Looking in", "Moult",
                              "Head count", "Measuring", "Breeding", "Rehousing", "Quarantine",
                              "Stage"}));
        QCOMPARE(page.why().first().toMap().value("value").toString(), QString("Hold"));
        QVERIFY(column(page.why(), "sub").first().startsWith("4 days since moult"));
        for (const auto& reason : column(page.why(), "sub")) QVERIFY(!reason.isEmpty());
        QVERIFY(lineNamed(page.why(), "Stage").value("sub").toString().contains("160 mm"));
    }

    void whatIsDueSaysHowMuch() {
        DeskFixture at;
        at.openRoom();
        const Page page(at, at.hamorii);
        const auto feed = lineNamed(page.why(), "Feeding").value("sub").toString();
        QVERIFY2(feed.startsWith("Ate 14 days ago") && feed.contains("cricket"), qPrintable(feed));
    }

    void evidenceForItsSexIsNewestFirst() {
        DeskFixture at;
        at.openRoom();
        QVERIFY(Page(at, at.hamorii).sex().isEmpty());
        log(at, at.hamorii, FactKind::sexed, 400, {.sex = Sex::unknown, .text = "torn"});
        {
            const Page page(at, at.hamorii);
            QCOMPARE(page.sex(), QString("Not told"));
            QCOMPARE(column(page.sexLines(), "sub"), (QStringList{"torn"}));
        }
        log(at, at.hamorii, FactKind::sexed, 200, {.sex = Sex::male});
        log(at, at.hamorii, FactKind::moulted, 20, {.ultimate = true});
        const Page page(at, at.hamorii);
        QCOMPARE(page.sex(), QString("Male"));
        QCOMPARE(column(page.sexLines(), "value"), (QStringList{"Male", "Male", "Not told"}));
        QCOMPARE(column(page.sexLines(), "page").first(), QString("EntryPage"));
        QVERIFY(column(page.sexLines(), "sub").first().contains("certain"));
        QCOMPARE(page.about(), QString("Mature male"));
    }

    void whatDisagreesAboutItsSexIsSaid() {
        DeskFixture at;
        at.openRoom();
        FactBody plate;
        plate.sex = Sex::female;
        plate.clarity = Clarity::clearly;
        log(at, at.hamorii, FactKind::sexed, 200, plate);
        QVERIFY(Page(at, at.hamorii).sexConflict().isEmpty());
        log(at, at.hamorii, FactKind::moulted, 20, {.ultimate = true});
        QCOMPARE(Page(at, at.hamorii).sexConflict(),
                 QString("The animal is recorded as female, and the evidence says otherwise."));
    }

    void aGroupHasNoSex() {
        DeskFixture at;
        at.openRoom();
        log(at, at.group, FactKind::moulted, 20, {.ultimate = true});
        const Page page(at, at.group);
        QVERIFY(page.sex().isEmpty() && page.sexLines().isEmpty());
    }

    // --- its photos and entries ----------------------------------------------------------------

    void itsPhotosAreNewestFirst() {
        DeskFixture at;
        at.openRoom();
        for (int i = 1; i <= 14; ++i) {
            log(at, at.hamorii, FactKind::photo, 100 * i,
                {.role = PhotoRole::animal, .picture = Sha256::of(std::to_string(i))});
        }
        const Page page(at, at.hamorii);
        QCOMPARE(page.photos().size(), 12);
        QCOMPARE(column(page.photos(), "text").first(), QString("Photo of 28 January"));
        const auto url = page.photos().first().toMap().value("url").toUrl();
        QVERIFY(url.isLocalFile() &&
                url.path().contains(QString::fromStdString(Sha256::of("1").hex())));
    }

    void theLastFewEntriesAreShownAndAllAreCounted() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::note, 0, {.text = "webbed over", .confidential = true});
        log(at, at.hamorii, FactKind::note, 700, {.text = "came in a cup"});
        const Page page(at, at.hamorii);
        QCOMPARE(page.entryCount(), 6);
        QCOMPARE(column(page.entries(), "title"),
                 (QStringList{"Note", "Dampened", "Watered", "Ate", "Measured"}));
        QCOMPARE(column(page.entries(), "note").first(), QString("webbed over (private)"));
        QCOMPARE(column(page.entries(), "day").first(), QString("Friday 8 May"));
    }

    void anEntryOfLongAgoNamesItsYear() {
        DeskFixture at;
        at.openRoom();
        log(at, at.gone, FactKind::note, 731, {.text = "came in a cup"});
        const Page page(at, at.gone);
        QCOMPARE(column(page.entries(), "day"), (QStringList{"Tuesday 28 April", "7 May 2024"}));
    }

    void followsWhatIsWritten() {
        DeskFixture at;
        at.openRoom();
        const Page page(at, at.hamorii);
        log(at, at.hamorii, FactKind::note, 0, {.text = "dug a burrow"});
        QCOMPARE(column(page.entries(), "note").first(), QString("dug a burrow"));
        at.desk.undo();
        at.settle();
        QCOMPARE(page.entryCount(), 4);
    }

    void theHistoryOfTheOneBeforeIsNotTakenForItsOwn() {
        DeskFixture at;
        at.openRoom();
        AnimalModel page;
        page.setDesk(&at.desk);
        page.setSubject(at.id(at.hamorii));
        page.setSubject(at.id(at.gone));
        QSignalSpy changes(&page, &AnimalModel::changed);
        connect(&page, &AnimalModel::changed, &page, [&] {
            if (page.isReady()) QCOMPARE(page.entryCount(), 1);
        });
        at.settle();
        QVERIFY(page.isReady() && changes.count() > 0);
    }

    void whoIsNotInTheBookIsMissing() {
        DeskFixture at;
        AnimalModel page;
        page.setDesk(&at.desk);
        page.setSubject("no id at all");
        QVERIFY(!page.isMissing());  // nothing is open yet
        at.openRoom();
        QVERIFY(page.isMissing() && !page.isReady());
        QVERIFY(page.tag().isEmpty() && page.verb().isEmpty() && page.reason().isEmpty());
        QCOMPARE(page.punch(), QString("none"));
        page.setSubject(at.id(SubjectId{Uuid::named("nobody")}));
        QVERIFY(page.isMissing());
        page.setSubject(at.id(at.hamorii));
        at.settle();
        QVERIFY(!page.isMissing() && page.isReady());
        at.desk.close();
        QVERIFY(!page.isMissing() && !page.isReady());
    }
};

QTEST_GUILESS_MAIN(TestAnimal)
#include "tst_animal.moc"
