// Local contrast for looking at what hardly differs from what is beside it, such as the plate between
// the front book lungs.
#pragma once

#include <cstdint>
#include <vector>

#include "base/result.h"
#include "pictures/raster.h"
#include "tags/symbol.h"

namespace burrow::measure {

struct ContrastOptions {
    /// How often a brightness may occur in a tile, as a multiple of all occurring equally often.
    double clip = 2;
    int columns = 8;
    int rows = 8;
};

/// Contrast limited adaptive histogram equalisation (Zuiderveld 1994) of a grey picture: each tile's
/// histogram, clipped and the rest spread evenly, becomes a curve, and between the tiles' middles
/// curves are blended. Follows OpenCV's in what the paper leaves open. Row by row without gaps; empty
/// for a picture that is none, or tiles fewer than one.
[[nodiscard]] std::vector<std::uint8_t> equalised(const tags::LumaView& picture,
                                                  const ContrastOptions& options = {});

/// The same on a colour picture: brightness (Rec. 601) is equalised, and each pixel's channels are
/// shifted with it, which keeps its colour difference.
[[nodiscard]] pictures::Raster withLocalContrast(const pictures::Raster& picture,
                                                 const ContrastOptions& options = {});

}  // namespace burrow::measure
