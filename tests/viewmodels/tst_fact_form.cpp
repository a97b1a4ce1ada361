// An entry filled in: what its form asks for, refuses and keeps in mind.
#include <QSignalSpy>

#include "viewmodels/factform.h"
#include "viewmodels/keeping.h"

using namespace burrow;
using namespace burrow::test;

namespace {

class Filled : public FactForm {
public:
    Filled(DeskFixture& at, SubjectId id, const char* kind) : at_(at) {
        setDesk(&at.desk);
        begin(at.id(id), kind);
    }
    FormField& operator[](const char* name) { return *field(QString::fromLatin1(name)); }
    bool isKept() {
        QSignalSpy saves(this, &FactForm::saved);
        save();
        at_.settle();
        return saves.count() == 1;
    }
    Fact newest(SubjectId id) { return at_.history(id).front(); }

private:
    DeskFixture& at_;
};

}  // namespace

class TestFactForm : public QObject {
    Q_OBJECT

private slots:
    void aMealIsSuggestedAndItsOutcomeAskedFor() {
        DeskFixture at;
        at.openRoom();
        Filled form(at, at.hamorii, "offered");
        QCOMPARE(form.title(), QString("Offered food"));
        QCOMPARE(form["prey"].text(), QString("cricket"));
        QVERIFY(form["prey"].suggestions().contains("fruit fly"));
        QVERIFY(form["prey_mm"].text().toDouble() > 0);
        QVERIFY(!form.isKept());
        QVERIFY(form["outcome"].error().startsWith("What became of it is still to be filled in"));
        form["outcome"].choose(2);
        QVERIFY(form["outcome"].error().isEmpty());
        form["prey"].enter("Fruit fly");
        form["prey_mm"].enter("2,5");
        QVERIFY(form.isKept());
        const auto body = form.newest(at.hamorii).body;
        QCOMPARE(body.outcome, Outcome::refused);
        QCOMPARE(body.prey, std::optional<std::string>("fruit_fly"));
        QCOMPARE(body.preyLength->value, 2.5);
    }

    void whatCannotBeIsSaidAtItsField_data() {
        QTest::addColumn<QString>("name");
        QTest::addColumn<QString>("typed");
        QTest::newRow("slip") << "span_mm"
                              << "1400";
        QTest::newRow("negative") << "span_mm"
                                  << "-3";
        QTest::newRow("word") << "carapace_mm"
                              << "about 15";
        QTest::newRow("two commas") << "mass_g"
                                    << "1,5,2";
        QTest::newRow("too heavy") << "mass_g"
                                   << "5000";
    }
    void whatCannotBeIsSaidAtItsField() {
        QFETCH(QString, name);
        QFETCH(QString, typed);
        DeskFixture at;
        at.openRoom();
        Filled form(at, at.hamorii, "measured");
        auto& field = form[name.toLatin1().constData()];
        field.enter(typed);
        QVERIFY(!form.isKept());
        QVERIFY2(field.error().contains(field.label()), qPrintable(field.error()));
        QCOMPARE(at.history(at.hamorii).size(), 4U);
        field.enter("12");
        QVERIFY(field.error().isEmpty());
        QVERIFY(form.isKept());
    }

    void aDayThatCannotBeReadIsNotWrittenDown() {
        DeskFixture at;
        at.openRoom();
        Filled form(at, at.hamorii, "lent");
        form["until"].day()->type("2026-08-01");
        form["until"].day()->type("2026-08-32");
        QVERIFY(!form.isKept());
        QVERIFY(form["until"].error().contains("2026-08-32"));
        form["until"].day()->type("2026-09-01");
        QVERIFY(form.isKept());
        QCOMPARE(form.newest(at.hamorii).body.until, civilDay({2026, 9, 1}));
    }

    void aNoteMayReadNew() {
        DeskFixture at;
        at.openRoom();
        Filled form(at, at.hamorii, "note");
        form["text"].enter("new");
        form["confidential"].turn(true);
        QVERIFY(form.isKept());
        const auto note = form.newest(at.hamorii).body;
        QCOMPARE(note.text, std::optional<std::string>("new"));
        QCOMPARE(note.confidential, std::optional(true));
    }

