#include "files/developer.h"

#include <QBuffer>
#include <QImage>
#include <QPainter>

#include "files/picture_file.h"

namespace burrow {
namespace {

// Fine enough that bristles and spermathecae keep their edges.
constexpr int pictureQuality = 92;
constexpr int smallQuality = 80;

Bytes jpegOf(const QImage& image, int quality) {
    QByteArray data;
    QBuffer buffer(&data);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "jpeg", quality);
    return {data.begin(), data.end()};
}

/// The same pixels without texts, profiles and resolution; transparent ones on white.
QImage onlyPixels(const QImage& image) {
    QImage plain(image.size(), QImage::Format_RGB32);
    plain.fill(Qt::white);
    QPainter(&plain).drawImage(0, 0, image);
    return plain;
}

}  // namespace

Result<pictures::Developer::Developed> QtDeveloper::develop(std::span<const std::uint8_t> bytes,
                                                            const pictures::PictureInfo& /*info*/) {
    BURROW_TRY(const auto decoded, decodePicture(bytes, true));
    auto image = onlyPixels(decoded);
    const auto small = image.scaled(pictures::thumbnailSide, pictures::thumbnailSide,
                                    Qt::KeepAspectRatio, Qt::SmoothTransformation);
    return Developed{jpegOf(image, pictureQuality), jpegOf(small, smallQuality), image.width(),
                     image.height()};
}

Result<Bytes> QtDeveloper::reduce(std::span<const std::uint8_t> bytes,
                                  const pictures::PictureInfo& info, int side) {
    BURROW_TRY(const auto decoded, decodePicture(bytes, true, side));
    static_cast<void>(info);
    return jpegOf(onlyPixels(decoded), smallQuality);
}

}  // namespace burrow
