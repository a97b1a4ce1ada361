// Films for the tour: what a phone's camera would see, packed by ffmpeg.
#pragma once

#include <QImage>
#include <QString>
#include <vector>

#include "room/room.h"
#include "words/words.h"

namespace burrow::demo {

/// The tags of these residents as they come out of a printer: a sheet written as PDF, rasterised by
/// poppler's pdftoppm, and cut. Fails where a tool is missing.
[[nodiscard]] Result<std::vector<QImage>> printedTags(const std::vector<ResidentPtr>& residents,
                                                      const Words& words,
                                                      const std::filesystem::path& folder);

/// An A5 mat, printed and rasterised in the same way.
[[nodiscard]] Result<QImage> printedMat(const Words& words, const std::filesystem::path& folder);

/// A hand brings the phone over the tag: it drifts in, turned a little, and rests. Three seconds.
[[nodiscard]] Done filmTag(const QImage& tag, const std::filesystem::path& file);
/// Looks at one thing without moving. Ten seconds.
[[nodiscard]] Done filmStill(const QImage& picture, const std::filesystem::path& file);

}  // namespace burrow::demo
