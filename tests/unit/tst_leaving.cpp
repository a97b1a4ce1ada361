// Taking everything along: what the files look like, and what bring() makes of the columns that only they
// have.
#include <QtTest>

#include "exchange/bring.h"
#include "exchange/leave.h"
#include "journal/check.h"
#include "pictures/store.h"
#include "support/assets.h"
#include "support/full_book.h"

using namespace burrow;
using namespace burrow::exchange;
using namespace burrow::test;

namespace {

std::string lineOf(const std::string& text, const std::string& start) {
    const auto at = text.find("\n" + start);
    if (at == std::string::npos) return {};
    return text.substr(at + 1, text.find("\r\n", at + 1) - at - 1);
}

SubjectId numbered(TestBook& room, const char* number) {
    return subjectsNumbered(room.book, number)->front();
}

}  // namespace

class TestLeaving : public QObject {
    Q_OBJECT

private slots:
    void writesWhatItSays() {
        TestBook room;
        fillWithEverything(room);
        const ScratchFolder folder;
        const auto out = folder.path() / "new folder";
        const auto report = leave(room.book, out, {}).value();
        QCOMPARE(report.animals, 3);
        QCOMPARE(report.enclosures, 1);
        QCOMPARE(report.tags, 1);
        QCOMPARE(report.photosMissing, 1);  // the photo of the test is not on the device
        for (const char* name :
             {"animals.csv", "enclosures.csv", "events.csv", "tags.csv", "settings.csv",
              "photos.csv", "book.json", "book.schema.json", "read-me.md"}) {
            QVERIFY2(std::filesystem::exists(out / name), name);
            QVERIFY(!std::filesystem::exists(out / (std::string(name) + ".part")));
        }
        const auto animals = slurp(out / "animals.csv");
        QVERIFY(animals.starts_with("code,shown_as,species,"));
        QVERIFY2(lineOf(animals, "214~2,").starts_with("214~2,214,Poecilotheria regalis,"),
                 animals.c_str());
        const auto events = slurp(out / "events.csv");
        // Formulas are texts, quotes are doubled, and the space at the end stays.
        QVERIFY2(events.find("\"'=1+1, \"\"quoted\"\"\nsecond line \"") != std::string::npos,
                 events.c_str());
        QCOMPARE(lineOf(slurp(out / "settings.csv"), "rule."),
                 std::string("rule.feed.interval.adult,20-25"));
        QCOMPARE(lineOf(slurp(out / "settings.csv"), "profile."),
                 std::string(R"(profile.Novagenus nova,"{""name"": ""Novagenus nova""}")"));
    }

    void onlyTablesOrOnlyTheDocument() {
        TestBook room;
        const ScratchFolder folder;
        LeaveOptions options;
        options.json = false;
        leave(room.book, folder.path() / "a", options).value();
        QVERIFY(!std::filesystem::exists(folder.path() / "a" / "book.json"));
        options = {};
        options.csv = false;
        leave(room.book, folder.path() / "b", options).value();
        QVERIFY(!std::filesystem::exists(folder.path() / "b" / "events.csv"));
        QVERIFY(std::filesystem::exists(folder.path() / "b" / "book.json"));
    }

    /// Nothing is written over, and nothing half-written is left.
    void refusesAFolderThatHoldsSuchFiles() {
        TestBook room;
        const ScratchFolder folder;
        std::ofstream(folder.path() / "tags.csv") << "mine";
        const auto refused = leave(room.book, folder.path(), {});
        QCOMPARE(refused.error().message.id, std::string("leave.exists"));
        QCOMPARE(slurp(folder.path() / "tags.csv"), std::string("mine"));
        QCOMPARE(std::distance(std::filesystem::directory_iterator(folder.path()), {}), 1);
    }

    void stopsWhenAsked() {
        TestBook room;
        const auto subject = room.add("001", "A b");
        auto act = room.book.beginAct().value();
        for (int i = 0; i < 6000; ++i) must(act.add(FactDraft{subject, FactKind::watered, {}, {}}));
        act.commit().value();
        const ScratchFolder folder;
        LeaveOptions impatient;
        impatient.onProgress = [](std::int64_t) { return false; };
        const auto stopped = leave(room.book, folder.path() / "out", impatient);
        QCOMPARE(stopped.error().message.id, std::string("leave.stopped"));
        QVERIFY(std::filesystem::is_empty(folder.path() / "out"));
    }

