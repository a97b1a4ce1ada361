// The tokens as the pages see them: contrast, low blue, type and scaling.
#include <QColor>
#include <QFontInfo>
#include <QQmlComponent>
#include <QQmlEngine>
#include <QtTest>
#include <cmath>

#include "support/screens.h"

using burrow::test::Look;

namespace {

/// Relative luminance of WCAG 2.1 (W3C Recommendation, 2018), section "relative luminance".
double luminance(const QColor& color) {
    const auto linear = [](double c) {
        return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(color.redF()) + 0.7152 * linear(color.greenF()) +
           0.0722 * linear(color.blueF());
}

/// Contrast ratio of WCAG 2.1, 1 to 21.
double contrast(const QColor& a, const QColor& b) {
    const double light = std::max(luminance(a), luminance(b));
    const double dark = std::min(luminance(a), luminance(b));
    return (light + 0.05) / (dark + 0.05);
}

QColor over(const QColor& top, double alpha, const QColor& below) {
    const auto mix = [alpha](double a, double b) { return a * alpha + b * (1 - alpha); };
    return QColor::fromRgbF(static_cast<float>(mix(top.redF(), below.redF())),
                            static_cast<float>(mix(top.greenF(), below.greenF())),
                            static_cast<float>(mix(top.blueF(), below.blueF())));
}

constexpr const char* kRoles[] = {"ground",  "strip", "raised", "well", "ink",
                                  "inkSoft", "rule",  "edge",   "act",  "actInk",
                                  "ok",      "warn",  "stop",   "est",  "hatch"};
constexpr const char* kPapers[] = {"ground", "strip", "raised", "well"};
constexpr const char* kSteps[] = {"tagHuge", "tagLarge",   "tag",   "title",        "heading",
                                  "latin",   "latinLarge", "slab",  "action",       "body",
                                  "reason",  "bodyStrong", "label", "reasonStrong", "measure",
                                  "tick",    "barLabel"};

}  // namespace

class TokensTest : public QObject {
    Q_OBJECT

private slots:
    void initTestCase();
    void init() { wear({}); }
    void textIsLegibleOnEveryPaper_data() { looks(); }
    void textIsLegibleOnEveryPaper();
    void shapesAreVisibleOnEveryPaper_data() { looks(); }
    void shapesAreVisibleOnEveryPaper();
    void filledControlsAndBandsAreLegible_data() { looks(); }
    void filledControlsAndBandsAreLegible();
    void contrastFormulaGivesTheKnownExtremes();
    void dimRoomHoldsBackBlue();
    void themeChangesAtOnceAndBack();
    void textScaleIsHeldWithinItsRange();
    void largeTagsStopGrowing();
    void rowsAndRoundChangeShapeWhereTheDesignSays();
    void everyStepIsSetInABundledFace();
    void linesAreExactlyAsHighAsTheirStep();
    void reducedMotionShortensEverything();

private:
    static void looks() {
        QTest::addColumn<bool>("day");
        QTest::newRow("dim") << false;
        QTest::newRow("day") << true;
    }
    void wear(const Look& look) { burrow::test::wear(engine_, look); }
    QVariant token(const char* name) const { return tokens_->property(name); }
    QColor color(const char* name) const { return token(name).value<QColor>(); }

