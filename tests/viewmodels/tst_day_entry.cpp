// A day to type or to reach by steps, and one field of a form.
#include <QSignalSpy>
#include <QtTest>

#include "support/assets.h"
#include "viewmodels/formfield.h"

using namespace burrow;
using namespace burrow::test;
using Unit = DayEntry::Unit;
using Type = FormField::Type;

namespace {

CivilDay on(const char* iso) { return *parseIsoDate(iso); }
QString iso(const DayEntry& entry) {
    return entry.day() ? QString::fromStdString(isoDate(*entry.day())) : QString("none");
}

}  // namespace

class TestDayEntry : public QObject {
    Q_OBJECT

private slots:
    void initTestCase() { words_.emplace(englishWords()); }

    void stepsStayInTheCalendar_data() {
        QTest::addColumn<QString>("from");
        QTest::addColumn<DayEntry::Unit>("unit");
        QTest::addColumn<int>("by");
        QTest::addColumn<QString>("to");
        QTest::newRow("new year's eve") << "2026-01-01" << Unit::Day << -1 << "2025-12-31";
        QTest::newRow("to a leap day") << "2024-03-01" << Unit::Day << -1 << "2024-02-29";
        QTest::newRow("no leap day in 1900") << "1900-03-01" << Unit::Day << -1 << "1900-02-28";
        QTest::newRow("to a shorter month") << "2026-01-31" << Unit::Month << 1 << "2026-02-28";
        QTest::newRow("back over new year") << "2026-01-15" << Unit::Month << -1 << "2025-12-15";
        QTest::newRow("on over new year") << "2025-12-31" << Unit::Month << 2 << "2026-02-28";
        QTest::newRow("a leap day, a year on") << "2024-02-29" << Unit::Year << 1 << "2025-02-28";
        QTest::newRow("a leap day, four years back")
            << "2024-02-29" << Unit::Year << -4 << "2020-02-29";
        QTest::newRow("no year zero") << "0001-02-03" << Unit::Year << -1 << "0001-01-03";
        QTest::newRow("no year 10000") << "9999-11-30" << Unit::Month << 5 << "9999-12-30";
    }
    void stepsStayInTheCalendar() {
        QFETCH(QString, from);
        QFETCH(DayEntry::Unit, unit);
        QFETCH(int, by);
        QFETCH(QString, to);
        DayEntry entry;
        entry.prepare(*words_, on("2026-05-08"));
        entry.setDay(parseIsoDate(from.toStdString()));
        entry.step(unit, by);
        QCOMPARE(iso(entry), to);
        QCOMPARE(entry.typed(), to);
    }

    void stepsStartFromTodayWhereNoDayIsKnown() {
        DayEntry entry;
        entry.prepare(*words_, on("2026-05-08"));
        QCOMPARE(entry.words(), QString("Not recorded"));
        entry.step(Unit::Day, -1);
        QCOMPARE(iso(entry), QString("2026-05-07"));
        entry.clear();
        QVERIFY(!entry.isKnown() && entry.typed().isEmpty());
    }

    void whatIsTypedIsADayOrSaysWhyNot_data() {
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("day");
        QTest::addColumn<QString>("error");
        QTest::newRow("a day") << "2024-02-29"
                               << "2024-02-29"
                               << "";
        QTest::newRow("with spaces") << " 2026-05-08 "
                                     << "2026-05-08"
                                     << "";
        QTest::newRow("no such day") << "2026-02-29"
                                     << "2026-05-01"
                                     << "2026-02-29";
        QTest::newRow("half typed") << "2026-0"
                                    << "2026-05-01"
                                    << "2026-0";
        QTest::newRow("words") << "last spring"
                               << "2026-05-01"
                               << "last spring";
        QTest::newRow("tomorrow") << "2026-05-09"
                                  << "2026-05-01"
                                  << "not come yet";
        QTest::newRow("emptied") << ""
                                 << "none"
                                 << "";
    }
    void whatIsTypedIsADayOrSaysWhyNot() {
        QFETCH(QString, typed);
        QFETCH(QString, day);
        QFETCH(QString, error);
        DayEntry entry;
        entry.prepare(*words_, on("2026-05-08"));
        entry.forbidFuture();
        entry.setDay(on("2026-05-01"));
        entry.type(typed);
        QCOMPARE(iso(entry), day);
        QCOMPARE(entry.isWrong(), !error.isEmpty());
        QVERIFY2(entry.error().contains(error), qPrintable(entry.error()));
        QCOMPARE(entry.typed(), typed);  // what was typed is not taken out of the hand
        entry.step(Unit::Day, -1);
        QVERIFY(!entry.isWrong());
    }

