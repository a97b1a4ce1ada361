// What every scanner does with the frames that it is given, whatever their source.
#include <QSemaphore>
#include <QSignalSpy>
#include <QtTest>
#include <atomic>
#include <memory>
#include <thread>

#include "push_scanner.h"
#include "tags/code.h"

using namespace burrow;
using test::plainFrame;
using test::PushScanner;
using State = Scanner::State;

namespace {

constexpr int none = 0;

/// A decoder that waits inside until it is let go, and keeps account.
struct HeldDecoder {
    QSemaphore entered;
    QSemaphore mayLeave;
    std::atomic<int> calls = 0;
    std::atomic<int> lastShade = -1;

    Decoder decoder() {
        return [this](const tags::LumaView& picture) {
            ++calls;
            lastShade = picture.pixels[0];
            entered.release();
            mayLeave.acquire();
            return test::readShade(picture);
        };
    }
};

/// Pushes frames of this shade until something holds.
template <class Holds>
bool pushUntil(PushScanner& scanner, int shade, Holds holds) {
    return QTest::qWaitFor([&] {
        scanner.push(plainFrame(shade));
        QCoreApplication::processEvents();
        return holds();
    });
}

/// What a scanner says, in order: a letter that was sighted, + for a glimpse, - for a loss.
class Record : public QObject {
public:
    explicit Record(const Scanner& scanner) {
        connect(&scanner, &Scanner::sighted, this,
                [this](const QByteArray& payload) { said += payload; });
        connect(&scanner, &Scanner::glimpsed, this, [this] { said += "+"; });
        connect(&scanner, &Scanner::lost, this, [this] { said += "-"; });
    }
    QByteArray said;
};

}  // namespace

class TestScanner : public QObject {
    Q_OBJECT

    /// Shows frames of this shade until the decoder takes one.
    static void look(PushScanner& scanner, int shade) {
        const int before = scanner.framesRead();
        QVERIFY(pushUntil(scanner, shade, [&] { return scanner.framesRead() > before; }));
    }

private slots:
    void runsWithTheFirstFrame() {
        PushScanner scanner;
        QSignalSpy states(&scanner, &Scanner::stateChanged);
        QCOMPARE(scanner.state(), State::Idle);
        scanner.push(plainFrame('A'));
        QCoreApplication::processEvents();
        QCOMPARE(scanner.state(), State::Idle);
        scanner.start();
        QCOMPARE(scanner.state(), State::Starting);
        QVERIFY(!scanner.latestFrame().isValid());
        const auto frame = plainFrame('A');
        scanner.push(frame);
        QTRY_COMPARE(scanner.state(), State::Running);
        QCOMPARE(scanner.latestFrame(), frame);
        scanner.start();
        QCOMPARE(scanner.opened, 1);
        scanner.stop();
        QCOMPARE(scanner.state(), State::Idle);
        QVERIFY(!scanner.latestFrame().isValid());
        QCOMPARE(scanner.closed, 1);
        QCOMPARE(states.size(), 3);
    }

    void troubleIsAState_data() {
        QTest::addColumn<State>("state");
        QTest::addColumn<QString>("trouble");
        QTest::newRow("none") << State::NoCamera << "camera.none";
        QTest::newRow("refused") << State::NotAllowed << "camera.notAllowed";
        QTest::newRow("broken") << State::Broken << "camera.broken";
    }
    void troubleIsAState() {
        QFETCH(State, state);
        QFETCH(QString, trouble);
        PushScanner scanner;
        scanner.refusal = state;
        QCOMPARE(scanner.trouble(), QString());
        scanner.start();
        QCOMPARE(scanner.state(), state);
        QCOMPARE(scanner.trouble(), trouble);
        QCOMPARE(scanner.closed, 1);
        scanner.refusal.reset();
        scanner.start();
        QCOMPARE(scanner.state(), State::Starting);
        QCOMPARE(scanner.trouble(), QString());
        // Unplugged while it runs; what an earlier run still says does not count.
        scanner.push(plainFrame(none));
        QTRY_COMPARE(scanner.state(), State::Running);
        scanner.giveUp(state, scanner.run() - 1);
        QCOMPARE(scanner.state(), State::Running);
        scanner.giveUp(state, scanner.run());
        QCOMPARE(scanner.state(), state);
        scanner.stop();
        QCOMPARE(scanner.state(), State::Idle);
    }

