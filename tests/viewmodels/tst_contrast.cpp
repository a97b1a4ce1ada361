// What makes a pale picture easier to see. The method itself is held against OpenCV in tests/oracles.
#include <QtTest>
#include <random>

#include "ports/contrast.h"

using namespace burrow;

namespace {

constexpr int side = 400;
constexpr int bright = 128;
constexpr int faint = 120;

/// A plate in the middle that hardly differs from what is around it, with the grain of a photo: of two even
/// greys, limited contrast would be right to leave both alone.
QImage palePlate() {
    QImage picture(side, side, QImage::Format_RGB32);
    std::mt19937 random(5);
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            const bool isPlate = x >= 170 && x < 230 && y >= 170 && y < 230;
            const auto grain = static_cast<int>(random() % 9) - 4;
            const int grey = (isPlate ? faint : bright) + grain;
            picture.setPixel(x, y, qRgb(grey, grey, grey));
        }
    }
    return picture;
}

double meanAround(const QImage& picture, int middle) {
    double sum = 0;
    for (int y = 180; y < 220; ++y) {
        for (int x = middle - 10; x < middle + 10; ++x) sum += qRed(picture.pixel(x, y));
    }
    return sum / (40 * 20);
}

/// How much darker the plate is than what is beside it.
double stepOf(const QImage& picture) { return meanAround(picture, 155) - meanAround(picture, 185); }

}  // namespace

class TestContrast : public QObject {
    Q_OBJECT

private slots:
    void aPalePlateStandsOut() {
        const auto raised = withContrast(palePlate());
        QCOMPARE(raised.size(), QSize(side, side));
        QVERIFY2(stepOf(raised) > 1.5 * (bright - faint),
                 qPrintable(QString::number(stepOf(raised))));
    }

    void aFewBrightSpotsDoNotHideIt() {
        auto picture = palePlate();
        for (int i = 0; i < 100; ++i) picture.setPixel(3 * i, 10, qRgb(255, 255, 255));
        QVERIFY(stepOf(withContrast(picture)) > 1.5 * (bright - faint));
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