    void aDayThatMustBeKnownIsNotEmptied() {
        DayEntry entry;
        entry.prepare(*words_, on("2026-05-08"));
        entry.requireKnown();
        entry.setToday();
        entry.clear();
        entry.type("");
        QCOMPARE(iso(entry), QString("2026-05-08"));
        QVERIFY(entry.isWrong());
    }

    void theFutureIsReachedOnlyWhereItMayBe() {
        DayEntry until;
        until.prepare(*words_, on("2026-05-08"));
        until.step(Unit::Month, 3);
        QCOMPARE(iso(until), QString("2026-08-08"));
        QVERIFY(until.canLater());
        DayEntry when;
        when.prepare(*words_, on("2026-05-08"));
        when.forbidFuture();
        when.setDay(on("2026-04-20"));
        QVERIFY(when.canLater());
        when.step(Unit::Month, 1);
        QCOMPARE(iso(when), QString("2026-05-08"));
        QVERIFY(!when.canLater());
    }

    void aGlanceSaysHowFarBack_data() {
        QTest::addColumn<QString>("day");
        QTest::addColumn<QString>("glance");
        QTest::newRow("today") << "2026-01-02"
                               << "Today";
        QTest::newRow("yesterday") << "2026-01-01"
                                   << "Yesterday";
        QTest::newRow("last year, lately") << "2025-12-31"
                                           << "Wednesday 31 December";
        QTest::newRow("long ago") << "2025-01-02"
                                  << "2 January 2025";
    }
    void aGlanceSaysHowFarBack() {
        QFETCH(QString, day);
        QFETCH(QString, glance);
        DayEntry entry;
        entry.prepare(*words_, on("2026-01-02"));
        entry.setDay(parseIsoDate(day.toStdString()));
        QCOMPARE(entry.glance(), glance);
    }

    void aDayIsNamedWithItsYear() {
        DayEntry entry;
        entry.prepare(*words_, on("2026-05-08"));
        entry.setToday();
        QCOMPARE(entry.words(), QString("8 May 2026"));
        QCOMPARE(entry.dayText(), QString("Friday 8 May"));
        QCOMPARE(entry.monthText(), QString("May 2026"));
        QCOMPARE(entry.yearText(), QString("2026"));
    }

    // --- fields --------------------------------------------------------------------------------

    void anErrorGoesWhenItsFieldIsEntered() {
        FormField field(Type::Text, "number", "Number", nullptr);
        QSignalSpy edits(&field, &FormField::edited);
        field.setText("214").setError("taken");
        QCOMPARE(edits.count(), 0);  // not by the keeper
        field.enter("214");
        QVERIFY(field.error().isEmpty());
        QCOMPARE(edits.count(), 1);
        field.enter("214");
        QCOMPARE(edits.count(), 1);
    }

    void aChoiceIsWrittenAsFilesSpellIt() {
        FormField field(Type::Choice, "sex", "Sex", nullptr);
        field.setChoices({{"female", "Female"}, {"male", "Male"}});
        QCOMPARE(field.chosen(), -1);
        field.choose(1);
        QCOMPARE(field.value(), std::string("male"));
        QCOMPARE(field.chosen(), 1);
        field.choose(2);
        field.choose(-1);
        QCOMPARE(field.chosen(), 1);
    }

    void aCountStaysInItsRange() {
        FormField field(Type::Count, "count", "How many", nullptr);
        field.setRange(1, 12);
        field.setCount(40);
        QCOMPARE(field.value(), std::string("12"));
        field.setCount(-1);
        QCOMPARE(field.value(), std::string("1"));
    }

    void aFieldOfADaySaysWhatIsWrongWithIt() {
        FormField field(Type::Day, "hatched", "Hatched", nullptr);
        field.day()->prepare(*words_, on("2026-05-08"));
        QSignalSpy edits(&field, &FormField::edited);
        field.day()->type("2024-02-30");
        QVERIFY(field.error().contains("2024-02-30"));
        QVERIFY(field.text().isEmpty());
        field.day()->type("2024-02-29");
        QVERIFY(field.error().isEmpty());
        QCOMPARE(field.value(), std::string("2024-02-29"));
        QCOMPARE(edits.count(), 2);
    }

    void anEnclosureIsShownByItsName() {
        FormField field(Type::Enclosure, "enclosure", "Enclosure", nullptr);
        field.pick("an id", "E-12");
        QCOMPARE(field.value(), std::string("an id"));
        QCOMPARE(field.shown(), QString("E-12"));
    }

private:
    std::optional<Words> words_;
};

QTEST_GUILESS_MAIN(TestDayEntry)
#include "tst_day_entry.moc"
