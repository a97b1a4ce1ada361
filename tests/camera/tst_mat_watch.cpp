// Frames in which a mat is looked for: one at a time, the rest dropped, and only while it is wanted.
#include <QSemaphore>
#include <QSignalSpy>
#include <QtTest>
#include <atomic>

#include "camera/mat_watch.h"
#include "push_scanner.h"
#include "support/mat_photo.h"

using namespace burrow;
using test::plainFrame;
using test::PushScanner;

namespace {

/// A look that waits inside until it is let go.
struct HeldLook {
    QSemaphore entered;
    QSemaphore mayLeave;
    std::atomic<int> calls = 0;

    MatLook look() {
        return [this](const tags::LumaView& frame) {
            ++calls;
            entered.release();
            mayLeave.acquire();
            return MatSight{{}, frame.pixels[0] == 7, {}};
        };
    }
};

/// A frame of 720 lines with a whole mat in it.
QImage matFrame() {
    test::Shot shot;
    shot.megapixels = 0.92;
    shot.quality = 0;
    const auto sheet = test::matSheet(measure::MatPaper::a5, {.perMm = 14});
    const auto photo =
        test::developed(sheet, shot, test::cameraOf(shot, test::seenOf(measure::MatPaper::a5)));
    QImage frame(photo.width(), photo.height(), QImage::Format_RGB888);
    for (int y = 0; y < photo.height(); ++y) {
        std::copy_n(photo.row(y), photo.stride(), frame.scanLine(y));
    }
    return frame;
}

}  // namespace

class TestMatWatch : public QObject {
    Q_OBJECT

private slots:
    void framesAreDroppedWhileItLooks() {
        HeldLook held;
        std::atomic<int> reported = 0;
        std::atomic<bool> wasGood = false;
        MatWatch watch(held.look(), [&](const MatSight& sight, int run) {
            wasGood = sight.isGood && run == 5;
            ++reported;
        });
        QVERIFY(watch.offer(plainFrame(7), 5));
        held.entered.acquire();
        for (int i = 0; i < 20; ++i) QVERIFY(!watch.offer(plainFrame(9), 5));
        QCOMPARE(held.calls.load(), 1);
        held.mayLeave.release();
        QTRY_COMPARE(reported.load(), 1);
        QVERIFY(wasGood);
        QVERIFY(watch.offer(plainFrame(9), 5));
        held.mayLeave.release();
        QTRY_COMPARE(reported.load(), 2);
    }

    void endingWaitsForTheFrameInHandOnly() {
        HeldLook held;
        std::atomic<int> reported = 0;
        {
            MatWatch watch(held.look(), [&](const MatSight&, int) { ++reported; });
            QVERIFY(watch.offer(plainFrame(7), 1));
            held.entered.acquire();
            held.mayLeave.release();
        }
        QCOMPARE(held.calls.load(), 1);
        QCOMPARE(reported.load(), 1);
    }

    void aScannerLooksOnlyWhenItIsWanted() {
        PushScanner scanner;
        QSignalSpy seen(&scanner, &Scanner::matSeen);
        const auto frame = matFrame();
        scanner.start();
        scanner.push(test::greyFrame(frame));
        QTRY_COMPARE(scanner.state(), Scanner::State::Running);
        QCOMPARE(scanner.matsLookedFor(), 0);
        scanner.setMatWanted(true);
        scanner.push(test::greyFrame(frame));
        QTRY_COMPARE(seen.size(), 1);
        const auto sight = seen.front().front().value<MatSight>();
        QCOMPARE(sight.corners, (std::array{true, true, true, true}));
        QVERIFY2(sight.isGood, sight.says.id.c_str());
        // What is still under way when the scanner stops is not told.
        scanner.push(test::greyFrame(frame));
        QTRY_COMPARE(scanner.matsLookedFor(), 2);
        scanner.stop();
        const auto told = seen.size();
        QTest::qWait(200);
        QCOMPARE(seen.size(), told);
    }

    void anEmptyTableSaysShowTheMat() {
        PushScanner scanner;
        QSignalSpy seen(&scanner, &Scanner::matSeen);
        scanner.setMatWanted(true);
        scanner.start();
        scanner.push(plainFrame(128));
        QTRY_COMPARE(seen.size(), 1);
        const auto sight = seen.front().front().value<MatSight>();
        QVERIFY(!sight.isGood);
        QCOMPARE(sight.says.id, std::string("measure.hint.noMat"));
    }
};

QTEST_GUILESS_MAIN(TestMatWatch)
#include "tst_mat_watch.moc"
