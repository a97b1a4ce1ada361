// Where the edges of a symbol's modules lie in a photo, to a fraction of a pixel. A symbol has some
// hundred of them in either direction, so together they say far more than its four corners do.
#pragma once

#include <vector>

#include "measure/plane.h"
#include "pictures/raster.h"
#include "tags/symbol.h"

namespace burrow::measure {

/// A piece of an edge between a dark and a light module, one module long.
struct EdgePoint {
    MatPoint at;             ///< its middle on the sheet
    bool isUpright = false;  ///< runs along y, so that it is known only across, along x
    int polarity = 1;        ///< 1 where the light side is to the right or below, else -1
    int symbol = 0;          ///< index of the symbol it belongs to
    int line = 0;            ///< all pieces of one printed line share it; no two lines do
    ImagePoint seen;         ///< where it was found; along the edge this says nothing
    double weight = 1;       ///< in proportion to the contrast
};

/// A symbol looked at closely.
struct SymbolEdges {
    std::vector<EdgePoint> edges;
    Homography local{};  ///< from the sheet to the photo, good only on and around the symbol
    double blur = 0;     ///< standard deviation of what smears an edge, pixels, the worse direction
    double module = 0;   ///< pixels for a module, in the direction that shows less
    double contrast = 0;  ///< of light and dark modules, of 255
    double noise = 0;     ///< standard deviation of one edge's place, pixels
};

/// Looks at a decoded symbol that stands at `place` on the sheet. Nothing where the picture there is
/// not that symbol, or its edges cannot be told.
[[nodiscard]] std::optional<SymbolEdges> edgesOf(const pictures::Raster& photo,
                                                 const tags::FoundSymbol& found,
                                                 const MatBox& place, int index);

}  // namespace burrow::measure