    QQmlEngine engine_;
    std::unique_ptr<QObject> holder_;
    QObject* tokens_ = nullptr;
};

void TokensTest::initTestCase() {
    burrow::test::prepare(engine_);
    QQmlComponent component(&engine_);
    component.setData(
        "import QtQml\nimport Burrow.Components\n"
        "QtObject { property QtObject tokens: Tokens }",
        QUrl());
    holder_.reset(component.create());
    QVERIFY2(holder_, qPrintable(component.errorString()));
    tokens_ = holder_->property("tokens").value<QObject*>();
}

// Text: 4.5 (WCAG 2.1, 1.4.3, AA); in Daylight 7 (1.4.6, AAA), which the design asks for.
void TokensTest::textIsLegibleOnEveryPaper() {
    QFETCH(const bool, day);
    wear({.day = day});
    for (const char* text : {"ink", "inkSoft", "ok", "warn", "stop", "est", "act"}) {
        for (const char* paper : kPapers) {
            const double ratio = contrast(color(text), color(paper));
            QVERIFY2(ratio >= (day ? 7.0 : 4.5),
                     qPrintable(QStringLiteral("%1 on %2: %3").arg(text, paper).arg(ratio)));
        }
    }
}

// Shapes and plot lines: 3 (WCAG 2.1, 1.4.11).
void TokensTest::shapesAreVisibleOnEveryPaper() {
    QFETCH(const bool, day);
    wear({.day = day});
    for (const char* shape : {"edge", "hatch"}) {
        for (const char* paper : kPapers) {
            const double ratio = contrast(color(shape), color(paper));
            QVERIFY2(ratio >= 3.0,
                     qPrintable(QStringLiteral("%1 on %2: %3").arg(shape, paper).arg(ratio)));
        }
    }
}

void TokensTest::filledControlsAndBandsAreLegible() {
    QFETCH(const bool, day);
    wear({.day = day});
    const double text = day ? 7.0 : 4.5;
    QVERIFY(contrast(color("actInk"), color("act")) >= text);
    QVERIFY(contrast(color("actInk"), color("actPressed")) >= 4.5);
    QVERIFY(contrast(color("ink"), color("pressed")) >= text);
    const QColor held = over(color("strip"), color("heldStrip").alphaF(), color("ground"));
    QVERIFY(contrast(color("inkSoft"), held) >= text);
    const QColor moult = over(color("est"), token("moultBandPeak").toDouble(), color("strip"));
    QVERIFY(contrast(color("ink"), moult) >= 3.0);
    const QColor plot = over(color("est"), token("plotBandPeak").toDouble(), color("strip"));
    QVERIFY(contrast(color("est"), plot) >= 3.0);
    QVERIFY(contrast(color("ink"), plot) >= 4.5);
}

void TokensTest::contrastFormulaGivesTheKnownExtremes() {
    QCOMPARE(contrast(Qt::black, Qt::white), 21.0);
    QCOMPARE(contrast(Qt::white, Qt::white), 1.0);
    // A published pair: #767676 on white is the lightest grey that passes 4.5 (WebAIM; 4.54).
    QVERIFY(std::abs(contrast(QColor("#767676"), Qt::white) - 4.54) < 0.005);
}

void TokensTest::dimRoomHoldsBackBlue() {
    for (const char* role : kRoles) {
        const QColor c = color(role);
        QVERIFY2(c.blueF() <= 0.76F * c.redF(), role);
    }
}

void TokensTest::themeChangesAtOnceAndBack() {
    const QColor dim = color("ground");
    wear({.day = true});
    QCOMPARE_NE(color("ground"), dim);
    QVERIFY(token("day").toBool());
    wear({.day = false});
    QCOMPARE(color("ground"), dim);
}

void TokensTest::textScaleIsHeldWithinItsRange() {
    const auto pixels = [this](const char* step) {
        return token(step).value<QObject*>()->property("pixels").toInt();
    };
    wear({.textScale = 0.1});
    QCOMPARE(token("factor").toDouble(), 0.85);
    QCOMPARE(pixels("body"), 14);
    wear({.textScale = 5});
    QCOMPARE(token("factor").toDouble(), 2.0);
    QCOMPARE(pixels("body"), 34);
    QCOMPARE(pixels("tick"), 26);
}

void TokensTest::largeTagsStopGrowing() {
    wear({.textScale = 2});
    QCOMPARE(token("tagHuge").value<QObject*>()->property("pixels").toInt(), 90);
    wear({.textScale = 1.1});
    QCOMPARE(token("tagHuge").value<QObject*>()->property("pixels").toInt(), 79);
}

void TokensTest::rowsAndRoundChangeShapeWhereTheDesignSays() {
    wear({.textScale = 1.29});
    QVERIFY(!token("rowsStack").toBool());
    wear({.textScale = 1.3});
    QVERIFY(token("rowsStack").toBool());
    QVERIFY(!token("roundCompact").toBool());
    wear({.textScale = 1.5});
    QVERIFY(token("roundCompact").toBool());
}

void TokensTest::everyStepIsSetInABundledFace() {
    for (const char* name : kSteps) {
        const auto* step = token(name).value<QObject*>();
        QVERIFY2(step, name);
        const auto asked = step->property("font").value<QFont>();
        const QFontInfo got(asked);
        QCOMPARE(got.family(), asked.family());
        QCOMPARE(got.weight(), static_cast<int>(asked.weight()));
        QCOMPARE(got.italic(), asked.italic());
        QCOMPARE(got.pixelSize(), asked.pixelSize());
    }
}

void TokensTest::linesAreExactlyAsHighAsTheirStep() {
    QQmlComponent component(&engine_);
    component.setData("import Burrow.Components\nStepText { step: Tokens.body; text: 'Ag\\nAg' }",
                      QUrl());
    const std::unique_ptr<QObject> text(component.create());
    QVERIFY2(text, qPrintable(component.errorString()));
    for (const double scale : {1.0, 1.37, 1.6, 2.0}) {
        wear({.textScale = scale});
        for (const char* name : kSteps) {
            text->setProperty("step", token(name));
            const int line = token(name).value<QObject*>()->property("lineHeight").toInt();
            QCOMPARE(text->property("implicitHeight").toDouble(), 2.0 * line);
        }
    }
}

void TokensTest::reducedMotionShortensEverything() {
    QCOMPARE(token("punchTime").toInt(), 140);
    wear({.reducedMotion = true});
    for (const char* time : {"punchTime", "undoInTime", "nextTime", "sheetTime"}) {
        QCOMPARE(token(time).toInt(), 90);
    }
}

QTEST_MAIN(TokensTest)
#include "tst_tokens.moc"
