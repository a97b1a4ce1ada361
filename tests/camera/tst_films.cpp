// From a printed tag to what the scanner says: films of it, moving, tilted, turned, soft and dim, go
// through Qt's player and the same path as a camera's pictures.
#include <qrencode.h>

#include <QSemaphore>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QtTest>
#include <atomic>
#include <functional>
#include <memory>

#include "camera/video_scanner.h"
#include "film.h"
#include "printed_tags.h"

using namespace burrow;
using namespace burrow::test;
using State = Scanner::State;

namespace {

constexpr QPointF middle(640, 360);
constexpr int second = 30;
/// Long enough for a loaded machine, in milliseconds; nothing depends on it where all is well.
constexpr int patience = 60'000;

/// Frames of one picture each, laid where `place(part)` says while part runs from 0 to 1.
QList<QImage> filmOf(const QImage& picture, int frames,
                     const std::function<QPolygonF(double part)>& place) {
    QList<QImage> film;
    for (int i = 0; i < frames; ++i) {
        Scene scene;
        scene.lay(picture, place(static_cast<double>(i) / (frames - 1)));
        film.append(scene.image());
    }
    return film;
}

QList<QImage> still(const QImage& picture, double width) {
    return filmOf(picture, second, [&](double) { return flat(picture, middle, width, 3); });
}

QList<QImage> moving(const QImage& label) {
    return filmOf(label, 2 * second, [&](double part) {
        const double way = std::min(1.0, 2 * part);
        return flat(label, {250 + 390 * way, 250 + 110 * way}, 330, 8);
    });
}

QList<QImage> tilting(const QImage& label) {
    return filmOf(label, 3 * second / 2,
                  [&](double part) { return tilted(label, middle, 420, 90 * part - 45); });
}

QList<QImage> turning(const QImage& label) {
    return filmOf(label, 2 * second,
                  [&](double part) { return flat(label, middle, 380, 360 * part); });
}

/// Out of focus at first and at the end.
QList<QImage> focusing(const QImage& label) {
    QList<QImage> film;
    for (int i = 0; i < 2 * second; ++i) {
        Scene scene;
        scene.lay(label, flat(label, middle, 380, -5));
        scene.blur(0.7 + 2.5 * std::abs(i - second) / second);
        film.append(scene.image());
    }
    return film;
}

/// A fifth of the light, and the noise that a camera makes up for it with.
QList<QImage> dim(const QImage& label) {
    std::mt19937 random(11);
    QList<QImage> film;
    for (int i = 0; i < second; ++i) {
        Scene scene;
        scene.lay(label, flat(label, middle, 380, 4));
        scene.blur(0.8);
        scene.dim(0.2, 5, random);
        film.append(scene.image());
    }
    return film;
}

/// Both in view all the time, first one in the middle and then the other.
QList<QImage> neighbours(const QList<QImage>& labels) {
    QList<QImage> film;
    for (int i = 0; i < 5 * second / 2; ++i) {
        const double way = std::clamp((i - second) / (second / 2.0), 0.0, 1.0) * 420;
        Scene scene;
        scene.lay(labels[0], flat(labels[0], middle - QPointF(way - 20, 30), 300));
        scene.lay(labels[1], flat(labels[1], middle - QPointF(way - 400, 0), 300));
        film.append(scene.image());
    }
    return film;
}

/// A tag whose check character is wrong, though the symbol itself is sound.
std::string forgedPayload() {
    auto text = tags::payload(regalis, Millimetres{20});
    auto& check = text[text.find('/') - 1];
    check = check == '5' ? '6' : '5';
    return text;
}

/// Every byte there is, over and over: 2900 of them, as byte mode holds up to 2953 at level L
/// (ISO/IEC 18004, Table 7).
QByteArray binaryPayload() {
    QByteArray bytes;
    for (int i = 0; i < 2900; ++i) bytes.append(static_cast<char>(i * 7 % 256));
    return bytes;
}

/// By libqrencode, since our own encoder writes text only.
QImage binaryPaper() {
    const auto bytes = binaryPayload();
    const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
        QRcode_encodeData(static_cast<int>(bytes.size()),
                          reinterpret_cast<const unsigned char*>(bytes.constData()), 0,
                          QR_ECLEVEL_L),
        &QRcode_free);
    return paperWith(code->width, [&](int column, int row) {
        return (code->data[row * code->width + column] & 1) != 0;
    });
}

