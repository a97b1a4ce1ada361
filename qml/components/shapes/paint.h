// Strokes that several shapes share. All sizes in dp; painters are antialiased.
#pragma once

#include <QColor>
#include <QPainterPath>
#include <QVariant>

class QPainter;

namespace burrow::paint {

/// Diagonal lines, rising to the right, inside `area`. The pattern is anchored to the painter's
/// origin, so that neighbouring areas match.
void hatch(QPainter& painter, const QPainterPath& area, const QColor& color, qreal pitch,
           qreal pen);

/// A level line of dots or dashes of the given length, with gaps as long.
void dashed(QPainter& painter, QPointF from, QPointF to, const QColor& color, qreal pen,
            qreal dash);

/// An open ring whose stroke stays inside the circle of `radius`.
void ring(QPainter& painter, QPointF centre, qreal radius, qreal pen, const QColor& stroke,
          const QColor& fill);

/// A solid disc.
void disc(QPainter& painter, QPointF centre, qreal radius, const QColor& fill);

[[nodiscard]] QColor faded(QColor color, qreal alpha);

/// A named value of a list entry, which may be a map (from QML) or a gadget (from C++).
[[nodiscard]] QVariant field(const QVariant& entry, const char* name);

}  // namespace burrow::paint
