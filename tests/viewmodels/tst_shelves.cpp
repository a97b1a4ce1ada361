// Everyone by shelf, and those of one shelf.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "room/search.h"
#include "viewmodels/keeping.h"
#include "viewmodels/shelvesmodel.h"

using namespace burrow;
using namespace burrow::test;
using Shelves = ShelvesModel;

namespace {

SubjectId add(DeskFixture& at, const char* number, const char* species, const char* place,
              const char* note = "") {
    Subject subject;
    subject.number = number;
    subject.species = species;
    subject.place = Place::parse(place);
    subject.note = note;
    return addSubject(at, subject);
}

}  // namespace

class TestShelves : public QObject {
    Q_OBJECT

private slots:
    void everyoneStandsOnTheirShelf() {
        DeskFixture at;
        at.openRoom();
        Shelves shelves;
        const QAbstractItemModelTester tester(&shelves);
        shelves.setDesk(&at.desk);
        QCOMPARE(column(shelves, Shelves::TagRole), (QStringList{"214", "118", "260"}));
        QCOMPARE(column(shelves, Shelves::HeadingRole), (QStringList{"Shelf A", "", "Shelf C"}));
        QCOMPARE(column(shelves, Shelves::HeadingNoteRole), (QStringList{"2 tubs", "", "1 tub"}));
        QCOMPARE(column(shelves, Shelves::VerbRole),
                 (QStringList{"Adult, unsexed.", "Adult, unsexed.", "Group of 12."}));
        QCOMPARE(column(shelves, Shelves::ReasonRole),
                 (QStringList{"Tub 1, 140 mm leg span", "Tub 2, 160 mm leg span", "Tub 1"}));
        QCOMPARE(column(shelves, Shelves::PunchRole), (QStringList{"feed", "hold", "group"}));
        QCOMPARE(shelves.summary(), QString("3 animals, groups and lots"));
    }

    void shelvesComeInTheOrderOfAWalk() {
        DeskFixture at;
        at.openRoom();
        add(at, "501", "Nhandu chromatus", "10 / 1");
        add(at, "502", "Nhandu chromatus", "2 / 10");
        add(at, "503", "Nhandu chromatus", "2 / 9");
        Shelves shelves;
        shelves.setDesk(&at.desk);
        const auto tags = column(shelves, Shelves::TagRole);
        QVERIFY(tags.indexOf("503") < tags.indexOf("502"));
        QVERIFY(tags.indexOf("502") < tags.indexOf("501"));
    }

    void quarantineHasAHeadingOfItsOwn() {
        DeskFixture at;
        at.openRoom();
        set(at, at.hamorii, {{"quarantined", true}});
        Shelves shelves;
        shelves.setDesk(&at.desk);
        QCOMPARE(column(shelves, Shelves::TagRole), (QStringList{"118", "260", "214"}));
        QCOMPARE(column(shelves, Shelves::HeadingRole),
                 (QStringList{"Shelf A", "Shelf C", "Shelf A"}));
        QCOMPARE(column(shelves, Shelves::HeadingNoteRole),
                 (QStringList{"1 tub", "1 tub", "1 tub"}));
    }

    void thoseGoneAreShownWhenTheyAreAskedFor() {
        DeskFixture at;
        at.openRoom();
        Shelves shelves;
        const QAbstractItemModelTester tester(&shelves);
        shelves.setDesk(&at.desk);
        shelves.setWithGone(true);
        QCOMPARE(column(shelves, Shelves::TagRole), (QStringList{"214", "118", "260", "331"}));
        QCOMPARE(column(shelves, Shelves::VerbRole).last(), QString("Sold 28 April."));
        QCOMPARE(column(shelves, Shelves::PunchRole).last(), QString("sold"));
        QVERIFY(shelves.data(shelves.index(3), Shelves::GoneRole).toBool());
        QCOMPARE(shelves.summary(), QString("3 animals, groups and lots"));  // still three kept
        shelves.setWithGone(false);
        QCOMPARE(shelves.count(), 3);
    }

    void whoIsOnLoanIsKeptAndCountedAsAway() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::lent, 3);
        Shelves shelves;
        shelves.setDesk(&at.desk);
        QCOMPARE(shelves.summary(), QString("3 animals, groups and lots, 1 away on loan"));
        QCOMPARE(column(shelves, Shelves::VerbRole).first(), QString("Away on loan since 5 May."));
        QVERIFY(!shelves.data(shelves.index(0), Shelves::GoneRole).toBool());
    }

    void oneShelfIsShownByItself() {
        DeskFixture at;
        at.openRoom();
        Shelves shelves;
        const QAbstractItemModelTester tester(&shelves);
        shelves.setDesk(&at.desk);
        QSignalSpy resets(&shelves, &QAbstractItemModel::modelReset);
        shelves.setShelf("C");
        QCOMPARE(shelves.count(), 3);
        shelves.setOneShelf(true);
        QCOMPARE(column(shelves, Shelves::TagRole), (QStringList{"260"}));
        QCOMPARE(shelves.tubs(), QString("1 tub"));
        shelves.setWithGone(true);
        QCOMPARE(column(shelves, Shelves::TagRole), (QStringList{"260", "331"}));
        set(at, at.group, {{"place", "A / 3"}});
        QCOMPARE(column(shelves, Shelves::TagRole), (QStringList{"331"}));
        shelves.setShelf("");  // those without a place
        QCOMPARE(shelves.count(), 0);
        QCOMPARE(resets.count(), 0);
    }

    void theModelFollowsTheDesk() {
        DeskFixture at;
        Shelves shelves;
        const QAbstractItemModelTester tester(&shelves);
        shelves.setDesk(&at.desk);
        QVERIFY(shelves.isBlank() && shelves.summary().isEmpty());
        at.openRoom();
        QVERIFY(!shelves.isBlank());
        at.desk.close();
        QVERIFY(shelves.isBlank());
    }

    void aNumberIsExactBeforeItIsAlike() {
        DeskFixture at;
        at.openRoom();
        const auto zero = add(at, "0214", "Nhandu chromatus", "B / 1");
        const auto& room = *at.desk.room();
        const auto idsOf = [&](const char* typed) {
            std::vector<SubjectId> ids;
            for (const auto& found : numbered(room, typed)) ids.push_back(found->subject().id);
            return ids;
        };
        QCOMPARE(idsOf("214"), std::vector{at.hamorii});
        QCOMPARE(idsOf("0214"), std::vector{zero});
        QCOMPARE(idsOf("KR-0214"), std::vector{zero});
        QCOMPARE(idsOf("00214").size(), 2U);
        QVERIFY(idsOf("").empty() && idsOf("KR-").empty() && idsOf("21").empty());
    }
};

QTEST_GUILESS_MAIN(TestShelves)
#include "tst_shelves.moc"
