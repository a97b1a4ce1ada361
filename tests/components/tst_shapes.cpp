// The painted items: scales, hit areas, and what they draw where.
#include <QPainter>
#include <QQmlComponent>
#include <QQmlEngine>
#include <QQuickView>
#include <QSignalSpy>
#include <QtTest>

#include "shapes/band_plot_shape.h"
#include "shapes/moult_line_shape.h"
#include "shapes/punch_shape.h"
#include "shapes/qr_shape.h"
#include "shapes/step_plot_shape.h"
#include "support/screens.h"

using burrow::BandPlotShape;
using burrow::MoultLineShape;
using burrow::PunchShape;
using burrow::QrShape;
using burrow::StepPlotShape;

namespace {

struct GadgetMark {
    Q_GADGET
    Q_PROPERTY(int day MEMBER day)
    Q_PROPERTY(qreal height MEMBER height)

public:
    int day = 0;
    qreal height = 0;
};

QVariantMap mark(int day, qreal height) {
    return {{QStringLiteral("day"), day}, {QStringLiteral("height"), height}};
}

QImage painted(QQuickPaintedItem& item, QColor ground = Qt::white) {
    QImage picture(static_cast<int>(item.width()), static_cast<int>(item.height()),
                   QImage::Format_RGB32);
    picture.fill(ground);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    item.paint(&painter);
    return picture;
}

}  // namespace

class ShapesTest : public QObject {
    Q_OBJECT

private slots:
    void punchesDiffer();
    void punchWithoutAName();
    void moultLineIsLinear();
    void moultLineTakesMapsAndGadgets();
    void nearestMarkWinsWithin24();
    void tapsAreReportedOnce();
    void arrowKeysReachEveryMark();
    void aTallerCarapaceMakesATallerTick();
    void aFarForecastDoesNotSquashTheRecord();
    void emptyAndOddDataDrawWithoutHarm();
    void gridHasAtMostFourLines_data();
    void gridHasAtMostFourLines();
    void aCutAxisHasAtMostFourLines_data();
    void aCutAxisHasAtMostFourLines();
    void qrModulesAreWholePixels();
    void sameValueDoesNotRepaint();
};

void ShapesTest::punchesDiffer() {
    QList<QImage> pictures;
    for (const char* kind : {"blank", "feed", "hold", "premoult", "group", "sac", "look", "done",
                             "sold", "slash", "none"}) {
        PunchShape punch;
        punch.setSize({24, 24});
        punch.setKindName(QString::fromLatin1(kind));
        QCOMPARE(punch.kindName(), QString::fromLatin1(kind));
        // One tone for all: every state must read in greyscale, by its shape.
        punch.setProperty("tone", QColor(Qt::black));
        pictures.append(painted(punch));
    }
    // "blank" and "feed" share the open ring and differ by tone; the rest differ by shape.
    QCOMPARE(pictures[0], pictures[1]);
    for (qsizetype a = 1; a < pictures.size(); ++a) {
        for (qsizetype b = a + 1; b < pictures.size(); ++b) QVERIFY(pictures[a] != pictures[b]);
    }
}

void ShapesTest::punchWithoutAName() {
    PunchShape punch;
    punch.setSize({24, 24});
    QTest::ignoreMessage(QtWarningMsg, "There is no punch called \"eaten\"");
    punch.setKindName(QStringLiteral("eaten"));
    QImage nothing(24, 24, QImage::Format_RGB32);
    nothing.fill(Qt::white);
    QCOMPARE(painted(punch), nothing);
}

void ShapesTest::moultLineIsLinear() {
    MoultLineShape line;
    line.setSize({352, 168});
    line.setMarks({mark(1000, 5), mark(1200, 10)});
    line.setProperty("nowDay", 1400);
    const qreal step = line.xOf(1200) - line.xOf(1000);
    QVERIFY(step > 50);
    QCOMPARE(line.xOf(1400) - line.xOf(1200), step);
    QCOMPARE(line.xOf(1100) - line.xOf(1000), step / 2);
    QVERIFY(line.xOf(1400) < 352);
}

void ShapesTest::moultLineTakesMapsAndGadgets() {
    MoultLineShape line;
    line.setSize({352, 168});
    line.setProperty("nowDay", 100);
    line.setMarks({mark(10, 5), mark(60, 8)});
    const QImage fromMaps = painted(line);
    GadgetMark first;
    first.day = 10;
    first.height = 5;
    GadgetMark second;
    second.day = 60;
    second.height = 8;
    line.setMarks({QVariant::fromValue(first), QVariant::fromValue(second)});
    QCOMPARE(painted(line), fromMaps);
}

