// A moult was found: its sizes, its day, and the way back.
#include <QSignalSpy>

#include "viewmodels/moult_bench.h"
#include "viewmodels/other_hand.h"

using namespace burrow;
using namespace burrow::test;

class TestMoult : public QObject {
    Q_OBJECT

private slots:
    void isOneActWithItsPhotosAndOneUndoTakesBothBack() {
        MoultBench bench;
        const auto before = bench.at.history(bench.at.hamorii);
        bench.photograph(2);
        bench.model.setCarapace("24,1");
        bench.model.setSpan(" 152 ");
        bench.save();
        QVERIFY(bench.model.isSaved());
        const auto moult = bench.facts(FactKind::moulted).at(0);
        QCOMPARE(moult.body.carapace->value, 24.1);
        QCOMPARE(moult.body.span->value, 152.0);
        QVERIFY(moult.body.method == Method::ruler);
        QCOMPARE(moult.day, bench.at.desk.today());
        QCOMPARE(bench.facts(FactKind::photo).size(), 2U);
        QCOMPARE(bench.at.desk.doneTag(), QString("214"));
        QCOMPARE(bench.at.desk.doneText(), QString("moult logged with 2 photos"));
        QCOMPARE(bench.model.verb(), QString("Hold."));
        QCOMPARE(bench.model.nextPunch(), QString("hold"));
        QVERIFY2(bench.model.reason().endsWith("Opens 22 May"), qPrintable(bench.model.reason()));

        bench.at.desk.undo();
        bench.at.settle();
        QVERIFY(bench.at.history(bench.at.hamorii) == before);
        // What was entered is there to be saved again.
        QVERIFY(!bench.model.isSaved());
        QCOMPARE(bench.model.photos().size(), 2);
        QCOMPARE(bench.model.carapace(), QString("24,1"));
        bench.save();
        QCOMPARE(bench.facts(FactKind::photo).size(), 2U);
    }

    void isSavedOnce() {
        MoultBench bench;
        bench.model.save();
        bench.model.save();
        QTRY_VERIFY(bench.model.isSaved());
        bench.save();
        QCOMPARE(bench.facts(FactKind::moulted).size(), 1U);
        QCOMPARE(bench.at.desk.doneText(), QString("moult logged"));
        QVERIFY(!bench.facts(FactKind::moulted).at(0).body.method);  // nothing was measured
        QVERIFY(bench.model.toSex().isEmpty());                      // there is nothing to look at
    }

    void sizesThatCantBeAreNotSaved_data() {
        QTest::addColumn<QString>("carapace");
        QTest::addColumn<QString>("span");
        QTest::addColumn<QString>("carapaceError");
        QTest::addColumn<QString>("spanError");
        QTest::newRow("word") << "large"
                              << ""
                              << "\"large\" as Carapace length"
                              << "";
        QTest::newRow("too long") << "240"
                                  << ""
                                  << "240 for Carapace length is outside"
                                  << "";
        QTest::newRow("span too long") << ""
                                       << "1500"
                                       << ""
                                       << "for Leg span is outside 0.5 to 350";
        QTest::newRow("below nothing") << "-3"
                                       << "0"
                                       << "Carapace length"
                                       << "Leg span";
        QTest::newRow("thousands") << ""
                                   << "1.520,5"
                                   << ""
                                   << "Leg span";
    }
    void sizesThatCantBeAreNotSaved() {
        QFETCH(QString, carapace);
        QFETCH(QString, span);
        QFETCH(QString, carapaceError);
        QFETCH(QString, spanError);
        MoultBench bench;
        bench.photograph();
        bench.model.setCarapace(carapace);
        bench.model.setSpan(span);
        bench.save();
        QVERIFY(!bench.model.isSaved());
        QVERIFY2(holds(bench.model.carapaceError(), carapaceError),
                 qPrintable(bench.model.carapaceError()));
        QVERIFY2(holds(bench.model.spanError(), spanError), qPrintable(bench.model.spanError()));
        QVERIFY(bench.facts(FactKind::moulted).empty());
        QCOMPARE(bench.model.photos().size(), 1);
        bench.model.setCarapace("24");
        bench.model.setSpan("150");
        QVERIFY(bench.model.carapaceError().isEmpty() && bench.model.spanError().isEmpty());
        bench.save();
        QVERIFY(bench.model.isSaved());
    }

    void mayHaveHappenedBefore() {
        MoultBench bench;
        bench.model.when()->type("2026-05-01");
        bench.photograph();
        bench.save();
        const auto moult = bench.facts(FactKind::moulted).at(0);
        QCOMPARE(moult.day, parseIsoDate("2026-05-01").value());
        QCOMPARE(bench.facts(FactKind::photo).at(0).day, moult.day);
    }

