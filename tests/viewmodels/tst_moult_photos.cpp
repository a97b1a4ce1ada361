// Photos of a moult: from the camera and from files, good ones and others, and on a full device.
#include <filesystem>

#include "viewmodels/moult_bench.h"

using namespace burrow;
using namespace burrow::test;

namespace {

/// The same file with 12,000 by 9,000 in its frame header (ISO/IEC 10918-1, B.2.2).
QByteArray withHugeSize(QByteArray jpeg) {
    const auto header = jpeg.indexOf(QByteArray("\xFF\xC0", 2));
    jpeg.replace(header + 5, 4, QByteArray("\x23\x28\x2E\xE0", 4));
    return jpeg;
}

}  // namespace

class TestMoultPhotos : public QObject {
    Q_OBJECT

private slots:
    void comeFromTheCameraAndFromFiles() {
        MoultBench bench;
        bench.photograph();
        bench.addFile(bench.file("shed.jpg", moultPhoto({640, 480}, 140)));
        QCOMPARE(bench.model.photos().size(), 2);
        QVERIFY(bench.model.photoTrouble().isEmpty());
        const auto shown = bench.model.photos().at(1).toMap().value("picture").toString();
        const auto thumbnail =
            QImage::fromData(QByteArray::fromBase64(shown.section(',', 1).toLatin1()), "JPEG");
        QCOMPARE(thumbnail.size(), QSize(320, 240));
        bench.model.removePhoto(0);
        QCOMPARE(bench.model.photos().size(), 1);
        QCOMPARE(bench.model.photos().at(0).toMap().value("picture").toString(), shown);
        bench.model.removePhoto(7);
        QCOMPARE(bench.model.photos().size(), 1);
        QVERIFY(bench.facts(FactKind::photo).empty());  // nothing is in the book before it is saved
    }

    void unfitFilesGetWordsAndNothingIsLost_data() {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QString>("words");
        const auto photo = moultPhoto({800, 600});
        QTest::newRow("no picture") << QByteArray("Kiln Row, feeding list") << "no picture";
        QTest::newRow("empty") << QByteArray() << "no picture";
        QTest::newRow("truncated") << photo.left(photo.size() / 2) << "stops halfway";
        QTest::newRow("only a start") << photo.left(3) << "stops halfway";
        QTest::newRow("HEIC") << QByteArray(
                                     "\0\0\0\x14"
                                     "ftypheic\0\0\0\0mif1",
                                     20)
                              << "in HEIC";
        QTest::newRow("100 megapixels") << withHugeSize(photo) << "108 megapixels; up to 64";
    }
    void unfitFilesGetWordsAndNothingIsLost() {
        QFETCH(QByteArray, bytes);
        QFETCH(QString, words);
        MoultBench bench;
        bench.photograph();
        bench.model.setSpan("152");
        const QUrl chosen = bench.file("odd.jpg", bytes);
        bench.addFile(chosen);
        QVERIFY2(bench.model.photoTrouble().contains(words),
                 qPrintable(bench.model.photoTrouble()));
        QVERIFY(bench.model.photoTrouble().contains("not taken in"));
        QCOMPARE(bench.model.photos().size(), 1);
        QCOMPARE(bench.model.span(), QString("152"));
        bench.save();
        QVERIFY(bench.model.isSaved());
        QCOMPARE(bench.facts(FactKind::photo).size(), 1U);
        // The file that was chosen is where it was, as it was.
        QFile file(chosen.toLocalFile());
        QVERIFY(file.open(QIODevice::ReadOnly));
        QCOMPARE(file.readAll(), bytes);
    }

    void placesThatHoldNoFileGetWords_data() {
        QTest::addColumn<QUrl>("url");
        QTest::addColumn<QString>("words");
        QTest::newRow("gone") << QUrl("file:///nowhere/shed.jpg") << "no file shed.jpg";
        QTest::newRow("elsewhere")
            << QUrl("https://example.org/shed.jpg") << "shed.jpg is not on this device";
    }
    void placesThatHoldNoFileGetWords() {
        QFETCH(QUrl, url);
        QFETCH(QString, words);
        MoultBench bench;
        bench.addFile(url);
        QVERIFY2(bench.model.photoTrouble().contains(words),
                 qPrintable(bench.model.photoTrouble()));
        // What is good among several is taken up all the same, and each trouble is said once.
        bench.model.addFiles({url, bench.file("a.jpg", moultPhoto({400, 300})), url});
        QTRY_VERIFY(!bench.model.isDeveloping());
        QCOMPARE(bench.model.photos().size(), 1);
        QCOMPARE(bench.model.photoTrouble().count('\n'), 0);
        // The next try starts with a clean slate.
        bench.addFile(bench.file("b.jpg", moultPhoto({400, 300}, 120)));
        QVERIFY(bench.model.photoTrouble().isEmpty());
    }

    void aCameraWithoutPictureSaysSo() {
        MoultBench bench;
        bench.photograph();
        bench.model.takePhoto();
        QTRY_VERIFY(!bench.model.photoTrouble().isEmpty());
        QVERIFY(bench.model.photoTrouble().contains("no picture to keep"));
        QCOMPARE(bench.model.photos().size(), 1);
    }

