#include "film.h"

#include <QPainter>
#include <QProcess>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace burrow::test {
namespace {

QImage shelf() {
    QImage image(filmSize, QImage::Format_Grayscale8);
    std::mt19937 random(7);
    std::normal_distribution<double> grain(0, 3);
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const double boards = y % 240 < 24 ? 60 : 105;
            const double light = 25 * std::sin(x / 300.0) - 15 * std::cos(y / 200.0);
            image.scanLine(y)[x] = static_cast<uchar>(boards + light + grain(random));
        }
    }
    return image;
}

std::vector<double> bell(double deviation) {
    const int reach = static_cast<int>(std::ceil(3 * deviation));
    std::vector<double> weights;
    double sum = 0;
    for (int i = -reach; i <= reach; ++i) {
        weights.push_back(std::exp(-i * i / (2 * deviation * deviation)));
        sum += weights.back();
    }
    for (auto& weight : weights) weight /= sum;
    return weights;
}

/// One pass along the rows, written as columns: twice is a blur in both directions.
QImage blurredAcross(const QImage& image, const std::vector<double>& weights) {
    const int reach = static_cast<int>(weights.size()) / 2;
    QImage result(image.height(), image.width(), QImage::Format_Grayscale8);
    auto* const to = result.bits();
    for (int y = 0; y < image.height(); ++y) {
        const auto* row = image.constScanLine(y);
        for (int x = 0; x < image.width(); ++x) {
            double sum = 0;
            for (int i = -reach; i <= reach; ++i) {
                sum += weights[static_cast<std::size_t>(i + reach)] *
                       row[std::clamp(x + i, 0, image.width() - 1)];
            }
            to[x * result.bytesPerLine() + y] = static_cast<uchar>(sum + 0.5);
        }
    }
    return result;
}

QStringList packing(const QString& codec) {
    if (codec == "h264") return {"-c:v", "libx264", "-preset", "ultrafast", "-pix_fmt", "yuv420p"};
    if (codec == "vp8")
        return {"-c:v", "libvpx", "-deadline", "realtime", "-cpu-used", "8", "-b:v", "8M"};
    return {"-c:v", "mjpeg", "-q:v", "3", "-pix_fmt", "yuvj420p"};
}

}  // namespace

Scene::Scene() {
    static const QImage empty = shelf();
    image_ = empty;
}

void Scene::lay(const QImage& picture, const QPolygonF& corners) {
    QTransform place;
    if (!QTransform::quadToQuad(QPolygonF(QRectF(picture.rect())).first(4), corners, place)) return;
    QPainter painter(&image_);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setTransform(place);
    painter.drawImage(0, 0, picture);
}

void Scene::blur(double pixels) {
    const auto weights = bell(pixels);
    image_ = blurredAcross(blurredAcross(image_, weights), weights);
}

void Scene::dim(double part, double noise, std::mt19937& random) {
    std::normal_distribution<double> grain(0, noise);
    for (int y = 0; y < image_.height(); ++y) {
        for (auto* pixel = image_.scanLine(y); pixel < image_.scanLine(y) + image_.width();
             ++pixel) {
            *pixel = static_cast<uchar>(std::clamp(*pixel * part + grain(random), 0.0, 255.0));
        }
    }
}

QPolygonF flat(const QImage& picture, QPointF centre, double width, double degrees) {
    const double height = width * picture.height() / picture.width();
    const auto turn = QTransform::fromTranslate(centre.x(), centre.y()).rotate(degrees);
    return turn.map(QPolygonF(QRectF(-width / 2, -height / 2, width, height)).first(4));
}

QPolygonF tilted(const QImage& picture, QPointF centre, double width, double degrees) {
    const double angle = degrees * std::numbers::pi / 180;
    const double distance = 2.5 * width;
    QPolygonF seen;
    for (const auto& corner : flat(picture, {}, width)) {
        const double depth = distance + corner.x() * std::sin(angle);
        seen.append(centre + QPointF(corner.x() * std::cos(angle), corner.y()) * distance / depth);
    }
    return seen;
}

bool saveFilm(const QString& path, const QList<QImage>& frames, const QString& codec) {
    QProcess ffmpeg;
    ffmpeg.start("ffmpeg", QStringList{"-v", "error", "-f", "rawvideo", "-pix_fmt", "gray", "-s",
                                       "1280x720", "-r", "30", "-i", "-"}
                               << packing(codec) << "-y" << path);
    for (const auto& frame : frames) {
        for (int row = 0; row < frame.height(); ++row) {
            ffmpeg.write(reinterpret_cast<const char*>(frame.constScanLine(row)), frame.width());
        }
        ffmpeg.waitForBytesWritten(60'000);
    }
    ffmpeg.closeWriteChannel();
    return ffmpeg.waitForFinished(120'000) && ffmpeg.exitCode() == 0;
}

}  // namespace burrow::test
