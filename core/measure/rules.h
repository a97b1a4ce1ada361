// The rules of thumb of measuring, each with its source in assets/rules/tables/measure.json. What numerical
// methods need (damping, robust scatter, steps of derivatives) stands where they are.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "base/units.h"

namespace burrow::measure {

/// What may stand above the mat, and how sure that is.
struct UsualHeight {
    Millimetres above;
    Millimetres deviation;
};

/// How far the ends of one kind of length stand above the mat as a rule.
struct UsualStand {
    std::string kind;  ///< "carapace_mm", as entries name it
    Millimetres above;
};

struct MeasureRules {
    // What a photo must keep to, to be measured. `tests/property/prop_survey` shows what holds within them.
    double leastPixelsPerMm = 0;
    /// Below it squares begin to be too small to be read: the reason that is given where some are missing.
    double readablePixelsPerMm = 0;
    double leastLevel = 0;  ///< of the shortest to the longest direction of a circle on the sheet
    double clearlyBeyond = 0;  ///< the part of a limit below which corners alone are believed
    double mostBlur = 0;       ///< standard deviation, in modules
    double leastContrast = 0;  ///< of 255, between dark and light modules
    double mostCurl = 0;       ///< mm by which squares may lie beside where all together put them
    double curlShare = 0;      ///< standard deviation of a length, relative, for each mm of that
    double mostRadial = 0;
    double lensDeviation = 0;  ///< of the radial term, before a photo is seen
    // Whether it is a screen, and whether it is blurred.
    double screenAmplitude = 0;  ///< of 255
    double screenClarity = 0;    ///< power over the median power
    double sharpEdge = 0;        ///< of the step over eight pixels, what happens within one
    // While the camera runs.
    double hintSharpness = 0;
    double hintContrast = 0;  ///< of 255
    double hintShare = 0;     ///< of the frame's width or height that is mat
    // Printers; standard deviations relative to the size.
    double unmeasuredPrint = 0;
    double barDeviation = 0;  ///< mm
    double tagPrint = 0;
    double tagSeen = 0;
    // How far away the camera was.
    double usualFocal = 0;             ///< mm, as on 36 by 24 mm film
    double unknownFocalDeviation = 0;  ///< relative
    double toldFocalDeviation = 0;     ///< relative, where EXIF tells it
    double mostUnsure = 0;             ///< of a length, as a standard deviation
    // The grey patch.
    double greySpread = 0;
    double greyGain = 0;

    // How exactly an end is set.
    double fingerDeviation = 0;      ///< under the loupe, in units of the screen
    double leastPointDeviation = 0;  ///< pixels of the photo: nobody sets it better

    std::vector<UsualHeight> heights;
    std::vector<UsualStand> stands;

    /// Nought for a kind that the table does not know.
    [[nodiscard]] Millimetres usualStand(std::string_view kind) const;

    /// Fails with `badInput` for a file that lacks a number, has one that nobody asked for, or no source.
    static Result<MeasureRules> fromJson(std::string_view file);
};

/// The text of the table, which travels in the program.
[[nodiscard]] std::string_view measureRulesText();
/// As the program brings them.
[[nodiscard]] const MeasureRules& shippedRules();

}  // namespace burrow::measure
