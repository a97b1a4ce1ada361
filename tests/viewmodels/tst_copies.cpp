// Copies of the book: listed, made by hand and by themselves, and the way back to one.
#include <QSignalSpy>

#include "viewmodels/backupsmodel.h"
#include "viewmodels/caretaker.h"
#include "viewmodels/other_hand.h"

using namespace burrow;
using namespace burrow::test;

namespace {

QString valueOf(const QVariantList& facts, const QString& name) {
    for (const auto& fact : facts) {
        if (fact.toMap()["name"] == name) return fact.toMap()["value"].toString();
    }
    return "no " + name;
}

}  // namespace

class TestCopies : public QObject {
    Q_OBJECT

private slots:
    void oneIsMadeByHand() {
        DeskFixture at;
        at.openRoom();
        BackupsModel model;
        model.setDesk(&at.desk);
        at.settle();
        QVERIFY(model.isReady());
        QVERIFY(model.copies().isEmpty());
        model.makeNow();
        QVERIFY(model.isBusy());
        at.settle();
        QVERIFY(!model.isBusy());
        QCOMPARE(model.trouble(), QString());
        QCOMPARE(model.copies().size(), 1);
        const auto copy = model.copies().first().toMap();
        QCOMPARE(copy["why"].toString(), QString("Made by hand"));
        QVERIFY2(copy["size"].toString().endsWith("kB"), qPrintable(copy["size"].toString()));
        QVERIFY(!model.told().isEmpty());
    }

    void theCaretakerMakesTheOneOfTheDay() {
        DeskFixture at;
        at.openRoom();
        Caretaker caretaker(at.desk);
        QSignalSpy rested(&caretaker, &Caretaker::rested);
        QTRY_COMPARE(rested.size(), 1);
        const auto made = Backups(at.path, at.clock, Zone::utc()).list().value();
        QCOMPARE(made.size(), std::size_t{1});
        // Not again on the same day, however often the room is read.
        at.desk.refresh();
        at.settle();
        QTest::qWait(50);
        QCOMPARE(rested.size(), 1);
        at.clock.set(Instant{fridayEvening.ms + msPerDay});
        at.desk.refresh();
        at.settle();
        QTRY_COMPARE(rested.size(), 2);
    }

    void goingBackIsShownFirstAndCanBeGoneBackFrom() {
        DeskFixture at;
        at.openRoom();
        BackupsModel model;
        model.setDesk(&at.desk);
        model.makeNow();
        at.settle();
        {
            OtherHand hand(at);
            at.clock.set(Instant{fridayEvening.ms + 60'000});
            hand.add("900", "Grammostola pulchra");
        }
        QCOMPARE(at.desk.room()->residents().size(), std::size_t{5});
        model.choose(0);
        at.settle();
        QCOMPARE(model.chosen(), 0);
        QCOMPARE(valueOf(model.preview(), "Would go"), QString("One entry"));
        QCOMPARE(valueOf(model.preview(), "Would come back"), QString("0 entries"));
        QCOMPARE(at.desk.room()->residents().size(), std::size_t{5});
        model.goBack();
        at.settle();
        at.settle();
        QCOMPARE(model.trouble(), QString());
        QCOMPARE(at.desk.room()->residents().size(), std::size_t{4});
        // As it was before is a copy now.
        QCOMPARE(model.copies().size(), 2);
        QCOMPARE(model.copies().first().toMap()["why"].toString(),
                 QString("Before going back to a copy"));
        model.choose(0);
        at.settle();
        model.goBack();
        at.settle();
        at.settle();
        QCOMPARE(at.desk.room()->residents().size(), std::size_t{5});
    }

    void aCopyThatCannotBeReadIsRefusedInWords() {
        DeskFixture at;
        at.openRoom();
        BackupsModel model;
        model.setDesk(&at.desk);
        model.makeNow();
        at.settle();
        const auto copy = Backups(at.path, at.clock, Zone::utc()).list().value().front().file;
        QVERIFY(DeviceFiles().write(copy, bytesOf("no book at all")));
        model.choose(0);
        at.settle();
        QCOMPARE(model.chosen(), -1);
        QVERIFY2(!model.trouble().isEmpty() && !model.trouble().startsWith('['),
                 qPrintable(model.trouble()));
    }
};

QTEST_MAIN(TestCopies)
#include "tst_copies.moc"