    void photosGoAlong() {
        TestBook room;
        const auto subject = room.add("001", "A b");
        DeviceFiles files;
        const pictures::Store store(pictures::Store::folderFor(room.book.path()), files);
        const std::string bytes = "stands for a JPEG";
        FactBody body;
        body.role = PhotoRole::moult;
        body.picture = Sha256::of(bytes);
        must(files.write(store.picturePath(*body.picture), bytesOf(bytes)));
        room.log(subject, FactKind::photo, body);
        body.picture = Sha256::of("another");
        must(files.write(store.picturePath(*body.picture), bytesOf("damaged")));
        room.log(subject, FactKind::photo, body);
        const ScratchFolder folder;
        const auto report = leave(room.book, folder.path(), {}).value();
        QCOMPARE(report.photos, 1);
        QCOMPARE(report.photosMissing, 1);
        const auto name = "photos/" + Sha256::of(bytes).hex() + ".jpg";
        QCOMPARE(slurp(folder.path() / name), bytes);
        QVERIFY(slurp(folder.path() / "photos.csv").find(name + ",001,A b,") != std::string::npos);
    }

    void guardsTexts_data() {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QByteArray>("cell");
        QTest::newRow("formula") << QByteArray("=HYPERLINK(1)") << QByteArray("'=HYPERLINK(1)");
        QTest::newRow("plus") << QByteArray("+49 30") << QByteArray("'+49 30");
        QTest::newRow("minus") << QByteArray("-") << QByteArray("'-");
        QTest::newRow("at") << QByteArray("@SUM") << QByteArray("'@SUM");
        QTest::newRow("full width") << QByteArray("＝1") << QByteArray("'＝1");
        QTest::newRow("tab") << QByteArray("\t=1") << QByteArray("'\t=1");
        QTest::newRow("space") << QByteArray("dull ") << QByteArray("'dull ");
        QTest::newRow("apostrophe") << QByteArray("'twas") << QByteArray("''twas");
        QTest::newRow("empty") << QByteArray("") << QByteArray("'");
        QTest::newRow("plain") << QByteArray("webbed = over") << QByteArray("webbed = over");
        QTest::newRow("nul") << QByteArray("a\0b", 3)
                             << QByteArray(
                                    "a\xEF\xBF\xBD"
                                    "b");
    }
    void guardsTexts() {
        QFETCH(QByteArray, text);
        QFETCH(QByteArray, cell);
        QCOMPARE(guardedText(text.toStdString()), cell.toStdString());
        if (!text.contains('\0')) {
            QCOMPARE(std::string(plainText(cell.toStdString())), text.toStdString());
        }
    }
    void leavesOtherApostrophesAlone() {
        for (const char* text : {"'twas dull", "dad's", "5'"}) {
            QCOMPARE(std::string(plainText(text)), std::string(text));
        }
    }

    /// A complete row is how the animal stands; without the word an event still sets what follows.
    void completeRowsStand() {
        for (const bool isComplete : {true, false}) {
            TestBook room;
            const std::string animals = std::string("code,species,sex,enclosure,complete\n") +
                                        "1,A b,unknown,,yes\n2,A b,female,E1," +
                                        (isComplete ? "yes" : "") + "\n";
            const std::string homes = "code,length_mm\nE1,1\nE2,2\n";
            const std::string events =
                "code,at,event,enclosure,sex\n2,2026-05-01,rehoused,E2,\n"
                "2,2026-05-02,sexed,,male\n1,2026-05-02,rehoused,E1,\n";
            QVERIFY(bring(room.book,
                          {{CsvKind::animals, animals},
                           {CsvKind::enclosures, homes},
                           {CsvKind::events, events}},
                          {})
                        ->isDone);
            const auto second = room.kept(numbered(room, "2"));
            QCOMPARE(second.subject.sex, isComplete ? Sex::female : Sex::male);
            QCOMPARE(enclosure(room.book, *second.subject.enclosure).value()->name,
                     std::string(isComplete ? "E1" : "E2"));
            QVERIFY(!room.kept(numbered(room, "1")).subject.enclosure);
            QVERIFY(check(room.book)->isSound());
        }
    }

    /// What is called nothing and of which nothing is known comes back too, with what happened to it.
    void thoseOfWhomNothingIsKnownComeBack() {
        TestBook room;
        const std::string homes = "code,shown_as\n~2,'\n";
        const std::string animals =
            "code,shown_as,species,enclosure,complete\n~1,',',,yes\n"
            "2,,A b,~2,yes\n";
        const std::string events = "code,at,event\n~1,2026-05-01,moulted\n";
        QVERIFY(bring(room.book,
                      {{CsvKind::enclosures, homes},
                       {CsvKind::animals, animals},
                       {CsvKind::events, events}},
                      {})
                    ->isDone);
        const auto all = enclosures(room.book).value();
        QCOMPARE(all.size(), std::size_t{1});
        QCOMPARE(all.front().name, std::string());
        QVERIFY(room.kept(numbered(room, "2")).subject.enclosure == all.front().id);
        const auto everyone = roster(room.book).value();
        const auto unknown = std::find_if(everyone.begin(), everyone.end(),
                                          [](const Kept& k) { return k.subject.number.empty(); });
        QVERIFY(unknown != everyone.end());
        QCOMPARE(unknown->digest.moultCount, 1);
    }

