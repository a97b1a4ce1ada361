// Dates, lengths, masses and counts as people type them into spreadsheets.
#include <QtTest>

#include "exchange/cell_dates.h"
#include "exchange/cell_measures.h"

using namespace burrow;
using namespace burrow::exchange;

class TestCells : public QObject {
    Q_OBJECT

private slots:
    void dates_data() {
        QTest::addColumn<QString>("cell");
        QTest::addColumn<QString>("dayFirst");
        QTest::addColumn<QString>("monthFirst");
        const auto row = [](const char* cell, const char* dayFirst, const char* monthFirst) {
            QTest::newRow(cell) << cell << dayFirst << monthFirst;
        };
        const auto same = [&](const char* cell, const char* day) { row(cell, day, day); };
        same("2026-05-08", "2026-05-08");
        same("2026/5/8", "2026-05-08");
        same("20260508", "2026-05-08");
        same("8 May 2026", "2026-05-08");
        same("May 8, 2026", "2026-05-08");
        same("8-May-26", "2026-05-08");
        same("8. May 2026", "2026-05-08");
        same("8th Sept. 2026", "2026-09-08");
        row("8/5/2026", "2026-05-08", "2026-08-05");
        row("08.05.26", "2026-05-08", "2026-08-05");
        row("8-5-1998", "1998-05-08", "1998-08-05");
        row("8/5/98", "1998-05-08", "1998-08-05");
        row("31.12.2025", "2025-12-31", "");
        row("12/31/2025", "", "2025-12-31");
        for (const char* bad :
             {"", "May 2026", "2026", "32.13.2026", "29.2.2025", "8/5", "1-2.5", "2026-02-30",
              "yesterday", "8/5/2026x", "1 2 2026", "May 32 2026", "44256", "8/5/2026 25:00"}) {
            row(bad, "", "");
        }
    }
    void dates() {
        QFETCH(QString, cell);
        QFETCH(QString, dayFirst);
        QFETCH(QString, monthFirst);
        const auto date = readDate(cell.toStdString());
        const auto in = [&](DateOrder order) {
            if (!date) return QString();
            const auto day = date->certain ? date->certain : date->loose->in(order);
            return day ? QString::fromStdString(isoDate(*day)) : QString();
        };
        QCOMPARE(in(DateOrder::dayFirst), dayFirst);
        QCOMPARE(in(DateOrder::monthFirst), monthFirst);
    }

    void timesOfDay() {
        QCOMPARE(readDate("8/5/2026 9:14 pm")->time, std::string("T21:14:00"));
        QCOMPARE(readDate("2026-05-08 21:14")->time, std::string("T21:14"));
        QCOMPARE(readDate("8 May 2026 09:14:30")->time, std::string("T09:14:30"));
        QCOMPARE(*readTime("12:05 am"), std::string("T00:05:00"));
        for (const char* bad : {"9", "25:00", "9:60", "13:00 pm", "9-14"}) {
            QVERIFY2(!readTime(bad), bad);
        }
    }

    void ordersOfDates_data() {
        QTest::addColumn<QStringList>("cells");
        QTest::addColumn<int>("order");
        const auto row = [](const char* name, const QStringList& cells,
                            std::optional<DateOrder> order) {
            QTest::newRow(name) << cells << (order ? static_cast<int>(*order) : -1);
        };
        row("iso", {"2026-05-08", "2026-05-09"}, DateOrder::iso);
        row("day first", {"8/5/2026", "13/5/2026"}, DateOrder::dayFirst);
        row("month first", {"8/5/2026", "5/13/2026"}, DateOrder::monthFirst);
        row("either", {"8/5/2026", "9/5/2026"}, std::nullopt);
        row("mixed", {"13/5/2026", "5/13/2026"}, std::nullopt);
        row("the same both ways", {"5/5/2026", "2026-01-02"}, DateOrder::dayFirst);
        row("named", {"8 May 2026"}, DateOrder::iso);
    }
    void ordersOfDates() {
        QFETCH(QStringList, cells);
        QFETCH(int, order);
        DateEvidence evidence;
        for (const auto& cell : cells) evidence.add(cell.toStdString());
        QCOMPARE(evidence.order() ? static_cast<int>(*evidence.order()) : -1, order);
    }

    void lengths_data() {
        QTest::addColumn<QString>("cell");
        QTest::addColumn<double>("mm");  // as centimetres where no unit is named; -1 for unreadable
        const auto row = [](const char* cell, double mm) { QTest::newRow(cell) << cell << mm; };
        row("12", 120);
        row("12,5", 125);
        row("12.5 cm", 125);
        row("62mm", 62);
        row("5 in", 127);
        row("5\"", 127);
        row("2 1/2 in", 63.5);
        row("2\xC2\xBD\"", 63.5);
        row("1/2 inch", 12.7);
        row("~ 12 cm", 120);
        row("ca. 12", 120);
        for (const char* bad : {"", "big", "1,250", "4-5 cm", "12 kg", "cm", "-3", "1e3", "3/2"}) {
            row(bad, -1);
        }
    }
    void lengths() {
        QFETCH(QString, cell);
        QFETCH(double, mm);
        const auto length = readLength(cell.toStdString());
        QCOMPARE(length ? length->in(LengthUnit::cm).value : -1, mm);
    }

    void unitsInNames() {
        QCOMPARE(unitNamed("Size (cm)"), LengthUnit::cm);
        QCOMPARE(unitNamed("Leg span in"), LengthUnit::inch);
        QCOMPARE(unitNamed("Size in cm"), LengthUnit::cm);
        QCOMPARE(unitNamed("Size \""), LengthUnit::inch);
        QCOMPARE(unitNamed("prey_mm"), LengthUnit::mm);
        QVERIFY(!unitNamed("Size"));
    }

    void massesAndCounts() {
        QCOMPARE(readMass("12,5 g")->value, 12.5);
        QVERIFY(!readMass("12 oz"));
        QCOMPARE(*readCount("~20"), 20);
        QCOMPARE(*readCount("20 slings"), 20);
        for (const char* bad : {"20-30", "20.5", "many", "20x", ""}) QVERIFY2(!readCount(bad), bad);
    }
};

QTEST_APPLESS_MAIN(TestCells)
#include "tst_cells.moc"
