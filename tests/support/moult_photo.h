// A drawn stand-in for the photo of a moult: invented, and the same on every run.
#pragma once

#include <QBuffer>
#include <QByteArray>
#include <QImage>
#include <QPainter>

namespace burrow::test {

/// `shade` from 0 to 255 makes one differ from another.
inline QImage moultPicture(const QSize& size, int shade = 96) {
    QImage picture(size, QImage::Format_RGB32);
    picture.fill(QColor(226, 228, 222));
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    const double unit = size.height() / 10.0;
    painter.setPen(QPen(QColor(190, 194, 196), unit / 40));
    for (double at = 0; at < size.width(); at += unit / 2)
        painter.drawLine(QPointF(at, 0), QPointF(at, size.height()));
    for (double at = 0; at < size.height(); at += unit / 2)
        painter.drawLine(QPointF(0, at), QPointF(size.width(), at));
    painter.translate(size.width() / 2.0, size.height() / 2.0);
    painter.setPen(
        QPen(QColor(shade, shade * 3 / 4, shade / 2), unit * 0.45, Qt::SolidLine, Qt::RoundCap));
    for (int leg = 0; leg < 8; ++leg) {
        const double side = leg < 4 ? -1 : 1;
        const double y = (leg % 4 - 1.5) * unit * 0.8;
        painter.drawLine(QPointF(side * unit * 0.8, y * 0.6), QPointF(side * unit * 3.4, y * 2.2));
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor(shade + 30, shade * 3 / 4 + 20, shade / 2 + 10));
    painter.drawEllipse(QPointF(0, -unit * 0.6), unit * 1.2, unit * 1.5);
    painter.setBrush(QColor(shade - 20, shade / 2, shade / 3));
    painter.drawEllipse(QPointF(0, unit * 2.4), unit * 1.5, unit * 1.9);
    return picture;
}

inline QByteArray jpegOf(const QImage& picture) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    picture.save(&buffer, "JPEG", 90);
    return bytes;
}

inline QByteArray moultPhoto(const QSize& size = {1200, 900}, int shade = 96) {
    return jpegOf(moultPicture(size, shade));
}

}  // namespace burrow::test
