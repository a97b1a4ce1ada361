#include "screens.h"

#include <QDir>
#include <QQmlComponent>
#include <QQmlEngine>
#include <QQuickWindow>
#include <algorithm>

#include "fonts.h"

namespace burrow::test {
namespace {

constexpr int kTolerance = 2;

QString referencePath(const QString& name) {
    return QStringLiteral(BURROW_REFERENCES_DIR "/%1.png").arg(name);
}

bool near(QRgb a, QRgb b) {
    return std::abs(qRed(a) - qRed(b)) <= kTolerance &&
           std::abs(qGreen(a) - qGreen(b)) <= kTolerance &&
           std::abs(qBlue(a) - qBlue(b)) <= kTolerance;
}

/// The actual picture dimmed, with every differing pixel in magenta.
QImage difference(const QImage& actual, const QImage& expected, int& differing) {
    QImage picture = actual;
    differing = 0;
    for (int y = 0; y < actual.height(); ++y) {
        for (int x = 0; x < actual.width(); ++x) {
            const bool inside = expected.valid(x, y);
            const QRgb now = actual.pixel(x, y);
            if (inside && near(now, expected.pixel(x, y))) {
                picture.setPixel(x, y, qRgb(qRed(now) / 3, qGreen(now) / 3, qBlue(now) / 3));
            } else {
                picture.setPixel(x, y, qRgb(255, 0, 255));
                ++differing;
            }
        }
    }
    return picture;
}

QString keep(const QImage& picture, const QString& name) {
    QDir().mkpath(QStringLiteral(BURROW_SCREENS_DIR));
    const QString path = QStringLiteral(BURROW_SCREENS_DIR "/%1.png").arg(name);
    picture.save(path, "PNG", 0);  // 0: the smallest file
    return path;
}

}  // namespace

QString suffix(const Look& look) {
    QString text = look.day ? QStringLiteral("_day") : QStringLiteral("_dim");
    if (look.textScale != 1.0) text += QStringLiteral("_%1").arg(qRound(look.textScale * 100));
    if (look.leftHanded) text += QStringLiteral("_left");
    if (look.reducedMotion) text += QStringLiteral("_still");
    return text;
}

void prepare(QQmlEngine& engine) {
    static const bool loaded = loadFonts();
    if (!loaded) qFatal("The bundled fonts are incomplete: no picture would be right");
    engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
}

void wear(QQmlEngine& engine, const Look& look) {
    QQmlComponent component(&engine);
    component.setData(
        "import QtQml\nimport Burrow.Components\n"
        "QtObject { readonly property QtObject tokens: Tokens }",
        QUrl());
    const std::unique_ptr<QObject> holder(component.create());
    if (!holder) qFatal("%s", qPrintable(component.errorString()));
    auto* tokens = holder->property("tokens").value<QObject*>();
    tokens->setProperty("theme", look.day ? 1 : 0);
    tokens->setProperty("textScale", look.textScale);
    tokens->setProperty("reducedMotion", look.reducedMotion);
    tokens->setProperty("leftHanded", look.leftHanded);
}

QString compareScreen(const QImage& picture, const QString& name) {
    const QImage actual = picture.convertToFormat(QImage::Format_RGB888);
    if (qEnvironmentVariableIntValue("BURROW_ACCEPT_SCREENS") == 1) {
        return actual.save(referencePath(name), "PNG", 0)
                   ? QString()
                   : QStringLiteral("%1 cannot be written").arg(referencePath(name));
    }
    const QImage expected(referencePath(name));
    if (expected.isNull()) {
        return QStringLiteral("There is no reference %1; the picture is at %2")
            .arg(referencePath(name), keep(actual, name));
    }
    int differing = 0;
    const QImage marked = difference(actual, expected, differing);
    if (differing == 0 && actual.size() == expected.size()) return {};
    const QString where = keep(actual, name);
    return QStringLiteral("%1: %2 pixels differ, size %3x%4 instead of %5x%6; see %7 and %8")
        .arg(name)
        .arg(differing)
        .arg(actual.width())
        .arg(actual.height())
        .arg(expected.width())
        .arg(expected.height())
        .arg(where, keep(marked, name + QStringLiteral("_difference")));
}

QString compareScreen(QQuickWindow& window, const QString& name) {
    return compareScreen(window.grabWindow(), name);
}

}  // namespace burrow::test
