// The row of holes of a round: how far along a shelf is.
#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <QStringList>

namespace burrow {

/// One hole per tub, in shelf order: "done" a solid dot, "slash" a stroke for a tub held back,
/// "current" a large disc, anything else an open ring. Above 60 tubs a plain bar shows the share
/// that is done or held.
class RoundHolesShape : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QStringList holes MEMBER holes_ NOTIFY changed)
    /// The greatest radius of a hole, and the greatest distance from one to the next.
    Q_PROPERTY(qreal largest MEMBER largest_ NOTIFY changed)
    Q_PROPERTY(qreal widest MEMBER widest_ NOTIFY changed)
    Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY changed)
    Q_PROPERTY(QColor edge MEMBER edge_ NOTIFY changed)
    Q_PROPERTY(QColor act MEMBER act_ NOTIFY changed)

public:
    static constexpr qsizetype kMostHoles = 60;

    explicit RoundHolesShape(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;

signals:
    void changed();

private:
    void paintBar(QPainter& painter) const;
    void paintHole(QPainter& painter, const QString& hole, QPointF centre, qreal radius) const;

    QStringList holes_;
    qreal largest_ = 2.75;
    qreal widest_ = 10'000;
    QColor ink_ = Qt::black;
    QColor edge_ = Qt::darkGray;
    QColor act_ = Qt::blue;
};

}  // namespace burrow