void ShapesTest::nearestMarkWinsWithin24() {
    MoultLineShape line;
    line.setSize({352, 168});
    line.setMarks({mark(0, 5), mark(20, 6), mark(200, 9)});
    line.setProperty("startDay", -1);
    line.setProperty("nowDay", 300);
    const qreal first = line.xOf(0);
    const qreal second = line.xOf(20);
    QVERIFY(second - first < 24);
    QCOMPARE(line.markAt(first - 1), 0);
    QCOMPARE(line.markAt(second + 1), 1);
    QCOMPARE(line.markAt((first + second) / 2 - 0.5), 0);
    QCOMPARE(line.markAt((first + second) / 2 + 0.5), 1);
    QCOMPARE(line.markAt(second + 23.5), 1);
    QCOMPARE(line.markAt(second + 24.5), -1);
}

void ShapesTest::tapsAreReportedOnce() {
    QQuickView view;
    auto* line = new MoultLineShape(view.contentItem());
    line->setSize({352, 168});
    line->setMarks({mark(0, 5), mark(200, 9)});
    line->setProperty("nowDay", 300);
    line->setTappable(true);
    view.resize(352, 168);
    view.show();
    QVERIFY(QTest::qWaitForWindowExposed(&view));
    QSignalSpy taps(line, &MoultLineShape::markTapped);
    const QPoint at(static_cast<int>(line->xOf(200)), 100);
    QTest::mouseClick(&view, Qt::LeftButton, {}, at);
    QCOMPARE(taps.size(), 1);
    QCOMPARE(taps[0][0].toInt(), 1);
    // A drip: the second touch within 250 ms does not count.
    QTest::mouseClick(&view, Qt::LeftButton, {}, at);
    QCOMPARE(taps.size(), 1);
    // Released away from the mark that was pressed.
    QTest::qWait(260);
    QTest::mousePress(&view, Qt::LeftButton, {}, at);
    QTest::mouseRelease(&view, Qt::LeftButton, {}, at - QPoint(100, 0));
    QCOMPARE(taps.size(), 1);
}

void ShapesTest::arrowKeysReachEveryMark() {
    QQuickView view;
    auto* line = new MoultLineShape(view.contentItem());
    line->setSize({352, 168});
    line->setMarks({mark(0, 5), mark(100, 7), mark(200, 9)});
    line->setProperty("nowDay", 300);
    line->setTappable(true);
    view.show();
    view.requestActivate();
    QVERIFY(QTest::qWaitForWindowActive(&view));
    line->forceActiveFocus(Qt::TabFocusReason);
    QCOMPARE(line->current(), 2);
    QSignalSpy taps(line, &MoultLineShape::markTapped);
    QTest::keyClick(&view, Qt::Key_Left);
    QTest::keyClick(&view, Qt::Key_Left);
    QTest::keyClick(&view, Qt::Key_Left);
    QCOMPARE(line->current(), 0);
    QTest::keyClick(&view, Qt::Key_Return);
    QCOMPARE(taps.size(), 1);
    QCOMPARE(taps[0][0].toInt(), 0);
}

void ShapesTest::aTallerCarapaceMakesATallerTick() {
    MoultLineShape line;
    line.setSize({352, 168});
    line.setMarks({mark(0, 10), mark(200, 20)});
    line.setProperty("nowDay", 400);
    const QImage picture = painted(line);
    const auto height = [&](int day) {
        const int x = static_cast<int>(line.xOf(day));
        int count = 0;
        // The axis and the feedings below it are not part of the tick.
        for (int y = 0; y < 122; ++y) count += qGray(picture.pixel(x, y)) < 64 ? 1 : 0;
        return count;
    };
    QVERIFY(height(200) > 60);
    QVERIFY(std::abs(height(200) - 2 * height(0)) <= 3);
}

void ShapesTest::aFarForecastDoesNotSquashTheRecord() {
    MoultLineShape line;
    line.setSize({352, 168});
    line.setMarks({mark(1000, 3), mark(1030, 4)});
    line.setProperty("nowDay", 1040);
    line.setForecast({{QStringLiteral("from"), 1060},
                      {QStringLiteral("median"), 1080},
                      {QStringLiteral("to"), 3000}});
    QVERIFY(line.xOf(1040) - line.xOf(1000) > 90);
    QVERIFY(line.xOf(1080) < 352);
}

