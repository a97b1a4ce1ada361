// What was acknowledged is there after the process was killed at any moment (kill -9), and nothing half
// done is left. A short pass runs with the tests; BURROW_CRASHES sets how many times it is killed in all.
#include <signal.h>
#include <unistd.h>

#include <QDirIterator>
#include <QImage>
#include <QRandomGenerator>
#include <QtTest>

#include "journal/migration.h"
#include "programs/burrow.h"
#include "programs/old_book.h"
#include "support/long_run.h"

using burrow::test::Shell;

namespace {

constexpr int kinds = 8;
constexpr std::int64_t rows = 20'000;

int crashesOfAKind() {
    return std::max(1, qEnvironmentVariable("BURROW_CRASHES", "24").toInt() / kinds);
}

/// How many entries there are in a book that is sound.
std::int64_t entries(const Shell& burrow, const QString& book = "room.book") {
    const auto check = burrow("check --json " + book);
    if (check.status != 0) qFatal("%s", qPrintable(check.out + check.err));
    return check.json()["entries"];
}

void makeRoom(const Shell& burrow) {
    QCOMPARE(burrow("new room.book --room Kiln --code KR").status, 0);
    burrow.write("a.csv", "code,species\n214,Brachypelma hamorii\n");
    QCOMPARE(burrow("bring room.book --animals a.csv").status, 0);
}

void writeManyEvents(const Shell& burrow) {
    QByteArray events("code,at,event\n");
    for (int i = 0; i < rows; ++i) events += "214,2026-05-01,watered\n";
    burrow.write("e.csv", events);
}

QStringList filesUnder(const QString& folder, const QStringList& patterns = {}) {
    QStringList files;
    QDirIterator all(folder, patterns, QDir::Files, QDirIterator::Subdirectories);
    while (all.hasNext()) files.push_back(all.next());
    return files;
}

/// The book with all that belongs to it.
void removeRoom(const Shell& burrow) {
    for (const char* part : {"room.book", "room.book-wal", "room.book-shm"}) {
        QFile::remove(burrow.path(part));
    }
    for (const char* part : {"room.book-backups", "room.book-photos"}) {
        QDir(burrow.path(part)).removeRecursively();
    }
}

/// Kills a shell and all that it started, after a while.
class Killer {
public:
    Killer() {
        const auto seed = QRandomGenerator::system()->generate();
        qInfo("seed %u, %d crashes", seed, crashesOfAKind());
        dice_.seed(seed);
    }
    /// Runs a line of shell and kills it within so many milliseconds. What it had said by then.
    QByteArray operator()(const Shell& burrow, const QString& line, int within) {
        QProcess process;
        process.setWorkingDirectory(burrow.path("."));
        process.setChildProcessModifier([] { ::setpgid(0, 0); });
        process.start("sh", {"-c", QString(line).replace("burrow ", BURROW_PROGRAM " ")});
        if (!process.waitForStarted()) qFatal("sh does not start");
        QTest::qSleep(static_cast<int>(dice_.bounded(5, within)));
        ::kill(-static_cast<pid_t>(process.processId()), SIGKILL);
        process.waitForFinished();
        return process.readAllStandardOutput();
    }

private:
    QRandomGenerator dice_;
};

/// The files were not written just now, but long ago.
void age(const QString& folder) {
    for (const auto& path : filesUnder(folder)) {
        QFile file(path);
        QVERIFY(file.open(QIODevice::ReadWrite));
        QVERIFY(file.setFileTime(QDateTime::currentDateTime().addDays(-2),
                                 QFileDevice::FileModificationTime));
    }
}

}  // namespace

class TestCrash : public QObject {
    Q_OBJECT

private slots:
    void logging() {
        const Shell burrow;
        makeRoom(burrow);
        Killer killed;
        auto before = entries(burrow);
        for (int crash = 0; crash < crashesOfAKind(); ++crash) {
            const auto said =
                killed(burrow, "while :; do burrow log room.book 214 note text=x; done", 400)
                    .count("Logged");
            const auto more = entries(burrow) - before;
            // One more may have been written than was acknowledged: killed between commit and word.
            QVERIFY2(more == said || more == said + 1,
                     qPrintable(QString("%1 of %2").arg(more).arg(said)));
            before += more;
        }
    }

