// What was acknowledged is there after the process was killed at any moment (kill -9). A short pass
// runs with the tests; BURROW_CRASHES sets how many times it is killed.
#include <signal.h>
#include <unistd.h>

#include <QRandomGenerator>
#include <QtTest>

#include "programs/burrow.h"

using burrow::test::Shell;

class TestCrash : public QObject {
    Q_OBJECT

private slots:
    void whatWasAcknowledgedIsThere() {
        const Shell burrow;
        QCOMPARE(burrow("new room.book --room Kiln --code KR").status, 0);
        burrow.write("a.csv", "code,species\n214,Brachypelma hamorii\n");
        QCOMPARE(burrow("bring room.book --animals a.csv").status, 0);
        constexpr std::int64_t rows = 20'000;
        QByteArray events("code,at,event\n");
        for (int i = 0; i < rows; ++i) events += "214,2026-05-01,watered\n";
        burrow.write("e.csv", events);

        const int crashes = qEnvironmentVariable("BURROW_CRASHES", "12").toInt();
        const auto seed = QRandomGenerator::system()->generate();
        qInfo("seed %u, %d crashes", seed, crashes);
        QRandomGenerator dice(seed);
        auto before = entries(burrow);
        for (int crash = 0; crash < crashes; ++crash) {
            // Every other time it is killed while a large file is brought in, which must leave nothing.
            const bool bulk = crash % 2 == 1;
            QProcess process;
            process.setWorkingDirectory(burrow.path("."));
            process.setChildProcessModifier([] { ::setpgid(0, 0); });
            process.start("sh", {"-c", bulk ? bringLoop() : logLoop()});
            QVERIFY(process.waitForStarted());
            QTest::qSleep(static_cast<int>(dice.bounded(5, bulk ? 150 : 400)));
            ::kill(-static_cast<pid_t>(process.processId()),
                   SIGKILL);  // the loop and what it started
            process.waitForFinished();
            const auto said = process.readAllStandardOutput().count("Logged");
            const auto more = entries(burrow) - before;
            // One more may have been written than was acknowledged: killed between commit and word.
            // Of a file that is brought in there is all or nothing.
            const bool isFine = bulk ? more == 0 || more == rows : more == said || more == said + 1;
            QVERIFY2(isFine, qPrintable(QString("%1 of %2").arg(more).arg(said)));
            before += more;
        }
    }

private:
    /// How many entries there are in a book that is sound.
    static std::int64_t entries(const Shell& burrow) {
        const auto check = burrow("check room.book --json");
        if (check.status != 0) qFatal("%s", qPrintable(check.out + check.err));
        return check.json()["entries"];
    }
    static QString logLoop() {
        return QStringLiteral("while :; do %1 log room.book 214 note text=x; done")
            .arg(QStringLiteral(BURROW_PROGRAM));
    }
    static QString bringLoop() {
        return QStringLiteral("exec %1 bring room.book --events e.csv")
            .arg(QStringLiteral(BURROW_PROGRAM));
    }
};

QTEST_GUILESS_MAIN(TestCrash)
#include "tst_crash.moc"