struct Describe {
    QString operator()(const tags::OwnTag& tag) const {
        return QString("own %1 %2").arg(tag.code.c_str()).arg(tag.side.value);
    }
    QString operator()(const tags::DamagedTag&) const { return "damaged"; }
    QString operator()(const tags::ForeignSymbol& symbol) const {
        return QString(symbol.webAddress ? "web " : "text ") + symbol.shown.c_str();
    }
    QString operator()(const tags::UnreadableSymbol&) const { return "unreadable"; }
};

}  // namespace

class TestFilms : public QObject {
    Q_OBJECT

    QTemporaryDir folder;
    QList<QImage> labels;

    QUrl film(const QString& name) const { return QUrl::fromLocalFile(folder.filePath(name)); }

    /// Until that many frames were read, or the film is over: a machine that is short of time skips
    /// frames. False where it sticks.
    static bool waitForFrames(const VideoScanner& scanner, int frames) {
        return QTest::qWaitFor(
            [&] { return scanner.framesRead() >= frames || scanner.state() == State::Idle; },
            patience);
    }

private slots:
    void initTestCase() {
        labels = printedLabels();
        QCOMPARE(labels.size(), 2);
        QVERIFY(saveFilm(folder.filePath("long.mp4"), turning(labels[0]), "h264"));
    }

    void says_data() {
        QTest::addColumn<QList<QImage>>("frames");
        QTest::addColumn<QString>("codec");
        QTest::addColumn<QList<QByteArray>>("payloads");
        QTest::addColumn<QStringList>("readings");
        const QList<QByteArray> one{payloadOf(regalis)};
        const QStringList ownOne{"own 7Q2MZX89 20"};
        QTest::newRow("moving") << moving(labels[0]) << "h264" << one << ownOne;
        QTest::newRow("tilted") << tilting(labels[0]) << "vp8" << one << ownOne;
        QTest::newRow("turned") << turning(labels[0]) << "mjpeg" << one << ownOne;
        QTest::newRow("out of focus") << focusing(labels[0]) << "h264" << one << ownOne;
        QTest::newRow("dim with noise") << dim(labels[0]) << "h264" << one << ownOne;
        QTest::newRow("two in view") << neighbours(labels) << "h264"
                                     << (QList<QByteArray>{payloadOf(regalis), payloadOf(hamorii)})
                                     << (QStringList{"own 7Q2MZX89 20", "own 3KD84TRW 20"});
        const std::string address = "https://fair.example/stall?number=12";
        QTest::newRow("a web address")
            << still(paperWith(address), 260) << "vp8" << (QList<QByteArray>{address.c_str()})
            << QStringList{QString("web ") + address.c_str()};
        QTest::newRow("forged") << still(paperWith(forgedPayload()), 240) << "h264"
                                << (QList<QByteArray>{forgedPayload().c_str()})
                                << QStringList{"damaged"};
        QTest::newRow("binary") << still(binaryPaper(), 660) << "h264"
                                << (QList<QByteArray>{binaryPayload()})
                                << QStringList{"unreadable"};
        QTest::newRow("an empty shelf") << QList<QImage>(second, Scene().image()) << "h264"
                                        << QList<QByteArray>() << QStringList();
    }
    void says() {
        QFETCH(QList<QImage>, frames);
        QFETCH(QString, codec);
        QFETCH(QList<QByteArray>, payloads);
        QFETCH(QStringList, readings);
        const QString name = codec == "vp8"     ? "film.webm"
                             : codec == "mjpeg" ? "film.avi"
                                                : "film.mp4";
        QVERIFY(saveFilm(folder.filePath(name), frames, codec));
        VideoScanner scanner(film(name));
        QSignalSpy sighted(&scanner, &Scanner::sighted);
        QSignalSpy states(&scanner, &Scanner::stateChanged);
        scanner.start();
        QTRY_COMPARE_WITH_TIMEOUT(scanner.state(), State::Idle, patience);
        QCOMPARE(states.size(), 3);
        QVERIFY(scanner.framesRead() > 0);
        QList<QByteArray> said;
        QStringList read;
        for (const auto& signal : sighted) {
            said.append(signal[0].toByteArray());
            read.append(std::visit(Describe(), tags::parsePayload(said.back().toStdString())));
        }
        QCOMPARE(read, readings);
        QCOMPARE(said, payloads);
    }

