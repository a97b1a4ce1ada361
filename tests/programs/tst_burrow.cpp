// The main job from a shell: a book, records from files, what is due and why, logging, undo, tags.
#include <QImage>
#include <QtTest>

#include "programs/burrow.h"

using burrow::test::Run;
using burrow::test::Shell;
using nlohmann::json;

namespace {

const QByteArray animals =
    "code,species,sex,hatched_on,acquired_on,source,status,place,enclosure,mother,father,count\n"
    "214,Brachypelma hamorii,female,2018-03-01,2019-06-01,Bred at Kiln Row,here,A/1,,,,\n"
    "118,Grammostola pulchra,female,2017-01-01,2018-01-01,fair,here,A/2,,,,\n"
    "031,Poecilotheria regalis,male,2023-01-01,2023-06-01,swap,quarantine,A/3,,,,\n"
    "260,Neoholothele incei,,,2025-09-01,fair,group,C/1,,,,20\n"
    "009,Caribena versicolor,male,2022-01-01,2023-01-01,fair,on loan,B/1,,,,\n";
const QByteArray events =
    "code,at,event,prey,prey_mm,count,outcome,span_mm,note\n"
    "214,2026-01-10,moulted,,,,,140,\n"
    "214,2026-04-24T20:00,offered,cricket,20,1,ate,,\n"
    "118,2026-05-04,moulted,,,,,160,\n"
    "118,2026-04-20,offered,locust,25,1,ate,,\n"
    "031,2026-04-10,offered,cricket,14,1,ate,120,\n"
    "031,2026-04-20,offered,cricket,14,1,refused,,\n"
    "031,2026-04-27,offered,cricket,12,1,refused,,\n"
    "031,2026-05-04,offered,cricket,10,1,refused,,\n"
    "260,2026-04-30,offered,cricket,5,10,left in,,\n";

/// A book with those records.
void makeRoom(const Shell& burrow) {
    QCOMPARE(burrow("new room.book --code KR", {"--room", "Kiln Row"}).status, 0);
    burrow.write("animals.csv", animals);
    burrow.write("events.csv", events);
    const auto brought = burrow("bring room.book --animals animals.csv --events events.csv");
    QCOMPARE(brought.status, 0);
}

json careOf(const json& answers, const std::string& care) {
    for (const auto& answer : answers) {
        if (answer.at("care") == care) return answer;
    }
    return {};
}

}  // namespace

class TestBurrow : public QObject {
    Q_OBJECT

private slots:
    void helpNamesEveryCommandWithAnExample() {
        const Shell burrow;
        const auto help = burrow("--help");
        QCOMPARE(help.status, 0);
        for (const char* command :
             {"new", "demo", "bring", "due", "why", "scan", "log", "undo", "show", "tags",
              "caresheet", "check", "rules", "differences", "settle", "take-back"}) {
            QVERIFY2(help.out.contains(command), command);
            const auto own = burrow(QString(command) + " --help");
            QCOMPARE(own.status, 0);
            QVERIFY2(own.out.contains(QString("burrow %1 ").arg(command)), command);
        }
        QVERIFY(burrow("log --help").out.contains("premoult_sign"));
    }

    void dueHasTheDocumentedShape() {
        const Shell burrow;
        makeRoom(burrow);
        const auto lines = burrow("due room.book --on 2026-05-08 --json").json();
        QVERIFY(lines.is_array() && !lines.empty());
        for (const auto& line : lines) {
            for (const char* key : {"tag", "code", "species", "place", "care", "state", "opens",
                                    "best", "late", "amount", "reason", "text"}) {
                QVERIFY2(line.contains(key), key);
            }
            QVERIFY(line["state"] == "due" || line["state"] == "hold");
            QVERIFY(line["reason"].contains("id") && line["reason"].contains("args"));
            QVERIFY(line["opens"] <= line["best"] && line["best"] <= line["late"]);
        }
        // Shelf A, then C, then whoever is in quarantine; nobody who is away.
        std::vector<std::string> order;
        for (const auto& line : lines) {
            const std::string code = line["code"];
            if (order.empty() || order.back() != code) order.push_back(code);
        }
        QCOMPARE(order, (std::vector<std::string>{"214", "118", "260", "031"}));
    }

    /// Feeding, hardening, premoult and leftovers by the usual rules (common practice, no source).
    void plansByTheUsualRules() {
        const Shell burrow;
        makeRoom(burrow);
        const auto why = [&](const char* tag, const char* day) {
            return burrow(QString("why room.book %1 --on %2 --json").arg(tag, day)).json()["care"];
        };
        const auto fed =
            careOf(why("214", "2026-05-08"), "feed");  // an adult, 14 days after a meal
        QCOMPARE(fed["state"], "due");
        QCOMPARE(fed["opens"], "2026-05-04");
        QCOMPARE(fed["late"], "2026-05-08");
        QCOMPARE(careOf(why("214", "2026-05-03"), "feed")["state"], "waiting");

        const auto soft =
            careOf(why("118", "2026-05-08"), "feed");  // an adult, 4 days after a moult
        QCOMPARE(soft["state"], "hold");
        QCOMPARE(soft["opens"], "2026-05-18");
        QCOMPARE(careOf(why("118", "2026-05-18"), "feed")["state"], "due");

        const auto refusing = careOf(why("031", "2026-05-08"), "feed");  // three refusals in a row
        QCOMPARE(refusing["state"], "hold");
        QCOMPARE(refusing["opens"], "2026-05-25");

        const auto left = careOf(why("260", "2026-05-01"), "leftovers");  // left in the day before
        QCOMPARE(left["state"], "due");
        QCOMPARE(left["late"], "2026-05-01");

        QCOMPARE(careOf(why("009", "2026-05-08"), "feed")["state"], "none");  // away on loan
        QVERIFY(burrow("why room.book 009 --on 2026-05-08").out.contains("on loan"));
    }

