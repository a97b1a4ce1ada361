// Rendered photos of a mat as files, for tests that hand them to the app. Small ones: tests are compiled
// without optimisation.
#pragma once

#include <QByteArray>
#include <QImage>

#include "support/mat_photo.h"

namespace burrow::test {

/// 1.2 megapixels show an A5 mat at some 6 pixels to a millimetre.
inline Shot smallShot(double tilt = 8) {
    Shot shot;
    shot.megapixels = 1.2;
    shot.tilt = tilt;
    shot.azimuth = 30;
    shot.blur = 0.4;
    shot.noise = 1.5;
    return shot;
}

inline QByteArray bytesFrom(const pictures::Raster& photo, int quality = 92) {
    const auto jpeg = pictures::encodeJpeg(photo, quality).value();
    return {reinterpret_cast<const char*>(jpeg.data()), static_cast<qsizetype>(jpeg.size())};
}

/// An A5 mat with a carapace of 15 mm in the middle of the place for the moult. Without `fill` the camera
/// is so far away that all of it shows.
inline QByteArray matJpeg(const SheetOptions& options = {}, const Shot& shot = smallShot()) {
    SheetOptions coarse = options;
    coarse.perMm = 14;
    const auto seen = seenOf(measure::MatPaper::a5);
    return bytesFrom(
        developed(matSheet(measure::MatPaper::a5, coarse), shot, cameraOf(shot, seen)));
}

/// Where a point of an A5 sheet is in the flattened picture of the place for the moult and 4 mm around it.
inline QPointF flatPart(double xMm, double yMm) {
    const auto& place = measure::layoutOf(measure::MatPaper::a5).moult;
    return {(xMm - place.x.value + 4) / (place.width.value + 8),
            (yMm - place.y.value + 4) / (place.height.value + 8)};
}

/// The ends of the drawn carapace, 15 mm apart.
inline std::array<QPointF, 2> carapaceEnds() {
    const auto middle = measure::layoutOf(measure::MatPaper::a5).moult.centre();
    return {flatPart(middle.x.value, middle.y.value - 7.5),
            flatPart(middle.x.value, middle.y.value + 7.5)};
}

}  // namespace burrow::test
