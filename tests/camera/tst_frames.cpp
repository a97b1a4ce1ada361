// Frames as cameras store them: read, shown and turned upright.
#include <QPainter>
#include <QQmlComponent>
#include <QQmlEngine>
#include <QQuickWindow>
#include <QTemporaryDir>
#include <QtTest>
#include <cstring>
#include <memory>

#include "camera/frame_reader.h"
#include "camera/frames.h"
#include "camera/luminance.h"
#include "ports/frame_view.h"
#include "push_scanner.h"
#include "tags/code.h"

using namespace burrow;
using Format = QVideoFrameFormat;

Q_DECLARE_METATYPE(QVideoFrameFormat::PixelFormat)

namespace {

constexpr double tolerance = 1e-9;

bool near(QPointF a, QPointF b, double apart = tolerance) {
    return std::abs(a.x() - b.x()) <= apart && std::abs(a.y() - b.y()) <= apart;
}

/// How a format stores one sample of brightness.
struct Layout {
    int step = 1;    ///< bytes from one sample to the next
    int offset = 0;  ///< of the byte that holds it, or its upper half
};

/// A frame of this brightness and no colour. Rows are as long as Qt makes them.
QVideoFrame frameOf(const QImage& grey, Format format, Layout layout = {}) {
    QVideoFrame frame(format);
    if (!frame.map(QVideoFrame::WriteOnly)) return {};
    for (int plane = 0; plane < frame.planeCount(); ++plane) {
        std::memset(frame.bits(plane), 128, static_cast<std::size_t>(frame.mappedBytes(plane)));
    }
    for (int y = 0; y < grey.height(); ++y) {
        auto* row = frame.bits(0) + y * frame.bytesPerLine(0);
        for (int x = 0; x < grey.width(); ++x) {
            row[x * layout.step + layout.offset] = grey.constScanLine(y)[x];
        }
    }
    frame.unmap();
    return frame;
}

void show(FrameView& view, const QVideoFrame& frame) {
    view.show({shownSize(frame), [frame] { return shownImage(frame); }});
}

QVideoFrame frameOfColours(const QImage& grey, Format::PixelFormat pixels) {
    const auto image = grey.convertToFormat(Format::imageFormatFromPixelFormat(pixels));
    QVideoFrame frame(Format(grey.size(), pixels));
    if (!frame.map(QVideoFrame::WriteOnly)) return {};
    for (int y = 0; y < image.height(); ++y) {
        std::memcpy(frame.bits(0) + y * frame.bytesPerLine(0), image.constScanLine(y),
                    static_cast<std::size_t>(image.width()) * 4);
    }
    frame.unmap();
    return frame;
}

QVideoFrame jpegFrame(const QImage& grey) {
    QByteArray packed;
    QBuffer buffer(&packed);
    buffer.open(QIODevice::WriteOnly);
    grey.save(&buffer, "JPEG", 95);
    QVideoFrame frame(Format(grey.size(), Format::Format_Jpeg));
    if (!frame.map(QVideoFrame::WriteOnly) || frame.mappedBytes(0) < packed.size()) return {};
    std::memcpy(frame.bits(0), packed.constData(), static_cast<std::size_t>(packed.size()));
    frame.unmap();
    return frame;
}

/// A tag, four pixels a module, away from the middle.
constexpr QPoint tagCorner{100, 40};
constexpr int tagSide = 25 * 4;

QImage tagPicture() {
    QImage picture(320, 240, QImage::Format_Grayscale8);
    picture.fill(235);
    const auto symbol = tags::encode(tags::payload("7Q2MZX89", Millimetres{20})).value();
    QPainter painter(&picture);
    for (int row = 0; row < symbol.size(); ++row) {
        for (int column = 0; column < symbol.size(); ++column) {
            if (!symbol.isDark(column, row)) continue;
            painter.fillRect(tagCorner.x() + column * 4, tagCorner.y() + row * 4, 4, 4,
                             QColor(16, 16, 16));
        }
    }
    return picture;
}

/// A grey block in white, its top left corner black.
QImage markedPicture() {
    QImage picture(64, 32, QImage::Format_Grayscale8);
    picture.fill(255);
    QPainter painter(&picture);
    painter.fillRect(8, 4, 16, 8, QColor(100, 100, 100));
    painter.fillRect(8, 4, 4, 4, Qt::black);
    return picture;
}

/// Finds the block of a marked picture, as it is stored.
std::vector<tags::FoundSymbol> findBlock(const tags::LumaView& view) {
    QRect block;
    for (int y = 0; y < view.height; ++y) {
        for (int x = 0; x < view.width; ++x) {
            if (view.pixels[y * view.stride + x] < 180) block |= QRect(x, y, 1, 1);
        }
    }
    const double left = block.left();
    const double top = block.top();
    const double right = block.right() + 1;
    const double bottom = block.bottom() + 1;
    return {{"block", {{{left, top}, {right, top}, {right, bottom}, {left, bottom}}}}};
}

int greyAt(const QImage& image, QPointF place) {
    return qGray(image.pixel(static_cast<int>(place.x()), static_cast<int>(place.y())));
}

}  // namespace

