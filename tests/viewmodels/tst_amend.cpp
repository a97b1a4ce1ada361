// An entry that is to read differently.
#include <QSignalSpy>

#include "viewmodels/factform.h"
#include "viewmodels/keeping.h"

using namespace burrow;
using namespace burrow::test;

namespace {

Fact newest(DeskFixture& at, SubjectId id, FactKind kind) {
    const auto facts = at.history(id);
    const auto found = std::find_if(facts.begin(), facts.end(),
                                    [&](const Fact& fact) { return fact.kind == kind; });
    return found == facts.end() ? Fact{} : *found;
}

/// The form for the newest entry of a kind.
class Amended : public FactForm {
public:
    Amended(DeskFixture& at, SubjectId id, FactKind kind) : at_(at) {
        setDesk(&at.desk);
        amend(QString::fromStdString(newest(at, id, kind).id.text()));
        at.settle();
    }
    FormField& operator[](const char* name) { return *field(QString::fromLatin1(name)); }
    bool isKept() {
        QSignalSpy saves(this, &FactForm::saved);
        save();
        at_.settle();
        return saves.count() == 1;
    }

private:
    DeskFixture& at_;
};

}  // namespace

class TestAmend : public QObject {
    Q_OBJECT

private slots:
    void theFormHoldsWhatWasWritten() {
        DeskFixture at;
        at.openRoom();
        Amended form(at, at.hamorii, FactKind::offered);
        QVERIFY(form.isReady());
        QCOMPARE(form["outcome"].text(), QString("ate"));
        QCOMPARE(form.when()->day(), std::optional(at.desk.today() - 14));
        QCOMPARE(form.saveText(), QString("Keep the change"));
        QVERIFY(form.warnings().isEmpty());
        form["outcome"].choose(2);
        QVERIFY(form.isKept());
        const auto offer = newest(at, at.hamorii, FactKind::offered);
        QCOMPARE(offer.body.outcome, Outcome::refused);
        QCOMPARE(offer.happenedAt, daysAgo(14));  // its time of day stays
        QCOMPARE(at.desk.doneText(), QString("entry amended"));
        at.desk.undo();
        at.settle();
        QCOMPARE(newest(at, at.hamorii, FactKind::offered).body.outcome, Outcome::ate);
    }

    void anotherDayMovesIt() {
        DeskFixture at;
        at.openRoom();
        Amended form(at, at.hamorii, FactKind::offered);
        form.when()->step(DayEntry::Unit::Day, 2);
        QVERIFY(form.isKept());
        QCOMPARE(newest(at, at.hamorii, FactKind::offered).day, at.desk.today() - 12);
        QCOMPARE(resident(at, at.hamorii)->kept.digest.lastAccepted->day, at.desk.today() - 12);
    }

    void whatTheFormDoesNotShowStays() {
        DeskFixture at;
        at.openRoom();
        const auto moult = newest(at, at.pulchra, FactKind::moulted);
        log(at, at.pulchra, FactKind::photo, 0,
            {.about = moult.id,
             .role = PhotoRole::moult,
             .picture = Sha256::of("a moult"),
             .confidential = true});
        Amended form(at, at.pulchra, FactKind::photo);
        QVERIFY(!form.field("picture") && !form.field("about") && !form.field("confidential"));
        form["text"].enter("torn at the front");
        QVERIFY(form.isKept());
        const auto body = newest(at, at.pulchra, FactKind::photo).body;
        QCOMPARE(body.picture, Sha256::of("a moult"));
        QCOMPARE(body.about, moult.id);
        QCOMPARE(body.confidential, std::optional(true));
        QCOMPARE(body.text, std::optional<std::string>("torn at the front"));
    }

    void whatIsEmptiedIsGone() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::note, 0, {.text = "sold to a friend", .confidential = true});
        Amended form(at, at.hamorii, FactKind::note);
        QVERIFY(form["confidential"].isOn());
        form["confidential"].turn(false);
        form["text"].enter(" ");
        QVERIFY(!form.isKept());  // a note without a text is none
        QVERIFY(form["text"].error().contains("still to be filled in"));
        form["text"].enter("promised to a friend");
        QVERIFY(form.isKept());
        QVERIFY(!newest(at, at.hamorii, FactKind::note).body.confidential.value_or(false));
    }

    void aCountOfThenMayBeMoreThanIsLeft() {
        DeskFixture at;
        at.openRoom();
        log(at, at.group, FactKind::sold, 5, {.count = 10});
        QCOMPARE(resident(at, at.group)->subject().headcount, 2);
        Amended form(at, at.group, FactKind::sold);
        QCOMPARE(form["count"].count(), 10);  // what is shown is what is written down
        form["count"].setCount(9);
        QVERIFY(form.isKept());
        QCOMPARE(newest(at, at.group, FactKind::sold).body.count, std::optional(9));
        QCOMPARE(resident(at, at.group)->subject().headcount, 3);
    }

    void anotherSexIsItsSexNow() {
        DeskFixture at;
        at.openRoom();
        log(at, at.hamorii, FactKind::sexed, 5, {.sex = Sex::male});
        Amended form(at, at.hamorii, FactKind::sexed);
        form["sex"].choose(0);
        QVERIFY(form.isKept());
        QCOMPARE(resident(at, at.hamorii)->subject().sex, Sex::female);
        at.desk.undo();
        at.settle();
        QCOMPARE(resident(at, at.hamorii)->subject().sex, Sex::male);
    }

    void aRehousingMayTurnOutToBeIntoANewEnclosure() {
        DeskFixture at;
        at.openRoom();
        Enclosure home;
        home.name = "E-1";
        log(at, at.hamorii, FactKind::rehoused, 2, {.enclosure = addEnclosure(at, home)});
        Amended form(at, at.hamorii, FactKind::rehoused);
        QCOMPARE(form["enclosure"].shown(), QString("E-1"));
        QVERIFY(!form["home_name"].isWanted());
        form["enclosure"].pick("new", {});
        form["home_name"].enter("E-2");
        QVERIFY(form.isKept());
        const auto homes = enclosuresOf(at);
        QCOMPARE(homes.size(), 2U);
        QCOMPARE(newest(at, at.hamorii, FactKind::rehoused).body.enclosure, homes[1].id);
        QCOMPARE(resident(at, at.hamorii)->subject().enclosure, homes[1].id);
        at.desk.undo();
        at.settle();
        QCOMPARE(enclosuresOf(at).size(), 1U);
        QCOMPARE(resident(at, at.hamorii)->subject().enclosure, homes[0].id);
    }

    void whatCannotBeIsRefusedHereToo() {
        DeskFixture at;
        at.openRoom();
        Amended form(at, at.hamorii, FactKind::measured);
        form["span_mm"].enter("1400");
        QVERIFY(!form.isKept());
        QVERIFY(form["span_mm"].error().contains("Leg span"));
        QCOMPARE(newest(at, at.hamorii, FactKind::measured).body.span->value, 140.0);
    }

    void anEntryThatIsNotThereIsMissing() {
        DeskFixture at;
        at.openRoom();
        FactForm form;
        form.setDesk(&at.desk);
        form.amend(QString::fromStdString(Uuid::named("nothing").text()));
        at.settle();
        QVERIFY(form.isMissing() && !form.isOpen());
    }
};

QTEST_GUILESS_MAIN(TestAmend)
#include "tst_amend.moc"
