#include "viewmodels/measuredphoto.h"

#include <QTransform>
#include <algorithm>
#include <cmath>
#include <cstring>

#include "measure/flatten.h"

namespace burrow {
namespace {

using measure::ImagePoint;
using measure::MatPoint;

/// As fine as any phone's photo of a mat, and no larger than a screen looks into.
constexpr double mostPixelsPerMm = 20;
constexpr int longestShown = 4096;
/// Around the place for the moult, for what reaches beyond it.
constexpr Millimetres margin{4};

/// Which part of the stored picture is seen at a part of the upright one (CIPA DC-008, tag 0x0112).
QPointF storedPart(int orientation, const QPointF& shown) {
    const double u = shown.x(), v = shown.y();
    switch (orientation) {
        case 2: return {1 - u, v};
        case 3: return {1 - u, 1 - v};
        case 4: return {u, 1 - v};
        case 5: return {v, u};
        case 6: return {v, 1 - u};
        case 7: return {1 - v, 1 - u};
        case 8: return {1 - v, u};
        default: return shown;
    }
}

/// The other way: turning by a quarter is the only one that is not its own inverse.
QPointF shownPart(int orientation, const QPointF& stored) {
    if (orientation == 6) return storedPart(8, stored);
    if (orientation == 8) return storedPart(6, stored);
    return storedPart(orientation, stored);
}

QTransform turning(int orientation) {
    switch (orientation) {
        case 2: return QTransform::fromScale(-1, 1);
        case 3: return QTransform::fromScale(-1, -1);
        case 4: return QTransform::fromScale(1, -1);
        case 5: return QTransform().rotate(90).scale(1, -1);
        case 6: return QTransform().rotate(90);
        case 7: return QTransform().rotate(-90).scale(1, -1);
        case 8: return QTransform().rotate(-90);
        default: return {};
    }
}

QImage imageOf(const pictures::Raster& picture) {
    QImage image(picture.width(), picture.height(), QImage::Format_RGB888);
    for (int y = 0; y < picture.height(); ++y) {
        std::memcpy(image.scanLine(y), picture.row(y), picture.stride());
    }
    return image;
}

}  // namespace

Result<MeasuredPhoto> MeasuredPhoto::read(Files& files,
                                          std::span<const std::filesystem::path> candidates,
                                          const measure::MeasureRules& rules,
                                          const PrintOf& print) {
    const auto found = std::find_if(candidates.begin(), candidates.end(),
                                    [&](const auto& path) { return files.exists(path); });
    if (found == candidates.end()) return fail(Trouble::notFound, {"measuring.noPhoto"});
    BURROW_TRY(const auto bytes, files.read(*found, pictures::Limits().bytes));
    BURROW_TRY(const auto info, pictures::inspect(bytes));
    BURROW_TRY(const auto photo, pictures::decode(bytes));
    MeasuredPhoto measured;
    measured.width_ = photo.width();
    measured.height_ = photo.height();
    measured.sight_ = sightOf(photo, rules);
    auto& survey = measured.sight_.survey;
    if (survey) survey->focal35 = info.focal35;
    if (print && survey && survey->mat) measured.print_ = print(survey->mat->name);
    if (!measured.showFlat(photo, rules)) measured.showAsItIs(photo, info.orientation);
    return measured;
}

bool MeasuredPhoto::showFlat(const pictures::Raster& photo, const measure::MeasureRules& rules) {
    const auto& survey = sight_.survey;
    if (!survey || !survey->mat) return false;
    const auto& place = measure::layoutOf(survey->mat->paper).moult;
    const measure::MatBox shown{place.x - margin, place.y - margin, place.width + 2 * margin,
                                place.height + 2 * margin};
    measure::FlattenOptions options;
    options.region = shown;
    options.print = print_;
    // No finer than the photo: what is made up between its pixels helps nobody to point.
    options.pixelsPerMm = std::min({mostPixelsPerMm, 1.5 * survey->pixelsPerMm,
                                    longestShown / std::max(shown.width, shown.height).value});
    // A patch in a shadow leaves the colours as they are.
    if (const auto balance = measure::balanceOf(photo, *survey, rules)) options.balance = *balance;
    const auto flat = measure::flatten(photo, *survey, options);
    if (!flat) return false;
    const double perMm = options.pixelsPerMm * print_.factor;
    // Whole pixels may reach a little farther than was asked for.
    flat_ = measure::MatBox{shown.x, shown.y, {flat->width() / perMm}, {flat->height() / perMm}};
    picture_ = Picture(imageOf(*flat));
    return true;
}

void MeasuredPhoto::showAsItIs(const pictures::Raster& photo, int orientation) {
    orientation_ = orientation;
    // A large photo is shown smaller and need not be there twice for it.
    const QImage whole(photo.row(0), photo.width(), photo.height(),
                       static_cast<qsizetype>(photo.stride()), QImage::Format_RGB888);
    const bool isLarge = std::max(whole.width(), whole.height()) > longestShown;
    const auto image = isLarge ? whole.scaled(longestShown, longestShown, Qt::KeepAspectRatio,
                                              Qt::SmoothTransformation)
                               : whole.copy();
    picture_ = Picture(orientation == 1 ? image : image.transformed(turning(orientation)));
}

ImagePoint MeasuredPhoto::inPhoto(const QPointF& part) const {
    if (flat_) {
        return measure::photoOf(sight_.survey->projection(), {flat_->x + part.x() * flat_->width,
                                                              flat_->y + part.y() * flat_->height});
    }
    const auto stored = storedPart(orientation_, part);
    return {stored.x() * width_, stored.y() * height_};
}

QPointF MeasuredPhoto::partOf(ImagePoint point) const {
    if (flat_) {
        const auto place = measure::matOf(sight_.survey->projection(), point);
        if (!place) return {};
        return {(place->x - flat_->x) / flat_->width, (place->y - flat_->y) / flat_->height};
    }
    return shownPart(orientation_, {point.x / width_, point.y / height_});
}

QPointF MeasuredPhoto::moved(const QPointF& part, const QPointF& way, Millimetres distance) const {
    const QSizeF size = picture_.image().size();
    const double length = std::hypot(way.x(), way.y());
    if (size.isEmpty() || !(length > 0)) return part;
    const QPointF pixel(way.x() / length / size.width(), way.y() / length / size.height());
    const QPointF plain = part + pixel * (distance.value / 0.1);
    if (!sight_.survey) return plain;
    // What one pixel that way is on the sheet, made as long as wanted.
    const auto projection = sight_.survey->projection();
    const auto here = measure::matOf(projection, inPhoto(part));
    const auto there = measure::matOf(projection, inPhoto(part + pixel));
    if (!here || !there) return plain;
    const auto dx = there->x - here->x;
    const auto dy = there->y - here->y;
    const double step = std::hypot(dx.value, dy.value);
    if (!(step > 0)) return plain;
    const double times = distance.value / (step * print_.factor);
    return partOf(measure::photoOf(projection, {here->x + dx * times, here->y + dy * times}));
}

double MeasuredPhoto::photoPixels() const {
    const auto& image = picture_.image();
    if (image.isNull()) return 1;
    const QPointF middle(0.5, 0.5);
    const auto a = inPhoto(middle);
    const auto b = inPhoto(middle + QPointF(1.0 / image.width(), 0));
    return std::hypot(b.x - a.x, b.y - a.y);
}

std::optional<double> MeasuredPhoto::pixelsPerMm() const {
    if (!sight_.survey || picture_.isEmpty()) return std::nullopt;
    if (flat_) return picture_.image().width() / flat_->width.value;
    // The mean of the two directions, since the photo may be tilted.
    const auto stretch = measure::stretchAt(sight_.survey->projection(), sight_.survey->middle);
    return std::sqrt(stretch.most * stretch.least) / photoPixels();
}

}  // namespace burrow
