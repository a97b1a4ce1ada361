// Which of a camera's formats suits the reading of tags, or the taking of photos.
#pragma once

#include <QSize>
#include <optional>
#include <span>

namespace burrow {

struct FormatOffer {
    QSize size;
    float framesPerSecond = 0;  ///< at most
    bool packedAsJpeg = false;  ///< every frame has to be unpacked before it can be read
};

/// What the frames are for.
enum class Looking {
    forTags,
    /// The largest frames are photos too, where the camera has no other way to take one.
    forPhotos
};

/// The place in the list of the most detailed format that is at most 1920 by 1080 and brings 15 frames
/// a second; of equals the faster, then the one that is not packed. For photos it is at most 12 megapixels
/// at 5 frames a second. Nothing where none is like that: the camera's own choice is better then.
[[nodiscard]] std::optional<qsizetype> suitableFormat(std::span<const FormatOffer> offers,
                                                      Looking looking = Looking::forTags);

}  // namespace burrow
