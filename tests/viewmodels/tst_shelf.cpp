// A whole shelf at once.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "viewmodels/keeping.h"
#include "viewmodels/shelfmodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

std::optional<CivilDay> watered(const DeskFixture& at, SubjectId id) {
    return resident(at, id)->kept.digest.lastWatered;
}

}  // namespace

class TestShelf : public QObject {
    Q_OBJECT

private slots:
    void aWholeShelfIsWateredAsOneAct() {
        DeskFixture at;
        at.openRoom();
        ShelfModel shelf;
        const QAbstractItemModelTester tester(&shelf);
        shelf.setDesk(&at.desk);
        shelf.setShelf("A");
        QCOMPARE(shelf.title(), QString("Shelf A"));
        QCOMPARE(column(shelf, ShelfModel::TagRole), (QStringList{"214", "118"}));
        QSignalSpy logged(&shelf, &ShelfModel::logged);
        shelf.water();
        at.settle();
        QCOMPARE(logged.count(), 1);
        QCOMPARE(watered(at, at.hamorii), at.desk.today());
        QCOMPARE(watered(at, at.pulchra), at.desk.today());
        QCOMPARE(watered(at, at.group), at.desk.today() - 1);  // on another shelf
        QCOMPARE(at.desk.doneTag(), QString("Shelf A"));
        QCOMPARE(at.desk.doneText(), QString("2 watered"));
        at.desk.undo();
        at.settle();
        QCOMPARE(watered(at, at.hamorii), at.desk.today() - 1);
        QCOMPARE(watered(at, at.pulchra), at.desk.today() - 1);
    }

    void whoIsLeftOutStaysOut() {
        DeskFixture at;
        at.openRoom();
        ShelfModel shelf;
        const QAbstractItemModelTester tester(&shelf);
        shelf.setDesk(&at.desk);
        shelf.setShelf("A");
        shelf.toggle(at.id(at.pulchra));
        QCOMPARE(shelf.included(), 1);
        log(at, at.pulchra, FactKind::note, 0, {.text = "dish full"});  // the room is read anew
        QCOMPARE(column(shelf, ShelfModel::IncludedRole), (QStringList{"true", "false"}));
        shelf.dampen();
        at.settle();
        QCOMPARE(resident(at, at.hamorii)->kept.digest.lastDampened, at.desk.today());
        QCOMPARE(resident(at, at.pulchra)->kept.digest.lastDampened, at.desk.today() - 1);
        QCOMPARE(at.desk.doneText(), QString("1 dampened"));
        shelf.toggle(at.id(at.pulchra));
        QCOMPARE(shelf.included(), 2);
    }

    void anotherShelfStartsWithEveryone() {
        DeskFixture at;
        at.openRoom();
        ShelfModel shelf;
        const QAbstractItemModelTester tester(&shelf);
        shelf.setDesk(&at.desk);
        shelf.setShelf("A");
        shelf.toggle(at.id(at.hamorii));
        shelf.setShelf("C");
        QCOMPARE(column(shelf, ShelfModel::TagRole), (QStringList{"260"}));
        shelf.setShelf("A");
        QCOMPARE(shelf.included(), 2);
    }

    void onlyThoseWhoStandThereAreMeant() {
        DeskFixture at;
        at.openRoom();
        log(at, at.pulchra, FactKind::lent, 0);
        ShelfModel shelf;
        shelf.setDesk(&at.desk);
        shelf.setShelf("A");
        QCOMPARE(column(shelf, ShelfModel::TagRole), (QStringList{"214"}));
        shelf.setShelf("C");  // 331 was sold from there
        QCOMPARE(column(shelf, ShelfModel::TagRole), (QStringList{"260"}));
    }

    void aShelfIsMeantWithItsRack() {
        DeskFixture at;
        at.openRoom();
        set(at, at.hamorii, {{"place", "2 / A / 1"}});
        set(at, at.group, {{"place", nullptr}});
        ShelfModel shelf;
        shelf.setDesk(&at.desk);
        shelf.setShelf("A");
        QCOMPARE(column(shelf, ShelfModel::TagRole), (QStringList{"118"}));
        shelf.setShelf(QString::fromStdString(Place::parse("2 / A / 1").shelfOnly().text()));
        QCOMPARE(column(shelf, ShelfModel::TagRole), (QStringList{"214"}));
        QCOMPARE(shelf.title(), QString("Rack 2, Shelf A"));
        shelf.setShelf({});  // those without a place
        QCOMPARE(column(shelf, ShelfModel::TagRole), (QStringList{"260"}));
    }

    void nobodyLeftIsNothingToWrite() {
        DeskFixture at;
        at.openRoom();
        ShelfModel shelf;
        shelf.setDesk(&at.desk);
        shelf.setShelf("C");
        shelf.toggle(at.id(at.group));
        QSignalSpy logged(&shelf, &ShelfModel::logged);
        shelf.water();
        at.settle();
        QCOMPARE(logged.count(), 0);
        QCOMPARE(watered(at, at.group), at.desk.today() - 1);
        QVERIFY(at.desk.doneText().isEmpty());
    }
};

QTEST_GUILESS_MAIN(TestShelf)
#include "tst_shelf.moc"