    void aCountOfAGroupIsAskedFor() {
        DeskFixture at;
        at.openRoom();
        Filled seen(at, at.group, "seen");
        QCOMPARE(seen["count"].count(), 12);
        seen["count"].setCount(50);
        QCOMPARE(seen["count"].count(), 12);  // no more than are on the books
        seen["count"].setCount(0);
        QVERIFY(seen.isKept());
        QCOMPARE(seen.newest(at.group).body.count, std::optional(0));
        Filled died(at, at.group, "died");
        QCOMPARE(died["count"].least(), 1);
        died["count"].setCount(2);
        QVERIFY(died.isKept());
        QCOMPARE(resident(at, at.group)->subject().headcount, 10);
        QVERIFY(!Filled(at, at.hamorii, "died").field("count"));
    }

    // --- days back -----------------------------------------------------------------------------

    void whatHappenedDaysAgoStandsOnItsDay() {
        DeskFixture at;
        at.openRoom();
        Filled form(at, at.hamorii, "note");
        QCOMPARE(form.when()->glance(), QString("Today"));
        form["text"].enter("sealed its burrow");
        form.when()->step(DayEntry::Unit::Day, -128);  // 31 December
        QVERIFY(form.isKept());
        const auto oldest = at.history(at.hamorii).back();
        QCOMPARE(oldest.day, *civilDay({2025, 12, 31}));
        QCOMPARE(oldest.kind, FactKind::note);
        Filled today(at, at.hamorii, "note");
        today["text"].enter("open again");
        QVERIFY(today.isKept());
        QCOMPARE(today.newest(at.hamorii).happenedAt, fridayEvening);
    }

    void daysAreThoseOfTheKeepersZone() {
        DeskFixture at;
        at.openRoom();
        at.desk.close();
        {
            const auto zone = Zone::named("Pacific/Auckland").value();  // it is Saturday there
            Desk desk({at.reference.words, at.reference.profiles, at.reference.rules,
                       at.reference.numbers, at.clock, at.random, zone});
            desk.open(at.path);
            QTRY_COMPARE(desk.state(), Desk::State::Open);
            FactForm form;
            form.setDesk(&desk);
            form.begin(at.id(at.hamorii), "note");
            QCOMPARE(form.when()->day(), civilDay({2026, 5, 9}));
            form.when()->step(DayEntry::Unit::Day, -3);
            form.field("text")->enter("sealed its burrow");
            QSignalSpy saved(&form, &FactForm::saved);
            form.save();
            QTRY_COMPARE(saved.count(), 1);
        }
        at.desk.open(at.path);
        at.settle();
        const auto facts = at.history(at.hamorii);
        const auto note = std::find_if(facts.begin(), facts.end(), [](const Fact& fact) {
            return fact.kind == FactKind::note;
        });
        QVERIFY(note != facts.end());
        QCOMPARE(note->day, *civilDay({2026, 5, 6}));
    }

    void thereIsNoTomorrowYet() {
        DeskFixture at;
        at.openRoom();
        Filled form(at, at.hamorii, "died");
        QVERIFY(!form.when()->canLater() && !form.when()->canBeUnknown());
        form.when()->step(DayEntry::Unit::Day, 1);
        QCOMPARE(form.when()->glance(), QString("Today"));
        form.when()->type("2026-05-09");
        QVERIFY(!form.isKept());
        QVERIFY(form.when()->error().contains("not come yet"));
        QVERIFY(resident(at, at.hamorii)->subject().isKept());
    }

    void aMoveLoggedLateLeavesItWhereItStandsNow() {
        DeskFixture at;
        at.openRoom();
        Enclosure home;
        home.name = "E-1";
        home.place = Place::parse("A / 1");
        const auto id = addEnclosure(at, home);
        set(at, at.hamorii, {{"enclosure", id.text()}});
        Filled move(at, at.hamorii, "moved");
        QCOMPARE(move["place"].text(), QString("A / 1"));
        QVERIFY(move["with_home"].isOn());
        move["place"].enter("D / 4");
        QVERIFY(move.isKept());  // today, with its tub
        QCOMPARE(resident(at, at.hamorii)->kept.place.text(), std::string("D / 4"));
        QCOMPARE(resident(at, at.hamorii)->subject().enclosure, id);
        Filled late(at, at.hamorii, "moved");
        late["place"].enter("C / 2");
        late.when()->step(DayEntry::Unit::Day, -3);
        QVERIFY(late.isKept());
        QCOMPARE(resident(at, at.hamorii)->kept.place.text(), std::string("D / 4"));
        QCOMPARE(resident(at, at.hamorii)->subject().enclosure, id);
    }