class TestFrames : public QObject {
    Q_OBJECT

private slots:
    void readsEveryFormat_data() {
        QTest::addColumn<QVideoFrame>("frame");
        const auto grey = tagPicture();
        const auto add = [&](const char* name, Format::PixelFormat pixels, Layout layout = {}) {
            QTest::newRow(name) << frameOf(grey, Format(grey.size(), pixels), layout);
        };
        add("YUV420P", Format::Format_YUV420P);
        add("YUV422P", Format::Format_YUV422P);
        add("YV12", Format::Format_YV12);
        add("NV12", Format::Format_NV12);
        add("NV21", Format::Format_NV21);
        add("IMC1", Format::Format_IMC1);
        add("IMC2", Format::Format_IMC2);
        add("IMC3", Format::Format_IMC3);
        add("IMC4", Format::Format_IMC4);
        add("Y8", Format::Format_Y8);
        add("YUYV", Format::Format_YUYV, {2, 0});
        add("UYVY", Format::Format_UYVY, {2, 1});
        add("Y16", Format::Format_Y16, {2, 1});
        add("P010", Format::Format_P010, {2, 1});
        add("P016", Format::Format_P016, {2, 1});
        add("AYUV, through toImage", Format::Format_AYUV, {4, 1});
        for (const auto pixels :
             {Format::Format_BGRX8888, Format::Format_BGRA8888, Format::Format_RGBA8888}) {
            QTest::addRow("%s", qPrintable(Format::pixelFormatToString(pixels)))
                << frameOfColours(grey, pixels);
        }
        QTest::newRow("JPEG, through toImage") << jpegFrame(grey);
    }
    void readsEveryFormat() {
        QFETCH(QVideoFrame, frame);
        QVERIFY(frame.isValid());
        const auto reading = read(frame, usualDecoder());
        QVERIFY(reading);
        QCOMPARE(reading->payload, QByteArray("BURROWBOOK:7Q2MZX89K/20"));
        const QRectF box(tagCorner.x() / 320.0, tagCorner.y() / 240.0, tagSide / 320.0,
                         tagSide / 240.0);
        const QList<QPointF> corners{box.topLeft(), box.topRight(), box.bottomRight(),
                                     box.bottomLeft()};
        for (int i = 0; i < 4; ++i) QVERIFY(near(reading->corners[i], corners[i], 2 / 240.0));
        QVERIFY(!frame.isMapped());
    }

    void planesAreNotCopied() {
        auto frame = frameOf(tagPicture(), Format({320, 240}, Format::Format_NV12));
        QVERIFY(frame.map(QVideoFrame::ReadOnly));
        const Luminance luminance(frame);
        QCOMPARE(luminance.view().pixels, frame.bits(0));
        QCOMPARE(luminance.view().stride, frame.bytesPerLine(0));
        frame.unmap();
    }

    void emptyFramesShowNothing() {
        QVERIFY(!read({}, usualDecoder()));
        QVERIFY(!read(QVideoFrame(Format({320, 240}, Format::Format_Jpeg)), usualDecoder()));
        QVERIFY(shownImage({}).isNull());
    }

