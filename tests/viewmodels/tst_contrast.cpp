// What makes a pale picture easier to see. The method itself is held against OpenCV in tests/oracles.
#include <QtTest>

#include "ports/contrast.h"

using namespace burrow;

namespace {

constexpr int side = 400;
constexpr int bright = 128;
constexpr int faint = 120;

/// A plate in the middle that hardly differs from what is around it.
QImage palePlate() {
    QImage picture(side, side, QImage::Format_RGB32);
    picture.fill(qRgb(bright, bright, bright));
    for (int y = 150; y < 250; ++y) {
        for (int x = 150; x < 250; ++x) picture.setPixel(x, y, qRgb(faint, faint, faint));
    }
    return picture;
}

int stepOf(const QImage& picture) {
    return qRed(picture.pixel(140, 200)) - qRed(picture.pixel(160, 200));
}

}  // namespace

class TestContrast : public QObject {
    Q_OBJECT

private slots:
    void aPalePlateStandsOut() {
        const auto raised = withContrast(palePlate());
        QCOMPARE(raised.size(), QSize(side, side));
        QVERIFY2(stepOf(raised) > 3 * (bright - faint) / 2,
                 qPrintable(QString::number(stepOf(raised))));
    }

    void aFewBrightSpotsDoNotHideIt() {
        auto picture = palePlate();
        for (int i = 0; i < 100; ++i) picture.setPixel(3 * i, 10, qRgb(255, 255, 255));
        QVERIFY(stepOf(withContrast(picture)) > 3 * (bright - faint) / 2);
    }

    void coloursStay() {
        QImage picture(side, side, QImage::Format_RGB32);
        for (int y = 0; y < side; ++y) {
            for (int x = 0; x < side; ++x) {
                picture.setPixel(x, y, qRgb(100 + x / 8, 90 + x / 8, 80 + x / 8));
            }
        }
        const auto middle = withContrast(picture).pixel(side / 2, side / 2);
        QVERIFY(qAbs(qRed(middle) - qGreen(middle) - 10) <= 1);
        QVERIFY(qAbs(qGreen(middle) - qBlue(middle) - 10) <= 1);
    }

    void nothingComesOfNothing() { QVERIFY(withContrast(QImage()).isNull()); }
};

QTEST_GUILESS_MAIN(TestContrast)
#include "tst_contrast.moc"
