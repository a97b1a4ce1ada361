#include "print/preview.h"

#include <QPainter>
#include <cmath>

#include "print/painter.h"

namespace burrow::print {

QImage renderPreview(const documents::Page& page, double dotsPerInch) {
    const double dotsPerMm = dotsPerInch / 25.4;
    QImage image(static_cast<int>(std::lround(page.width.value * dotsPerMm)),
                 static_cast<int>(std::lround(page.height.value * dotsPerMm)),
                 QImage::Format_RGB32);
    if (image.isNull()) return image;
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.scale(dotsPerMm, dotsPerMm);
    paint(page, painter);
    return image;
}

}  // namespace burrow::print
