// The stand-ins keep the promises of the ports.
#include <QSignalSpy>
#include <QtTest>

#include "fake/fake_photographer.h"
#include "fake/fake_scanner.h"
#include "ports/frame_view.h"

using namespace burrow;
using State = Scanner::State;

class TestFakes : public QObject {
    Q_OBJECT

private slots:
    void aTagIsSightedOnce() {
        FakeScanner scanner;
        QSignalSpy sighted(&scanner, &Scanner::sighted);
        QSignalSpy glimpsed(&scanner, &Scanner::glimpsed);
        QSignalSpy lost(&scanner, &Scanner::lost);
        scanner.showTag("A");
        QCOMPARE(glimpsed.size(), 0);
        scanner.start();
        QCOMPARE(scanner.state(), State::Running);
        scanner.showTag("A");
        scanner.showTag("A", {{0, 0}, {1, 0}, {1, 1}, {0, 1}});
        QCOMPARE(sighted.size(), 1);
        QCOMPARE(glimpsed.size(), 2);
        QCOMPARE(glimpsed.at(1).at(0).value<QList<QPointF>>().at(2), QPointF(1, 1));
        scanner.showTag("B");
        scanner.hideTag();
        scanner.hideTag();
        scanner.showTag("B");
        QCOMPARE(sighted.size(), 3);
        QCOMPARE(lost.size(), 1);
        scanner.stop();
        QCOMPARE(lost.size(), 2);
        QCOMPARE(scanner.starts(), 1);
        QCOMPARE(scanner.stops(), 1);
    }

    void failsAsTold() {
        FakeScanner scanner;
        scanner.setOutcome(State::NotAllowed);
        QCOMPARE(scanner.state(), State::Idle);
        scanner.start();
        QCOMPARE(scanner.state(), State::NotAllowed);
        QCOMPARE(scanner.trouble(), QString("camera.notAllowed"));
        scanner.setOutcome(State::Running);
        QCOMPARE(scanner.state(), State::Running);
        scanner.setOutcome(State::NoCamera);
        QCOMPARE(scanner.state(), State::NoCamera);
    }

    void showsItsPicture() {
        QImage picture(31, 17, QImage::Format_RGB32);
        picture.fill(Qt::darkRed);
        FakeScanner scanner;
        FrameView view;
        scanner.setViewfinder(&view);
        scanner.showPicture(picture);
        QVERIFY(!view.frame().size.isValid());
        scanner.start();
        QCOMPARE(view.frame().size, QSizeF(31, 17));
        QCOMPARE(view.frame().image(), picture);
        QCOMPARE(scanner.latestPicture(), picture);
        scanner.stop();
        QVERIFY(!view.frame().size.isValid());
        QVERIFY(scanner.latestPicture().isNull());
    }

    void torch() {
        FakeScanner scanner;
        scanner.setTorch(true);
        scanner.setTorchOn(true);
        QVERIFY(!scanner.torchBurns());
        scanner.start();
        QVERIFY(scanner.torchBurns());
    }

    void photosComeInOrder() {
        FakePhotographer photographer;
        QSignalSpy taken(&photographer, &Photographer::taken);
        QSignalSpy refused(&photographer, &Photographer::refused);
        photographer.prepare("one");
        photographer.take();
        photographer.take();
        QVERIFY(photographer.busy());
        QCOMPARE(taken.size(), 0);
        QTRY_COMPARE(taken.size(), 1);
        QVERIFY(!photographer.busy());
        photographer.take();
        QTRY_COMPARE(refused.size(), 1);
        QCOMPARE(refused.at(0).at(0).toString(), QString("camera.noPicture"));
        QCOMPARE(photographer.asked(), 2);
    }
};

QTEST_MAIN(TestFakes)
#include "tst_fakes.moc"