    void bringingIn() {
        const Shell burrow;
        makeRoom(burrow);
        writeManyEvents(burrow);
        Killer killed;
        auto before = entries(burrow);
        for (int crash = 0; crash < crashesOfAKind(); ++crash) {
            killed(burrow, "exec burrow bring room.book --events e.csv", 250);
            const auto more = entries(burrow) - before;
            QVERIFY2(more == 0 || more == rows, qPrintable(QString::number(more)));
            before += more;
        }
    }

    void backingUp() {
        const Shell burrow;
        makeRoom(burrow);
        writeManyEvents(burrow);
        QCOMPARE(burrow("bring room.book --events e.csv").status, 0);
        Killer killed;
        const auto before = entries(burrow);
        for (int crash = 0; crash < crashesOfAKind(); ++crash) {
            killed(burrow, "while :; do burrow backup room.book; done", 400);
            QCOMPARE(entries(burrow), before);
            // What has a name is whole, and so is the next one.
            QCOMPARE(burrow("backup room.book").status, 0);
            for (const auto& backup : burrow("backups room.book --json").json()) {
                QCOMPARE(backup["readable"], true);
                const auto file = QString::fromStdString(backup["file"]);
                if (backup["reason"] == "asked") QCOMPARE(entries(burrow, file), before);
            }
            QCOMPARE(filesUnder(burrow.path("room.book-backups"), {"*asked*.part*"}).size(), 0);
        }
    }

    void goingBack() {
        const Shell burrow;
        makeRoom(burrow);
        writeManyEvents(burrow);
        const auto older = backupNow(burrow);
        QCOMPARE(burrow("bring room.book --events e.csv").status, 0);
        const auto newer = backupNow(burrow);
        const auto few = entries(burrow, older);
        const auto many = entries(burrow, newer);
        QCOMPARE(many, few + rows);
        Killer killed;
        for (int crash = 0; crash < crashesOfAKind(); ++crash) {
            killed(burrow,
                   QString("while :; do burrow restore room.book %1 --yes; "
                           "burrow restore room.book %2 --yes; done")
                       .arg(older, newer),
                   900);
            const auto now = entries(burrow);
            QVERIFY2(now == few || now == many, qPrintable(QString::number(now)));
            QCOMPARE(entries(burrow, older), few);
            QCOMPARE(entries(burrow, newer), many);
        }
        QCOMPARE(burrow("restore room.book --yes", {newer}).status, 0);
        QCOMPARE(entries(burrow), many);
    }

    void migrating() {
        if (burrow::newestVersion() == 1) QSKIP("there is no earlier version yet");
        const Shell burrow;
        Killer killed;
        for (int crash = 0; crash < crashesOfAKind(); ++crash) {
            burrow::test::unpackOldBook(burrow.path("room.book"), 1, rows);
            const auto before = burrow::test::entriesIn(burrow.path("room.book"));
            killed(burrow, "exec burrow due room.book", 900);
            QCOMPARE(entries(burrow), before);
            for (const auto& backup : burrow("backups room.book --json").json()) {
                QCOMPARE(backup["readable"], true);
                QCOMPARE(backup["entries"], before);
            }
            removeRoom(burrow);
        }
    }

    void photographing() {
        const Shell burrow;
        QDir().mkpath(burrow.path("camera"));
        for (int n = 0; n < 20; ++n) {
            QImage picture(64, 48, QImage::Format_RGB32);
            picture.fill(QColor::fromHsv(n * 15, 200, 200));
            QVERIFY(picture.save(burrow.path(QString("camera/%1.jpg").arg(n))));
        }
        const auto folder = burrow.path("room.book-photos");
        Killer killed;
        std::int64_t before = 0;
        for (int crash = 0; crash < crashesOfAKind(); ++crash) {
            // A new room each time, so that each picture is a new one.
            removeRoom(burrow);
            makeRoom(burrow);
            const auto said = killed(burrow,
                                     "for p in camera/*.jpg; do "
                                     "burrow log room.book 214 photo file=$p role=moult; done",
                                     600)
                                  .count("Logged");
            age(folder);
            const auto check = burrow("check room.book --repair --json");
            QCOMPARE(check.status, 0);
            const auto photos = check.json()["photos"];
            const auto whole = photos["whole"].get<std::int64_t>();
            QVERIFY2(whole == said || whole == said + 1,
                     qPrintable(QString("%1 of %2").arg(whole).arg(said)));
            QCOMPARE(photos["elsewhere"], 0);
            QCOMPARE(photos["damaged"], 0);
            QCOMPARE(filesUnder(folder).size(), whole * 3);
            before += whole;
        }
        qInfo("%lld photos", static_cast<long long>(before));
    }

