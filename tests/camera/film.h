// Films of tags, made frame by frame and packed by ffmpeg. Needs ffmpeg with libx264 and libvpx.
#pragma once

#include <QImage>
#include <QList>
#include <QPolygonF>
#include <QString>
#include <random>

namespace burrow::test {

inline constexpr QSize filmSize{1280, 720};

/// One frame of a shelf: uneven grey, the same in every film.
class Scene {
public:
    Scene();

    /// Lays a picture so that its corners come to lie on these four, from the top left on clockwise.
    void lay(const QImage& picture, const QPolygonF& corners);
    /// Softens everything as a lens out of focus does; `pixels` is the standard deviation.
    void blur(double pixels);
    /// Leaves this part of the light and adds noise of this standard deviation, 0 to 255.
    void dim(double part, double noise, std::mt19937& random);

    [[nodiscard]] const QImage& image() const { return image_; }

private:
    QImage image_;
};

/// A rectangle of this width and the picture's shape around a centre, turned by degrees clockwise.
[[nodiscard]] QPolygonF flat(const QImage& picture, QPointF centre, double width,
                             double degrees = 0);
/// The same, tilted away from the camera about its upright axis, as seen from 2.5 widths away.
[[nodiscard]] QPolygonF tilted(const QImage& picture, QPointF centre, double width, double degrees);

/// Packs frames at 30 a second; `codec` is h264, vp8 or mjpeg. False where ffmpeg fails.
[[nodiscard]] bool saveFilm(const QString& path, const QList<QImage>& frames, const QString& codec);

}  // namespace burrow::test