void ShapesTest::emptyAndOddDataDrawWithoutHarm() {
    MoultLineShape line;
    line.setSize({352, 168});
    (void)painted(line);
    line.setMarks({mark(50, 0), mark(50, 0), QVariant(), QStringLiteral("nonsense")});
    line.setFeedings({QVariantMap{{QStringLiteral("day"), 1 << 30}}});
    line.setForecast({{QStringLiteral("from"), 9}, {QStringLiteral("to"), 3}});
    (void)painted(line);
    for (const auto size : {MoultLineShape::InRow, MoultLineShape::InHeader}) {
        line.setProperty("size", size);
        line.setSize({62, 27});
        (void)painted(line);
    }
    StepPlotShape plot;
    plot.setSize({344, 160});
    (void)painted(plot);
    plot.setPoints({QVariantMap{{QStringLiteral("day"), 5}, {QStringLiteral("value"), -3.0}}});
    (void)painted(plot);
    BandPlotShape band;
    band.setSize({344, 160});
    (void)painted(band);
    band.setPoints({QVariant(), QVariantMap{{QStringLiteral("at"), 9.0}}, QStringLiteral("none")});
    band.setLabels({QVariantMap{{QStringLiteral("at"), -2.0}}});
    (void)painted(band);
}

void ShapesTest::aCutAxisHasAtMostFourLines_data() {
    QTest::addColumn<double>("least");
    QTest::addColumn<double>("most");
    QTest::addColumn<double>("from");
    QTest::addColumn<double>("to");
    QTest::addColumn<double>("step");
    QTest::newRow("a warm room") << 21.3 << 27.9 << 20.0 << 30.0 << 5.0;
    QTest::newRow("one reading") << 24.0 << 24.0 << 23.0 << 25.0 << 1.0;
    QTest::newRow("humidity") << 45.0 << 92.0 << 40.0 << 100.0 << 20.0;
    QTest::newRow("around frost") << -5.0 << 5.0 << -5.0 << 5.0 << 5.0;
}

void ShapesTest::aCutAxisHasAtMostFourLines() {
    QFETCH(const double, least);
    QFETCH(const double, most);
    QFETCH(const double, from);
    QFETCH(const double, to);
    QFETCH(const double, step);
    const auto cut = BandPlotShape::cutFor(least, most);
    QCOMPARE(cut.least, from);
    QCOMPARE(cut.most, to);
    QCOMPARE(cut.step, step);
}

void ShapesTest::gridHasAtMostFourLines_data() {
    QTest::addColumn<double>("most");
    QTest::addColumn<double>("step");
    QTest::newRow("adult carapace") << 30.5 << 10.0;
    QTest::newRow("juvenile") << 24.0 << 5.0;
    QTest::newRow("sling") << 1.4 << 0.5;
    QTest::newRow("exactly four") << 4.0 << 1.0;
    QTest::newRow("slings alive") << 148.0 << 50.0;
    QTest::newRow("nothing") << 0.0 << 1.0;
    QTest::newRow("tiny") << 0.003 << 0.001;
}

void ShapesTest::gridHasAtMostFourLines() {
    QFETCH(const double, most);
    QFETCH(const double, step);
    QCOMPARE(StepPlotShape::gridStep(most), step);
    QVERIFY(most / step < 5);
}

void ShapesTest::qrModulesAreWholePixels() {
    QrShape symbol;
    symbol.setSize({300, 300});
    QByteArray modules(21 * 21, '\0');
    modules[0] = 1;
    symbol.setProperty("modules", modules);
    const QImage picture = painted(symbol, Qt::red);
    // 300 / (21 + 2 * 4) is 10.3, so modules are 10 wide and (300 - 210) / 2 = 45 is left around.
    QCOMPARE(picture.pixelColor(44, 45), QColor(Qt::white));
    QCOMPARE(picture.pixelColor(45, 45), QColor(Qt::black));
    QCOMPARE(picture.pixelColor(54, 54), QColor(Qt::black));
    QCOMPARE(picture.pixelColor(55, 54), QColor(Qt::white));
    QCOMPARE(picture.pixelColor(0, 0), QColor(Qt::white));
}

void ShapesTest::sameValueDoesNotRepaint() {
    MoultLineShape line;
    QSignalSpy changes(&line, &MoultLineShape::changed);
    QSignalSpy marks(&line, &MoultLineShape::marksChanged);
    line.setMarks({mark(1, 2)});
    line.setMarks({mark(1, 2)});
    line.setProperty("nowDay", 5);
    line.setProperty("nowDay", 5);
    QCOMPARE(marks.size(), 1);
    QCOMPARE(changes.size(), 1);
}

QTEST_MAIN(ShapesTest)
#include "tst_shapes.moc"
