// The camera where there is none, the choice of its format, and photos. With a camera the scanner is
// tried by hand.
#include <QBuffer>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QtTest>
#include <cstring>

#include "camera/camera_access.h"
#include "camera/camera_format.h"
#include "camera/camera_photographer.h"
#include "camera/camera_scanner.h"
#include "camera/frame_photographer.h"
#include "push_scanner.h"

using namespace burrow;
using State = Scanner::State;

namespace {

QImage twoHalves() {
    QImage picture(320, 200, QImage::Format_Grayscale8);
    picture.fill(220);
    for (int y = 0; y < 200; ++y) std::fill_n(picture.scanLine(y), 160, uchar{30});
    return picture;
}

}  // namespace

class TestCamera : public QObject {
    Q_OBJECT

private slots:
    void withoutOneItSaysSo() {
        if (!QMediaDevices::videoInputs().isEmpty()) QSKIP("This machine has a camera.");
        CameraScanner scanner;
        QSignalSpy states(&scanner, &Scanner::stateChanged);
        for (int i = 0; i < 3; ++i) {
            scanner.start();
            QCOMPARE(scanner.state(), State::NoCamera);
            QCOMPARE(scanner.trouble(), QString("camera.none"));
        }
        QVERIFY(!scanner.torchAvailable());
        scanner.setTorchOn(true);
        QVERIFY(!scanner.torchOn());
        QVERIFY(!scanner.latestFrame().isValid());
        scanner.stop();
        QCOMPARE(scanner.state(), State::Idle);
        QCOMPARE(states.size(), 7);
    }

    void withoutOneThereIsNoPhoto() {
        CameraScanner scanner;
        CameraPhotographer photographer(scanner);
        QSignalSpy refused(&photographer, &Photographer::refused);
        for (int i = 1; i <= 2; ++i) {
            photographer.take();
            QVERIFY(photographer.busy());
            QTRY_COMPARE(refused.size(), i);
            QCOMPARE(refused.last().at(0).toString(), QString("camera.noPicture"));
            QVERIFY(!photographer.busy());
        }
    }

    // Device files stand in for /dev; whether they open is for the system to say.
    void noCamerasAreNotBarred() {
        QTemporaryDir devices;
        QVERIFY(!camerasAreBarred(QDir(devices.path())));
        QVERIFY(!camerasAreBarred(QDir(devices.filePath("missing"))));
        for (const auto* name : {"video0", "media0"}) {
            QFile file(devices.filePath(name));
            QVERIFY(file.open(QIODevice::WriteOnly));
        }
        QVERIFY(!camerasAreBarred(QDir(devices.path())));
        QFile::setPermissions(devices.filePath("video0"), {});
        if (QFileInfo(devices.filePath("video0")).isReadable())
            QSKIP("This user may open everything.");
        QVERIFY(camerasAreBarred(QDir(devices.path())));
    }

    void choosesTheFormat_data() {
        QTest::addColumn<QList<FormatOffer>>("offers");
        QTest::addColumn<int>("choice");
        const QSize hd(1920, 1080);
        QTest::newRow("none") << QList<FormatOffer>() << -1;
        QTest::newRow("too slow") << QList<FormatOffer>{{hd, 5}} << -1;
        QTest::newRow("too large") << QList<FormatOffer>{{{3840, 2160}, 30}} << -1;
        QTest::newRow("the largest that suits")
            << QList<FormatOffer>{{{640, 480}, 30}, {hd, 30}, {{3840, 2160}, 30}, {{1280, 720}, 60}}
            << 1;
        QTest::newRow("large and slow loses")
            << QList<FormatOffer>{{hd, 5}, {{1280, 720}, 30}} << 1;
        QTest::newRow("the faster") << QList<FormatOffer>{{hd, 15}, {hd, 30, true}} << 1;
        QTest::newRow("the plain one") << QList<FormatOffer>{{hd, 30, true}, {hd, 30}} << 1;
        QTest::newRow("upright") << QList<FormatOffer>{{{1080, 1920}, 30}, {{720, 1280}, 30}} << 0;
    }
    void choosesTheFormat() {
        QFETCH(QList<FormatOffer>, offers);
        QFETCH(int, choice);
        QCOMPARE(static_cast<int>(suitableFormat(offers).value_or(-1)), choice);
    }

    /// A webcam has no still of its own: its largest frames are the photos.
    void choosesALargeFormatForPhotos() {
        const std::vector<FormatOffer> offers{
            {{1920, 1080}, 30}, {{3840, 2160}, 10, true}, {{4032, 3024}, 2}, {{8000, 6000}, 30}};
        QCOMPARE(suitableFormat(offers), std::optional<qsizetype>(0));
        QCOMPARE(suitableFormat(offers, Looking::forPhotos), std::optional<qsizetype>(1));
        QVERIFY(!suitableFormat(std::span(offers).last(2), Looking::forPhotos));
    }

    /// What the camera has packed stays as it is, to the byte.
    void aPackedStillIsNotPackedAgain() {
        QByteArray jpeg;
        QBuffer buffer(&jpeg);
        buffer.open(QIODevice::WriteOnly);
        QVERIFY(twoHalves().save(&buffer, "JPEG", 60));
        QVideoFrame still(QVideoFrameFormat(twoHalves().size(), QVideoFrameFormat::Format_Jpeg));
        QVERIFY(still.map(QVideoFrame::WriteOnly) && still.mappedBytes(0) >= jpeg.size());
        std::memset(still.bits(0), 0, static_cast<std::size_t>(still.mappedBytes(0)));
        std::memcpy(still.bits(0), jpeg.constData(), static_cast<std::size_t>(jpeg.size()));
        still.unmap();
        QVERIFY(packedStill(still).startsWith(jpeg));

        auto frame = test::greyFrame(twoHalves());
        frame.setRotationAngle(QVideoFrame::Rotation90);
        QCOMPARE(QImage::fromData(packedStill(frame), "JPEG").size(), QSize(200, 320));
        QVERIFY(packedStill({}).isEmpty());
    }

    void keepsTheNewestFrameUpright() {
        test::PushScanner scanner;
        FramePhotographer photographer(scanner);
        QSignalSpy taken(&photographer, &Photographer::taken);
        QSignalSpy refused(&photographer, &Photographer::refused);
        scanner.start();
        photographer.take();
        QTRY_COMPARE(refused.size(), 1);
        auto frame = test::greyFrame(twoHalves());
        frame.setRotationAngle(QVideoFrame::Rotation90);
        scanner.push(frame);
        QTRY_COMPARE(scanner.state(), State::Running);
        photographer.take();
        photographer.take();
        QTRY_COMPARE(taken.size(), 1);
        const auto photo = QImage::fromData(taken[0][0].toByteArray(), "JPEG");
        QCOMPARE(photo.size(), QSize(200, 320));
        QVERIFY(qGray(photo.pixel(100, 20)) < 50);
        QVERIFY(qGray(photo.pixel(100, 300)) > 200);
        QVERIFY(!photographer.busy());
        QCOMPARE(taken.size(), 1);
    }

    void endsWhileAPhotoIsPacked() {
        test::PushScanner scanner;
        scanner.start();
        QImage large(1920, 1080, QImage::Format_Grayscale8);
        large.fill(90);
        scanner.push(test::greyFrame(large));
        QTRY_COMPARE(scanner.state(), State::Running);
        for (int i = 0; i < 50; ++i) {
            FramePhotographer photographer(scanner);
            photographer.take();
        }
    }
};

QTEST_MAIN(TestCamera)
#include "tst_camera.moc"