    /// Every kind has an answer with its working and the rules behind it, for everyone in the room.
    void answersWhyForEveryKind() {
        const Shell burrow;
        makeRoom(burrow);
        for (const char* tag : {"214", "118", "031", "260", "009"}) {
            const auto care =
                burrow(QString("why room.book %1 --on 2026-05-08 --json").arg(tag)).json()["care"];
            QCOMPARE(care.size(), 11U);
            for (const auto& answer : care) {
                for (const char* key : {"because", "priority", "reason", "working", "rules"}) {
                    QVERIFY2(answer.contains(key), key);
                }
                QVERIFY(!answer["text"].get<std::string>().empty());
            }
        }
        const auto one = burrow("why room.book 214 feed --on 2026-05-08 --json").json()["care"];
        QCOMPARE(one.size(), 1U);
        QCOMPARE(one[0]["because"], "ate");
        bool isNamed = false;
        for (const auto& rule : one[0]["rules"]) {
            isNamed |= rule["id"] == "feed.interval.adult" && rule["from"] == "shipped" &&
                       rule["value"] == "10-14" && !rule["source"].get<std::string>().empty();
        }
        QVERIFY(isNamed);
        QCOMPARE(burrow("why room.book 214 bathing").status, 1);
    }

    /// A value for one animal, one species or one place; a preview changes nothing.
    void rulesInLayers() {
        const Shell burrow;
        makeRoom(burrow);
        const auto opens = [&] {
            const auto care =
                burrow("why room.book 214 feed --on 2026-05-08 --json").json()["care"];
            return care[0]["opens"].get<std::string>();
        };
        const auto shipped = opens();
        const auto preview =
            burrow("rules room.book feed.interval.adult 20-25 --animal 214 --preview 28 --json")
                .json();
        QCOMPARE(preview["concerned"], 1);
        QCOMPARE(opens(), shipped);
        QCOMPARE(burrow("rules room.book feed.interval.adult 20-25 --animal 214").status, 0);
        QCOMPARE(opens(), std::string("2026-05-14"));
        QCOMPARE(
            burrow("rules room.book feed.interval.adult 22-25 --species", {"B. hamorii"}).status,
            0);
        QCOMPARE(opens(), std::string("2026-05-14"));
        QCOMPARE(burrow("rules room.book feed.interval.adult --animal 214", {""}).status, 0);
        QCOMPARE(opens(), std::string("2026-05-16"));
        const auto listed = burrow("rules room.book feed.interval.adult --json").json();
        QCOMPARE(listed.size(), 2U);
        QCOMPARE(listed[1]["from"], "species");
        QCOMPARE(listed[1]["scope"], "Brachypelma hamorii");
    }

    void blackFangsOpenFeeding() {
        const Shell burrow;
        makeRoom(burrow);
        QCOMPARE(burrow("log room.book 118 fangs-black --at 2026-05-07").status, 0);
        const auto care = burrow("why room.book 118 --on 2026-05-08 --json").json()["care"];
        QCOMPARE(careOf(care, "feed")["state"], "due");
    }

    void logsAndTakesBack() {
        const Shell burrow;
        makeRoom(burrow);
        const auto logged = burrow(
            "log room.book KR-214 offered prey=cricket prey_mm=16 outcome=ate --at "
            "2026-05-08T21:14 "
            "--json");
        QCOMPARE(logged.status, 0);
        QCOMPARE(logged.json()["code"], "214");
        auto history = burrow("show room.book 214 --json").json()["history"];
        QCOMPARE(history.size(), 3U);
        QCOMPARE(history[0]["at"], "2026-05-08T19:14:00Z");  // Berlin summer time
        QCOMPARE(history[0]["prey_mm"], 16.0);
        QCOMPARE(burrow("undo room.book").status, 0);
        history = burrow("show room.book 214 --json").json()["history"];
        QCOMPARE(history.size(), 2U);
        QCOMPARE(burrow("check room.book --json").json()["sound"], true);
    }

