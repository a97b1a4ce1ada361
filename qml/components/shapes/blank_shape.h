// What is missing, drawn in dashes.
#pragma once

#include <QColor>
#include <QQuickPaintedItem>

namespace burrow {

/// The drawing of an empty screen: "label" a strip without number and name over an empty moult
/// line, "line" the moult line alone, "shelf" a row of holes that are all punched.
class BlankShape : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString kind MEMBER kind_ NOTIFY changed)
    Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY changed)
    Q_PROPERTY(QColor edge MEMBER edge_ NOTIFY changed)
    Q_PROPERTY(QColor rule MEMBER rule_ NOTIFY changed)
    Q_PROPERTY(QColor hole MEMBER hole_ NOTIFY changed)

public:
    explicit BlankShape(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;

signals:
    void changed();

private:
    void paintLabel(QPainter& painter) const;
    void paintLine(QPainter& painter, qreal base, qreal tallest) const;
    void paintShelf(QPainter& painter) const;

    QString kind_ = QStringLiteral("label");
    QColor ink_ = Qt::black;
    QColor edge_ = Qt::gray;
    QColor rule_ = Qt::lightGray;
    QColor hole_ = Qt::white;
};

}  // namespace burrow
