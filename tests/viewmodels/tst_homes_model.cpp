// The homes of the room: who has outgrown its own, the moves, and logging them.
#include <QAbstractItemModelTester>

#include "viewmodels/homesmodel.h"
#include "viewmodels/keeping.h"

using namespace burrow;
using namespace burrow::test;

namespace {

Enclosure home(const char* name, double length, double width, double height, double ground) {
    Enclosure made;
    made.name = name;
    made.length = {length};
    made.width = {width};
    made.height = {height};
    made.substrate = {ground};
    return made;
}

/// 214, an adult of 140 mm, lives in a tub of 200 mm; one that fits stands empty.
void crowd(DeskFixture& at) {
    const auto small = addEnclosure(at, home("E-1", 200, 200, 200, 80));
    addEnclosure(at, home("E-2", 450, 300, 250, 100));
    set(at, at.hamorii, {{"enclosure", small.text()}});
}

/// The first row that has this title; -1 for none.
int rowTitled(const HomesModel& homes, const QString& title) {
    return static_cast<int>(column(homes, HomesModel::TitleRole).indexOf(title));
}

QString joined(const HomesModel& homes, int row, int role) {
    return homes.data(homes.index(row, 0), role).toStringList().join(QStringLiteral(" | "));
}

}  // namespace

class TestHomesModel : public QObject {
    Q_OBJECT

private slots:
    void aMoveIsLoggedWithOneTapAndTakenBack() {
        DeskFixture at;
        at.openRoom();
        crowd(at);
        HomesModel homes;
        const QAbstractItemModelTester tester(&homes);
        homes.setDesk(&at.desk);
        at.settle();
        QVERIFY(homes.isReady());
        QCOMPARE(rowTitled(homes, "214 from E-1 into E-2"), 0);
        QCOMPARE(homes.data(homes.index(0, 0), HomesModel::VerbRole).toString(),
                 QString("It is moved"));
        const auto lines = joined(homes, 0, HomesModel::LinesRole);
        // 450 x 300 x 100 mm are 13.5 litres; loose, 1.1 times as much.
        QVERIFY2(lines.contains("14.9 litres of dry mix, 100 mm deep"), qPrintable(lines));
        QVERIFY2(lines.contains("litres of coconut fibre, from"), qPrintable(lines));
        QVERIFY2(lines.contains("Drop from the lid 150 mm, fits"), qPrintable(lines));
        const auto cautions = joined(homes, 0, HomesModel::CautionsRole);
        QVERIFY2(cautions.contains("gloves and glasses"), qPrintable(cautions));
        QVERIFY(rowTitled(homes, "Too small") > 0);

        homes.made(0);
        at.settle();
        at.settle();
        const auto enclosure = resident(at, at.hamorii)->subject().enclosure;
        QCOMPARE(enclosure, std::optional(EnclosureId{Uuid::named("enclosure E-2")}));
        QCOMPARE(at.desk.doneTag(), QString("214"));
        QCOMPARE(at.desk.doneText(), QString("moved into E-2"));
        QCOMPARE(at.history(at.hamorii).front().kind, FactKind::rehoused);
        QCOMPARE(rowTitled(homes, "214 from E-1 into E-2"), -1);
        QCOMPARE(homes.summary(), QString("Every home fits, as far as it is recorded."));

        at.desk.undo();
        at.settle();
        at.settle();
        QCOMPARE(rowTitled(homes, "214 from E-1 into E-2"), 0);
    }

    void whoMustBeLeftAloneWaits() {
        DeskFixture at;
        at.openRoom();
        crowd(at);
        log(at, at.hamorii, FactKind::premoultSign, 0, {.sign = "dark patch"});
        HomesModel homes;
        const QAbstractItemModelTester tester(&homes);
        homes.setDesk(&at.desk);
        at.settle();
        QCOMPARE(rowTitled(homes, "In premoult, not to be moved"), 0);
        QVERIFY(homes.data(homes.index(0, 0), HomesModel::VerbRole).toString().isEmpty());
        homes.made(0);  // there is nothing to log
        at.settle();
        QVERIFY(at.desk.doneText().isEmpty());
    }

    void whatIsNotKnownIsSaid() {
        DeskFixture at;
        at.openRoom();
        HomesModel homes;
        QVERIFY(homes.summary().isEmpty());
        QVERIFY(homes.unjudged().isEmpty());
        const QAbstractItemModelTester tester(&homes);
        homes.setDesk(&at.desk);
        at.settle();
        // 214 and 118 have sizes, and no enclosure; 260 is a group.
        QVERIFY2(homes.unjudged().startsWith("2 animals without a size"),
                 qPrintable(homes.unjudged()));
        QVERIFY2(homes.unjudged().endsWith("One group or lot: no span tells what room they need."),
                 qPrintable(homes.unjudged()));
        QCOMPARE(homes.rowCount(), 0);
    }

    void whatMayComeIsMarkedAsAnEstimate() {
        DeskFixture at;
        at.openRoom();
        // 118 moulted lately, at 160 mm: 495 mm of floor are enough until it grows.
        const auto tight = addEnclosure(at, home("E-3", 495, 260, 300, 100));
        set(at, at.pulchra, {{"enclosure", tight.text()}});
        log(at, at.pulchra, FactKind::moulted, 300, {.span = Millimetres{140}});
        log(at, at.pulchra, FactKind::moulted, 600, {.span = Millimetres{120}});
        HomesModel homes;
        const QAbstractItemModelTester tester(&homes);
        homes.setDesk(&at.desk);
        at.settle();
        const int row = rowTitled(homes, "Too small after its next moult");
        QVERIFY(row >= 0);
        const auto estimates = joined(homes, row, HomesModel::EstimatesRole);
        QVERIFY2(estimates.startsWith("Estimate: about"), qPrintable(estimates));
    }
};

QTEST_GUILESS_MAIN(TestHomesModel)
#include "tst_homes_model.moc"
