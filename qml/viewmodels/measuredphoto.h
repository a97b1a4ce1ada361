// A photo that is measured in: what is shown of it, and where a place in that is in the photo.
#pragma once

#include <QPointF>
#include <filesystem>
#include <functional>

#include "base/files.h"
#include "ports/picture.h"
#include "viewmodels/photosight.h"

namespace burrow {

/// How large things on a mat of that name came out of the printer.
using PrintOf = std::function<measure::PrintScale(const measure::MatName&)>;

/// A place in what is shown is a part of it, from (0, 0) at the top left to (1, 1).
class MeasuredPhoto {
public:
    /// Reads the first of the files that is there, surveys it, and flattens what can be flattened. A photo
    /// that can't be measured is shown as it is. Fails with the sentence for what can't be read or decoded.
    /// Takes a while; safe from any thread, as `print` must be. Without it every printer is perfect.
    static Result<MeasuredPhoto> read(Files& files,
                                      std::span<const std::filesystem::path> candidates,
                                      const measure::MeasureRules& rules,
                                      const PrintOf& print = {});

    [[nodiscard]] const PhotoSight& sight() const { return sight_; }
    [[nodiscard]] const Picture& picture() const { return picture_; }
    [[nodiscard]] bool canBeMeasured() const { return sight_.survey.has_value(); }
    /// Whether the sheet is shown as if seen straight from above.
    [[nodiscard]] bool isFlattened() const { return flat_.has_value(); }

    [[nodiscard]] measure::ImagePoint inPhoto(const QPointF& part) const;
    [[nodiscard]] QPointF partOf(measure::ImagePoint point) const;
    /// A place that lies so far from `part`, measured on the sheet, towards `way` as it is shown. Where
    /// nothing can be measured it is one pixel for each tenth of a millimetre.
    [[nodiscard]] QPointF moved(const QPointF& part, const QPointF& way,
                                Millimetres distance) const;
    /// How many pixels of the photo stand behind one of what is shown.
    [[nodiscard]] double photoPixels() const;
    /// Pixels of what is shown for a millimetre of the sheet as it was meant to be printed. Where it is not
    /// flattened that holds about the tag alone. Nothing where nothing can be measured.
    [[nodiscard]] std::optional<double> pixelsPerMm() const;

private:
    /// Nothing happens where no mat shows.
    bool showFlat(const pictures::Raster& photo, const measure::MeasureRules& rules);
    void showAsItIs(const pictures::Raster& photo, int orientation);

    PhotoSight sight_;
    Picture picture_;
    std::optional<measure::MatBox> flat_;  ///< what of the sheet is shown
    measure::PrintScale print_;            ///< of the mat
    int orientation_ = 1;                  ///< of the stored photo, as EXIF has it
    int width_ = 0;                        ///< of the stored photo
    int height_ = 0;
};

}  // namespace burrow
