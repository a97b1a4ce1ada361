// Every component in both themes and at several text sizes, against committed pictures.
#include <QDir>
#include <QQuickItem>
#include <QQuickView>
#include <QtTest>

#include "support/screens.h"

using burrow::test::compareScreen;
using burrow::test::Look;

class Gallery : public QObject {
    Q_OBJECT

private slots:
    void initTestCase() { burrow::test::prepare(*view_.engine()); }
    void looksAsBefore_data();
    void looksAsBefore();

private:
    QQuickView view_;
};

void Gallery::looksAsBefore_data() {
    QTest::addColumn<QString>("page");
    QTest::addColumn<Look>("look");
    const QDir folder(QStringLiteral(BURROW_UI_TEST_DIR "/gallery"));
    const QStringList large{QStringLiteral("buttons"), QStringLiteral("rows"),
                            QStringLiteral("round")};
    for (const QFileInfo& file : folder.entryInfoList({QStringLiteral("*.qml")})) {
        if (file.baseName().front().isUpper()) continue;  // parts of a page
        QList<double> scales{1.0, 1.6};
        if (large.contains(file.baseName())) scales.append(2.0);
        for (const bool day : {false, true}) {
            for (const double scale : scales) {
                const Look look{.day = day, .textScale = scale};
                const QString name = file.baseName() + burrow::test::suffix(look);
                QTest::newRow(qPrintable(name)) << file.baseName() << look;
            }
        }
    }
    QTest::newRow("bars_dim_left") << QStringLiteral("bars") << Look{.leftHanded = true};
    QTest::newRow("rows_dim_left") << QStringLiteral("rows") << Look{.leftHanded = true};
    QTest::newRow("bars_day_still")
        << QStringLiteral("bars") << Look{.day = true, .reducedMotion = true};
}

void Gallery::looksAsBefore() {
    QFETCH(const QString, page);
    QFETCH(const Look, look);
    burrow::test::wear(*view_.engine(), look);
    view_.setSource(
        QUrl::fromLocalFile(QStringLiteral(BURROW_UI_TEST_DIR "/gallery/%1.qml").arg(page)));
    QVERIFY2(view_.status() == QQuickView::Ready, "the page does not load");
    view_.setResizeMode(QQuickView::SizeRootObjectToView);
    QQuickItem& root = *view_.rootObject();
    view_.show();
    QVERIFY(QTest::qWaitForWindowExposed(&view_));
    // Text wraps once the width is known, and the height follows.
    const auto fits = [&] {
        const int height = qCeil(root.implicitHeight());
        view_.resize(412, height);
        return root.width() == 412 && root.height() == height;
    };
    QTRY_VERIFY(fits());
    if (root.property("ready").isValid()) QTRY_VERIFY(root.property("ready").toBool());
    QCOMPARE(compareScreen(view_, QLatin1String(QTest::currentDataTag())), QString());
}

QTEST_MAIN(Gallery)
#include "tst_gallery.moc"
