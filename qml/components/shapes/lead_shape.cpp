#include "lead_shape.h"

#include <QPainter>
#include <cmath>

namespace burrow {

LeadShape::LeadShape(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    const auto again = [this] {
        if (isComponentComplete()) relayout();
    };
    connect(this, &LeadShape::textChanged, this, again);
    connect(this, &LeadShape::colorChanged, this, again);
}

void LeadShape::componentComplete() {
    QQuickPaintedItem::componentComplete();
    relayout();
}

void LeadShape::geometryChange(const QRectF& now, const QRectF& before) {
    QQuickPaintedItem::geometryChange(now, before);
    if (isComponentComplete() && now.width() != before.width()) breakLines();
}

QList<QTextLayout::FormatRange> LeadShape::formats() const {
    const auto range = [](qsizetype start, qsizetype length, const QFont& font,
                          const QColor& color) {
        QTextLayout::FormatRange part;
        part.start = static_cast<int>(start);
        part.length = static_cast<int>(length);
        part.format.setFont(font);
        part.format.setForeground(color);
        return part;
    };
    return {range(0, verb_.size(), verbFont_, verbColor_),
            range(verb_.size(), layout_.text().size() - verb_.size(), reasonFont_, reasonColor_)};
}

void LeadShape::relayout() {
    const bool both = !verb_.isEmpty() && !reason_.isEmpty();
    layout_.setFont(reasonFont_);
    layout_.setText(both ? verb_ + QStringLiteral("  ") + reason_ : verb_ + reason_);
    layout_.setFormats(formats());
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    layout_.setTextOption(option);
    breakLines();
}

void LeadShape::breakLines() {
    const int linesBefore = layout_.lineCount();
    layout_.beginLayout();
    QTextLine only = layout_.createLine();
    if (only.isValid()) only.setLineWidth(1e6);
    layout_.endLayout();
    setImplicitWidth(only.isValid() ? std::ceil(only.naturalTextWidth()) : 0);

    // Without a width of its own the item is as wide as its text, on one line.
    const qreal room = width() > 0 ? width() : implicitWidth();
    qreal y = 0;
    layout_.beginLayout();
    for (QTextLine line = layout_.createLine(); line.isValid(); line = layout_.createLine()) {
        line.setLineWidth(room);
        line.setPosition({0, y + (lineHeight_ - line.height()) / 2});
        y += lineHeight_;
    }
    layout_.endLayout();
    setImplicitHeight(y);
    if (layout_.lineCount() != linesBefore) emit lineCountChanged();
    update();
}

void LeadShape::paint(QPainter* painter) { layout_.draw(painter, {0, 0}); }

}  // namespace burrow
