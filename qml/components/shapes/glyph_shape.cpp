#include "glyph_shape.h"

#include <QFile>
#include <QPainter>
#include <QSvgRenderer>
#include <algorithm>

namespace burrow {

GlyphShape::GlyphShape(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &GlyphShape::changed, this, [this] { update(); });
}

void GlyphShape::paint(QPainter* painter) {
    if (name_.isEmpty()) return;
    QFile file(QStringLiteral(":/burrow/icons/%1.svg").arg(name_));
    if (!file.open(QIODevice::ReadOnly)) {
        qWarning("There is no icon called \"%s\"", qPrintable(name_));
        return;
    }
    QByteArray drawing = file.readAll();
    drawing.replace("currentColor", color_.name(QColor::HexRgb).toLatin1());
    QSvgRenderer renderer(drawing);
    const qreal side = std::min(width(), height());
    painter->setOpacity(static_cast<qreal>(color_.alphaF()));
    renderer.render(painter, QRectF((width() - side) / 2, (height() - side) / 2, side, side));
}

}  // namespace burrow
