// Screenshots against committed references, for tests of anything that is drawn.
#pragma once

#include <QImage>
#include <QString>

class QQmlEngine;
class QQuickWindow;

namespace burrow::test {

/// How a page is shown while a test looks at it: the settings that Tokens takes from the keeper.
struct Look {
    bool day = false;
    double textScale = 1.0;
    bool reducedMotion = false;
    bool leftHanded = false;
};

/// "_dim", "_day_160", "_dim_160_left" ...: what a reference's name says about its look.
[[nodiscard]] QString suffix(const Look& look);

/// Registers the bundled fonts and makes the modules of the program importable. Aborts the test
/// program when a font is missing, because every picture would be wrong.
void prepare(QQmlEngine& engine);

/// Puts the Tokens of this engine into `look`.
void wear(QQmlEngine& engine, const Look& look);

/// Compares a picture with tests/references/<name>.png. Returns an empty string when they agree,
/// else a sentence that says how they differ and where the actual and the difference picture were
/// written (the build folder's screens/).
///
/// The software renderer draws the same bytes on every run, so no pixel may differ; a pixel counts
/// as different only from 3 of 255 in a channel on, because Qt's raster engine has one code path
/// per instruction set (SSE2, AVX2, NEON) and those round blended edges by one or two steps.
///
/// With BURROW_ACCEPT_SCREENS=1 in the environment the picture becomes the reference instead.
[[nodiscard]] QString compareScreen(const QImage& actual, const QString& name);

/// Renders the window now and compares it.
[[nodiscard]] QString compareScreen(QQuickWindow& window, const QString& name);

}  // namespace burrow::test
