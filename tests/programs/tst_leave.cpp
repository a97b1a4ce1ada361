// Records that leave for other programs and come from them, as a script does it.
#include <QImage>
#include <QtTest>

#include "programs/burrow.h"

using burrow::test::Shell;

namespace {

const QByteArray sheet =
    "Nr.,Scientific name,Sex,Born,Size (in)\n"
    "501,B. hamorii,F,14.3.2021,5 1/2\n"
    "502,Brachypelma hamorei,m,2.3.2022,\n";
const QByteArray open = "Nr.,Scientific name,Born\n501,B. hamorii,1.3.2021\n";

}  // namespace

class TestLeave : public QObject {
    Q_OBJECT

private slots:
    void helpNamesEveryCommandWithAnExample() {
        const Shell burrow;
        const auto help = burrow("--help");
        for (const char* command : {"leave", "calendar", "map"}) {
            QVERIFY2(help.out.contains(command), command);
            const auto own = burrow(QString(command) + " --help");
            QCOMPARE(own.status, 0);
            QVERIFY2(own.out.contains(QString("burrow %1 ").arg(command)), command);
        }
    }

    /// Out, into a new book, and out again: the same files.
    void takesEverythingAlongAndBack() {
        const Shell burrow;
        QCOMPARE(burrow("demo room.book --animals 40 --years 2 --seed 3 --until 2026-05-08").status,
                 0);
        const auto left = burrow("leave room.book --to out --json");
        QCOMPARE(left.status, 0);
        QCOMPARE(left.json()["animals"], 40);
        QVERIFY(left.json()["events"] > 1000);
        const auto room = burrow("due room.book --on 2026-05-08 --json");
        QCOMPARE(burrow("new again.book --code KR", {"--room", "Kiln Row"}).status, 0);
        const auto brought = burrow(
            "bring again.book --settings out/settings.csv --enclosures out/enclosures.csv "
            "--animals "
            "out/animals.csv --tags out/tags.csv --events out/events.csv");
        QVERIFY2(brought.status == 0, qPrintable(brought.err));
        QCOMPARE(burrow("leave again.book --to out2 --csv-only").status, 0);
        for (const char* name : {"animals", "enclosures", "events", "tags", "photos", "settings"}) {
            const auto file = QString("/%1.csv").arg(name);
            QVERIFY2(burrow.read("out" + file) == burrow.read("out2" + file), name);
        }
        QVERIFY(!burrow.read("out/animals.csv").isEmpty());
        QCOMPARE(burrow("due again.book --on 2026-05-08 --json").out, room.out);
        QCOMPARE(burrow("check again.book").status, 0);
        // Never over what is there.
        const auto twice = burrow("leave room.book --to out");
        QCOMPARE(twice.status, 1);
        QVERIFY(twice.err.contains("Nothing was written"));
        QCOMPARE(burrow("leave room.book --to out3 --csv-only --json-only").status, 2);
    }

    void photosGoAlongAndComeBack() {
        const Shell burrow;
        QCOMPARE(burrow("new room.book --code KR", {"--room", "Kiln Row"}).status, 0);
        burrow.write("animals.csv", "code,species\n214,Brachypelma hamorii\n");
        QCOMPARE(burrow("bring room.book --animals animals.csv").status, 0);
        QImage picture(64, 48, QImage::Format_RGB32);
        picture.fill(Qt::darkRed);
        QVERIFY(picture.save(burrow.path("moult.jpg")));
        QCOMPARE(burrow("log room.book 214 photo file=moult.jpg role=moult").status, 0);
        QCOMPARE(burrow("leave room.book --to out --json").json()["photos"], 1);
        const QDir taken(burrow.path("out/photos"));
        QCOMPARE(taken.entryList(QDir::Files).size(), 1);
        const auto name = taken.entryList(QDir::Files).first();
        // A file of another content under such a name is not taken.
        burrow.write("out/photos/" + QString(64, 'a') + ".jpg", "no picture");
        QCOMPARE(burrow("new again.book --code KR", {"--room", "Kiln Row"}).status, 0);
        const QString bring =
            "bring again.book --animals out/animals.csv --tags out/tags.csv --events "
            "out/events.csv "
            "--photos out/photos --json";
        QCOMPARE(burrow(bring).json()["photos"], 1);
        const QString kept = "again.book-photos/pictures/";
        QCOMPARE(QDir(burrow.path(kept)).entryList(QDir::Files), QStringList{name});
        QCOMPARE(burrow.read(kept + name), burrow.read("out/photos/" + name));
        QVERIFY(!burrow.read("again.book-photos/thumbnails/" + name).isEmpty());
        // Refused records leave no photos behind.
        QCOMPARE(burrow("new third.book --code KR", {"--room", "Kiln Row"}).status, 0);
        QCOMPARE(burrow("bring third.book --events out/events.csv --photos out/photos").status, 1);
        QVERIFY(QDir(burrow.path("third.book-photos/pictures")).entryList(QDir::Files).isEmpty());
    }