    void aMissingCameraPointsToFiles() {
        MoultBench bench;
        bench.scanner.setOutcome(Scanner::State::NoCamera);
        bench.scanner.start();
        QVERIFY(bench.model.cameraTrouble().contains("Choose a photo that is on the device"));
        bench.scanner.setOutcome(Scanner::State::Running);
        QVERIFY(bench.model.cameraTrouble().isEmpty());
    }

    void savingWaitsForThePhotoThatIsBeingTaken() {
        MoultBench bench;
        bench.photographer.prepare(moultPhoto({400, 300}));
        bench.model.takePhoto();
        QVERIFY(bench.model.isDeveloping());
        bench.model.save();
        QVERIFY(!bench.model.isBusy());
        QTRY_COMPARE(bench.model.photos().size(), 1);
        bench.save();
        QCOMPARE(bench.facts(FactKind::photo).size(), 1U);
    }

    void photosThatComeWhileItIsSavedAreNotTakenUp() {
        MoultBench bench;
        bench.photograph();
        const auto late = bench.file("late.jpg", moultPhoto({400, 300}, 150));
        bench.model.save();
        QVERIFY(bench.model.isBusy());
        bench.model.addFiles({late});
        bench.model.takePhoto();
        QCOMPARE(bench.photographer.asked(), 1);
        QTRY_VERIFY(bench.model.isSaved());
        QVERIFY(bench.model.photos().isEmpty());
        bench.model.addFiles({late});
        QVERIFY(!bench.model.isDeveloping());
    }

    void sixAreTheMost() {
        MoultBench bench;
        QList<QUrl> files;
        for (int i = 0; i < 8; ++i) {
            files.append(bench.file(qPrintable(QString("%1.jpg").arg(i)),
                                    moultPhoto({200, 150}, 60 + 10 * i)));
        }
        bench.model.addFiles(files);
        QTRY_VERIFY(!bench.model.isDeveloping());
        QCOMPARE(bench.model.photos().size(), 6);
        QVERIFY(!bench.model.canTakeMore());
        QVERIFY(bench.model.photoTrouble().contains("up to 6 photos"));
        bench.model.takePhoto();
        QCOMPARE(bench.photographer.asked(), 0);
        bench.model.removePhoto(0);
        QVERIFY(bench.model.canTakeMore());
    }

    void aFullDeviceLosesNoPhoto() {
        MoultBench bench;
        bench.photograph(2);
        bench.files.setWeather(FakeFiles::Weather::noRoom);
        bench.save();
        QVERIFY(bench.model.isSaved());
        QCOMPARE(bench.facts(FactKind::moulted).size(), 1U);
        QVERIFY(bench.facts(FactKind::photo).empty());
        QVERIFY2(bench.model.lostPhotos().startsWith("No room for 2 photos. The moult is saved"),
                 qPrintable(bench.model.lostPhotos()));
        QVERIFY(bench.model.toSex().isEmpty());
        QCOMPARE(bench.model.photos().size(), 2);

        bench.model.keepPhotosAgain();
        QTRY_VERIFY(!bench.model.isBusy());
        QVERIFY(bench.model.lostPhotos().startsWith("No room for 2 photos"));

        bench.files.setWeather(FakeFiles::Weather::fair);
        bench.model.keepPhotosAgain();
        QTRY_VERIFY(!bench.model.isBusy());
        QVERIFY(bench.model.lostPhotos().isEmpty());
        QVERIFY(bench.model.photos().isEmpty());
        const auto moult = bench.facts(FactKind::moulted).at(0);
        const auto photos = bench.facts(FactKind::photo);
        QCOMPARE(photos.size(), 2U);
        for (const auto& photo : photos) QCOMPARE(photo.body.about, moult.id);
        QCOMPARE(bench.model.toSex(), QString::fromStdString(moult.id.text()));
    }

    void aPlaceThatMayNotBeWrittenSaysSo() {
        MoultBench bench;
        bench.photograph();
        bench.files.setWeather(FakeFiles::Weather::writeProtected);
        bench.save();
        QVERIFY(bench.model.isSaved());
        QVERIFY(bench.model.lostPhotos().contains("may not write"));
        QCOMPARE(bench.model.photos().size(), 1);
    }

    void whatAnEntryNamesIsOnTheDevice() {
        MoultBench bench;
        const auto original = moultPhoto({900, 600}, 130);
        bench.addFile(bench.file("shed.jpg", original));
        bench.save();
        const auto photo = bench.facts(FactKind::photo).at(0);
        QCOMPARE(photo.body.role, PhotoRole::moult);
        DeviceFiles files;
        pictures::Store store(pictures::Store::folderFor(bench.at.path), files);
        QVERIFY(store.isIntact(*photo.body.picture));
        QVERIFY(std::filesystem::exists(store.thumbnailPath(*photo.body.picture)));
        const auto kept = files.read(store.originalPath(*photo.body.original), 10'000'000).value();
        QVERIFY(QByteArray(reinterpret_cast<const char*>(kept.data()),
                           static_cast<qsizetype>(kept.size())) == original);
    }
};

QTEST_MAIN(TestMoultPhotos)
#include "tst_moult_photos.moc"
