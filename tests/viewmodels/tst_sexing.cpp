// Moults that wait to be sexed, and what is said of one.
#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <QtTest>
#include <cmath>

#include "viewmodels/other_hand.h"
#include "viewmodels/sexmodel.h"
#include "viewmodels/sexqueuemodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

enum Choice { female, male, cannotTell };

/// One model over one moult, read.
class OneLook {
public:
    OneLook(DeskFixture& at, const EntryId& moult) : at_(at) {
        model.setDesk(&at.desk);
        model.setMoult(QString::fromStdString(moult.text()));
        at.settle();
    }
    void say(Choice choice, int clarity = -1) {
        model.setChoice(choice);
        model.setClarity(clarity);
        model.save();
        at_.settle();
    }
    SexModel model;

private:
    DeskFixture& at_;
};

std::vector<Fact> sexings(DeskFixture& at) {
    auto facts = at.history(at.hamorii);
    std::erase_if(facts, [](const Fact& fact) { return fact.kind != FactKind::sexed; });
    return facts;
}

Sex sexNow(DeskFixture& at) { return at.desk.room()->find(at.hamorii)->subject().sex; }

FactBody sized(double carapace) {
    FactBody body;
    body.carapace = Millimetres{carapace};
    return body;
}

}  // namespace

class TestSexing : public QObject {
    Q_OBJECT

private slots:
    void queueListsThoseThatTellMostFirst() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        hand.moult(at.hamorii, 5, 2);
        hand.moult(at.pulchra, 0, 1);
        hand.moult(at.hamorii, 90, 1);
        hand.moult(at.hamorii, 40, 0);  // without a photo there is nothing to look at
        hand.moult(at.group, 2, 1);     // it belongs to none in particular
        SexQueueModel queue;
        const QAbstractItemModelTester tester(&queue);
        queue.setDesk(&at.desk);
        QVERIFY(!queue.isReady());
        at.settle();
        QVERIFY(queue.isReady());
        // One row for each animal, with its best moult: nothing is measured, so the newest of those.
        QCOMPARE(queue.count(), 2);
        QCOMPARE(queue.summary(), QString("3 moults wait"));
        QCOMPARE(text(queue, 0, SexQueueModel::TagRole), QString("214"));
        QVERIFY(text(queue, 0, SexQueueModel::WhenRole).endsWith("5 days ago"));
        QCOMPARE(text(queue, 0, SexQueueModel::PhotosRole), QString("2 photos"));
        QCOMPARE(text(queue, 1, SexQueueModel::WhenRole), QString("Moult of today"));
        QCOMPARE(text(queue, 1, SexQueueModel::BinomialRole), QString("Grammostola pulchra"));
        QVERIFY(text(queue, 1, SexQueueModel::ThumbnailRole).contains("-photos/thumbnails/"));
        QVERIFY(!queue.data(queue.index(0), SexQueueModel::LookedRole).toBool());
        hand.moult(at.pulchra, 200, 1, sized(25));  // the largest tells most
        at.settle();
        QCOMPARE(text(queue, 0, SexQueueModel::BinomialRole), QString("Grammostola pulchra"));
        QVERIFY(text(queue, 0, SexQueueModel::WhenRole).endsWith("200 days ago"));
        at.desk.close();
        at.settle();
        QCOMPARE(queue.count(), 0);
    }

    void whatWasLookedAtLeavesTheQueue() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        const auto old = hand.moult(at.hamorii, 90, 1);
        hand.moult(at.pulchra, 0, 1);
        SexQueueModel queue;
        const QAbstractItemModelTester tester(&queue);
        queue.setDesk(&at.desk);
        at.settle();
        OneLook(at, old).say(cannotTell);
        at.settle();
        QCOMPARE(queue.summary(),
                 QString("One moult waits. One animal was looked at and is still open"));
        QCOMPARE(text(queue, 1, SexQueueModel::TagRole), QString("214"));
        QVERIFY(queue.data(queue.index(1), SexQueueModel::LookedRole).toBool());
        QSignalSpy removals(&queue, &QAbstractItemModel::rowsRemoved);
        OneLook(at, old).say(female, 3);
        at.settle();
        QCOMPARE(queue.count(), 1);
        QCOMPARE(removals.count(), 1);
        at.desk.undo();
        at.settle();
        QCOMPARE(queue.count(), 2);
    }

    void showsTheMoultBesideEarlierOnes() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        hand.moult(at.hamorii, 300, 1);
        hand.moult(at.hamorii, 90, 2);
        const auto moult = hand.moult(at.hamorii, 5, 2, sized(15.8));
        hand.moult(at.hamorii, 1, 1);    // later, and so no part of what led here
        hand.moult(at.pulchra, 200, 1);  // somebody else's
        const OneLook look(at, moult);
        QVERIFY(look.model.isReady());
        QCOMPARE(look.model.title(), QString("Moult of 3 May, carapace 15.8 mm"));
        QCOMPARE(look.model.photos().size(), 2);
        QCOMPARE(look.model.earlier().size(), 3);
        const auto nearest = look.model.earlier().at(0).toMap().value("name").toString();
        QVERIFY2(nearest.contains("7 Feb"), qPrintable(nearest));
        QCOMPARE(look.model.guidance().size(), 3);
        QVERIFY(look.model.verdict().isEmpty());
    }

    void photosStandInTheOrderTheyWereTaken() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        const auto moult = hand.moult(at.hamorii, 5, 2);
        const OneLook look(at, moult);
        const auto first = QString::fromStdString(Sha256::of(moult.text() + "0").hex());
        QVERIFY(look.model.photos().at(0).toMap().value("url").toString().contains(first));
    }

    void writesTheSexAndHowClearlyItWasSeen() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        const auto moult = hand.moult(at.hamorii, 5, 1);
        OneLook look(at, moult);
        QSignalSpy saved(&look.model, &SexModel::saved);
        look.say(female, 4);
        QCOMPARE(saved.count(), 1);
        QCOMPARE(sexNow(at), Sex::female);
        const auto said = sexings(at).at(0);
        QCOMPARE(said.body.about, moult);
        QCOMPARE(said.body.clarity, Clarity::beyondDoubt);
        QCOMPARE(said.body.look, Look::moult);
        QCOMPARE(at.desk.doneText(), QString("female, by its moult"));
        QVERIFY(look.model.verdict().startsWith("You saw a female"));
        at.desk.undo();
        at.settle();
        QCOMPARE(sexNow(at), Sex::unknown);
        QVERIFY(look.model.verdict().isEmpty());
    }

    void cannotTellLeavesTheSexAsItIs() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        OneLook(at, hand.moult(at.hamorii, 90, 1)).say(male);
        OneLook look(at, hand.moult(at.hamorii, 5, 1));
        look.say(cannotTell);
        QCOMPARE(sexNow(at), Sex::male);
        QCOMPARE(sexings(at).size(), 2U);
        QVERIFY(!sexings(at).at(0).body.clarity);  // how clearly was not asked
        QVERIFY(look.model.verdict().startsWith("You could not tell"));
    }

    void aNewAnswerTakesThePlaceOfTheOldOne() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        OneLook look(at, hand.moult(at.hamorii, 5, 1));
        look.say(female, 2);
        look.say(male, 3);
        QCOMPARE(sexings(at).size(), 1U);
        QCOMPARE(sexNow(at), Sex::male);
        at.desk.undo();
        at.settle();
        QCOMPARE(sexings(at).size(), 1U);
        QCOMPARE(sexings(at).at(0).body.sex, Sex::female);
        QCOMPARE(sexNow(at), Sex::female);
        QVERIFY(look.model.verdict().startsWith("You saw a female"));
    }

    /// Barely or partly is evidence, and no more: the record of the sex stays as it is.
    void whatIsSeenPartlyLeavesTheSexAsItIs() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        OneLook look(at, hand.moult(at.hamorii, 5, 1));
        look.say(female, 1);
        QCOMPARE(sexings(at).size(), 1U);
        QCOMPARE(sexNow(at), Sex::unknown);
    }

    /// 12 mm and clearly: 30 to 1, so 30 / 31 from even odds.
    void showsWhatTheChoiceWouldMean() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        OneLook look(at, hand.moult(at.hamorii, 5, 1, sized(12)));
        QCOMPARE(look.model.before(), 0.5);
        QCOMPARE(look.model.after(), 0.5);
        QCOMPARE(look.model.finding(), QString("Could be either"));
        look.model.setChoice(female);
        look.model.setClarity(3);
        QVERIFY(std::abs(look.model.after() - 30.0 / 31.0) < 1e-12);
        QCOMPARE(look.model.finding(), QString("Female"));
        QCOMPARE(look.model.preview(),
                 QString("50 in 100 female before, 97 in 100 with this moult"));
        look.model.save();
        at.settle();
        // What is on record is not counted twice.
        QCOMPARE(look.model.before(), 0.5);
        QVERIFY(std::abs(look.model.after() - 30.0 / 31.0) < 1e-12);
        QCOMPARE(look.model.drawings().size(), 8);
        for (const auto& drawing : look.model.drawings()) {
            const auto name = drawing.toMap()["drawing"].toString();
            QVERIFY2(QFile::exists(QString(BURROW_SOURCE_DIR "/assets/drawings/%1.svg").arg(name)),
                     qPrintable(name));
        }
    }

    /// 13 mm by a photo of the skin: the table's row for that size, and as close as that.
    void aCarapaceMeasuredInThePhotoCounts() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        const auto moult = hand.moult(at.hamorii, 5, 1);
        OneLook look(at, moult);
        QCOMPARE(look.model.title(), QString("Moult of 3 May"));
        QCOMPARE(look.model.closeMm(), 12.0);
        auto body = sized(13);
        body.method = Method::photo;
        body.about = moult;
        hand.record({FactDraft{at.hamorii, FactKind::measured, body}});
        at.settle();
        QCOMPARE(look.model.title(), QString("Moult of 3 May, carapace 13 mm"));
        QCOMPARE(look.model.closeMm(), 0.6 * 13);
        look.model.setChoice(female);
        look.model.setClarity(3);
        QVERIFY(std::abs(look.model.after() - 30.0 / 31.0) < 1e-12);
    }

    /// The moult was on another day: its photos stay where they were taken, and are named after it.
    void photosAreNamedAfterTheDayOfTheirMoult() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        const auto first = hand.moult(at.hamorii, 90, 1);
        hand.moult(at.hamorii, 60, 1);
        const OneLook look(at, hand.moult(at.hamorii, 5, 1));
        const auto names = [&] {
            QStringList list;
            for (const auto& photo : look.model.earlier()) {
                list.append(photo.toMap()["name"].toString());
            }
            return list;
        };
        QVERIFY2(names().at(0).contains("9 Mar"), qPrintable(names().join("; ")));
        const AmendDraft moved{first, {}, Instant{fridayEvening.ms - 30 * msPerDay}};
        hand.record({moved});
        at.settle();
        QCOMPARE(names().size(), 2);
        QVERIFY2(names().at(0).contains("8 Apr"), qPrintable(names().join("; ")));
        QVERIFY2(names().at(1).contains("9 Mar"), qPrintable(names().join("; ")));
    }

    void whatDisagreesIsSaidBesideTheChoice() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        OneLook(at, hand.moult(at.hamorii, 90, 1, sized(20))).say(male, 4);
        OneLook look(at, hand.moult(at.hamorii, 5, 1, sized(20)));
        QVERIFY(look.model.conflicts().isEmpty());
        look.model.setChoice(female);
        look.model.setClarity(4);
        QVERIFY(!look.model.conflicts().isEmpty());
    }

    void aRowSaysAllOfItselfAtOnce() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        hand.moult(at.hamorii, 5, 2);
        SexQueueModel queue;
        queue.setDesk(&at.desk);
        at.settle();
        const auto spoken = text(queue, 0, SexQueueModel::SpokenRole);
        QVERIFY2(spoken.startsWith("214, Brachypelma hamorii, ") && spoken.endsWith("2 photos"),
                 qPrintable(spoken));
        QVERIFY(text(queue, 0, SexQueueModel::DetailRole).contains('\n'));
    }

    void nothingIsWrittenWithoutAChoice() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        OneLook look(at, hand.moult(at.hamorii, 5, 1));
        look.model.setClarity(2);
        look.model.save();
        QVERIFY(!look.model.isBusy());
        look.model.setChoice(9);
        look.model.save();
        at.settle();
        QVERIFY(sexings(at).empty());
    }

    void aMoultThatIsGoneIsMissing() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        const auto moult = hand.moult(at.hamorii, 5, 1);
        OneLook look(at, moult);
        QVERIFY(!look.model.isMissing());
        hand.record({RetractDraft{moult}});
        at.settle();
        QVERIFY(look.model.isMissing());
        look.say(female);
        QVERIFY(sexings(at).empty());
        QVERIFY(OneLook(at, hand.moult(at.hamorii, 3, 0)).model.isMissing());
    }

    void otherOrdersGetNoAdviceAboutTarantulas() {
        DeskFixture at;
        at.openRoom();
        OtherHand hand(at);
        const auto scorpion = hand.add("401", "Heterometrus spinifer");
        const OneLook look(at, hand.moult(scorpion, 5, 1));
        QCOMPARE(look.model.guidance().size(), 1);
        QVERIFY(look.model.guidance().at(0).contains("about tarantulas"));
    }

    void choicesCanBeShownBeforeThereIsADesk() {
        const SexModel model;
        QVERIFY(model.choices().isEmpty() && model.clarities().isEmpty());
    }

private:
    static QString text(const SexQueueModel& queue, int row, int role) {
        return queue.data(queue.index(row), role).toString();
    }
};

QTEST_GUILESS_MAIN(TestSexing)
#include "tst_sexing.moc"