    void sightsOnce() {
        PushScanner scanner;
        Record record(scanner);
        QSignalSpy sighted(&scanner, &Scanner::sighted);
        scanner.start();
        for (const char shade : QByteArray("AAAABAA")) look(scanner, shade);
        QTRY_COMPARE(record.said, QByteArray("++A+++++"));
        for (int i = 0; i < 10; ++i) look(scanner, none);
        QTRY_COMPARE(record.said, QByteArray("++A+++++-"));
        for (const char shade : QByteArray("AABB")) look(scanner, shade);
        QTRY_COMPARE(record.said, QByteArray("++A+++++-++A++B"));
        const QList<QPointF> corners{{0.25, 0.25}, {0.5, 0.25}, {0.5, 0.5}, {0.25, 0.5}};
        QCOMPARE(sighted.at(0).at(1).value<QList<QPointF>>(), corners);
    }

    void theNearestToTheMiddleCounts() {
        PushScanner scanner([](const tags::LumaView&) -> std::vector<tags::FoundSymbol> {
            return {{"far", {{{0, 0}, {8, 0}, {8, 8}, {0, 8}}}},
                    {"near", {{{28, 20}, {40, 20}, {40, 30}, {28, 30}}}},
                    {"far too", {{{50, 20}, {62, 20}, {62, 30}, {50, 30}}}}};
        });
        Record record(scanner);
        scanner.start();
        for (int i = 0; i < 3; ++i) look(scanner, 'A');
        QTRY_COMPARE(record.said, QByteArray("++near+"));
    }

    // Decode calls against frames: what comes while the decoder is busy is dropped, not kept.
    void dropsWhileBusy() {
        HeldDecoder held;
        PushScanner scanner(held.decoder());
        QVideoSink viewfinder;
        QSignalSpy shown(&viewfinder, &QVideoSink::videoFrameChanged);
        scanner.setViewfinder(&viewfinder);
        scanner.start();
        scanner.push(plainFrame(1));
        QCoreApplication::processEvents();
        held.entered.acquire();
        for (int shade = 2; shade <= 40; ++shade) {
            scanner.push(plainFrame(shade));
            QCoreApplication::processEvents();
        }
        QCOMPARE(shown.size(), 40);
        QCOMPARE(held.calls.load(), 1);
        held.mayLeave.release();
        // The first frame that is taken afterwards is a new one.
        look(scanner, 100);
        held.entered.acquire();
        QCOMPARE(held.calls.load(), 2);
        QCOMPARE(held.lastShade.load(), 100);
        held.mayLeave.release();
    }

    void onlyTheNewestWaitsForTheInterface() {
        PushScanner scanner;
        QVideoSink viewfinder;
        QSignalSpy shown(&viewfinder, &QVideoSink::videoFrameChanged);
        scanner.setViewfinder(&viewfinder);
        scanner.start();
        QVideoFrame last;
        std::thread source([&] {
            for (int i = 1; i <= 50; ++i) {
                last = plainFrame(i);
                scanner.push(last);
            }
        });
        source.join();
        QCOMPARE(shown.size(), 0);
        QTRY_COMPARE(shown.size(), 1);
        QCOMPARE(viewfinder.videoFrame(), last);
        scanner.stop();
        QVERIFY(!viewfinder.videoFrame().isValid());
    }

    void aViewfinderMayGo() {
        PushScanner scanner;
        scanner.start();
        {
            QVideoSink viewfinder;
            scanner.setViewfinder(&viewfinder);
            QCOMPARE(scanner.viewfinder(), static_cast<QObject*>(&viewfinder));
        }
        QCOMPARE(scanner.viewfinder(), nullptr);
        scanner.push(plainFrame('A'));
        QTRY_COMPARE(scanner.state(), State::Running);
    }

