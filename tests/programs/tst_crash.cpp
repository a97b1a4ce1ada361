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
        QByteArray events("code,at,event\n");
        for (int i = 0; i < 20'000; ++i) events += "214,2026-05-01,watered\n";
        burrow.write("e.csv", events);

        const int crashes = qEnvironmentVariable("BURROW_CRASHES", "12").toInt();
        const auto seed = QRandomGenerator::system()->generate();
        qInfo("seed %u, %d crashes", seed, crashes);
        QRandomGenerator dice(seed);
        std::size_t acknowledged = 0;
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
            acknowledged +=
                static_cast<std::size_t>(process.readAllStandardOutput().count("Logged"));

            const auto check = burrow("check room.book --json");
            QVERIFY2(check.status == 0, qPrintable(check.out + check.err));
            const auto shown = burrow("show room.book 214 --json").json()["history"].size();
            // One more may have been written than was acknowledged: killed between commit and word.
            QVERIFY2(shown >= acknowledged && shown <= acknowledged + 1,
                     qPrintable(QString("%1 of %2").arg(shown).arg(acknowledged)));
            acknowledged = shown;
        }
    }

private:
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
