// The mat printed, taken for a photo of itself, and measured, as a script does it. Needs poppler-utils.
#include <QtTest>

#include "burrow.h"
#include "journal/book.h"
#include "room/mats.h"
#include "support/mat_jpeg.h"

using namespace burrow;
using burrow::test::Shell;

class TestMeasureCommand : public QObject {
    Q_OBJECT

    const Shell burrow{};
    static constexpr double dotsPerInch = 300;
    static constexpr double perMm = dotsPerInch / 25.4;

    static QString point(double x, double y) {
        return QString("%1,%2").arg(x * perMm, 0, 'f', 2).arg(y * perMm, 0, 'f', 2);
    }

    /// The photo of a tag alone, and where a place of its sheet is in it.
    static test::Shot tagShot() {
        auto shot = test::smallShot();
        shot.fill = 0.9;
        return shot;
    }
    static measure::Projection tagCamera() {
        return test::cameraOf(tagShot(), {{25}, {18}, {50}, {44}});
    }
    static QString photoPoint(Millimetres x, Millimetres y) {
        const auto at = measure::photoOf(tagCamera(), {x, y});
        return QString("%1,%2").arg(at.x, 0, 'f', 2).arg(at.y, 0, 'f', 2);
    }
    /// As the app writes what a bar measured.
    void keepBar(const QString& name, const std::string& text) const {
        const SystemClock clock;
        SeededRandom random(3);
        auto book = Book::open(burrow.path(name).toStdString(), storage::Access::readWrite,
                               {clock, random, Zone::utc()})
                        .value();
        const FieldValues fields{{settingOf("7Q2M"), text}};
        book.record(SetDraft{ThingType::book, book.id().uuid, fields}).value();
    }

private slots:
    void initTestCase() {
        burrow.write("tag.jpg",
                     test::bytesFrom(test::developed(test::tagOnly(), tagShot(), tagCamera())));
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
        QCOMPARE(copy.json()["bar_mm"], 97.0);
        // Nobody said anything of the printer, and the answer says so.
        QVERIFY(said["bar_mm"].is_null());
        QCOMPARE(said["printer_sd"], 0.0);
        const auto exact = burrow(QString("measure mat.jpg --point-px 0 --from %1 --to %2 --json")
                                      .arg(point(24, 168), point(124, 168)))
                               .json();
        QVERIFY(exact["interval95"][0] > said["interval95"][0]);
    }
    /// A book keeps what the bars of its mats measured; without it the printer may be off.
    void theBarOfTheBook() {
        QCOMPARE(burrow("new kiln.book --code KR --room", {"Kiln Row"}).status, 0);
        const auto words = QString("measure mat.jpg --book kiln.book --from %1 --to %2")
                               .arg(point(24, 168), point(124, 168));
        const auto unmeasured = burrow(words + " --json");
        QVERIFY2(unmeasured.status == 0, qPrintable(unmeasured.err));
        QVERIFY(unmeasured.json()["bar_mm"].is_null());
        QCOMPARE(unmeasured.json()["printer_sd"], 0.02);
        const auto interval = unmeasured.json()["interval95"];
        QVERIFY(interval[1].get<double>() - interval[0].get<double>() > 2 * 1.9 * 2);
        QVERIFY(burrow(words).out.contains("nobody has measured"));
        keepBar("kiln.book", "a5 98 mm");
        const auto measured = burrow(words + " --json").json();
        QCOMPARE(measured["bar_mm"], 98.0);
        QVERIFY(std::abs(measured["mm"].get<double>() - 98) < 0.05);
        QCOMPARE(burrow(words + " --bar-mm 97").status, 2);
    }
    /// A mat's bar says nothing of a tag, which another printer may have made.
    void noBarForATag() {
        const auto words = QString("measure tag.jpg --from %1 --to %2")
                               .arg(photoPoint({42}, {55}), photoPoint({57}, {55}));
        const auto plain = burrow(words + " --json");
        QVERIFY2(plain.status == 0, qPrintable(plain.err));
        QCOMPARE(plain.json()["scale"], "tag");
        QVERIFY(plain.json()["bar_mm"].is_null());
        const auto run = burrow(words + " --bar-mm 97");
        QCOMPARE(run.status, 1);
        QVERIFY2(run.err.contains("bar of a mat says nothing"), qPrintable(run.err));
        QVERIFY(run.out.isEmpty());
        const auto flat = burrow("flatten tag.jpg --bar-mm 97 --out tagflat.png");
        QCOMPARE(flat.status, 1);
        QVERIFY(!QFile::exists(burrow.path("tagflat.png")));
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
        QVERIFY(run.json()["bar_mm"].is_null());
        // A copy at 97 percent has as many pixels to a real millimetre.
        const auto copy =
            burrow("flatten mat.jpg --bar-mm 97 --out copy.png --px-per-mm 10 --json");
        QCOMPARE(copy.json()["width"], 1436);
        QCOMPARE(copy.json()["bar_mm"], 97.0);
    }
    /// 24 megapixels of an A4 sheet made flat, the largest there is: less than 250 MB at any moment.
    void littleMemory() {
#if defined(__SANITIZE_ADDRESS__)
        QSKIP("A sanitizer takes memory of its own.");
#endif
        QCOMPARE(burrow("mat --out a4.pdf --paper a4 --name 7Q2M").status, 0);
        QProcess poppler;
        poppler.start("pdftoppm", {"-r", "500", "-jpeg", "-singlefile", burrow.path("a4.pdf"),
                                   burrow.path("a4")});
        QVERIFY(poppler.waitForFinished(60'000) && poppler.exitCode() == 0);
        // The most that a child held, asked by a parent that is small itself.
        QProcess python;
        python.start("python3", {"-c",
                                 "import resource, subprocess, sys\n"
                                 "status = subprocess.call(sys.argv[1:])\n"
                                 "most = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss\n"
                                 "print(most if status == 0 else 0)",
                                 BURROW_PROGRAM, "flatten", burrow.path("a4.jpg"), "--out",
                                 burrow.path("a4.png"), "--px-per-mm", "20"});
        QVERIFY(python.waitForFinished(120'000) && python.exitCode() == 0);
        const auto said = python.readAllStandardOutput().trimmed().split('\n');
        const auto kilobytes = said.last().toLong();
        qInfo("%ld kB", kilobytes);
        QVERIFY2(kilobytes > 100'000 && kilobytes < 250'000, said.last().constData());
    }
    /// What is advised is taken.
    void aScaleTooLarge() {
        const auto run = burrow("flatten mat.jpg --out large.jpg --px-per-mm 100");
        QCOMPARE(run.status, 1);
        // 148 by 210 mm at 47 to a millimetre, beside a photo of 4.3 megapixels; 48 is too many.
        const auto most = QRegularExpression("from 1 to (\\d+) pixels").match(run.err).captured(1);
        QVERIFY2(most == "47", qPrintable(run.err));
    }
    /// Whatever EXIF says of the way up, points are those of the stored pixels.
    void exifLies() {
        const auto whole = burrow.read("mat.jpg");
        QByteArray exif(
            "\xFF\xE1\0\x22"
            "Exif\0\0MM\0*\0\0\0\x08\0\x01",
            20);
        exif += QByteArray("\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0", 16);
        burrow.write("lying.jpg", whole.left(2) + exif + whole.mid(2));
        const auto words =
            QString("measure %3 --from %1 --to %2 --json").arg(point(24, 168), point(124, 168));
        const auto plain = burrow(words.arg("mat.jpg"));
        const auto lying = burrow(words.arg("lying.jpg"));
        QVERIFY2(lying.status == 0, qPrintable(lying.err));
        QCOMPARE(lying.json()["mm"], plain.json()["mm"]);
        QCOMPARE(lying.json()["interval95"], plain.json()["interval95"]);
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
        QTest::newRow("HEIC") << "measure photo.heic --from 1,2 --to 3,4"
                              << "in HEIC";
        QTest::newRow("HEIC, flattened") << "flatten photo.heic --out x.png"
                                         << "untouched where it was";
        QTest::newRow("300 megapixels") << "measure huge.jpg --from 1,2 --to 3,4"
                                        << "307 megapixels; up to 64";
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
        burrow.write("photo.heic", QByteArray("\0\0\0\x18"
                                              "ftypxyz1\0\0\0\0"
                                              "isomheis",
                                              24));
        auto huge = whole;
        const auto header = huge.indexOf(QByteArray("\xFF\xC0", 2));
        QVERIFY(header > 0);
        huge.replace(header + 5, 4, QByteArray("\x40\x00\x49\x3E", 4));
        burrow.write("huge.jpg", huge);
        const auto run = burrow(words);
        QCOMPARE(run.status, 1);
        QVERIFY2(run.err.contains(said), qPrintable(run.err));
        QVERIFY(run.out.isEmpty());
        QCOMPARE(burrow.read("mat.jpg"), whole);
        QCOMPARE(burrow.read("huge.jpg"), huge);
        QVERIFY(!QFile::exists(burrow.path("x.png")) && !QFile::exists(burrow.path("x.pdf")));
    }
};

QTEST_APPLESS_MAIN(TestMeasureCommand)
#include "tst_measure_command.moc"
