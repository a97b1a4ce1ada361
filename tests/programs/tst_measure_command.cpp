// The mat printed, taken for a photo of itself, and measured, as a script does it. Needs poppler-utils.
#include <QtTest>

#include "burrow.h"

using burrow::test::Shell;

class TestMeasureCommand : public QObject {
    Q_OBJECT

    const Shell burrow{};
    static constexpr double dotsPerInch = 300;
    static constexpr double perMm = dotsPerInch / 25.4;

    static QString point(double x, double y) {
        return QString("%1,%2").arg(x * perMm, 0, 'f', 2).arg(y * perMm, 0, 'f', 2);
    }

private slots:
    void initTestCase() {
        const auto printed = burrow("mat --out mat.pdf --paper a5 --name 7Q2M --json");
        QCOMPARE(printed.status, 0);
        QCOMPARE(printed.json()["mat"], "7Q2M");
        QProcess poppler;
        poppler.start("pdftoppm", {"-r", QString::number(dotsPerInch), "-jpeg", "-singlefile",
                                   burrow.path("mat.pdf"), burrow.path("mat")});
        QVERIFY(poppler.waitForFinished() && poppler.exitCode() == 0);
    }
    void aLength() {
        const auto run = burrow(QString("measure mat.jpg --from %1 --to %2 --json")
                                    .arg(point(24, 168), point(124, 168)));
        QVERIFY2(run.status == 0, qPrintable(run.err));
        const auto said = run.json();
        QVERIFY(std::abs(said["mm"].get<double>() - 100) < 0.05);
        QVERIFY(said["interval95"][0] < 100 && said["interval95"][1] > 100);
        QVERIFY(said["residual_px"].get<double>() < 0.6);
        QCOMPARE(said["scale"], "mat");
        QVERIFY(said["code"].is_null());
        // A copy at 97 percent, whose bar was measured.
        const auto copy = burrow(QString("measure mat.jpg --bar-mm 97 --from %1 --to %2 --json")
                                     .arg(point(24, 168), point(124, 168)));
        QVERIFY(std::abs(copy.json()["mm"].get<double>() - 97) < 0.05);
        const auto exact = burrow(QString("measure mat.jpg --point-px 0 --from %1 --to %2 --json")
                                      .arg(point(24, 168), point(124, 168)))
                               .json();
        QVERIFY(exact["interval95"][0] > said["interval95"][0]);
    }
    void aSentenceForPeople() {
        const auto run = burrow(
            QString("measure mat.jpg --from %1 --to %2").arg(point(24, 168), point(124, 168)));
        QVERIFY2(run.out.contains("95 %") && run.out.contains("bar"), qPrintable(run.out));
    }
    void flattened() {
        const auto run = burrow("flatten mat.jpg --out flat.png --px-per-mm 5 --json");
        QVERIFY2(run.status == 0, qPrintable(run.err));
        QCOMPARE(run.json()["width"], 740);
        QCOMPARE(run.json()["height"], 1050);
        QVERIFY(burrow.read("flat.png").startsWith("\x89PNG"));
        // The flat picture measures as the photo does.
        const auto again = burrow("measure flat.png --from 120,840 --to 620,840 --json");
        QVERIFY(std::abs(again.json()["mm"].get<double>() - 100) < 0.1);
    }
    void refused_data() {
        QTest::addColumn<QString>("words");
        QTest::addColumn<QString>("said");
        QTest::newRow("no point") << "measure mat.jpg --from 12 --to 3,4"
                                  << "is no point";
        QTest::newRow("outside") << "measure mat.jpg --from 1,2 --to 3,99999"
                                 << "outside";
        QTest::newRow("no photo") << "measure none.jpg --from 1,2 --to 3,4"
                                  << "none.jpg";
        QTest::newRow("no picture") << "measure mat.pdf --from 1,2 --to 3,4"
                                    << "no picture";
        QTest::newRow("cut") << "measure cut.jpg --from 1,2 --to 3,4"
                             << "stops halfway";
        QTest::newRow("cut, flattened") << "flatten cut.jpg --out x.png"
                                        << "stops halfway";
        QTest::newRow("no ending") << "flatten mat.jpg --out x.bmp"
                                   << ".jpg or .png";
        QTest::newRow("no mat's name") << "mat --out x.pdf --name OOPS"
                                       << "no name of a mat";
    }
    void refused() {
        QFETCH(QString, words);
        QFETCH(QString, said);
        const auto whole = burrow.read("mat.jpg");
        burrow.write("cut.jpg", whole.left(whole.size() / 2));
        const auto run = burrow(words);
        QCOMPARE(run.status, 1);
        QVERIFY2(run.err.contains(said), qPrintable(run.err));
        QVERIFY(run.out.isEmpty());
        QCOMPARE(burrow.read("mat.jpg"), whole);
        QVERIFY(!QFile::exists(burrow.path("x.png")) && !QFile::exists(burrow.path("x.pdf")));
    }
};

QTEST_APPLESS_MAIN(TestMeasureCommand)
#include "tst_measure_command.moc"