    void hasADayThatHasCome_data() {
        QTest::addColumn<QString>("typed");
        QTest::newRow("tomorrow") << "2026-05-09";
        QTest::newRow("no day") << "2026-02-30";
        QTest::newRow("nothing") << "";
    }
    void hasADayThatHasCome() {
        QFETCH(QString, typed);
        MoultBench bench;
        bench.model.when()->type(typed);
        bench.save();
        QVERIFY(!bench.model.isSaved());
        QVERIFY(!bench.model.when()->error().isEmpty());
        QVERIFY(bench.facts(FactKind::moulted).empty());
    }

    void thatIsOnRecordIsAddedTo() {
        MoultBench bench;
        bench.model.setSubject(bench.at.id(bench.at.pulchra));
        QVERIFY(bench.model.onRecord().isEmpty());
        bench.model.when()->step(DayEntry::Unit::Day, -4);
        QVERIFY(bench.model.onRecord().contains("on record already"));
        bench.photograph();
        bench.model.setCarapace("27");
        bench.save();
        const auto moults = bench.facts(FactKind::moulted, bench.at.pulchra);
        QCOMPARE(moults.size(), 1U);
        QCOMPARE(moults[0].body.span->value, 160.0);  // as it was
        QCOMPARE(moults[0].body.carapace->value, 27.0);
        QCOMPARE(bench.facts(FactKind::photo, bench.at.pulchra).at(0).body.about, moults[0].id);
        QCOMPARE(bench.model.toSex(), QString::fromStdString(moults[0].id.text()));
    }

    /// Found days ago and photographed now: it is asked whether it is that one.
    void aMoultOfTheLastWeeksIsAskedAbout() {
        MoultBench bench;
        QVERIFY(bench.model.recent().isEmpty());  // 214 has none
        bench.model.setSubject(bench.at.id(bench.at.pulchra));
        QVERIFY2(bench.model.recent().startsWith("Also of the moult of 4 May"),
                 qPrintable(bench.model.recent()));
        bench.model.joinRecent();
        QVERIFY(bench.model.recent().isEmpty());
        QVERIFY(bench.model.onRecord().contains("on record already"));
        bench.photograph();
        bench.save();
        const auto moults = bench.facts(FactKind::moulted, bench.at.pulchra);
        QCOMPARE(moults.size(), 1U);
        const auto photo = bench.facts(FactKind::photo, bench.at.pulchra).at(0);
        QCOMPARE(photo.body.about, moults[0].id);
        QCOMPARE(photo.day, moults[0].day);
    }

    void photosAreAddedToAMoultOnRecord() {
        MoultBench bench;
        const auto moult = bench.facts(FactKind::moulted, bench.at.pulchra).at(0);
        bench.model.setSubject({});
        bench.model.setMoult(QString::fromStdString(moult.id.text()));
        QVERIFY(bench.model.isAdding() && !bench.model.isUnfiled());
        bench.at.settle();
        QVERIFY(!bench.model.isMissing());
        QCOMPARE(bench.model.tag(), QString("118"));
        QVERIFY2(bench.model.addingTo().contains("4 May"), qPrintable(bench.model.addingTo()));
        QVERIFY(bench.model.recent().isEmpty());
        QVERIFY(bench.model.isDried());
        QVERIFY(!bench.model.canSave());  // there is nothing to add
        bench.photograph(2);
        QVERIFY(bench.model.canSave());
        bench.save();
        QVERIFY(bench.model.isSaved());
        QCOMPARE(bench.model.savedMoult(), bench.model.moult());
        QCOMPARE(bench.facts(FactKind::moulted, bench.at.pulchra).size(), 1U);
        const auto photos = bench.facts(FactKind::photo, bench.at.pulchra);
        QCOMPARE(photos.size(), 2U);
        for (const auto& photo : photos) {
            QCOMPARE(photo.body.about, moult.id);
            QCOMPARE(photo.day, moult.day);
            QCOMPARE(photo.body.dried, true);
        }
        bench.at.desk.undo();
        bench.at.settle();
        QVERIFY(!bench.model.isSaved());
        QCOMPARE(bench.model.photos().size(), 2);
        QVERIFY(bench.facts(FactKind::photo, bench.at.pulchra).empty());
    }

    void nothingIsAddedToWhatIsNoMoult() {
        MoultBench bench;
        bench.model.setSubject({});
        bench.model.setMoult("01890a5d-ac96-774b-bcce-b302099a8057");
        bench.at.settle();
        QVERIFY(bench.model.isMissing() && !bench.model.canSave());
    }

    /// A full device keeps none: nothing is saved, and the photos stay to try again.
    void photosThatFindNoRoomAreNotAdded() {
        MoultBench bench;
        const auto moult = bench.facts(FactKind::moulted, bench.at.pulchra).at(0);
        bench.model.setMoult(QString::fromStdString(moult.id.text()));
        bench.at.settle();
        bench.photograph();
        bench.files.setWeather(FakeFiles::Weather::noRoom);
        bench.save();
        QVERIFY(!bench.model.isSaved());
        QCOMPARE(bench.model.photos().size(), 1);
        QVERIFY(!bench.model.photoTrouble().isEmpty());
        bench.files.setWeather(FakeFiles::Weather::fair);
        bench.save();
        QVERIFY(bench.model.isSaved());
        QCOMPARE(bench.facts(FactKind::photo, bench.at.pulchra).size(), 1U);
    }