    void everyKindCanBeLogged() {
        const Shell burrow;
        makeRoom(burrow);
        QImage(64, 48, QImage::Format_RGB32).save(burrow.path("moult.jpg"));
        for (const char* line : {"offered outcome=part",
                                 "leftovers_out",
                                 "watered",
                                 "dampened",
                                 "premoult_sign",
                                 "moulted span_mm=142 carapace_mm=24",
                                 "measured mass_g=28",
                                 "fangs_black",
                                 "seen count=1",
                                 "moved place=B/4",
                                 "note text=webbed",
                                 "photo file=moult.jpg role=moult",
                                 "sexed sex=female",
                                 "sperm_web",
                                 "paired",
                                 "sac_laid",
                                 "sac_out",
                                 "lent party=a-friend until=2026-08-01",
                                 "returned",
                                 "rehoused",
                                 "sold price=40",
                                 "given",
                                 "died cause=age"}) {
            const auto logged = burrow(QString("log room.book 214 ") + line);
            QVERIFY2(logged.status == 0, qPrintable(line + logged.err));
        }
        const auto shown = burrow("show room.book 214 --json").json();
        QCOMPARE(shown["standing"], "dead");
        QCOMPARE(shown["place"], "B / 4");
        QCOMPARE(shown["history"].size(), 2U + 23U);
        QCOMPARE(QDir(burrow.path("room.book-photos/pictures")).entryList(QDir::Files).size(), 1);
        QCOMPARE(burrow("check room.book").status, 0);
    }

    /// A printed tag is found again in a picture of the sheet.
    void scansWhatItPrinted() {
        const Shell burrow;
        makeRoom(burrow);
        QCOMPARE(burrow("tags room.book 214 --out tags.pdf").status, 0);
        QVERIFY(burrow.read("tags.pdf").startsWith("%PDF"));
        QProcess::execute("pdftoppm", {"-r", "150", "-png", "-singlefile", burrow.path("tags.pdf"),
                                       burrow.path("sheet")});
        const auto scanned = burrow("scan room.book sheet.png --json");
        QCOMPARE(scanned.status, 0);
        QCOMPARE(scanned.json()["code"], "214");
        QCOMPARE(scanned.json()["tag"].get<std::string>().size(), 8U);
        // The code under the square works where a number does.
        const auto code = QString::fromStdString(scanned.json()["tag"]).toLower();
        QCOMPARE(burrow("show room.book " + code).status, 0);
    }

    void printsSheets() {
        const Shell burrow;
        makeRoom(burrow);
        QCOMPARE(burrow("caresheet room.book 260 --out care.pdf").status, 0);
        QCOMPARE(burrow("tags room.book --paper letter --out all.pdf").status, 0);
        QCOMPARE(burrow("tags room.book --blank 30 --out blank.pdf --json").json()["pages"], 2);
        QProcess::execute("pdftotext",
                          {"-layout", burrow.path("care.pdf"), burrow.path("care.txt")});
        const auto text = burrow.read("care.txt");
        for (const char* word : {"KR-260", "Neoholothele incei", "Group of 20", "No food for"}) {
            QVERIFY2(text.contains(word), word);
        }
    }

    void demoIsTheSameForTheSameSeed() {
        const Shell burrow;
        const QString options = " --animals 60 --years 2 --seed 7 --until 2026-05-08";
        QCOMPARE(burrow("demo a.book" + options).status, 0);
        QCOMPARE(burrow("demo b.book" + options).status, 0);
        const auto first = burrow("due a.book --on 2026-05-08 --json");
        QVERIFY(first.json().size() > 10);
        QCOMPARE(first.out, burrow("due b.book --on 2026-05-08 --json").out);
        QCOMPARE(burrow("check a.book").status, 0);
        QCOMPARE(burrow("demo c.book --animals 60 --years 2 --seed 8 --until 2026-05-08").status,
                 0);
        QVERIFY(first.out != burrow("due c.book --on 2026-05-08 --json").out);
    }

    void keepersOwnRules() {
        const Shell burrow;
        makeRoom(burrow);
        QCOMPARE(burrow("rules room.book feed.interval.adult 20-25").status, 0);
        const auto care = burrow("why room.book 214 --on 2026-05-08 --json").json()["care"];
        QCOMPARE(careOf(care, "feed")["opens"], "2026-05-14");
        const auto rule = burrow("rules room.book feed.interval.adult --json").json()[0];
        QCOMPARE(rule["from"], "you");
        QCOMPARE(rule["value"], "20-25");
        QCOMPARE(burrow("rules room.book feed.interval.adult", {""}).status, 0);
        QCOMPARE(burrow("rules room.book feed.interval.adult --json").json()[0]["from"], "shipped");
        QCOMPARE(burrow("rules room.book feed.interval.adult 30-2").status, 1);
    }

    /// Days are the keeper's: an evening meal in New York is the next day in UTC.
    void daysFollowTheZone() {
        const Shell burrow;
        makeRoom(burrow);
        QCOMPARE(burrow("log room.book 214 watered --at 2026-05-08T22:30 --zone America/New_York")
                     .status,
                 0);
        const auto newest = burrow("show room.book 214 --json").json()["history"][0];
        QCOMPARE(newest["at"], "2026-05-09T02:30:00Z");
        QCOMPARE(newest["day"], "2026-05-08");
    }
};

QTEST_GUILESS_MAIN(TestBurrow)
#include "tst_burrow.moc"
