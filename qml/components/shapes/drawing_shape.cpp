#include "drawing_shape.h"

#include <QFile>
#include <QPainter>
#include <QSvgRenderer>
#include <algorithm>

namespace burrow {
namespace {

// What the files say for paper and for what is meant; ink is "currentColor".
constexpr const char* paperColour = "#FFFFFF";
constexpr const char* accentColour = "#C86400";

QByteArray nameOf(const QColor& colour) { return colour.name(QColor::HexRgb).toLatin1(); }

}  // namespace

DrawingShape::DrawingShape(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &DrawingShape::changed, this, [this] { update(); });
}

void DrawingShape::setName(const QString& name) {
    if (name_ == name) return;
    name_ = name;
    drawing_.clear();
    size_ = {};
    QFile file(QStringLiteral(":/burrow/drawings/%1.svg").arg(name_));
    if (!name_.isEmpty() && file.open(QIODevice::ReadOnly)) {
        drawing_ = file.readAll();
        size_ = QSvgRenderer(drawing_).viewBoxF().size();
    } else if (!name_.isEmpty()) {
        qWarning("There is no drawing called \"%s\"", qPrintable(name_));
    }
    emit changed();
}

qreal DrawingShape::ratio() const { return size_.width() > 0 ? size_.height() / size_.width() : 1; }

void DrawingShape::paint(QPainter* painter) {
    if (drawing_.isEmpty() || size_.isEmpty()) return;
    auto coloured = drawing_;
    // By way of names that no colour has: the ink of one theme may be the paper of the drawing.
    coloured.replace(accentColour, "@accent");
    coloured.replace(paperColour, "@paper");
    coloured.replace("currentColor", nameOf(ink_));
    coloured.replace("@paper", nameOf(paper_));
    coloured.replace("@accent", nameOf(accent_));
    QSvgRenderer renderer(coloured);
    const auto fitted = size_.scaled(QSizeF(width(), height()), Qt::KeepAspectRatio);
    renderer.render(painter,
                    QRectF((width() - fitted.width()) / 2, (height() - fitted.height()) / 2,
                           fitted.width(), fitted.height()));
}

}  // namespace burrow
