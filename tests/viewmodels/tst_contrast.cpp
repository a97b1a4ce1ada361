// What makes a pale picture easier to see.
#include <QtTest>

#include "ports/contrast.h"

using namespace burrow;

class TestContrast : public QObject {
    Q_OBJECT

private slots:
    /// Greys 100 to 149, ten pixels each: of 500 the darkest and the lightest five are cut off, which are
    /// within the first and the last grey. So 100 becomes 0, 149 becomes 255, and 124 is 24 x 255 / 49.
    void greysAreSpread() {
        QImage picture(50, 10, QImage::Format_RGB32);
        for (int x = 0; x < 50; ++x) {
            for (int y = 0; y < 10; ++y) picture.setPixel(x, y, qRgb(100 + x, 100 + x, 100 + x));
        }
        const auto spread = withContrast(picture);
        QCOMPARE(spread.size(), picture.size());
        QCOMPARE(qRed(spread.pixel(0, 0)), 0);
        QCOMPARE(qRed(spread.pixel(49, 0)), 255);
        QCOMPARE(qRed(spread.pixel(24, 5)), 24 * 255 / 49);
        for (int x = 1; x < 50; ++x)
            QVERIFY(qRed(spread.pixel(x, 0)) > qRed(spread.pixel(x - 1, 0)));
    }

    void coloursGoAlong() {
        QImage picture(100, 1, QImage::Format_RGB32);
        for (int x = 0; x < 100; ++x) picture.setPixel(x, 0, qRgb(80 + x, 60 + x, 40 + x));
        const auto spread = withContrast(picture);
        const auto middle = spread.pixel(50, 0);
        QVERIFY(qRed(middle) > qGreen(middle) && qGreen(middle) > qBlue(middle));
    }

    void whatHasNoDetailStaysAsItIs() {
        QImage picture(20, 20, QImage::Format_RGB32);
        picture.fill(qRgb(120, 110, 100));
        QCOMPARE(withContrast(picture).pixel(3, 3), qRgb(120, 110, 100));
        QVERIFY(withContrast(QImage()).isNull());
    }

    void aFewBrightSpotsDoNotHideTheRest() {
        QImage picture(100, 100, QImage::Format_RGB32);
        for (int x = 0; x < 100; ++x) {
            for (int y = 0; y < 100; ++y) {
                const int grey = 100 + x / 4;
                picture.setPixel(x, y, qRgb(grey, grey, grey));
            }
        }
        for (int i = 0; i < 50; ++i) picture.setPixel(i, i, qRgb(255, 255, 255));
        const auto spread = withContrast(picture);
        QVERIFY(qRed(spread.pixel(99, 0)) > 240);
    }
};

QTEST_GUILESS_MAIN(TestContrast)
#include "tst_contrast.moc"