    void bracketsLieOnTheTag() {
        const auto corners = flat(labels[0], middle, 380);
        QVERIFY(saveFilm(folder.filePath("still.mp4"),
                         filmOf(labels[0], second, [&](double) { return corners; }), "h264"));
        VideoScanner scanner(film("still.mp4"));
        QSignalSpy sighted(&scanner, &Scanner::sighted);
        scanner.start();
        QTRY_COMPARE_WITH_TIMEOUT(sighted.size(), 1, patience);
        // Where the square was printed: 20 mm, at half height, 4 mm from the right edge of the label.
        const auto found = sighted[0][1].value<QList<QPointF>>();
        const double mm = 380 / 62.0;
        const QPointF square(middle.x() + (31 - 3.2 - 10) * mm, middle.y());
        for (int i = 0; i < 4; ++i) {
            const QPointF half(i == 0 || i == 3 ? -10 * mm : 10 * mm, i < 2 ? -10 * mm : 10 * mm);
            const QPointF seen(found[i].x() * filmSize.width(), found[i].y() * filmSize.height());
            QVERIFY2(QLineF(seen, square + half).length() < 1.5 * mm,
                     qPrintable(QDebug::toString(seen) + QDebug::toString(square + half)));
        }
    }

    void slowDecodersMissFrames() {
        QSemaphore mayLeave;
        std::atomic<int> calls = 0;
        VideoScanner scanner(film("long.mp4"), [&](const tags::LumaView& picture) {
            ++calls;
            mayLeave.acquire();
            return tags::decode(picture, tags::Effort::fast);
        });
        QVideoSink viewfinder;
        QSignalSpy shown(&viewfinder, &QVideoSink::videoFrameChanged);
        QSignalSpy sighted(&scanner, &Scanner::sighted);
        scanner.setViewfinder(&viewfinder);
        scanner.start();
        QTRY_VERIFY_WITH_TIMEOUT(shown.size() >= 12, patience);
        QCOMPARE(calls.load(), 1);
        QCOMPARE(scanner.framesRead(), 1);
        mayLeave.release();
        QTRY_COMPARE_WITH_TIMEOUT(scanner.framesRead(), 2, patience);
        QCOMPARE(sighted.size(), 0);
        // Which frames come next depends on the machine, and not each can be read: as many as it takes.
        mayLeave.release(100);
        QTRY_COMPARE_WITH_TIMEOUT(sighted.size(), 1, patience);
        scanner.stop();
    }

    void startsAgain() {
        VideoScanner scanner(film("long.mp4"));
        QSignalSpy sighted(&scanner, &Scanner::sighted);
        for (int i = 1; i <= 3; ++i) {
            scanner.start();
            QTRY_COMPARE_WITH_TIMEOUT(sighted.size(), i, patience);
            scanner.stop();
            QCOMPARE(scanner.state(), State::Idle);
        }
    }

    void stopsInMidFilm() {
        VideoScanner scanner(film("long.mp4"));
        for (int i = 0; i < 40; ++i) {
            scanner.start();
            QVERIFY(waitForFrames(scanner, scanner.framesRead() + i % 4));
            scanner.stop();
            QCOMPARE(scanner.state(), State::Idle);
        }
    }

    void endsInMidFilm() {
        for (int i = 0; i < 40; ++i) {
            VideoScanner scanner(film("long.mp4"));
            scanner.start();
            QVERIFY(waitForFrames(scanner, i % 4));
        }
    }

    void whatIsNoFilmIsBroken() {
        QFile text(folder.filePath("text.mp4"));
        QVERIFY(text.open(QIODevice::WriteOnly));
        text.write("Kiln Row");
        text.close();
        for (const auto* name : {"text.mp4", "missing.mp4"}) {
            VideoScanner scanner(film(name));
            scanner.start();
            QTRY_COMPARE_WITH_TIMEOUT(scanner.state(), State::Broken, patience);
            QCOMPARE(scanner.trouble(), QString("camera.broken"));
        }
    }
};

QTEST_MAIN(TestFilms)
#include "tst_films.moc"
