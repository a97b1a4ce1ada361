// What holds for every control in the gallery: names, target sizes, nothing cut at large text on a
// narrow phone.
#include <QAccessible>
#include <QDir>
#include <QQuickItem>
#include <QQuickView>
#include <QtTest>

#include "support/screens.h"

using burrow::test::Look;

namespace {

/// No control may be smaller than 48 dp either way (Android's and WCAG 2.2's larger figure, 44, and
/// the design's own minimum).
constexpr qreal kLeastTarget = 48;

bool isControl(const QQuickItem& item) { return item.inherits("QQuickAbstractButton"); }

bool isText(const QQuickItem& item) { return item.inherits("QQuickText"); }

template <class Visit>
void walk(QQuickItem& item, const Visit& visit) {
    if (!item.isVisible()) return;
    visit(item);
    for (QQuickItem* child : item.childItems()) walk(*child, visit);
}

QStringList wordsIn(QQuickItem& control) {
    QStringList words;
    walk(control, [&](QQuickItem& item) {
        const QString text = isText(item) ? item.property("text").toString() : QString();
        if (!text.isEmpty()) words.append(text);
    });
    return words;
}

}  // namespace

class AccessibleTest : public QObject {
    Q_OBJECT

private slots:
    void initTestCase();
    void pagesFit_data();
    void pagesFit();
    void undoBarAnnouncesItself();

private:
    void open(const QString& page, int width);

    QQuickView view_;
};

void AccessibleTest::initTestCase() {
    burrow::test::prepare(*view_.engine());
    QAccessible::setActive(true);
}

void AccessibleTest::open(const QString& page, int width) {
    view_.setSource(
        QUrl::fromLocalFile(QStringLiteral(BURROW_UI_TEST_DIR "/gallery/%1.qml").arg(page)));
    QVERIFY(view_.rootObject());
    view_.setResizeMode(QQuickView::SizeRootObjectToView);
    view_.resize(width, 640);
    view_.show();
    QVERIFY(QTest::qWaitForWindowExposed(&view_));
    QTRY_COMPARE(view_.rootObject()->width(), width);
    view_.grabWindow();
}

void AccessibleTest::pagesFit_data() {
    QTest::addColumn<QString>("page");
    QTest::addColumn<double>("scale");
    QTest::addColumn<int>("width");
    const QDir folder(QStringLiteral(BURROW_UI_TEST_DIR "/gallery"));
    for (const QFileInfo& file : folder.entryInfoList({QStringLiteral("*.qml")})) {
        if (file.baseName().front().isUpper()) continue;
        for (const double scale : {0.85, 1.0, 1.3, 1.6, 2.0}) {
            for (const int width : {360, 412, 900}) {
                QTest::addRow("%s %.2f %d", qPrintable(file.baseName()), scale, width)
                    << file.baseName() << scale << width;
            }
        }
    }
}

void AccessibleTest::pagesFit() {
    QFETCH(const QString, page);
    QFETCH(const double, scale);
    QFETCH(const int, width);
    burrow::test::wear(*view_.engine(), {.textScale = scale});
    open(page, width);
    QStringList faults;
    walk(*view_.rootObject(), [&](QQuickItem& item) {
        const QString id = QString::fromLatin1(item.metaObject()->className());
        if (isText(item)) {
            const QString text = item.property("text").toString();
            if (item.property("contentWidth").toReal() > item.width() + 1) {
                faults.append(id + QStringLiteral(" is wider than its place: ") + text);
            }
            if (item.property("truncated").toBool()) {
                faults.append(id + QStringLiteral(" is cut: ") + text);
            }
            const QPointF right = item.mapToScene({item.width(), 0});
            if (right.x() > width + 1)
                faults.append(id + QStringLiteral(" leaves the page: ") + text);
        }
        if (!isControl(item)) return;
        if (item.isEnabled() && (item.width() < kLeastTarget || item.height() < kLeastTarget)) {
            faults.append(
                QStringLiteral("%1 is only %2 by %3").arg(id).arg(item.width()).arg(item.height()));
        }
        auto* face = QAccessible::queryAccessibleInterface(&item);
        const QString said =
            face->text(QAccessible::Name) + QLatin1Char(' ') + face->text(QAccessible::Description);
        if (face->text(QAccessible::Name).isEmpty())
            faults.append(id + QStringLiteral(" has no name"));
        for (const QString& word : wordsIn(item)) {
            if (!said.contains(word)) {
                faults.append(
                    QStringLiteral("%1 shows \"%2\" but is called \"%3\"").arg(id, word, said));
            }
        }
    });
    QVERIFY2(faults.isEmpty(), qPrintable(faults.join(QLatin1Char('\n'))));
}

void AccessibleTest::undoBarAnnouncesItself() {
    burrow::test::wear(*view_.engine(), {});
    open(QStringLiteral("round"), 412);
    QQuickItem* bar = nullptr;
    walk(*view_.rootObject(), [&](QQuickItem& item) {
        if (item.metaObject()->indexOfSignal("undone()") >= 0) bar = &item;
    });
    QVERIFY(bar);
    const QQuickItem* focused = view_.activeFocusItem();
    bar->setProperty("message", QStringLiteral("refused 1 locust"));
    bar->setProperty("serial", 7);
    // The platform plugin used here has no screen reader to ask, so what it would be told is read.
    const auto said = [&] {
        QString text;
        walk(*bar, [&](QQuickItem& item) {
            auto* face = QAccessible::queryAccessibleInterface(&item);
            if (face && face->role() == QAccessible::AlertMessage)
                text = face->text(QAccessible::Name);
        });
        return text;
    };
    QTRY_COMPARE(said(), QStringLiteral("260 refused 1 locust. Undo"));
    QCOMPARE(view_.activeFocusItem(), focused);
}

QTEST_MAIN(AccessibleTest)
#include "tst_accessible.moc"
