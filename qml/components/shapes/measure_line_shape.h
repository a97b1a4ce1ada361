// A measured line: from one end to the other, with a bar across at each.
#pragma once

#include <QColor>
#include <QPointF>
#include <QQuickPaintedItem>

namespace burrow {

/// `from` and `to` are in the item's coordinates. Each line has an edge of `halo`, so that it shows on light
/// and on dark.
class MeasureLineShape : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QPointF from MEMBER from_ NOTIFY changed)
    Q_PROPERTY(QPointF to MEMBER to_ NOTIFY changed)
    /// Length of a bar, across the line.
    Q_PROPERTY(qreal barLength MEMBER barLength_ NOTIFY changed)
    Q_PROPERTY(qreal lineWidth MEMBER lineWidth_ NOTIFY changed)
    Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY changed)
    Q_PROPERTY(QColor halo MEMBER halo_ NOTIFY changed)
    /// Half way between the ends.
    Q_PROPERTY(QPointF middle READ middle NOTIFY changed)

public:
    explicit MeasureLineShape(QQuickItem* parent = nullptr);

    [[nodiscard]] QPointF middle() const { return (from_ + to_) / 2; }
    void paint(QPainter* painter) override;

signals:
    void changed();

private:
    QPointF from_;
    QPointF to_;
    qreal barLength_ = 48;
    qreal lineWidth_ = 2.5;
    QColor ink_ = Qt::white;
    QColor halo_ = Qt::black;
};

}  // namespace burrow