    void stopsInMidDecoding() {
        HeldDecoder held;
        PushScanner scanner(held.decoder());
        Record record(scanner);
        for (int i = 0; i < 200; ++i) {
            scanner.start();
            look(scanner, 'A');
            held.entered.acquire();
            scanner.stop();
            held.mayLeave.release();
        }
        scanner.start();
        look(scanner, 'A');
        held.mayLeave.release();
        QTRY_COMPARE(record.said, QByteArray("+"));
        QCOMPARE(held.calls.load(), 201);
    }

    // Each run starts anew: a sight before and one after a stop are not two in a row.
    void forgetsWhenStopped() {
        PushScanner scanner;
        Record record(scanner);
        scanner.start();
        look(scanner, 'A');
        QTRY_COMPARE(record.said, QByteArray("+"));
        scanner.stop();
        QCOMPARE(record.said, QByteArray("+-"));
        scanner.start();
        look(scanner, 'A');
        QTRY_COMPARE(record.said, QByteArray("+-+"));
        look(scanner, 'A');
        QTRY_COMPARE(record.said, QByteArray("+-++A"));
        scanner.stop();
        scanner.start();
        for (int i = 0; i < 2; ++i) look(scanner, 'A');
        QTRY_COMPARE(record.said, QByteArray("+-++A-++A"));
    }

    void stopsFromWithinItsSignals() {
        PushScanner scanner;
        Record record(scanner);
        connect(&scanner, &Scanner::sighted, &scanner, &Scanner::stop);
        scanner.start();
        QVERIFY(pushUntil(scanner, 'A', [&] { return scanner.state() == State::Idle; }));
        QVERIFY(record.said.endsWith("+A-"));
        QCOMPARE(record.said.count('A'), 1);

        connect(&scanner, &Scanner::glimpsed, &scanner, &Scanner::stop);
        scanner.start();
        QVERIFY(pushUntil(scanner, 'A', [&] { return scanner.state() == State::Idle; }));
        QVERIFY(record.said.endsWith("+-"));

        connect(&scanner, &Scanner::stateChanged, &scanner, &Scanner::stop);
        scanner.start();
        QCOMPARE(scanner.state(), State::Idle);
    }

    void endsInMidDecoding() {
        QImage picture(640, 480, QImage::Format_Grayscale8);
        picture.fill(200);
        for (int i = 0; i < 200; ++i) {
            PushScanner scanner(usualDecoder());
            scanner.start();
            scanner.push(test::greyFrame(picture));
            // Sometimes with the frame still in the box, sometimes in the decoder.
            if (i % 2 == 0) QCoreApplication::processEvents();
        }
    }

    void endingWaitsForTheFrameInHand() {
        for (int i = 0; i < 50; ++i) {
            HeldDecoder held;
            std::thread releaser;
            {
                PushScanner scanner(held.decoder());
                scanner.start();
                look(scanner, 'A');
                held.entered.acquire();
                releaser = std::thread([&] { held.mayLeave.release(); });
            }
            QCOMPARE(held.mayLeave.available(), 0);
            releaser.join();
        }
    }

    void framesFromAnotherThreadWhileItStartsAndStops() {
        PushScanner scanner;
        std::atomic<bool> enough = false;
        std::thread source([&] {
            while (!enough) scanner.push(plainFrame('A'));
        });
        for (int i = 0; i < 100; ++i) {
            scanner.start();
            QTRY_COMPARE(scanner.state(), State::Running);
            scanner.stop();
            QCOMPARE(scanner.state(), State::Idle);
        }
        enough = true;
        source.join();
    }

    void torchIsKeptAsAWish() {
        PushScanner scanner;
        QSignalSpy changes(&scanner, &Scanner::torchOnChanged);
        scanner.setTorchOn(true);
        QVERIFY(!scanner.torchOn());
        scanner.setTorchAvailable(true);
        QVERIFY(!scanner.torchOn());
        scanner.setTorchOn(true);
        scanner.setTorchOn(true);
        QVERIFY(scanner.torchOn());
        scanner.start();
        scanner.stop();
        QVERIFY(scanner.torchOn());
        scanner.setTorchOn(false);
        QCOMPARE(changes.size(), 2);
        QCOMPARE(scanner.torch, (QList<bool>{true, false}));
    }
};

QTEST_GUILESS_MAIN(TestScanner)
#include "tst_scanner.moc"
