// A large room is shown before it is read whole, and counted only then.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "room/front.h"
#include "viewmodels/desk_fixture.h"
#include "viewmodels/duemodel.h"

using namespace burrow;
using namespace burrow::test;

class TestFront : public QObject {
    Q_OBJECT

private slots:
    void theFirstStandBeforeTheRest() {
        DeskFixture at;
        at.openRoom();
        at.desk.close();
        at.settle();
        {
            SeededRandom random(5);
            auto book =
                Book::open(at.path, storage::Access::readWrite, {at.clock, random, Zone::utc()})
                    .value();
            auto act = book.beginAct().value();
            for (int i = 0; i < 600; ++i) {
                Subject subject;
                subject.number = std::to_string(1000 + i);
                subject.species = "Brachypelma hamorii";
                subject.place = Place::parse("Q / " + std::to_string(i));
                must(act.add(SetDraft{ThingType::subject, book.newId(), toFields(subject)}));
            }
            act.commit().value();
        }
        at.desk.open(at.path);  // notes who comes first
        at.settle();
        QCOMPARE(at.desk.room()->size(), std::size_t{604});
        at.desk.close();
        at.settle();

        DueModel due;
        QAbstractItemModelTester tester(&due,
                                        QAbstractItemModelTester::FailureReportingMode::QtTest);
        due.setDesk(&at.desk);
        std::vector<std::pair<bool, int>> shown;  // whole or not, and rows
        QStringList summaries;
        connect(&due, &DueModel::summaryChanged, this, [&] {
            shown.emplace_back(at.desk.room()->isWhole(), due.count());
            summaries.append(due.summary());
        });
        at.desk.open(at.path);
        QVERIFY(QTest::qWaitFor([&] { return shown.size() >= 2; }));
        at.settle();
        QVERIFY(!shown.front().first && shown.back().first);
        QVERIFY(shown.front().second > 50);
        QVERIFY(shown.back().second > 600);
        QCOMPARE(summaries.front(), QString("Friday 8 May"));
        QVERIFY(summaries.back().contains("to feed"));
    }
};

QTEST_MAIN(TestFront)
#include "tst_front.moc"
