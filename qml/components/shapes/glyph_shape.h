// Our line icons, in any colour and size.
#pragma once

#include <QColor>
#include <QQuickPaintedItem>

namespace burrow {

/// Draws the icon `name` of assets/icons in one colour. An unknown name draws nothing and says so
/// in the log; an empty one draws nothing.
class GlyphShape : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString name MEMBER name_ NOTIFY changed)
    Q_PROPERTY(QColor color MEMBER color_ NOTIFY changed)

public:
    explicit GlyphShape(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;

signals:
    void changed();

private:
    QString name_;
    QColor color_ = Qt::black;
};

}  // namespace burrow
