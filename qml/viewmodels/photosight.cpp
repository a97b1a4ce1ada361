#include "viewmodels/photosight.h"

#include <algorithm>

#include "measure/find.h"

namespace burrow {

PhotoSight sightOf(const pictures::Raster& photo, const measure::MeasureRules& rules) {
    PhotoSight sight;
    auto surveyed = measure::survey(photo, std::nullopt, rules);
    if (surveyed) {
        sight.codes = surveyed->codes;
        sight.survey = *std::move(surveyed);
    } else {
        sight.trouble = surveyed.error().message;
        // A tag says whose photo it is long before it says how large things are.
        for (const auto& found : measure::findMarks(photo).tags) {
            sight.codes.push_back(found.tag.code);
        }
    }
    std::sort(sight.codes.begin(), sight.codes.end());
    sight.codes.erase(std::unique(sight.codes.begin(), sight.codes.end()), sight.codes.end());
    return sight;
}

PhotoSight sightOf(std::span<const std::uint8_t> bytes, const measure::MeasureRules& rules) {
    const auto photo = pictures::decode(bytes);
    if (photo) return sightOf(*photo, rules);
    PhotoSight sight;
    sight.trouble = photo.error().message;
    return sight;
}

}  // namespace burrow
