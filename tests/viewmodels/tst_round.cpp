// A round: which tub, what to do there, one tap, and on.
#include <QSignalSpy>

#include "viewmodels/desk_fixture.h"
#include "viewmodels/roundmodel.h"

using namespace burrow;
using namespace burrow::test;
using Task = RoundModel::Task;

class TestRound : public QObject {
    Q_OBJECT

private slots:
    void walksAShelf() {
        DeskFixture at;
        at.openRoom();
        RoundModel round;
        round.setDesk(&at.desk);
        QSignalSpy advanced(&round, &RoundModel::advanced);
        round.start("Shelf A");
        QCOMPARE(round.tag(), QString("214"));
        QCOMPARE(round.task(), Task::Feed);
        QCOMPARE(round.progress(), QString("1 of 2"));
        QCOMPARE(round.holes(), (QStringList{"current", "slash"}));
        QCOMPARE(round.mainText(), QString("Took it"));
        round.doMain();
        at.settle();
        QCOMPARE(advanced.count(), 1);
        round.next();  // what is held needs no visit, so this shelf is done
        QCOMPARE(round.task(), Task::Finished);
        QCOMPARE(round.holes(), (QStringList{"done", "slash"}));
    }

    void aHeldTubIsLeft() {
        DeskFixture at;
        at.openRoom();
        RoundModel round;
        round.setDesk(&at.desk);
        QSignalSpy advanced(&round, &RoundModel::advanced);
        round.goTo(at.id(at.pulchra));
        QCOMPARE(round.task(), Task::Hold);
        QVERIFY(round.verb().startsWith("Hold until"));
        QCOMPARE(round.mainText(), QString("Leave it"));
        const auto before = at.history(at.pulchra).size();
        round.doMain();
        QCOMPARE(advanced.count(), 1);
        QCOMPARE(at.history(at.pulchra).size(), before);  // leaving it alone is no entry
        round.doOutcome("fangsBlack");
        at.settle();
        QCOMPARE(at.history(at.pulchra).front().kind, FactKind::fangsBlack);
        QCOMPARE(round.task(), Task::Feed);  // which opens feeding: there is more to do here
        QCOMPARE(advanced.count(), 1);
    }

    void feedAnywayIsOneMoreTap() {
        DeskFixture at;
        at.openRoom();
        RoundModel round;
        round.setDesk(&at.desk);
        round.goTo(at.id(at.pulchra));
        round.doOutcome("feedAnyway");
        QCOMPARE(round.task(), Task::Feed);
        QVERIFY(round.reason().contains("hardening"));  // the warning stays
        round.doMain();
        at.settle();
        QCOMPARE(at.history(at.pulchra).front().kind, FactKind::offered);
    }

    void leftoversComeFirst() {
        DeskFixture at;
        at.openRoom();
        RoundModel round;
        round.setDesk(&at.desk);
        round.goTo(at.id(at.group));
        QCOMPARE(round.task(), Task::Leftovers);
        round.doOutcome("eaten");
        at.settle();
        const auto facts = at.history(at.group);
        const auto offer = std::find_if(facts.begin(), facts.end(), [](const Fact& fact) {
            return fact.kind == FactKind::offered;
        });
        QCOMPARE(offer->body.outcome, Outcome::ate);
        QCOMPARE(offer->body.count, 6);
    }

    void outcomesAreLogged_data() {
        QTest::addColumn<QString>("action");
        QTest::addColumn<QString>("kind");
        QTest::newRow("refused") << "refused"
                                 << "offered";
        QTest::newRow("left in") << "leftIn"
                                 << "offered";
        QTest::newRow("premoult") << "premoult"
                                  << "premoult_sign";
    }
    void outcomesAreLogged() {
        QFETCH(QString, action);
        QFETCH(QString, kind);
        DeskFixture at;
        at.openRoom();
        RoundModel round;
        round.setDesk(&at.desk);
        round.goTo(at.id(at.hamorii));
        round.doOutcome(action);
        at.settle();
        const auto newest = at.history(at.hamorii).front();
        QCOMPARE(QString::fromLatin1(spec(newest.kind).name.data()), kind);
        if (newest.kind == FactKind::offered) QCOMPARE(newest.body.prey, std::string("cricket"));
    }

