// Looking ahead from a shell: prey, evenings, an absence.
#include <QtTest>

#include "programs/burrow.h"

using burrow::test::Shell;
using nlohmann::json;

class TestAhead : public QObject {
    Q_OBJECT

    static const Shell& withDemo() {
        static Shell burrow;
        static const auto made =
            burrow("demo kiln.book --animals 30 --years 1 --seed 3 --until 2026-05-08");
        if (made.status != 0) qFatal("%s", qPrintable(made.err));
        return burrow;
    }

private slots:
    void preyIsCountedPricedAndListed() {
        const auto& burrow = withDemo();
        auto run = burrow("--json prey kiln.book --days 14 --on 2026-05-08");
        QCOMPARE(run.status, 0);
        auto outlook = run.json();
        QVERIFY(outlook["meals"].get<int>() > 20);
        QVERIFY(outlook["least"].get<double>() <= outlook["mean"].get<double>());
        QVERIFY(outlook["mean"].get<double>() <= outlook["most"].get<double>());
        QVERIFY(!outlook["purchases"].empty());
        const auto size =
            QString::fromStdString(outlook["purchases"][0]["size"].get<std::string>());
        run = burrow("--json prey kiln.book --on 2026-05-08",
                     {"--count", size + "=5000", "--price", size + "=4.50 for 100"});
        QCOMPARE(run.status, 0);
        outlook = run.json();
        QVERIFY(
            std::any_of(outlook["stock"].begin(), outlook["stock"].end(), [&](const json& line) {
                return line["size"] == size.toStdString() && line["count"].get<double>() == 5000;
            }));
        QCOMPARE(burrow("check kiln.book").status, 0);
        const auto text = burrow("prey kiln.book --on 2026-05-08");
        QVERIFY2(text.out.contains("5000 " + size), qPrintable(text.out));
        QVERIFY(!text.out.contains('['));
    }

    void oddCountsAndPricesChangeNothing() {
        const auto& burrow = withDemo();
        const auto before = burrow.bookBytes("kiln.book");
        for (const auto* odd : {"cricket.huge=4", "cricket.small", "cricket.small=some"}) {
            const auto run = burrow("prey kiln.book", {"--count", odd});
            QCOMPARE(run.status, 1);
            QVERIFY(!run.err.isEmpty() && !run.err.contains('['));
        }
        QCOMPARE(burrow("prey kiln.book", {"--price", "cricket.small=cheap"}).status, 1);
        QCOMPARE(burrow("evenings kiln.book --feed-on someday").status, 1);
        QCOMPARE(burrow.bookBytes("kiln.book"), before);
    }

    void eveningsFallOnFeedingDays() {
        const auto& burrow = withDemo();
        const auto run = burrow("--json evenings kiln.book --days 14 --on 2026-05-08 --most 12",
                                {"--feed-on", "tue fri"});
        QCOMPARE(run.status, 0);
        const auto plan = run.json();
        QVERIFY(!plan["evenings"].empty());
        for (const auto& evening : plan["evenings"]) {
            const auto day = QDate::fromString(
                QString::fromStdString(evening["day"].get<std::string>()), Qt::ISODate);
            QVERIFY(day.dayOfWeek() == 2 || day.dayOfWeek() == 5);
            QVERIFY(evening["meals"].size() <= 12);
            QVERIFY(!evening["meals"][0]["amount"].get<std::string>().empty());
        }
        const auto text = burrow("evenings kiln.book --on 2026-05-08");
        QCOMPARE(text.status, 0);
        QVERIFY(!text.out.contains('['));
    }

    void anAbsenceHasAPlanAndASheet() {
        const auto& burrow = withDemo();
        const auto run = burrow(
            "--json away kiln.book --from 2026-05-15 --to 2026-05-29 --on 2026-05-08 --out "
            "sitter.pdf --paper a5",
            {"--call", "The neighbour, 12"});
        QCOMPARE(run.status, 0);
        const auto plan = run.json();
        QCOMPARE(plan["last_meal"].get<std::string>(), std::string("2026-05-13"));
        QVERIFY(plan["pages"].get<int>() >= 1);
        QVERIFY(burrow.read("sitter.pdf").startsWith("%PDF-"));
        for (const auto& visit : plan["visits"]) {
            const auto day = visit["day"].get<std::string>();
            QVERIFY(day >= "2026-05-15" && day <= "2026-05-29");
            for (const auto& task : visit["tasks"]) {
                for (const auto& shut : plan["shut"]) QVERIFY(task["code"] != shut["code"]);
            }
        }
        const auto text =
            burrow("away kiln.book --from 2026-05-15 --to 2026-05-29 --on 2026-05-08");
        QVERIFY(text.out.contains("Before you go") && !text.out.contains('['));
    }

    void impossibleDaysAreRefused() {
        const auto& burrow = withDemo();
        for (const auto* days :
             {"--from 2026-05-01 --to 2026-05-29", "--from 2026-05-20 --to 2026-05-19",
              "--from 2026-05-20 --to 2026-09-19", "--from soon --to later"}) {
            const auto run = burrow(QString("away kiln.book --on 2026-05-08 ") + days);
            QCOMPARE(run.status, 1);
            QVERIFY(!run.err.isEmpty() && !run.err.contains('['));
        }
    }
};

QTEST_GUILESS_MAIN(TestAhead)
#include "tst_ahead.moc"
