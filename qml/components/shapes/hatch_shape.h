// Diagonal lines over a whole area: "held back".
#pragma once

#include <QColor>
#include <QQuickPaintedItem>

namespace burrow {

/// Fills the item with hatch lines; `corner` rounds its left corners to fit inside a control.
class HatchShape : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QColor color MEMBER color_ NOTIFY changed)
    Q_PROPERTY(qreal pitch MEMBER pitch_ NOTIFY changed)
    Q_PROPERTY(qreal pen MEMBER pen_ NOTIFY changed)
    Q_PROPERTY(qreal corner MEMBER corner_ NOTIFY changed)

public:
    explicit HatchShape(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;

signals:
    void changed();

private:
    QColor color_ = Qt::black;
    qreal pitch_ = 7;
    qreal pen_ = 1.5;
    qreal corner_ = 0;
};

}  // namespace burrow
