// Finds symbols in a photo of any size: quickly in a reduced copy, harder where that shows too few.
#pragma once

#include <vector>

#include "measure/mat.h"
#include "measure/plane.h"
#include "pictures/raster.h"
#include "tags/code.h"
#include "tags/symbol.h"

namespace burrow::measure {

/// A grey copy, each pixel the mean of a square of `factor` by `factor`.
struct GreyCopy {
    int width = 0;
    int height = 0;
    int factor = 1;
    std::vector<std::uint8_t> pixels;

    [[nodiscard]] tags::LumaView view() const { return {pixels.data(), width, height, width}; }
};
/// By the whole factor that brings the longer side nearest to `longest`; never larger than the photo.
[[nodiscard]] GreyCopy greyCopy(const pictures::Raster& photo, int longest);

/// A square of a mat, or an enclosure's tag, with its corners in the photo's own pixels.
struct FoundMark {
    MatMark mark;
    tags::FoundSymbol symbol;
};
struct FoundTag {
    tags::OwnTag tag;
    tags::FoundSymbol symbol;
};

struct FoundMarks {
    std::vector<FoundMark> mat;  ///< no two of the same place, but perhaps of several mats
    std::vector<FoundTag> tags;
    bool isMirrored = false;  ///< more can be read when the photo is turned over

    /// How many different corners of a mat show.
    [[nodiscard]] std::size_t corners() const;
};

/// Everything of ours that can be read. Looks hard where less than a whole mat was found at once.
[[nodiscard]] FoundMarks findMarks(const pictures::Raster& photo);

/// Sorts decoded symbols; corners are multiplied by `factor` and moved by `offset`.
void addMarks(FoundMarks& marks, std::span<const tags::FoundSymbol> symbols, double factor,
              ImagePoint offset);

/// Whether turning the picture over shows more corners of a mat, or more tags, than were found. (In a
/// mirror one symbol of several may be read by chance.)
[[nodiscard]] bool readsBetterMirrored(const FoundMarks& marks, const tags::LumaView& picture);

}  // namespace burrow::measure
