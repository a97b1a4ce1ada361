// Homes and air from a shell.
#include <QtTest>

#include "programs/burrow.h"

using burrow::test::Shell;
using nlohmann::json;

namespace {

const Shell& withRoom() {
    static const Shell shell;
    static const bool isMade = [] {
        shell.write("homes.csv",
                    "code,length_mm,width_mm,height_mm,substrate_mm,place\n"
                    "E-1,200,200,200,80,A / 1\n"
                    "E-2,450,300,250,100,A / 2\n");
        shell.write("animals.csv",
                    "code,species,enclosure\n"
                    "214,Brachypelma hamorii,E-1\n");
        shell.write("events.csv",
                    "code,at,event,span_mm\n"
                    "214,2026-03-01,measured,140\n");
        return shell("new r.book --room Kiln --code KR").status == 0 &&
               shell(
                   "bring r.book --enclosures homes.csv --animals animals.csv --events "
                   "events.csv")
                       .status == 0;
    }();
    if (!isMade) qFatal("The room can't be made");
    return shell;
}

}  // namespace

class TestHomesAir : public QObject {
    Q_OBJECT

private slots:
    void theMovesOfARoomArePlanned() {
        const auto& burrow = withRoom();
        const auto plan = burrow("--json homes r.book").json();
        QCOMPARE(plan["animals"].size(), std::size_t{1});
        QCOMPARE(plan["animals"][0]["state"].get<std::string>(), std::string("too_small"));
        QCOMPARE(plan["moves"].size(), std::size_t{1});
        QCOMPARE(plan["moves"][0]["to"].get<std::string>(), std::string("E-2"));
        QCOMPARE(plan["moves"][0]["ground"]["litres"].get<double>(), 13.5);
        QVERIFY(!plan["moves"][0]["cautions"].empty());
        QCOMPARE(plan["empty"][0]["for"].get<std::string>(), std::string("214"));
        const auto text = burrow("homes r.book");
        QCOMPARE(text.status, 0);
        QVERIFY2(text.out.contains("E-1 -> E-2"), qPrintable(text.out));
        QCOMPARE(burrow("homes none.book").status, 1);
    }

    void readingsAreTypedAndShown() {
        const auto& burrow = withRoom();
        const auto typed = burrow("--json air r.book --log A temp=25 humidity=60").json();
        QCOMPARE(typed["added"].get<int>(), 1);
        const auto shown = burrow("--json air r.book").json();
        QCOMPARE(shown.size(), std::size_t{1});
        QCOMPARE(shown[0]["place"].get<std::string>(), std::string("A"));
        QCOMPARE(shown[0]["standing"].get<int>(), 1);
        // WMO-No. 8, Annex 4.B.
        QVERIFY(std::abs(shown[0]["now"]["dew_point_celsius"].get<double>() - 16.7) < 0.05);
        QCOMPARE(burrow("undo r.book").status, 0);
        QCOMPARE(burrow("--json air r.book").json().size(), std::size_t{0});
        QCOMPARE(burrow("check r.book").status, 0);
    }

    void whatCannotBeReadChangesNothing() {
        const auto& burrow = withRoom();
        const auto before = burrow.bookBytes("r.book");
        for (const auto* wrong : {"temp=hot", "temp=2450", "humidity=101", "speed=3", "nonsense"}) {
            const auto run = burrow(QString("--json air r.book --log A ") + wrong);
            QCOMPARE(run.status, 1);
            QVERIFY(json::parse(run.err.toStdString(), nullptr, false).contains("error"));
        }
        QCOMPARE(burrow("air r.book --log A").status, 1);
        QCOMPARE(burrow("air r.book --log A temp=20 --at 2999-01-01").status, 1);
        QCOMPARE(burrow("air r.book --place Nowhere").status, 1);
        QCOMPARE(burrow("air r.book --in none.csv --place A").status, 1);
        QCOMPARE(burrow("air r.book --in none.csv").status, 2);
        QCOMPARE(burrow.bookBytes("r.book"), before);
    }

    void aLoggersFileIsTakenInOnce() {
        const auto& burrow = withRoom();
        burrow.write("log.csv",
                     "Time;Temperature (°C);Humidity\n"
                     "2026-05-08 06:00;24,0;60\n"
                     "2026-05-08 07:00;25,0;62\n"
                     "2026-05-08 08:00;warm;63\n");
        const auto first = burrow("--json air r.book --in log.csv --place", {"Warm room"}).json();
        QCOMPARE(first["added"].get<int>(), 2);
        QCOMPARE(first["bad"][0]["line"].get<int>(), 4);
        const auto again = burrow("--json air r.book --in log.csv --place", {"warm ROOM"}).json();
        QCOMPARE(again["added"].get<int>(), 0);
        QCOMPARE(again["known"].get<int>(), 2);
        const auto shown = burrow("--json air r.book --days 3660 --place", {"Warm room"}).json();
        QCOMPARE(shown[0]["readings"].size(), std::size_t{2});
        QCOMPARE(shown[0]["readings"][0]["at"].get<std::string>(),
                 std::string("2026-05-08T04:00:00Z"));  // two hours ahead of UTC in May
        burrow.write("open.csv", "Time,Temp\n03/04/2026 06:00,24\n");
        const auto open = burrow("--json air r.book --in open.csv --place B");
        QCOMPARE(open.status, 1);
        QVERIFY(open.err.contains("air.log.whichDate"));
        QCOMPARE(burrow("air r.book --in open.csv --place B --dates day-first").status, 0);
        QCOMPARE(burrow("check r.book").status, 0);
    }
};

QTEST_GUILESS_MAIN(TestHomesAir)
#include "tst_homes_air.moc"