    void movingOutLeavesTheEnclosureWhereItIs() {
        DeskFixture at;
        at.openRoom();
        Enclosure home;
        home.name = "E-1";
        home.place = Place::parse("A / 1");
        set(at, at.hamorii, {{"enclosure", addEnclosure(at, home).text()}});
        Filled move(at, at.hamorii, "moved");
        move["place"].enter("D / 4");
        move["with_home"].turn(false);
        QVERIFY(move.isKept());
        QVERIFY(!resident(at, at.hamorii)->subject().enclosure);
        QCOMPARE(enclosuresOf(at).front().place.text(), std::string("A / 1"));
    }

    // --- rehousing -----------------------------------------------------------------------------

    void rehousingIntoANewEnclosureIsOneAct() {
        DeskFixture at;
        at.openRoom();
        Filled form(at, at.hamorii, "rehoused");
        QVERIFY(!form["home_name"].isWanted());
        form["enclosure"].pick("new", {});
        QVERIFY(form["home_name"].isWanted());
        QCOMPARE(form["home_place"].text(), QString("A / 1"));
        form["home_name"].enter("");
        QVERIFY(!form.isKept());
        QVERIFY(!form["home_name"].error().isEmpty());
        form["home_name"].enter("E-214");
        QVERIFY(form.isKept());
        const auto home = enclosuresOf(at).front();
        QCOMPARE(resident(at, at.hamorii)->subject().enclosure, home.id);
        QCOMPARE(form.newest(at.hamorii).body.enclosure, home.id);
        at.desk.undo();
        at.settle();
        QVERIFY(enclosuresOf(at).empty());
        QVERIFY(!resident(at, at.hamorii)->subject().enclosure);
    }

    // --- what to keep in mind ------------------------------------------------------------------

    void whatCouldHurtIsSaidFirst() {
        DeskFixture at;
        at.openRoom();
        const auto warned = [&](SubjectId id, const char* kind, const char* words) {
            return Filled(at, id, kind).warnings().join('\n').contains(words);
        };
        QVERIFY(Filled(at, at.hamorii, "offered").warnings().isEmpty());
        QVERIFY(warned(at.pulchra, "offered", "still hardening"));
        QVERIFY(warned(at.hamorii, "rehoused", "Catch cup"));
        QVERIFY(warned(at.pulchra, "rehoused", "Wait until the fangs are black"));
        QVERIFY(warned(at.group, "rehoused", "Several animals bolt at once"));
        // All Brachypelma are listed (CITES, as in force since 26 November 2019).
        QVERIFY(warned(at.hamorii, "sold", "CITES Appendix II"));
        QVERIFY(!warned(at.pulchra, "sold", "CITES Appendix II"));
        QVERIFY(warned(at.pulchra, "lent", "differ by place"));
        QVERIFY(warned(at.pulchra, "given", "still hardening"));
        log(at, at.hamorii, FactKind::premoultSign, 1);
        QVERIFY(warned(at.hamorii, "rehoused", "A moult is near"));
    }

    void aSpeciesThatIsNotKnownIsRehousedWithCaution() {
        DeskFixture at;
        at.openRoom();
        const auto ofKnown = Filled(at, at.hamorii, "rehoused").warnings().size();
        set(at, at.hamorii, {{"species", "Theraphosidae sp."}});
        const auto ofUnknown = Filled(at, at.hamorii, "rehoused").warnings();
        QVERIFY(ofKnown > 1);
        QVERIFY2(ofUnknown.size() > 1, qPrintable(ofUnknown.join('\n')));
    }

    void aScorpionsSizeIsItsLength() {
        DeskFixture at;
        at.openRoom();
        set(at, at.hamorii, {{"species", "Heterometrus spinifer"}});
        Filled form(at, at.hamorii, "measured");
        QCOMPARE(form["span_mm"].label(), QString("Body length, mm"));
    }

    void whoIsNotInTheBookHasNoForm() {
        DeskFixture at;
        at.openRoom();
        Filled form(at, SubjectId{Uuid::named("nobody")}, "note");
        QVERIFY(!form.isOpen() && !form.isReady() && form.all().isEmpty());
        QVERIFY(!form.isKept());
        form.begin(at.id(at.hamorii), "note");
        QVERIFY(form.isOpen());
        form.close();
        QVERIFY(!form.isOpen() && form.all().isEmpty());
    }
};

QTEST_GUILESS_MAIN(TestFactForm)
#include "tst_fact_form.moc"
