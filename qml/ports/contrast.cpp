#include "ports/contrast.h"

#include <algorithm>

#include "measure/contrast.h"

namespace burrow {

QImage withContrast(const QImage& picture) {
    if (picture.isNull()) return {};
    const auto source = picture.convertToFormat(QImage::Format_RGB888);
    pictures::Raster raster(source.width(), source.height());
    for (int y = 0; y < source.height(); ++y) {
        std::copy_n(source.constScanLine(y), raster.stride(), raster.row(y));
    }
    const auto raised = measure::withLocalContrast(raster);
    QImage result(raised.width(), raised.height(), QImage::Format_RGB888);
    for (int y = 0; y < raised.height(); ++y) {
        std::copy_n(raised.row(y), raised.stride(), result.scanLine(y));
    }
    return result.convertToFormat(QImage::Format_RGB32);
}

}  // namespace burrow