    void writesDueDates() {
        const Shell burrow;
        QCOMPARE(burrow("new empty.book --code KR", {"--room", "Kiln Row"}).status, 0);
        const auto nothing = burrow("calendar empty.book --out due.ics");
        QCOMPARE(nothing.status, 1);
        QVERIFY(burrow.read("due.ics").isEmpty());
        QCOMPARE(burrow("demo room.book --animals 20 --years 1 --seed 3").status, 0);
        const auto written = burrow("calendar room.book --out due.ics --json");
        QCOMPARE(written.status, 0);
        QVERIFY(written.json()["events"] >= 20);
        QVERIFY(burrow.read("due.ics").startsWith("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n"));
        const auto soon = burrow("calendar room.book --out soon.ics --days 0 --json");
        QVERIFY(soon.json()["events"] < written.json()["events"]);
        QCOMPARE(burrow("calendar room.book --out x.ics --days -1").status, 2);
    }

    void mapsASpreadsheet() {
        const Shell burrow;
        burrow.write("mine.csv", sheet);
        const auto proposed = burrow("map mine.csv --out map.json --json");
        QCOMPARE(proposed.status, 0);
        QCOMPARE(proposed.json()["open"], false);
        QCOMPARE(proposed.json()["mapping"]["columns"][3]["dates"], "day_first");
        QCOMPARE(proposed.json()["questions"][0]["value"], "Brachypelma hamorei");
        const auto told = burrow("map mine.csv");
        QVERIFY(told.out.contains("139.7"));
        QCOMPARE(burrow("new room.book --code KR", {"--room", "Kiln Row"}).status, 0);
        const auto brought = burrow("bring room.book --animals mine.csv --map map.json --json");
        QVERIFY2(brought.status == 0, qPrintable(brought.err));
        QCOMPARE(brought.json()["animals"], 2);
        const auto shown = burrow("show room.book 501 --json").json();
        QCOMPARE(shown["species"], "Brachypelma hamorii");
        QCOMPARE(shown["span_mm"], 139.7);
        QCOMPARE(shown["hatched_on"], "2021-03-14");
    }

    /// What can be read in two ways is asked, and nothing comes in before it is answered.
    void openQuestionsAreOpen() {
        const Shell burrow;
        burrow.write("mine.csv", open);
        const auto proposed = burrow("map mine.csv --out map.json --json");
        QCOMPARE(proposed.json()["open"], true);
        QCOMPARE(proposed.json()["mapping"]["columns"][2]["dates"], nullptr);
        QVERIFY(burrow("map mine.csv").out.contains("* The dates under Born"));
        QCOMPARE(burrow("new room.book --code KR", {"--room", "Kiln Row"}).status, 0);
        const auto before = burrow.bookBytes("room.book");
        const auto refused = burrow("bring room.book --animals mine.csv --map map.json");
        QCOMPARE(refused.status, 1);
        QVERIFY(refused.err.contains("day_first"));
        QCOMPARE(burrow.bookBytes("room.book"), before);
        auto answered = burrow.read("map.json");
        answered.replace("\"dates\": null", "\"dates\": \"month_first\"");
        burrow.write("map.json", answered);
        QCOMPARE(burrow("bring room.book --animals mine.csv --map map.json").status, 0);
        QCOMPARE(burrow("show room.book 501 --json").json()["hatched_on"], "2021-01-03");
        burrow.write("odd.json", "{}");
        QCOMPARE(burrow("bring room.book --animals mine.csv --map odd.json").status, 1);
        const auto lost = burrow("bring room.book --events mine.csv --map map.json");
        QCOMPARE(lost.status, 1);
        QVERIFY(lost.err.contains("--animals"));
    }
};

QTEST_GUILESS_MAIN(TestLeave)
#include "tst_leave.moc"
