// Who is found while a keeper types.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "viewmodels/findmodel.h"
#include "viewmodels/keeping.h"

using namespace burrow;
using namespace burrow::test;
using Find = FindModel;

namespace {

SubjectId add(DeskFixture& at, const char* number, const char* species, const char* place,
              const char* note = "") {
    Subject subject;
    subject.number = number;
    subject.species = species;
    subject.place = Place::parse(place);
    subject.note = note;
    return addSubject(at, subject);
}

}  // namespace

class TestFindModel : public QObject {
    Q_OBJECT

private slots:
    void somebodyIsFound_data() {
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QStringList>("found");
        QTest::addColumn<QString>("reason");
        const auto row = [](const char* typed, const QStringList& found, const char* reason = "") {
            QTest::newRow(typed) << typed << found << reason;
        };
        row("214", {"214"}, "Shelf A, tub 1");
        row("kr-87", {"087"}, "Shelf B, tub 3");
        row("B. hamorii", {"214"}, "Shelf A, tub 1");
        row("red knee", {"214"}, "Found as Mexican red knee. Shelf A, tub 1");
        // Transferred to Caribena: Fukushima & Bertani 2017 (from memory). Who was sold is found too.
        row("Avicularia versicolor", {"331"}, "Found as Avicularia versicolor. Shelf C, tub 2");
        row("lividus", {"087"}, "Shelf B, tub 3");
        row("Webbed dish", {"087"}, "Note: webbed over the dish");
        row("shelf c", {"260", "331"}, "Shelf C, tub 1");
        row("shelf a pulchra", {"118"}, "Shelf A, tub 2");
        row("zzqx", {});
        row("*", {});
        row("  ", {});
    }
    void somebodyIsFound() {
        QFETCH(QString, typed);
        QFETCH(QStringList, found);
        QFETCH(QString, reason);
        DeskFixture at;
        at.openRoom();
        add(at, "087", "Haplopelma lividum", "B / 3", "webbed over the dish");
        Find find;
        const QAbstractItemModelTester tester(&find);
        find.setDesk(&at.desk);
        find.setQuery(typed);
        at.settle();
        QCOMPARE(column(find, Find::TagRole), found);
        QCOMPARE(find.isAnswered(), !typed.trimmed().isEmpty());
        if (!found.isEmpty()) QCOMPARE(column(find, Find::ReasonRole).front(), reason);
        if (find.isSearching()) {
            QCOMPARE(find.summary(), QString("%1 found").arg(found.size()));
        } else {
            QVERIFY(find.summary().isEmpty());
        }
    }

    void aNoteSaysItsDayAndItsEntry() {
        DeskFixture at;
        at.openRoom();
        log(at, at.pulchra, FactKind::note, 3, {.text = "bolted under the bark"});
        Find find;
        find.setDesk(&at.desk);
        find.setQuery("bolt");
        at.settle();
        QCOMPARE(column(find, Find::ReasonRole),
                 (QStringList{"Note of 5 May: bolted under the bark"}));
        const auto facts = at.history(at.pulchra);
        const auto noted = std::find_if(facts.begin(), facts.end(), [](const Fact& fact) {
            return fact.kind == FactKind::note;
        });
        const auto entry = noted->id;
        QCOMPARE(column(find, Find::EntryRole), (QStringList{toQt(entry.text())}));
        QCOMPARE(column(find, Find::VerbRole), (QStringList{"Adult, unsexed."}));
        QCOMPARE(column(find, Find::PunchRole), (QStringList{"hold"}));
    }

    /// The interface waits for nothing: what is typed while the book is busy is asked once, at the end.
    void typingGoesOnWhileTheBookIsBusy() {
        DeskFixture at;
        at.openRoom();
        Find find;
        const QAbstractItemModelTester tester(&find);
        find.setDesk(&at.desk);
        QSignalSpy answers(&find, &Find::answered);
        {
            const auto busy = at.holdBook();
            for (const char* typed : {"p", "pu", "pul", "pulc", "pulch", "hamorii"}) {
                find.setQuery(typed);
            }
            QVERIFY(!find.isAnswered());
            QCOMPARE(find.count(), 0);
        }
        at.settle();
        QTRY_VERIFY(find.isAnswered());
        QCOMPARE(column(find, Find::TagRole), (QStringList{"214"}));
        QCOMPARE(answers.count(), 1);  // of two questions, the first one's answer came too late
        find.setQuery("");
        QCOMPARE(find.count(), 0);
        QVERIFY(!find.isSearching());
    }

    void searchFollowsTheBook() {
        DeskFixture at;
        Find find;
        const QAbstractItemModelTester tester(&find);
        find.setQuery("dish");
        find.setDesk(&at.desk);
        QVERIFY(find.summary().isEmpty());
        at.openRoom();
        at.settle();
        QCOMPARE(find.count(), 0);
        QSignalSpy resets(&find, &QAbstractItemModel::modelReset);
        set(at, at.pulchra, {{"note", "webbed over the dish"}});
        at.settle();
        QCOMPARE(column(find, Find::TagRole), (QStringList{"118"}));
        at.desk.undo();
        at.settle();
        at.settle();
        QCOMPARE(find.count(), 0);
        QCOMPARE(resets.count(), 0);  // the view keeps its place
        at.desk.close();
        QVERIFY(find.summary().isEmpty());
    }

    void theRoomsNewCodeFindsToo() {
        DeskFixture at;
        at.openRoom();
        Find find;
        find.setDesk(&at.desk);
        const auto book =
            asked<Uuid>(at, [](Book& open) -> Result<Uuid> { return open.id().uuid; });
        write(at, {SetDraft{ThingType::book, book, {{"code", "KX"}}}});
        find.setQuery("kx-214");
        at.settle();
        QCOMPARE(column(find, Find::TagRole), (QStringList{"214"}));
        find.setQuery("kr-214");
        at.settle();
        QCOMPARE(find.count(), 0);
    }
};

QTEST_GUILESS_MAIN(TestFindModel)
#include "tst_find_model.moc"