    void tagsThatHangStayTheTags() {
        TestBook room;
        const auto code = tags::generateCode(room.random);
        const std::string animals = "code,species\n1,A b\n2,A b\n";
        const std::string list = "code,side_mm,animal,enclosure\n" + code + ",20,1,\n";
        QVERIFY(bring(room.book, {{CsvKind::tags, list}, {CsvKind::animals, animals}}, {})->isDone);
        QCOMPARE(room.kept(numbered(room, "1")).tagCode, code);
        QVERIFY(!room.kept(numbered(room, "2")).tagCode);
        // Once hung, it is not hung again.
        const auto again = bring(room.book, {{CsvKind::tags, list}}, {}).value();
        QCOMPARE(again.bad.at(0).reason.id, std::string("cell.taken"));
    }

    void badRowsOfNewColumns_data() {
        QTest::addColumn<int>("kind");
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QString>("column");
        QTest::addColumn<QString>("reason");
        const auto row = [](const char* name, CsvKind kind, const char* text, const char* column,
                            const char* reason) {
            QTest::newRow(name) << static_cast<int>(kind) << QByteArray(text) << column << reason;
        };
        row("tag", CsvKind::tags, "code,side_mm\nABCDEFGH,20\n7,20\n", "code", "cell.tag");
        row("tag's animal", CsvKind::tags, "code,side_mm,animal\n7Q2MZX89,20,9\n", "animal",
            "cell.unknownAnimal");
        row("setting", CsvKind::settings, "name,value\npassword,1\n", "name", "cell.setting");
        row("number in the book", CsvKind::animals, "code,species,shown_as\nx,A b,001\n",
            "shown_as", "cell.taken");
        row("complete", CsvKind::animals, "code,species,complete\nx,A b,maybe\n", "complete",
            "cell.word");
        row("label twice", CsvKind::events,
            "code,at,event,entry_ref\n001,2026-05-01,watered,a\n001,2026-05-01,watered,a\n",
            "entry_ref", "cell.taken");
        row("about nothing", CsvKind::events,
            "code,at,event,sex,about\n001,2026-05-01,sexed,female,7\n", "about",
            "cell.unknownEntry");
        row("day", CsvKind::events, "code,at,on_day,event\n001,2026-05-01,friday,watered\n",
            "on_day", "cell.date");
    }
    void badRowsOfNewColumns() {
        QFETCH(int, kind);
        QFETCH(QByteArray, text);
        QFETCH(QString, column);
        QFETCH(QString, reason);
        TestBook room;
        room.add("001", "A b");
        const auto bytes = text.toStdString();
        const auto report = bring(room.book, {{static_cast<CsvKind>(kind), bytes}}, {}).value();
        QVERIFY(!report.bad.empty());
        QCOMPARE(QString::fromStdString(report.bad.back().column), column);
        QCOMPARE(QString::fromStdString(report.bad.back().reason.id), reason);
    }

    /// What happened to an animal whose row is bad is bad as well, and the rest still comes in.
    void eventsOfBadRowsAreBad() {
        TestBook room;
        const std::string animals = "code,species,sex\n1,A b,both\n2,A b,\n";
        const std::string events = "code,at,event\n1,2026-05-01,watered\n2,2026-05-01,watered\n";
        BringOptions skipping;
        skipping.skipBad = true;
        const auto report =
            bring(room.book, {{CsvKind::animals, animals}, {CsvKind::events, events}}, skipping)
                .value();
        QVERIFY(report.isDone);
        QCOMPARE(report.badRows, 2);
        QCOMPARE(report.events, 1);
    }

    void photosKeepTheirMoults() {
        TestBook room;
        const std::string animals = "code,species\n1,A b\n";
        const std::string hash = Sha256::of("x").hex();
        const std::string events =
            "code,at,event,entry_ref,about,role,picture\n"
            "1,2026-05-02,photo,,first moult,moult," +
            hash +
            "\n"
            "1,2026-05-01T20:14:05.250Z,moulted,first moult,,,\n";
        QVERIFY(
            bring(room.book, {{CsvKind::animals, animals}, {CsvKind::events, events}}, {})->isDone);
        const auto facts = history(room.book, numbered(room, "1"), wholeHistory).value();
        QCOMPARE(facts.at(0).kind, FactKind::photo);
        QCOMPARE(*facts.at(0).body.about, facts.at(1).id);
        QCOMPARE(isoInstant(facts.at(1).happenedAt), std::string("2026-05-01T20:14:05.250Z"));
    }
};

QTEST_APPLESS_MAIN(TestLeaving)
#include "tst_leaving.moc"
