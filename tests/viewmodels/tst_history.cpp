// Everything that happened to a subject, newest first, in portions.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "viewmodels/historymodel.h"
#include "viewmodels/keeping.h"

using namespace burrow;
using namespace burrow::test;
using History = HistoryModel;

namespace {

/// A note on each of so many days, one act.
void addNotes(DeskFixture& at, SubjectId id, int count) {
    std::vector<Draft> drafts;
    for (int i = 0; i < count; ++i) {
        drafts.emplace_back(
            FactDraft{id, FactKind::note, {.text = "note " + std::to_string(i)}, daysAgo(100 + i)});
    }
    write(at, std::move(drafts));
}

}  // namespace

class TestHistory : public QObject {
    Q_OBJECT

private slots:
    void newestComesFirstUnderItsMonth() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::note, 366, {.text = "came in a cup", .confidential = true});
        History history;
        const QAbstractItemModelTester tester(&history);
        history.setDesk(&at.desk);
        history.setSubject(at.id(at.hamorii));
        QVERIFY(!history.isReady());
        at.settle();
        QVERIFY(history.isReady());
        QCOMPARE(column(history, History::TitleRole),
                 (QStringList{"Dampened", "Watered", "Ate", "Measured", "Note"}));
        // May of two years are two months.
        QCOMPARE(column(history, History::MonthRole),
                 (QStringList{"May 2026", "", "Apr 2026", "Mar 2026", "May 2025"}));
        QCOMPARE(column(history, History::DayRole).first(), QString("Thursday 7 May"));
        QCOMPARE(column(history, History::DetailRole).at(3), QString("140 mm leg span"));
        QCOMPARE(column(history, History::NoteRole).last(), QString("came in a cup (private)"));
    }

    void isReadInPortions() {
        DeskFixture at;
        at.openRoom();
        addNotes(at, at.hamorii, 130);
        History history;  // without a tester, which fetches by itself
        history.setDesk(&at.desk);
        history.setSubject(at.id(at.hamorii));
        at.settle();
        QCOMPARE(history.count(), 60);
        QSignalSpy resets(&history, &QAbstractItemModel::modelReset);
        QVERIFY(history.canFetchMore({}));
        history.fetchMore({});
        QVERIFY(!history.canFetchMore({}));  // not while it reads
        at.settle();
        QCOMPARE(history.count(), 120);
        history.fetchMore({});
        at.settle();
        QCOMPARE(history.count(), 134);
        QVERIFY(!history.canFetchMore({}));
        QCOMPARE(resets.count(), 0);  // the view keeps its place
        const auto entries = column(history, History::EntryRole);
        QCOMPARE(QSet<QString>(entries.begin(), entries.end()).size(), 134);
        QCOMPARE(column(history, History::NoteRole).last(), QString("note 129"));
    }

    void allIsReadInTheEnd() {
        DeskFixture at;
        at.openRoom();
        addNotes(at, at.hamorii, 130);
        History history;
        const QAbstractItemModelTester tester(&history);
        history.setDesk(&at.desk);
        history.setSubject(at.id(at.hamorii));
        QTRY_COMPARE(history.count(), 134);  // the tester fetches what there is
    }

    void entriesOfOneMomentAreNotSplit() {
        DeskFixture at;
        at.openRoom();
        std::vector<Draft> drafts;
        for (int i = 0; i < 70; ++i) {
            drafts.emplace_back(FactDraft{at.hamorii, FactKind::watered, {}, daysAgo(0)});
        }
        write(at, std::move(drafts));
        History history;
        history.setDesk(&at.desk);
        history.setSubject(at.id(at.hamorii));
        at.settle();
        history.fetchMore({});
        at.settle();
        QCOMPARE(history.count(), 74);
    }

    void whatIsWrittenMeanwhileIsThere() {
        DeskFixture at;
        at.openRoom();
        addNotes(at, at.hamorii, 70);
        History history;
        const QAbstractItemModelTester tester(&history);
        history.setDesk(&at.desk);
        history.setSubject(at.id(at.hamorii));
        at.settle();
        history.fetchMore({});
        at.settle();
        QCOMPARE(history.count(), 74);
        log(at, at.hamorii, FactKind::fangsBlack, 0);
        QCOMPARE(history.count(), 75);
        QCOMPARE(column(history, History::TitleRole).first(), QString("Fangs black"));
        // The heading moves to the row that is now the first of its month.
        QCOMPARE(column(history, History::MonthRole).mid(0, 3), (QStringList{"May 2026", "", ""}));
        at.desk.undo();
        at.settle();
        QCOMPARE(history.count(), 74);
        QCOMPARE(column(history, History::MonthRole).first(), QString("May 2026"));
    }

    void ofAGroupItSaysHowMany() {
        DeskFixture at;
        at.openRoom();
        log(at, at.group, FactKind::died, 0, {.count = 2, .cause = "dried out"});
        History history;
        history.setDesk(&at.desk);
        history.setSubject(at.id(at.group));
        at.settle();
        QCOMPARE(column(history, History::DetailRole).first(), QString("2 of them, dried out"));
    }

    void whatIsPrivateSaysSoAlsoWithoutANote() {
        DeskFixture at;
        at.openRoom();
        log(at, at.group, FactKind::sold, 0, {.count = 1, .confidential = true});
        History history;
        history.setDesk(&at.desk);
        history.setSubject(at.id(at.group));
        at.settle();
        QCOMPARE(column(history, History::NoteRole).first(), QString("(private)"));
    }

    void anotherSubjectStartsAnew() {
        DeskFixture at;
        at.openRoom();
        addNotes(at, at.hamorii, 130);
        addNotes(at, at.pulchra, 130);
        History history;
        history.setDesk(&at.desk);
        history.setSubject(at.id(at.hamorii));
        at.settle();
        history.fetchMore({});
        history.setSubject(at.id(at.pulchra));
        QCOMPARE(history.tag(), QString("118"));
        QVERIFY(!history.isReady());
        at.settle();
        QCOMPARE(history.count(), 60);
        QVERIFY(history.canFetchMore({}));
        QCOMPARE(column(history, History::TitleRole).at(2), QString("Moulted"));
    }

    void whoIsNotInTheBookIsMissing() {
        DeskFixture at;
        at.openRoom();
        History history;
        const QAbstractItemModelTester tester(&history);
        history.setDesk(&at.desk);
        history.setSubject("no id at all");
        QVERIFY(history.isMissing() && history.tag().isEmpty());
        history.setSubject(at.id(SubjectId{Uuid::named("nobody")}));
        at.settle();
        QVERIFY(history.isMissing());
        QCOMPARE(history.count(), 0);
        QVERIFY(!history.canFetchMore({}));
    }
};

QTEST_GUILESS_MAIN(TestHistory)
#include "tst_history.moc"