    void moreIsAskedFor() {
        DeskFixture at;
        at.openRoom();
        RoundModel round;
        round.setDesk(&at.desk);
        QSignalSpy moult(&round, &RoundModel::moultWanted);
        QSignalSpy note(&round, &RoundModel::noteWanted);
        round.goTo(at.id(at.hamorii));
        round.doOutcome("moulted");
        round.doOutcome("note");
        QCOMPARE(moult.value(0).value(0).toString(), at.id(at.hamorii));
        QCOMPARE(note.count(), 1);
        round.writeNote("  webbed over the dish ");
        at.settle();
        QCOMPARE(at.history(at.hamorii).front().body.text, std::string("webbed over the dish"));
        round.writeNote("   ");
        at.settle();
        QCOMPARE(at.history(at.hamorii).front().body.text, std::string("webbed over the dish"));
    }

    void preyFollowsTheHand() {
        DeskFixture at;
        at.openRoom();
        RoundModel round;
        round.setDesk(&at.desk);
        round.goTo(at.id(at.hamorii));
        const auto suggested = round.preyLength();
        round.less();
        QVERIFY(round.preyLength() < suggested);
        QCOMPARE(round.amountNote(), QString("changed by hand"));
        round.more();
        QCOMPARE(round.preyLength(), suggested);
        for (int i = 0; i < 80; ++i) round.less();
        QVERIFY(!round.canLess() && round.preyLength() >= 1);
        for (int i = 0; i < 80; ++i) round.more();
        QVERIFY(!round.canMore());
        round.chooseCount(3);
        round.chooseKind(static_cast<int>(round.preyKinds().size()) - 1);
        const auto length = round.preyLength();
        round.doMain();
        at.settle();
        const auto meal = at.history(at.hamorii).front().body;
        QCOMPARE(meal.count, 3);
        QCOMPARE(meal.preyLength->value, length);
    }

    void extrasGoWithTheTapUnlessTakenOut() {
        DeskFixture at;
        at.openRoom();
        at.clock.set({fridayEvening.ms + 30 * msPerDay});
        at.desk.refresh();
        at.settle();
        RoundModel round;
        round.setDesk(&at.desk);
        round.goTo(at.id(at.hamorii));
        QCOMPARE(round.extras().size(), 2);
        QCOMPARE(round.alsoText(), QString("watered too, dampened too"));
        round.toggleExtra(1);
        QCOMPARE(round.alsoText(), QString("watered too"));
        QCOMPARE(round.extras().at(1).toMap().value("text").toString(), QString("Not dampened"));
        round.doMain();
        at.settle();
        QStringList kinds;
        for (const auto& fact : at.history(at.hamorii)) {
            if (fact.day == at.desk.today()) kinds.append(spec(fact.kind).name.data());
        }
        QCOMPARE(kinds, (QStringList{"watered", "offered"}));
        at.desk.undo();  // one tap, one undo
        at.settle();
        QVERIFY(at.history(at.hamorii).front().day != at.desk.today());
        QCOMPARE(round.task(), Task::Feed);
    }

    void aTagFromAnotherShelfMovesTheRound() {
        DeskFixture at;
        at.openRoom();
        RoundModel round;
        round.setDesk(&at.desk);
        round.start("Shelf A");
        round.goTo(at.id(at.group));
        QCOMPARE(round.title(), QString("Round, Shelf C"));
        QCOMPARE(round.progress(), QString("1 of 1"));
    }

    void whoIsNotDueCanBePassed() {
        DeskFixture at;
        at.openRoom();
        RoundModel round;
        round.setDesk(&at.desk);
        QSignalSpy advanced(&round, &RoundModel::advanced);
        round.goTo(at.id(at.hamorii));
        round.doMain();
        at.settle();
        round.goTo(at.id(at.hamorii));
        QCOMPARE(round.task(), Task::Waiting);
        QCOMPARE(round.mainText(), QString("Pass on"));
        round.doMain();
        QCOMPARE(advanced.count(), 2);
    }

    void theRoomMayGo() {
        DeskFixture at;
        at.openRoom();
        RoundModel round;
        round.setDesk(&at.desk);
        round.start({});
        QCOMPARE(round.title(), QString("Round, all shelves"));
        at.desk.close();
        QVERIFY(!round.isActive());
        round.doMain();
        round.next();
        QCOMPARE(round.tag(), QString());
    }
};

QTEST_GUILESS_MAIN(TestRound)
#include "tst_round.moc"