    void tinyFramesShowNothing() {
        // Qt itself divides by zero in frames one pixel high.
        for (const QSize& size : {QSize(2, 2), QSize(7, 300), QSize(300, 3)}) {
            for (const auto pixels : {Format::Format_Y8, Format::Format_YUV420P,
                                      Format::Format_YUYV, Format::Format_BGRX8888}) {
                QVERIFY(!read(QVideoFrame(Format(size, pixels)), usualDecoder()));
            }
        }
    }

    // Corners are told in the picture as it is shown, so they must lie on the block that is seen.
    void cornersLieOnWhatIsShown_data() {
        QTest::addColumn<bool>("upsideDown");
        QTest::addColumn<bool>("formatMirrored");
        QTest::addColumn<int>("angle");
        QTest::addColumn<bool>("mirrored");
        for (int i = 0; i < 32; ++i) {
            const int angle = 90 * (i % 4);
            QTest::addRow("%d %d%d%d", angle, i / 4 % 2, i / 8 % 2, i / 16)
                << (i / 4 % 2 == 1) << (i / 8 % 2 == 1) << angle << (i / 16 == 1);
        }
    }
    void cornersLieOnWhatIsShown() {
        QFETCH(bool, upsideDown);
        QFETCH(bool, formatMirrored);
        QFETCH(int, angle);
        QFETCH(bool, mirrored);
        Format format({64, 32}, Format::Format_YUV420P);
        format.setScanLineDirection(upsideDown ? Format::BottomToTop : Format::TopToBottom);
        format.setMirrored(formatMirrored);
        auto frame = frameOf(markedPicture(), format);
        frame.setRotationAngle(static_cast<QVideoFrame::RotationAngle>(angle));
        frame.setMirrored(mirrored);

        const auto image = shownImage(frame);
        QCOMPARE(image.size(), angle % 180 == 0 ? QSize(64, 32) : QSize(32, 64));
        const auto grey = image.convertToFormat(QImage::Format_Grayscale8);
        const auto seen = findBlock({grey.constBits(), grey.width(), grey.height(),
                                     static_cast<int>(grey.bytesPerLine())})
                              .front();
        const auto reading = read(frame, findBlock);
        QVERIFY(reading);
        QPolygonF told;
        for (const auto& corner : reading->corners) {
            told.append({corner.x() * image.width(), corner.y() * image.height()});
        }
        const QRectF box(QPointF(seen.corners[0].x, seen.corners[0].y),
                         QPointF(seen.corners[2].x, seen.corners[2].y));
        QVERIFY(near(told.boundingRect().topLeft(), box.topLeft()));
        QVERIFY(near(told.boundingRect().bottomRight(), box.bottomRight()));
        // The first corner told is the one that is black, a little inside of it.
        QVERIFY(greyAt(image, told[0] + (told[2] - told[0]) * 0.12) < 60);
    }

    void anUprightMirrorIsWhatUsersSee() {
        Format format({64, 32}, Format::Format_YUV420P);
        format.setMirrored(true);
        const auto frame = frameOf(markedPicture(), format);
        QVERIFY(near(shownFromStored(frame).map(QPointF(0.125, 0.125)), {0.875, 0.125}));
        QVERIFY(greyAt(shownImage(frame), {63 - 9, 5}) < 60);
    }

    void aViewFillsItsItem() {
        QQuickWindow window;
        window.setGeometry(0, 0, 200, 100);
        FrameView view(window.contentItem());
        view.setSize({200, 100});
        QCOMPARE(view.contentRect(), QRectF());
        window.show();
        QVERIFY(QTest::qWaitForWindowExposed(&window));
        QVERIFY(!window.grabWindow().isNull());

        // 64 by 32 turned upright is 32 by 64: at 200 wide it is 400 high, 150 cut off at either end.
        auto frame = frameOf(markedPicture(), Format({64, 32}, Format::Format_YUV420P));
        frame.setRotationAngle(QVideoFrame::Rotation90);
        show(view, frame);
        QCOMPARE(view.contentRect(), QRectF(0, -150, 200, 400));
        // A wider one is cut at the sides.
        const auto wide =
            frameOf(markedPicture().scaled(64, 16), Format({64, 16}, Format::Format_YUV420P));
        show(view, wide);
        QCOMPARE(view.contentRect(), QRectF(-100, 0, 400, 100));
        view.setSize({100, 100});
        QCOMPARE(view.contentRect(), QRectF(-150, 0, 400, 100));
        QCOMPARE(view.toItem({{0, 0}, {1, 1}, {0.5, 0.5}}),
                 (QList<QPointF>{{-150, 0}, {250, 100}, {50, 50}}));
        show(view, {});
        QCOMPARE(view.contentRect(), QRectF());
    }

