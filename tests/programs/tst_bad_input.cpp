// Bad input: a clear sentence on the error stream, exit status 1, and the book as it was.
#include <sqlite3.h>
#include <QImage>
#include <QtTest>

#include "programs/burrow.h"

using burrow::test::Shell;

namespace {

void makeRoom(const Shell& burrow) {
    QCOMPARE(burrow("new room.book --room Kiln --code KR").status, 0);
    burrow.write("a.csv", "code,species\n214,Brachypelma hamorii\n");
    QCOMPARE(burrow("bring room.book --animals a.csv").status, 0);
}

bool isSentence(const QString& text) {
    return text.trimmed().endsWith('.') && text.at(0).isUpper() && !text.contains('[') &&
           !text.contains("terminate") && !text.contains("what():");
}

}  // namespace

class TestBadInput : public QObject {
    Q_OBJECT

private slots:
    void commandsThatAreNone_data() {
        QTest::addColumn<QString>("words");
        for (const char* words :
             {"", "feed room.book", "due", "log room.book 214", "new room.book",
              "demo x.book --animals many", "tags room.book --out t.pdf --paper a3"}) {
            QTest::newRow(words) << words;
        }
    }
    void commandsThatAreNone() {
        QFETCH(QString, words);
        const Shell burrow;
        makeRoom(burrow);
        const auto run = burrow(words);
        QCOMPARE(run.status, 2);
        QVERIFY(!run.err.isEmpty());
    }

    void refused_data() {
        QTest::addColumn<QString>("words");
        for (const char* words : {"due missing.book",
                                  "due .",
                                  "due a.csv",
                                  "due room.book --on tomorrow",
                                  "why room.book 999",
                                  "why room.book UUUUUUUU",
                                  "show room.book x",
                                  "log room.book 999 watered",
                                  "log room.book 214 danced",
                                  "log room.book 214 offered",
                                  "log room.book 214 offered outcome=maybe",
                                  "log room.book 214 offered outcome=ate prey_mm=1500",
                                  "log room.book 214 watered prey=cricket",
                                  "log room.book 214 watered nonsense",
                                  "log room.book 214 watered --at noon",
                                  "log room.book 214 rehoused enclosure=E9",
                                  "log room.book 214 photo file=none.jpg role=moult",
                                  "log room.book 214 photo file=a.csv role=moult",
                                  "scan room.book none.png",
                                  "scan room.book a.csv",
                                  "caresheet room.book 999 --out x.pdf",
                                  "caresheet room.book 214 --out no/such/./\x01/x.pdf",
                                  "tags room.book 999 --out x.pdf",
                                  "new room.book --room K --code K",
                                  "demo room.book",
                                  "bring room.book",
                                  "bring room.book --animals none.csv",
                                  "rules room.book no.such.rule",
                                  "rules room.book feed.interval.adult soon",
                                  "due room.book --zone Europe/Atlantis"}) {
            QTest::newRow(words) << words;
        }
    }
    void refused() {
        QFETCH(QString, words);
        const Shell burrow;
        makeRoom(burrow);
        const auto before = burrow.bookBytes("room.book");
        const auto run = burrow(words);
        if (words.contains('\x01')) {  // a folder can be made nearly anywhere
            QVERIFY(run.status == 0 || run.status == 1);
            return;
        }
        QVERIFY2(run.status == 1, qPrintable(run.out + run.err));
        QVERIFY2(isSentence(run.err), qPrintable(run.err));
        QVERIFY(burrow.bookBytes("room.book") == before);
        const auto asJson = burrow(words + " --json");
        QCOMPARE(asJson.status, 1);
        const auto error = nlohmann::json::parse(asJson.err.toStdString(), nullptr, false);
        QVERIFY2(error.contains("error") && error["error"].contains("id"), qPrintable(asJson.err));
    }

    void undoOfNothing() {
        const Shell burrow;
        QCOMPARE(burrow("new room.book --room Kiln --code KR").status, 0);
        QCOMPARE(burrow("undo room.book").status, 1);
    }

    void codesAsPeopleTypeThem() {
        const Shell burrow;
        makeRoom(burrow);
        const auto tag = QString::fromStdString(burrow("show room.book 214 --json").json()["tag"]);
        auto typed = tag.toLower();
        typed.replace('0', 'o').replace('1', 'l').insert(4, ' ');
        QCOMPARE(burrow("show room.book", {typed}).status, 0);
        auto wrong = tag;
        wrong[3] = wrong[3] == '7' ? '8' : '7';
        QCOMPARE(burrow("show room.book " + wrong).status, 1);
    }

