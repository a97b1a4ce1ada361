// Bundles and shared folders from a shell, and what other people's programs make of the files.
#include <QImage>
#include <QtTest>

#include "programs/burrow.h"

using burrow::test::Run;
using burrow::test::Shell;
using nlohmann::json;

namespace {

void makeRoom(const Shell& burrow, const QString& book = "room.book") {
    QCOMPARE(burrow("new " + book + " --code KR", {"--room", "Kiln Row"}).status, 0);
    burrow.write("animals.csv", "code,species\n214,Brachypelma hamorii\n118,Grammostola pulchra\n");
    QCOMPARE(burrow("bring " + book + " --animals animals.csv").status, 0);
    QImage(1600, 1200, QImage::Format_RGB32).save(burrow.path("moult.jpg"));
    QCOMPARE(burrow("log " + book + " 214 photo file=moult.jpg role=moult").status, 0);
    QCOMPARE(burrow("log " + book + " 118 note", {"text=webbed \"over\" the <dish>"}).status, 0);
}

/// Any other program in the shell's folder.
Run runOther(const Shell& burrow, const QString& program, const QStringList& arguments) {
    QProcess process;
    process.setWorkingDirectory(burrow.path("."));
    process.start(program, arguments);
    if (!process.waitForFinished(60'000)) return {-2, {}, program + " does not end"};
    return {process.exitCode(), QString::fromUtf8(process.readAllStandardOutput()),
            QString::fromUtf8(process.readAllStandardError())};
}

Run openIndependently(const Shell& burrow, const QStringList& arguments) {
    return runOther(
        burrow, "/usr/bin/python3",
        QStringList{QStringLiteral(BURROW_SOURCE_DIR "/tests/programs/open_bundle.py")} +
            arguments);
}

}  // namespace

class TestBundles : public QObject {
    Q_OBJECT

private slots:
    void outPeekJoinAndBack() {
        const Shell burrow;
        makeRoom(burrow);
        const auto out = burrow("export room.book room.burrow --json");
        QVERIFY2(out.status == 0, qPrintable(out.err));
        QCOMPARE(out.json()["animals"], 2);
        QCOMPARE(out.json()["photos"], 1);
        const auto peeked = burrow("peek room.burrow --json").json();
        QCOMPARE(peeked["entries"], out.json()["entries"]);
        QCOMPARE(peeked["left_out"]["confidential"], true);
        QCOMPARE(peeked["sealed"], false);
        const auto said = burrow("peek room.burrow").out;
        for (const char* word : {"Kiln Row", "everything", "2 animals", "one photo", "Left out"}) {
            QVERIFY2(said.contains(word), qPrintable(said));
        }
        QCOMPARE(burrow("join second.book room.burrow").status, 0);
        QCOMPARE(burrow("check second.book").status, 0);
        QCOMPARE(burrow("log second.book 118 watered").status, 0);
        QCOMPARE(burrow("export second.book back.burrow --photos none").status, 0);
        const auto merged = burrow("merge room.book back.burrow --json").json();
        QCOMPARE(merged["added"], 1);
        QCOMPARE(merged["differences"], 0);
        QCOMPARE(burrow("merge room.book back.burrow --json").json()["added"], 0);

        const auto peers = burrow("peers room.book --json").json()["peers"];
        QCOMPARE(peers.size(), 1U);
        const auto device = QString::fromStdString(peers[0]["device"]).right(6);
        QCOMPARE(burrow("export room.book rest.burrow --json --for " + device).json()["entries"],
                 0);
        QCOMPARE(burrow("export room.book rest.burrow --for zzzz").status, 1);

        QCOMPARE(burrow("take-back room.book").status, 0);
        QCOMPARE(burrow("show room.book 118 --json").json()["history"].size(), 1U);
        QCOMPARE(burrow("check room.book").status, 0);
    }

    /// unzip and Python read what FORMAT.md promises them.
    void otherProgramsReadIt() {
        const Shell burrow;
        makeRoom(burrow);
        QCOMPARE(burrow("export room.book room.burrow").status, 0);
        const auto tested = runOther(burrow, "unzip", {"-t", "room.burrow"});
        QVERIFY2(tested.status == 0, qPrintable(tested.out + tested.err));
        const auto opened = openIndependently(burrow, {"room.burrow"});
        QVERIFY2(opened.status == 0, qPrintable(opened.err));
        QCOMPARE(opened.json()["photos"], 1);
        QCOMPARE(opened.json()["animals"], 2);
        QCOMPARE(opened.json()["notes"][0], "webbed \"over\" the <dish>");
    }

    void sealedFilesOpenWithLibsodiumAlone() {
        const Shell burrow;
        makeRoom(burrow);
        burrow.write("secret.txt", "eight legs, two palps\n");
        QCOMPARE(burrow("export room.book room.burrow --passphrase-from secret.txt").status, 0);
        QVERIFY(burrow.read("room.burrow").startsWith("BRBKSEAL"));
        QVERIFY(!burrow.read("room.burrow").contains("hamorii"));
        const auto opened = openIndependently(burrow, {"room.burrow", "eight legs, two palps"});
        QVERIFY2(opened.status == 0, qPrintable(opened.err));
        QVERIFY(openIndependently(burrow, {"room.burrow", "six legs"}).status != 0);
        QVERIFY(burrow("peek room.burrow").err.contains("passphrase"));
        QCOMPARE(burrow("peek room.burrow --json --passphrase-from secret.txt").json()["sealed"],
                 true);
        burrow.write("wrong.txt", "six legs\n");
        QCOMPARE(burrow("join other.book room.burrow --passphrase-from wrong.txt").status, 1);
        QVERIFY(!QFile::exists(burrow.path("other.book")));
        QCOMPARE(burrow("join other.book room.burrow --passphrase-from secret.txt").status, 0);
    }

    /// Unpacked and packed again by another program, in another order, it is still a bundle.
    void packedAgainItIsStillOne() {
        const Shell burrow;
        makeRoom(burrow);
        QCOMPARE(burrow("export room.book room.burrow").status, 0);
        QCOMPARE(runOther(burrow, "unzip", {"-q", "room.burrow", "-d", "unpacked"}).status, 0);
        QProcess zip;
        zip.setWorkingDirectory(burrow.path("unpacked"));
        zip.start("zip",
                  {"-q", "-D", "-r", "../again.zip", "manifest.json", "photos", "entries.jsonl"});
        QVERIFY(zip.waitForFinished() && zip.exitCode() == 0);
        const auto joined = burrow("join again.book again.zip --json");
        QVERIFY2(joined.status == 0, qPrintable(joined.err));
        QCOMPARE(joined.json()["photos_added"], 1);
    }

    void reducedPhotosAreSmall() {
        const Shell burrow;
        makeRoom(burrow);
        QCOMPARE(burrow("export room.book room.burrow --photos reduced").status, 0);
        QCOMPARE(burrow("join small.book room.burrow --json").json()["photos_added"], 1);
        const auto photos = burrow.path("small.book-photos/");
        const auto names = QDir(photos + "reduced").entryList(QDir::Files);
        QCOMPARE(names.size(), 1);
        QCOMPARE(QImage(photos + "reduced/" + names[0]).size(), QSize(1280, 960));
        QCOMPARE(QImage(photos + "thumbnails/" + names[0]).size(), QSize(320, 240));
    }

    void sharedFolder() {
        const Shell burrow;
        makeRoom(burrow);
        QCOMPARE(burrow("export room.book room.burrow").status, 0);
        QCOMPARE(burrow("join second.book room.burrow").status, 0);
        QCOMPARE(burrow("share room.book shared").status, 1);  // it has to be there
        QVERIFY(QDir(burrow.path(".")).mkdir("shared"));
        QCOMPARE(burrow("share room.book shared --json").json()["photos_written"], 1);
        QCOMPARE(burrow("log second.book 118 watered").status, 0);
        const auto second = burrow("share second.book shared --json").json();
        QCOMPARE(second["added"], 0);
        QVERIFY(second["written"] >= 1);
        QCOMPARE(burrow("share room.book shared --json").json()["added"], 1);
        QVERIFY(burrow("share room.book shared").out.contains("Took in 0 files"));
    }

    /// Text from elsewhere can't steer the terminal.
    void strangeNamesAreShownInert() {
        const Shell burrow;
        QCOMPARE(burrow("new room.book --code KR",
                        {"--room", QString::fromUtf8("\x1B[31mKiln \xE2\x80\xAEwoR\xC2\x9B"
                                                     "1m")})
                     .status,
                 0);
        QCOMPARE(burrow("export room.book room.burrow").status, 0);
        const auto said = burrow("peek room.burrow").out;
        QVERIFY(said.contains("Kiln"));
        for (const QChar c : said) {
            QVERIFY(c == '\n' || c.isPrint());
        }
    }
};

QTEST_GUILESS_MAIN(TestBundles)
#include "tst_bundles.moc"
