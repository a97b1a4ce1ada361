#include "camera/camera_format.h"

#include <tuple>

namespace burrow {
namespace {

// A tag of 20 mm fills 64 pixels a side of a 1080p frame that is 60 cm wide, 2.6 for each of its 25
// modules; more detail would cost more time than it finds tags.
constexpr int mostPixels = 1920 * 1080;
constexpr float fewestFrames = 15;
// A mat is measured the surer the more pixels it has, and held still (common practice, no source).
constexpr int mostOfPhotos = 4032 * 3024;
constexpr float fewestForPhotos = 5;

bool isSuitable(const FormatOffer& offer, Looking looking) {
    const bool isForTags = looking == Looking::forTags;
    return offer.size.width() * offer.size.height() <= (isForTags ? mostPixels : mostOfPhotos) &&
           offer.framesPerSecond >= (isForTags ? fewestFrames : fewestForPhotos);
}

auto merit(const FormatOffer& offer) {
    return std::tuple(offer.size.width() * offer.size.height(), offer.framesPerSecond,
                      !offer.packedAsJpeg);
}

}  // namespace

std::optional<qsizetype> suitableFormat(std::span<const FormatOffer> offers, Looking looking) {
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < offers.size(); ++i) {
        if (!isSuitable(offers[i], looking)) continue;
        if (!best || merit(offers[*best]) < merit(offers[i])) best = i;
    }
    if (!best) return std::nullopt;
    return static_cast<qsizetype>(*best);
}

}  // namespace burrow