    void damagedBooks_data() {
        QTest::addColumn<QString>("what");
        for (const char* what : {"cut", "flipped", "newer", "protected", "locked", "text"}) {
            QTest::newRow(what) << what;
        }
    }
    void damagedBooks() {
        QFETCH(QString, what);
        const Shell burrow;
        QCOMPARE(burrow("demo room.book --animals 30 --years 1 --until 2026-05-08").status, 0);
        auto bytes = burrow.read("room.book");
        QVERIFY(bytes.size() > 100'000);
        sqlite3* other = nullptr;
        if (what == "cut") burrow.write("room.book", bytes.left(bytes.size() / 2));
        if (what == "text") burrow.write("room.book", QByteArray(5000, 'x'));
        if (what == "flipped") {
            for (qsizetype at = 8192; at < bytes.size(); at += 1500)
                bytes[at] = static_cast<char>(~bytes[at]);
            burrow.write("room.book", bytes);
        }
        if (what == "newer" || what == "locked") {
            QCOMPARE(sqlite3_open(burrow.path("room.book").toUtf8(), &other), SQLITE_OK);
            const auto* sql = what == "newer" ? "PRAGMA user_version = 99" : "BEGIN EXCLUSIVE";
            QCOMPARE(sqlite3_exec(other, sql, nullptr, nullptr, nullptr), SQLITE_OK);
            if (what == "newer") sqlite3_close(other);
        }
        if (what == "protected") {
            QFile::setPermissions(burrow.path("room.book"), QFileDevice::ReadOwner);
            QCOMPARE(burrow("due room.book --on 2026-05-08").status, 0);  // reading is fine
        }
        const auto before = burrow.read("room.book");
        const auto run = burrow("log room.book 001 watered");
        QVERIFY2(run.status == 1, qPrintable(run.out + run.err));
        QVERIFY2(isSentence(run.err), qPrintable(run.err));
        if (what == "cut" || what == "flipped") QCOMPARE(burrow("check room.book").status, 1);
        if (what == "locked") sqlite3_close(other);
        QVERIFY(burrow.read("room.book") == before);
    }

    /// A device without room, where the tests may make one: a file system of 16 MB.
    void fullDevice() {
        const Shell burrow;
        QDir().mkpath(burrow.path("small"));
        const auto small = burrow.path("small");
        if (QProcess::execute("mount", {"-t", "tmpfs", "-o", "size=16m", "none", small}) != 0) {
            QSKIP("No file system can be mounted here; SQLite's own limit is tested in tst_book");
        }
        const auto room = qScopeGuard([&] { QProcess::execute("umount", {small}); });
        QCOMPARE(burrow("new small/room.book --room Kiln --code KR").status, 0);
        burrow.write("a.csv", "code,species\n214,Brachypelma hamorii\n");
        QCOMPARE(burrow("bring small/room.book --animals a.csv").status, 0);
        QFile filler(burrow.path("small/filler"));
        QVERIFY(filler.open(QIODevice::WriteOnly | QIODevice::Unbuffered));
        while (filler.write(QByteArray(4096, 'x')) > 0) {
        }
        filler.close();
        int logged = 0;
        auto run = burrow("log small/room.book 214 note", {"text=" + QString(2000, 'x')});
        while (run.status == 0 && ++logged < 200) {
            run = burrow("log small/room.book 214 note", {"text=" + QString(2000, 'x')});
        }
        QCOMPARE(run.status, 1);
        QVERIFY2(isSentence(run.err), qPrintable(run.err));
        QVERIFY(filler.remove());
        QCOMPARE(burrow("show small/room.book 214 --json").json()["history"].size(),
                 static_cast<std::size_t>(logged));
        QCOMPARE(burrow("check small/room.book").status, 0);
    }

    void pictures_data() {
        QTest::addColumn<QString>("what");
        QTest::addColumn<QString>("message");
        QTest::newRow("no tag") << "plain"
                                << "scan.none";
        QTest::newRow("cut") << "cut"
                             << "picture.cut";
        QTest::newRow("100 megapixels") << "huge"
                                        << "picture.tooManyPixels";
        QTest::newRow("empty") << "empty"
                               << "picture.none";
    }
    void pictures() {
        QFETCH(QString, what);
        QFETCH(QString, message);
        const Shell burrow;
        makeRoom(burrow);
        QImage picture(what == "huge" ? QSize(10'100, 10'000) : QSize(640, 480),
                       QImage::Format_Grayscale8);
        picture.fill(Qt::white);
        QVERIFY(picture.save(burrow.path("p.jpg")));
        if (what == "cut") burrow.write("p.jpg", burrow.read("p.jpg").left(2000));
        if (what == "empty") burrow.write("p.jpg", {});
        for (const char* words :
             {"scan room.book p.jpg", "log room.book 214 photo file=p.jpg role=moult"}) {
            if (what == "plain" && QString(words).startsWith("log")) continue;
            const auto run = burrow(QString(words) + " --json");
            QCOMPARE(run.status, 1);
            const auto error = nlohmann::json::parse(run.err.toStdString(), nullptr, false);
            QCOMPARE(QString::fromStdString(error["error"]["id"]), message);
        }
        QVERIFY(!QDir(burrow.path("room.book-photos")).exists());
    }

    void csvFiles_data() {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QString>("said");
        QTest::newRow("nul") << QByteArray("code,species\n1,A b\n2,A\0b\n", 25) << "line 3";
        QTest::newRow("one column") << QByteArray("code\n1\n") << "species";
        QTest::newRow("bad row") << QByteArray("code,species,sex\n1,A b,f\n2,A b,both\n")
                                 << "line 3, column sex";
        QTest::newRow("utf-16") << QByteArray(
                                       "\xFF\xFE"
                                       "c\0",
                                       4)
                                << "UTF-16";
        QTest::newRow("binary") << QByteArray(
                                       "\x7F"
                                       "ELF\x02\x01\0\xFF",
                                       8)
                                << "UTF-8";
    }
    void csvFiles() {
        QFETCH(QByteArray, text);
        QFETCH(QString, said);
        const Shell burrow;
        makeRoom(burrow);
        burrow.write("b.csv", text);
        const auto before = burrow.bookBytes("room.book");
        const auto run = burrow("bring room.book --animals b.csv");
        QCOMPARE(run.status, 1);
        QVERIFY2(run.err.contains(said), qPrintable(run.err));
        QVERIFY(burrow.bookBytes("room.book") == before);
    }

    void skippedRowsComeBack() {
        const Shell burrow;
        makeRoom(burrow);
        burrow.write("b.csv", "code;species;sex\n1;A b;f\n2;A b;both\n3;A b;m\n");
        const auto run = burrow("bring room.book --animals b.csv --skip-bad --json");
        QCOMPARE(run.status, 0);
        QCOMPARE(run.json()["animals"], 2);
        QVERIFY(burrow.read("b.bad.csv").startsWith("code;species;sex;reason\n2;A b;both;"));
        // Rows that are being corrected there are not written over.
        QCOMPARE(burrow("new second.book --room Second --code S").status, 0);
        QCOMPARE(burrow("bring second.book --animals b.csv --skip-bad").status, 0);
        QVERIFY(burrow.read("b.bad-2.csv").startsWith("code;species;sex;reason\n"));
        // Corrected, the rest can be brought in as it is.
        auto rest = burrow.read("b.bad.csv");
        burrow.write("rest.csv", rest.replace("both", "u"));
        QCOMPARE(burrow("bring room.book --animals rest.csv").status, 0);
        QCOMPARE(burrow("show room.book 2 --json").json()["note"], "");
    }

    /// A million rows, the last of them bad: nothing is brought in, and it ends.
    void aMillionRows() {
        const Shell burrow;
        makeRoom(burrow);
        QByteArray text("code,at,event\n");
        text.reserve(30'000'000);
        for (int i = 0; i < 1'000'000; ++i) text += "214,2026-05-01,watered\n";
        text += "214,never,watered\n";
        burrow.write("e.csv", text);
        const auto run = burrow("bring room.book --events e.csv");
        QCOMPARE(run.status, 1);
        QVERIFY2(run.err.contains("line 1000002, column at"), qPrintable(run.err.left(300)));
        QCOMPARE(burrow("show room.book 214 --json").json()["history"].size(), 0U);
    }
};

QTEST_GUILESS_MAIN(TestBadInput)
#include "tst_bad_input.moc"