    void photosAreLeftOnlyWhenThatWasSaid() {
        MoultBench bench;
        QSignalSpy left(&bench.model, &MoultModel::left);
        bench.photograph();
        bench.model.leave();
        QVERIFY(bench.model.isWarned() && left.isEmpty());
        bench.model.leave();
        QCOMPARE(left.size(), 1);
    }

    void undoLeavesWhatWasOnRecordAndGivesThePhotosBack_data() {
        QTest::addColumn<QString>("carapace");
        QTest::newRow("photo and size") << "27";
        QTest::newRow("photo alone") << "";
    }
    void undoLeavesWhatWasOnRecordAndGivesThePhotosBack() {
        QFETCH(QString, carapace);
        MoultBench bench;
        bench.model.setSubject(bench.at.id(bench.at.pulchra));
        bench.model.when()->step(DayEntry::Unit::Day, -4);
        const auto before = bench.at.history(bench.at.pulchra);
        bench.photograph();
        bench.model.setCarapace(carapace);
        bench.save();
        QVERIFY(bench.model.isSaved());
        bench.at.desk.undo();
        bench.at.settle();
        QVERIFY(bench.at.history(bench.at.pulchra) == before);
        QVERIFY(!bench.model.isSaved());
        QCOMPARE(bench.model.photos().size(), 1);
    }

    void canBeTheLastOneOfAMale() {
        MoultBench bench;
        QVERIFY(bench.model.canBeUltimate());
        bench.model.setUltimate(true);
        bench.save();
        QCOMPARE(bench.facts(FactKind::moulted).at(0).body.ultimate, true);
        QVERIFY(bench.at.desk.room()->find(bench.at.hamorii)->subject().mature);
        bench.at.desk.undo();
        bench.at.settle();
        QVERIFY(!bench.at.desk.room()->find(bench.at.hamorii)->subject().mature);
    }

    void isNeverTheLastOfAFemaleOrAGroup() {
        MoultBench bench;
        bench.model.setUltimate(true);
        OtherHand hand(bench.at);
        FactBody body;
        body.sex = Sex::female;
        hand.record({FactDraft{bench.at.hamorii, FactKind::sexed, body, std::nullopt}});
        QVERIFY(!bench.model.canBeUltimate());
        bench.save();
        QVERIFY(!bench.facts(FactKind::moulted).at(0).body.ultimate.value_or(false));
        MoultBench another;
        another.model.setSubject(another.at.id(another.at.group));
        QVERIFY(!another.model.canBeUltimate());
    }

    void ofAGroupIsOneOfMany() {
        MoultBench bench;
        const auto group = bench.at.group;
        bench.model.setSubject(bench.at.id(group));
        bench.photograph();
        bench.save();
        QVERIFY(bench.model.toSex().isEmpty());  // it belongs to none in particular
        MoultModel second;
        second.setDesk(&bench.at.desk);
        second.setDarkroom(&bench.darkroom);
        second.setSubject(bench.at.id(group));
        QVERIFY(second.onRecord().isEmpty());
        second.save();
        QTRY_VERIFY(second.isSaved());
        QCOMPARE(bench.facts(FactKind::moulted, group).size(), 2U);
    }

    void warnsOfHairsWhereThereMayBeSome() {
        MoultBench bench;
        QVERIFY(bench.model.caution().contains("eyes"));
        OtherHand hand(bench.at);
        const auto scorpion = hand.add("401", "Heterometrus spinifer");
        const auto stranger = hand.add("402", "Nobody nullus");
        bench.model.setSubject(bench.at.id(scorpion));
        QVERIFY(bench.model.caution().isEmpty());
        QCOMPARE(bench.model.spanLabel(), QString("Body length"));
        bench.model.setSpan("900");
        bench.save();
        QVERIFY(bench.model.spanError().contains("Body length"));
        bench.model.setSubject(bench.at.id(stranger));
        QVERIFY(!bench.model.caution().isEmpty());  // not known is not none
    }

    void ofNobodyIsNotSaved() {
        MoultBench bench;
        bench.model.setSubject("00000000-0000-7000-8000-000000000000");
        QVERIFY(bench.model.isMissing());
        bench.model.save();
        QVERIFY(!bench.model.isBusy());
        QVERIFY(bench.model.tag().isEmpty() && bench.model.caution().isEmpty());
    }

private:
    static bool holds(const QString& error, const QString& words) {
        return words.isEmpty() ? error.isEmpty() : error.contains(words);
    }
};

QTEST_MAIN(TestMoult)
#include "tst_moult.moc"