    void aViewPaintsWhereItSays() {
        QQuickWindow window;
        window.setGeometry(0, 0, 300, 300);
        window.setColor(Qt::blue);
        FrameView view(window.contentItem());
        view.setSize({300, 300});
        window.show();
        QVERIFY(QTest::qWaitForWindowExposed(&window));
        QImage centred(64, 32, QImage::Format_Grayscale8);
        centred.fill(255);
        QPainter(&centred).drawImage(16, 8, markedPicture());
        auto frame = frameOf(centred, Format({64, 32}, Format::Format_YUV420P));
        frame.setMirrored(true);
        show(view, frame);
        const auto corners = view.toItem(read(frame, findBlock)->corners);
        const auto grabbed = window.grabWindow();
        QCOMPARE(grabbed.size(), QSize(300, 300));
        const auto inside = [&](double along, double down) {
            return corners[0] + (corners[1] - corners[0]) * along +
                   (corners[3] - corners[0]) * down;
        };
        QVERIFY(greyAt(grabbed, inside(0.1, 0.2)) < 60);
        QVERIFY(std::abs(greyAt(grabbed, inside(0.6, 0.5)) - 100) < 20);
        QVERIFY(greyAt(grabbed, inside(1.2, 0.5)) > 220);
        QVERIFY(greyAt(grabbed, inside(-0.2, 0.5)) > 220);
        QVERIFY(greyAt(grabbed, {2, 298}) > 220);
    }

    /// A phone of 50 megapixels takes such photos, and nothing has been decoded before this one.
    void aLargePhotoIsShown() {
        QTemporaryDir folder;
        QImage large(6000, 6000, QImage::Format_RGB32);
        large.fill(Qt::darkGreen);
        const auto path = folder.filePath("large.png");
        QVERIFY(large.save(path));
        large = {};
        QQmlEngine engine;
        engine.addImportPath("qrc:/qt/qml");
        QQmlComponent component(&engine);
        component.setData("import QtQuick\nimport Burrow.Ports\nPhotoView { width: 9; height: 9 }",
                          {});
        const std::unique_ptr<QObject> view(component.create());
        QVERIFY2(view, qPrintable(component.errorString()));
        view->setProperty("source", QUrl::fromLocalFile(path));
        QTRY_VERIFY_WITH_TIMEOUT(view->property("ready").toBool(), 20'000);
        QVERIFY(!view->property("missing").toBool());
    }

    void pagesUseThem() {
        QQmlEngine engine;
        engine.addImportPath("qrc:/qt/qml");
        QQmlComponent component(&engine);
        component.setData(R"(
            import QtQuick
            import Burrow.Ports
            FrameView {
                id: view
                required property Scanner scanner
                readonly property bool runs: scanner.state === Scanner.Running
                property int tags: 0
                property list<point> corners
                Binding { target: view.scanner; property: "viewfinder"; value: view }
                Connections {
                    target: view.scanner
                    function onSighted(payload, corners) { ++view.tags; view.corners = view.toItem(corners) }
                }
            })",
                          {});
        test::PushScanner scanner;
        const std::unique_ptr<QObject> made(component.createWithInitialProperties(
            {{"scanner", QVariant::fromValue<Scanner*>(&scanner)},
             {"width", 128},
             {"height", 96}}));
        QVERIFY2(made, qPrintable(component.errorString()));
        scanner.start();
        QVERIFY(QTest::qWaitFor([&] {
            scanner.push(test::plainFrame('A'));
            return made->property("tags").toInt() > 0;
        }));
        QCOMPARE(made->property("tags").toInt(), 1);
        QVERIFY(made->property("runs").toBool());
        const auto corners = made->property("corners").value<QList<QPointF>>();
        QCOMPARE(corners, (QList<QPointF>{{32, 24}, {64, 24}, {64, 48}, {32, 48}}));
    }
};

QTEST_MAIN(TestFrames)
#include "tst_frames.moc"