    void exporting() {
        const Shell burrow;
        makeRoom(burrow);
        writeManyEvents(burrow);
        QCOMPARE(burrow("bring room.book --events e.csv").status, 0);
        const auto before = entries(burrow);
        Killer killed;
        for (int crash = 0; crash < crashesOfAKind(); ++crash) {
            killed(burrow, "while :; do burrow export room.book out.burrow; done", 700);
            QCOMPARE(entries(burrow), before);
            // A file that has its name is a whole one, and so is the next.
            if (QFile::exists(burrow.path("out.burrow"))) {
                QCOMPARE(burrow("peek out.burrow").status, 0);
            }
            QCOMPARE(burrow("export room.book out.burrow").status, 0);
            QCOMPARE(burrow("peek out.burrow").status, 0);
            QCOMPARE(filesUnder(burrow.path("."), {"*.part"}).size(), 0);
        }
    }

    void merging() {
        const Shell burrow;
        makeRoom(burrow);
        QCOMPARE(burrow("export room.book start.burrow").status, 0);
        QCOMPARE(burrow("join other.book start.burrow").status, 0);
        writeManyEvents(burrow);
        QCOMPARE(burrow("bring other.book --events e.csv").status, 0);
        QImage picture(64, 48, QImage::Format_RGB32);
        picture.fill(Qt::darkGreen);
        QVERIFY(picture.save(burrow.path("p.jpg")));
        QCOMPARE(burrow("log other.book 214 photo file=p.jpg role=moult").status, 0);
        QCOMPARE(burrow("export other.book out.burrow --photos full").status, 0);
        const auto few = entries(burrow);
        const auto many = entries(burrow, "other.book");
        const auto folder = burrow.path("room.book-photos");
        Killer killed;
        for (int crash = 0; crash < crashesOfAKind(); ++crash) {
            killed(burrow, "exec burrow merge room.book out.burrow", 1200);
            age(folder);
            const auto check = burrow("check room.book --repair --json");
            QVERIFY2(check.status == 0, qPrintable(check.out + check.err));
            const auto now = check.json()["entries"].get<std::int64_t>();
            QVERIFY2(now == few || now == many, qPrintable(QString::number(now)));
            // The photo is there with the entry that names it, and only then.
            QCOMPARE(check.json()["photos"]["whole"], now == many ? 1 : 0);
            QCOMPARE(check.json()["photos"]["elsewhere"], 0);
            QCOMPARE(filesUnder(folder + "/pictures").size(), now == many ? 1 : 0);
            if (now == many) QCOMPARE(burrow("take-back room.book").status, 0);
            QCOMPARE(entries(burrow), few);
        }
        QCOMPARE(burrow("merge room.book out.burrow").status, 0);
        QCOMPARE(entries(burrow), many);
    }

private:
    static QString backupNow(const Shell& burrow) {
        const auto made = burrow("backup room.book --json").json()["made"];
        const auto kept = burrow.path(QFileInfo(QString::fromStdString(made["file"])).fileName());
        QFile::copy(burrow.path(QString::fromStdString(made["file"])), kept);
        return kept;
    }
};

int main(int argc, char** argv) {
    burrow::test::allowLongRun("BURROW_CRASHES");
    QCoreApplication app(argc, argv);
    TestCrash test;
    return QTest::qExec(&test, argc, argv);
}
#include "tst_crash.moc"
