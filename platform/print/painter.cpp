#include "print/painter.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>

#include "print/measure.h"

namespace burrow::print {
namespace {

using namespace documents;

QColor colour(Ink ink) {
    switch (ink) {
        case Ink::black: return Qt::black;
        case Ink::grey: return QColor::fromRgbF(0.4F, 0.4F, 0.4F);
        case Ink::white: break;
    }
    return Qt::white;
}

QPointF pointOf(Point point) { return {point.x.value, point.y.value}; }

QRectF rectOf(const Box& box) {
    return {box.x.value, box.y.value, box.width.value, box.height.value};
}

/// Dash lengths of a pen are in units of its width.
QPen penOf(const Stroke& stroke) {
    QPen pen(colour(stroke.ink), stroke.width.value);
    pen.setCapStyle(Qt::FlatCap);
    pen.setJoinStyle(Qt::MiterJoin);
    if (stroke.pattern == Pattern::dashed) pen.setDashPattern({3, 3});
    if (stroke.pattern == Pattern::dotted) pen.setDashPattern({1, 2});
    return pen;
}

void setShape(QPainter& painter, const std::optional<Ink>& fill,
              const std::optional<Stroke>& outline) {
    painter.setBrush(fill ? QBrush(colour(*fill)) : QBrush(Qt::NoBrush));
    painter.setPen(outline ? penOf(*outline) : QPen(Qt::NoPen));
}

void draw(const Line& line, QPainter& painter) {
    painter.setPen(penOf(line.stroke));
    painter.drawLine(pointOf(line.from), pointOf(line.to));
}

void draw(const Rectangle& rectangle, QPainter& painter) {
    setShape(painter, rectangle.fill, rectangle.outline);
    const double radius = rectangle.radius.value;
    if (radius > 0) {
        painter.drawRoundedRect(rectOf(rectangle.box), radius, radius);
    } else {
        painter.drawRect(rectOf(rectangle.box));
    }
}

void draw(const Disc& disc, QPainter& painter) {
    setShape(painter, disc.fill, disc.outline);
    painter.drawEllipse(pointOf(disc.centre), disc.radius.value, disc.radius.value);
}

/// Each line is cut to the box by reckoning rather than by a clip, which printers round to dots.
void draw(const Hatch& hatch, QPainter& painter) {
    const auto box = rectOf(hatch.box);
    const double across = hatch.pitch.value * 1.4142135623730951;
    painter.setPen(penOf(hatch.stroke));
    for (double offset = across / 2; offset < box.width() + box.height(); offset += across) {
        const double x0 = std::max(0.0, offset - box.height());
        const double x1 = std::min(box.width(), offset);
        painter.drawLine(QPointF(box.left() + x0, box.top() + offset - x0),
                         QPointF(box.left() + x1, box.top() + offset - x1));
    }
}

void draw(const Text& text, QPainter& painter) {
    const auto font = fontOf(text.style);
    const auto shown = QString::fromStdString(text.text);
    const double scale = toMillimetres(text.style.size).value / pixelsPerEm;
    const double width = QFontMetricsF(font).horizontalAdvance(shown) * scale;
    double x = text.baseline.x.value;
    if (text.align == Align::centre) x -= width / 2;
    if (text.align == Align::right) x -= width;
    painter.save();
    painter.translate(x, text.baseline.y.value);
    painter.scale(scale, scale);
    painter.setFont(font);
    painter.setPen(colour(text.style.ink));
    painter.drawText(QPointF(0, 0), shown);
    painter.restore();
}

/// One path, with neighbours of a row merged: seams between modules would show on some printers.
void draw(const SymbolMark& mark, QPainter& painter) {
    const auto& symbol = mark.symbol;
    const double module = mark.side.value / symbol.size();
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    for (int row = 0; row < symbol.size(); ++row) {
        for (int column = 0; column < symbol.size(); ++column) {
            const int start = column;
            while (column < symbol.size() && symbol.isDark(column, row)) ++column;
            if (column == start) continue;
            path.addRect(mark.corner.x.value + start * module, mark.corner.y.value + row * module,
                         (column - start) * module, module);
        }
    }
    painter.fillPath(path, Qt::black);
}

/// An upright triangle with rounded corners; the stroke is thick enough for a poor copy.
void draw(const CautionSign& sign, QPainter& painter) {
    const auto box = rectOf(sign.box);
    const double line = box.height() * 0.11;
    const auto inner = box.adjusted(line / 2, line / 2, -line / 2, -line / 2);
    QPen pen(colour(sign.ink), line);
    pen.setJoinStyle(Qt::RoundJoin);
    pen.setCapStyle(Qt::RoundCap);
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawPolygon(
        QPolygonF{{{inner.center().x(), inner.top()}, inner.bottomRight(), inner.bottomLeft()}});
    const double x = inner.center().x();
    painter.drawLine(QPointF(x, box.top() + 0.40 * box.height()),
                     QPointF(x, box.top() + 0.62 * box.height()));
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour(sign.ink));
    const double dot = line * 0.62;
    painter.drawEllipse(QPointF(x, box.top() + 0.78 * box.height()), dot, dot);
}

}  // namespace

void paint(const Page& page, QPainter& painter) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    for (const auto& command : page.commands) {
        std::visit([&](const auto& each) { draw(each, painter); }, command);
    }
    painter.restore();
}

}  // namespace burrow::print
