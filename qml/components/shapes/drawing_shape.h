// Our own schematic drawings, in the colours of the theme and in any size.
#pragma once

#include <QColor>
#include <QQuickPaintedItem>

namespace burrow {

/// Draws `name` of assets/drawings as large as it fits. Their three colours stand for ink, paper and what
/// is meant (`accent`), and are replaced by those given. An unknown name draws nothing and says so in the
/// log; an empty one draws nothing.
class DrawingShape : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString name READ name WRITE setName NOTIFY changed)
    Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY changed)
    Q_PROPERTY(QColor paper MEMBER paper_ NOTIFY changed)
    Q_PROPERTY(QColor accent MEMBER accent_ NOTIFY changed)
    /// Height for a width of 1; 1 where there is no such drawing.
    Q_PROPERTY(qreal ratio READ ratio NOTIFY changed)

public:
    explicit DrawingShape(QQuickItem* parent = nullptr);
    [[nodiscard]] QString name() const { return name_; }
    void setName(const QString& name);
    [[nodiscard]] qreal ratio() const;
    void paint(QPainter* painter) override;

signals:
    void changed();

private:
    QString name_;
    QByteArray drawing_;
    QSizeF size_;
    QColor ink_ = Qt::black;
    QColor paper_ = Qt::white;
    QColor accent_ = Qt::black;
};

}  // namespace burrow
