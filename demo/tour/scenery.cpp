#include "tour/scenery.h"

#include <QPainter>
#include <QPainterPath>
#include <QRadialGradient>
#include <algorithm>
#include <random>

#include "measure/mat.h"

namespace burrow::demo {
namespace {

/// The grain of a small sensor, so that nothing looks drawn with a ruler.
void addGrain(QImage& picture, double deviation) {
    std::mt19937 random(11);
    std::normal_distribution<double> grain(0, deviation);
    for (int y = 0; y < picture.height(); ++y) {
        auto* row = reinterpret_cast<QRgb*>(picture.scanLine(y));
        for (int x = 0; x < picture.width(); ++x) {
            const double noise = grain(random);
            const auto with = [noise](int part) {
                return std::clamp(static_cast<int>(part + noise), 0, 255);
            };
            row[x] = qRgb(with(qRed(row[x])), with(qGreen(row[x])), with(qBlue(row[x])));
        }
    }
}

void drawLegs(QPainter& painter, double unit) {
    for (int leg = 0; leg < 8; ++leg) {
        const double side = leg < 4 ? -1 : 1;
        const double spread = leg % 4 - 1.5;
        QPainterPath path(QPointF(side * unit * 0.7, spread * unit * 0.5));
        path.quadTo(QPointF(side * unit * 2.0, spread * unit * 1.1 - unit * 0.4),
                    QPointF(side * unit * 3.3, spread * unit * 1.9));
        painter.drawPath(path);
    }
}

/// A shed skin spread with its inside up, its middle at the origin and its carapace 2.2 units long.
void drawMoult(QPainter& painter, double unit) {
    painter.setPen(QPen(QColor(92, 66, 44), unit * 0.36, Qt::SolidLine, Qt::RoundCap));
    painter.setBrush(Qt::NoBrush);
    drawLegs(painter, unit);
    painter.setPen(QPen(QColor(70, 48, 32), unit / 30));
    painter.setBrush(QColor(128, 94, 64));
    painter.drawEllipse(QPointF(0, -unit * 0.9), unit * 0.95, unit * 1.1);
    // The skin of the abdomen, opened: two pairs of book lungs and the fold between the front ones.
    painter.setBrush(QColor(196, 172, 138));
    painter.drawEllipse(QPointF(0, unit * 1.6), unit * 1.35, unit * 1.7);
    painter.setBrush(QColor(238, 228, 204));
    for (const double y : {0.75, 1.75}) {
        for (const double side : {-1.0, 1.0}) {
            painter.drawEllipse(QPointF(side * unit * 0.72, unit * y), unit * 0.34, unit * 0.26);
        }
    }
    painter.setPen(QPen(QColor(110, 78, 50), unit / 12));
    painter.drawLine(QPointF(-unit * 0.5, unit * 0.98), QPointF(unit * 0.5, unit * 0.98));
}

constexpr double moultUnit = drawnCarapace / 2.2;

QRectF rect(const measure::MatBox& box) {
    return {box.x.value, box.y.value, box.width.value, box.height.value};
}

const measure::MatLayout& matLayout() { return measure::layoutOf(measure::MatPaper::a5); }

/// From the drawn moult to millimetres on the mat.
QTransform placeOfMoult() {
    const auto middle = rect(matLayout().moult).center();
    return QTransform::fromTranslate(middle.x(), middle.y()).rotate(8);
}

}  // namespace

QImage tubLid() {
    QImage picture(frameSize, QImage::Format_RGB32);
    picture.fill(QColor(52, 36, 26));
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    for (int board = 0; board < 9; ++board) {
        painter.fillRect(QRect(0, board * 150, picture.width(), 4), QColor(34, 22, 15));
    }
    const QRectF lid(60, 240, 600, 800);
    painter.setPen(QPen(QColor(150, 132, 112), 6));
    painter.setBrush(QColor(118, 100, 82));
    painter.drawRoundedRect(lid, 60, 60);
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor(40, 28, 20));
    for (int hole = 0; hole < 8; ++hole) {  // for air
        painter.drawEllipse(QPointF(130 + hole * 66, 940), 9, 9);
    }
    QRadialGradient lamp(QPointF(430, 470), 800);
    lamp.setColorAt(0, QColor(255, 190, 110, 60));
    lamp.setColorAt(1, QColor(0, 0, 0, 130));
    painter.fillRect(picture.rect(), lamp);
    painter.end();
    addGrain(picture, 4);
    return picture;
}

std::array<QPointF, 2> carapaceOnMat() {
    return {placeOfMoult().map(QPointF(0, -2.0 * moultUnit)),
            placeOfMoult().map(QPointF(0, 0.2 * moultUnit))};
}

QImage moultOnMat(const QImage& mat, const QImage& tag) {
    const auto& layout = matLayout();
    constexpr double dotsPerMm = 10;
    QImage flat((QSizeF(layout.width.value, layout.height.value) * dotsPerMm).toSize(),
                QImage::Format_RGB32);
    QPainter painter(&flat);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
    painter.drawImage(flat.rect(), mat);
    painter.scale(dotsPerMm, dotsPerMm);
    painter.drawImage(rect(layout.tag), tag);
    painter.setTransform(placeOfMoult(), true);
    drawMoult(painter, moultUnit);
    painter.end();

    // From above and a little aside, by hand, on the bench.
    QImage photo(1512, 2016, QImage::Format_RGB32);
    photo.fill(QColor(52, 36, 26));
    const double width = photo.width();
    const double height = photo.height();
    const QPolygonF corners{{0.055 * width, 0.03 * height},
                            {0.93 * width, 0.045 * height},
                            {0.955 * width, 0.965 * height},
                            {0.03 * width, 0.95 * height}};
    QTransform view;
    QTransform::quadToQuad(QPolygonF(QRectF(flat.rect())).mid(0, 4), corners, view);
    QPainter camera(&photo);
    camera.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
    camera.setTransform(view);
    camera.drawImage(0, 0, flat);
    camera.resetTransform();
    QRadialGradient lamp(QPointF(0.62 * width, 0.3 * height), 1.1 * height);
    lamp.setColorAt(0, QColor(255, 214, 160, 40));
    lamp.setColorAt(1, QColor(30, 12, 0, 110));
    camera.fillRect(photo.rect(), lamp);
    camera.end();
    addGrain(photo, 2);
    return photo;
}

}  // namespace burrow::demo
