// Showing a part of the due list.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "viewmodels/duefilter.h"
#include "viewmodels/duemodel.h"
#include "viewmodels/keeping.h"

using namespace burrow;
using namespace burrow::test;
using Filter = DueFilterModel;

namespace {

/// The room of the fixture with a second rack, someone late there, and one in quarantine.
struct Narrowing : DeskFixture {
    Narrowing() {
        openRoom();
        Subject late;
        late.number = "501";
        late.species = "Brachypelma hamorii";
        late.place = Place::parse("2 / B / 1");
        lateOne = addSubject(*this, late);
        test::log(*this, lateOne, FactKind::measured, 300, {.span = Millimetres{140}});
        test::log(*this, lateOne, FactKind::watered, 200);
        test::log(*this, lateOne, FactKind::offered, 90, {.outcome = Outcome::ate});
        filter.setDesk(&desk);
        due.setFilter(&filter);
        due.setDesk(&desk);
        filter.setAsking(true);
    }
    [[nodiscard]] QStringList tags() const { return column(due, DueModel::TagRole); }
    SubjectId lateOne;
    Filter filter;
    DueModel due;
};

}  // namespace

class TestDueFilter : public QObject {
    Q_OBJECT

private slots:
    void nothingIsLeftOutAtFirst() {
        Narrowing at;
        const QAbstractItemModelTester tester(&at.filter);
        QCOMPARE(at.tags(), (QStringList{"214", "118", "260", "501"}));
        QVERIFY(!at.filter.isActive() && at.filter.text().isEmpty());
        const auto words = column(at.filter, Filter::WordRole);
        QVERIFY(words.contains("Feeding") && words.contains("Leftovers"));
        QCOMPARE(words.mid(words.size() - 2), (QStringList{"No rack", "Rack 2"}));
        QCOMPARE(column(at.filter, Filter::OnRole).count("true"), 0);
        QCOMPARE(column(at.filter, Filter::FirstRole).count("true"), 2);
    }

    void byKindOfCare() {
        Narrowing at;
        const QAbstractItemModelTester tester(&at.due);
        const QAbstractItemModelTester choices(&at.filter);
        at.filter.toggle("care leftovers");
        QCOMPARE(at.tags(), (QStringList{"260"}));
        QCOMPARE(at.filter.text(), QString("Leftovers"));
        QCOMPARE(column(at.due, DueModel::HeadingRole), (QStringList{"Shelf C"}));
        at.filter.toggle("care feed");
        QCOMPARE(at.filter.text(), QString("Leftovers, Feeding"));
        QVERIFY(at.tags().contains("214") && at.tags().contains("118"));
        at.filter.toggle("care leftovers");
        at.filter.toggle("care feed");
        QVERIFY(!at.filter.isActive());
        at.filter.toggle("no such thing");
        QVERIFY(!at.filter.isActive());
    }

    void byRackOneAtATime() {
        Narrowing at;
        at.filter.toggle("place 2 /  / ");
        QCOMPARE(at.tags(), (QStringList{"501"}));
        QCOMPARE(at.filter.text(), QString("Rack 2"));
        at.filter.toggle("place ");
        QCOMPARE(at.tags(), (QStringList{"214", "118", "260"}));
        QCOMPARE(at.filter.text(), QString("No rack"));
        at.filter.toggle("place ");
        QVERIFY(!at.filter.isActive());
    }

    void onlyLateOrOnlyHeld() {
        Narrowing at;
        at.filter.setWhich(Filter::Held);
        QCOMPARE(at.tags(), (QStringList{"118"}));
        QVERIFY(at.due.data(at.due.index(0), DueModel::HeldRole).toBool());
        QCOMPARE(at.filter.text(), QString("only on hold"));
        at.filter.setWhich(Filter::Late);
        QVERIFY(at.tags().contains("501") && !at.tags().contains("118"));
        for (const auto& visit :
             narrowed(at.desk.room()->visits(), at.filter.filter(), at.desk.today())) {
            for (const auto& answer : visit.answers) QVERIFY(isLate(answer, at.desk.today()));
        }
        at.filter.clear();
        QCOMPARE(at.tags().size(), 4);
    }

    void oneTapShowsEverythingAgain() {
        Narrowing at;
        QSignalSpy changes(&at.filter, &Filter::changed);
        at.filter.toggle("care feed");
        at.filter.toggle("place 2 /  / ");
        at.filter.setWhich(Filter::Late);
        at.filter.setQuarantineApart(false);
        QCOMPARE(at.filter.text(),
                 QString("Feeding, Rack 2, only late, quarantine among the rest"));
        at.filter.clear();
        QVERIFY(!at.filter.isActive() && at.filter.quarantineApart());
        QCOMPARE(at.tags(), (QStringList{"214", "118", "260", "501"}));
        QCOMPARE(changes.count(), 5);
        at.filter.clear();
        QCOMPARE(changes.count(), 5);
    }

    void quarantineStandsApartOrAmongTheRest() {
        Narrowing at;
        set(at, at.hamorii, {{"quarantined", true}});
        QCOMPARE(at.tags(), (QStringList{"118", "260", "501", "214"}));
        at.filter.setQuarantineApart(false);
        QCOMPARE(at.tags(), (QStringList{"214", "118", "260", "501"}));
        QCOMPARE(column(at.due, DueModel::HeadingRole).first(), QString("Shelf A"));
    }

    void aLineOfSeveralIsShownWithWhatIsWanted() {
        Narrowing at;
        const auto answersOf = [&](const std::vector<Visit>& visits) {
            const auto found = std::find_if(visits.begin(), visits.end(), [&](const Visit& visit) {
                return visit.resident->subject().id == at.lateOne;
            });
            return found->answers;
        };
        const auto all = at.desk.room()->visits();
        QVERIFY(answersOf(all).size() > 1);
        at.filter.toggle("care feed");
        const auto narrow = answersOf(narrowed(all, at.filter.filter(), at.desk.today()));
        QCOMPARE(narrow.size(), std::size_t{1});
        QCOMPARE(narrow.front().care, Care::feed);
        const auto row = static_cast<int>(at.tags().indexOf("501"));
        const auto reason = at.due.data(at.due.index(row), DueModel::ReasonRole).toString();
        QVERIFY2(!reason.contains("Also"), qPrintable(reason));
    }

    void whereNothingFitsItIsSaid() {
        Narrowing at;
        at.filter.toggle("place 2 /  / ");
        at.filter.setWhich(Filter::Held);
        QCOMPARE(at.due.count(), 0);
        QCOMPARE(at.due.nothing(), QString("Nothing due is of that kind"));
        // What was chosen can be taken back though nothing of it is due any more.
        log(at, at.lateOne, FactKind::died, 0);
        QVERIFY(column(at.filter, Filter::WordRole).contains("Rack 2"));
    }

    void choicesAreMadeOnlyWhileTheyAreAskedFor() {
        Narrowing at;
        QVERIFY(at.filter.rowCount() > 0);
        at.filter.setAsking(false);
        QCOMPARE(at.filter.rowCount(), 0);
        at.desk.close();
        QCOMPARE(at.due.count(), 0);
        Filter alone;
        QVERIFY(alone.text().isEmpty() && !alone.isActive());
        alone.setWhich(Filter::Late);
        alone.clear();
    }
};

QTEST_GUILESS_MAIN(TestDueFilter)
#include "tst_due_filter.moc"
