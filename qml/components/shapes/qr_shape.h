// A QR symbol on the screen, for a camera to read.
#pragma once

#include <QByteArray>
#include <QQuickPaintedItem>

namespace burrow {

/// Draws the modules of a square symbol, row by row, one byte each (not 0 is dark), always black on
/// white with `quietZone` modules of white around them (ISO/IEC 18004 asks for four). Modules are a
/// whole number of device pixels wide. Draws only white while the number of modules is no square.
class QrShape : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QByteArray modules MEMBER modules_ NOTIFY changed)
    Q_PROPERTY(int quietZone MEMBER quietZone_ NOTIFY changed)

public:
    explicit QrShape(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;

signals:
    void changed();

private:
    QByteArray modules_;
    int quietZone_ = 4;
};

}  // namespace burrow
