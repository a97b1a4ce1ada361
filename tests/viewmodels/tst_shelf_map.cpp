// The map of racks and shelves.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "viewmodels/keeping.h"
#include "viewmodels/shelfmap.h"
#include "viewmodels/shelfmodel.h"

using namespace burrow;
using namespace burrow::test;
using Map = ShelfMapModel;

namespace {

void add(DeskFixture& at, const char* number, const char* place) {
    Subject subject;
    subject.number = number;
    subject.species = "Nhandu chromatus";
    subject.place = Place::parse(place);
    addSubject(at, subject);
}

QStringList holes(const Map& map, int row) {
    return map.data(map.index(row), Map::HolesRole).toStringList();
}

}  // namespace

class TestShelfMap : public QObject {
    Q_OBJECT

private slots:
    void eachTubHasAHole() {
        DeskFixture at;
        at.openRoom();
        Map map;
        const QAbstractItemModelTester tester(&map);
        map.setDesk(&at.desk);
        QCOMPARE(column(map, Map::NameRole), (QStringList{"Shelf A", "Shelf C"}));
        QCOMPARE(column(map, Map::HeadingRole), (QStringList{"", ""}));
        QCOMPARE(holes(map, 0), (QStringList{"open", "slash"}));
        QCOMPARE(holes(map, 1), (QStringList{"open"}));  // who was sold stands there no more
        QCOMPARE(column(map, Map::NoteRole),
                 (QStringList{"2 tubs, 1 to feed, 1 on hold", "1 tub, 1 other"}));
    }

    void aHoleIsFilledWhenTheTubIsLookedAfter() {
        DeskFixture at;
        at.openRoom();
        Map map;
        const QAbstractItemModelTester tester(&map);
        map.setDesk(&at.desk);
        QSignalSpy resets(&map, &QAbstractItemModel::modelReset);
        log(at, at.hamorii, FactKind::offered, 0, {.outcome = Outcome::ate});
        QCOMPARE(holes(map, 0), (QStringList{"done", "slash"}));
        at.desk.undo();
        at.settle();
        QCOMPARE(holes(map, 0), (QStringList{"open", "slash"}));
        log(at, at.pulchra, FactKind::lent, 0);
        QCOMPARE(holes(map, 0), (QStringList{"open"}));
        QCOMPARE(resets.count(), 0);
        at.desk.close();
        QCOMPARE(map.count(), 0);
    }

    void racksAreHeadedAndShelvesComeInTheOrderOfAWalk() {
        DeskFixture at;
        at.openRoom();
        add(at, "501", "Nursery / 2 / B / 1");
        add(at, "502", "Nursery / 2 / A / 10");
        add(at, "503", "Nursery / 2 / A / 9");
        add(at, "504", "Nursery / 10 / A / 1");
        add(at, "505", "3 / A / 1");
        add(at, "506", "");
        set(at, at.group, {{"quarantined", true}});
        Map map;
        map.setDesk(&at.desk);
        QCOMPARE(column(map, Map::HeadingRole),
                 (QStringList{"", "", "", "Rack 3", "Nursery, Rack 2", "", "Nursery, Rack 10"}));
        QCOMPARE(column(map, Map::NameRole),
                 (QStringList{"No place yet", "Shelf A", "Shelf C", "Shelf A", "Shelf A", "Shelf B",
                              "Shelf A"}));
        QCOMPARE(column(map, Map::ShelfRole),
                 (QStringList{"", "A", "C", "3 / A / ", "Nursery / 2 / A / ", "Nursery / 2 / B / ",
                              "Nursery / 10 / A / "}));
        QCOMPARE(holes(map, 4).size(), 2);
    }

    void aShelfIsNamedAsItsPageNamesIt() {
        DeskFixture at;
        at.openRoom();
        add(at, "501", "Nursery / 2 / B / 1");
        Map map;
        map.setDesk(&at.desk);
        ShelfModel shelf;
        shelf.setDesk(&at.desk);
        for (int row = 0; row < map.rowCount(); ++row) {
            shelf.setShelf(map.data(map.index(row), Map::ShelfRole).toString());
            QCOMPARE(shelf.rowCount(), holes(map, row).size());
            const auto open = holes(map, row).filter(QRegularExpression("open|slash"));
            QCOMPARE(shelf.isDue(), !open.isEmpty());
        }
    }
};

QTEST_GUILESS_MAIN(TestShelfMap)
#include "tst_shelf_map.moc"
