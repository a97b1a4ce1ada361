// The due list.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "viewmodels/deeds.h"
#include "viewmodels/desk_fixture.h"
#include "viewmodels/duemodel.h"

using namespace burrow;
using namespace burrow::test;

class TestDue : public QObject {
    Q_OBJECT

private slots:
    void listsByShelf() {
        DeskFixture at;
        at.openRoom();
        DueModel due;
        const QAbstractItemModelTester tester(&due);
        due.setDesk(&at.desk);
        QCOMPARE(tags(due), (QStringList{"214", "118", "260"}));
        QCOMPARE(text(due, 0, DueModel::HeadingRole), QString("Shelf A"));
        QCOMPARE(text(due, 0, DueModel::HeadingNoteRole), QString("1 to feed, 1 on hold"));
        QCOMPARE(text(due, 1, DueModel::HeadingRole), QString());
        QCOMPARE(text(due, 0, DueModel::VerbRole), QString("Feed."));
        QVERIFY(text(due, 0, DueModel::ReasonRole).startsWith("Ate 14 days ago"));
        QCOMPARE(text(due, 1, DueModel::PunchRole), QString("hold"));
        QVERIFY(due.data(due.index(1), DueModel::HeldRole).toBool());
        QCOMPARE(text(due, 2, DueModel::VerbRole), QString("Take leftovers out."));
        QVERIFY(due.summary().startsWith("Friday 8 May. 1 to feed"));
    }

    void oneTapTakesOneRow() {
        DeskFixture at;
        at.openRoom();
        DueModel due;
        const QAbstractItemModelTester tester(&due);
        due.setDesk(&at.desk);
        QSignalSpy resets(&due, &QAbstractItemModel::modelReset);
        QSignalSpy removals(&due, &QAbstractItemModel::rowsRemoved);
        due.logUsual(at.id(at.hamorii));
        at.settle();
        QCOMPARE(removals.count(), 1);
        QCOMPARE(tags(due), (QStringList{"118", "260"}));
        // The heading moves to the row that is now the first of its shelf.
        QCOMPARE(text(due, 0, DueModel::HeadingRole), QString("Shelf A"));
        QCOMPARE(at.history(at.hamorii).front().body.prey, std::optional<std::string>("cricket"));
        at.desk.undo();
        at.settle();
        QCOMPARE(tags(due), (QStringList{"214", "118", "260"}));
        QCOMPARE(resets.count(), 0);
    }

    void sayWhenNothingIsDue() {
        DeskFixture at;
        at.openRoom();
        DueModel due;
        due.setDesk(&at.desk);
        QVERIFY(due.nothing().isEmpty());
        due.logUsual(at.id(at.hamorii));
        const auto group = residentOf(at.desk, at.id(at.group));
        logEatenAfterAll(at.desk, this, *group);
        const auto pulchra = residentOf(at.desk, at.id(at.pulchra));
        logFact(at.desk, this, *pulchra, {at.pulchra, FactKind::lent, {}, {}});
        at.settle();
        QCOMPARE(due.count(), 0);
        QVERIFY2(due.nothing().startsWith("Nothing due until "), qPrintable(due.nothing()));
    }

    void followsTheDesk() {
        DeskFixture at;
        DueModel due;
        const QAbstractItemModelTester tester(&due);
        due.setDesk(&at.desk);
        QCOMPARE(due.count(), 0);
        at.openRoom();
        QCOMPARE(due.count(), 3);
        at.desk.close();
        QCOMPARE(due.count(), 0);
    }

private:
    static QString text(const DueModel& due, int row, int role) {
        return due.data(due.index(row), role).toString();
    }
    static QStringList tags(const DueModel& due) {
        QStringList tags;
        for (int i = 0; i < due.rowCount(); ++i) tags.append(text(due, i, DueModel::TagRole));
        return tags;
    }
};

QTEST_GUILESS_MAIN(TestDue)
#include "tst_due.moc"
