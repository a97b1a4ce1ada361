// What is said of files, the same on every page.
#pragma once

#include <QString>
#include <cstdint>

#include "exchange/manifest.h"
#include "viewmodels/desk.h"

namespace burrow {

/// "2.1 MB", "640 kB"; decimal units, as shops and systems count them.
[[nodiscard]] QString fileSizeText(std::uint64_t bytes, const Desk& desk);
/// "18:06" by the keeper's clock.
[[nodiscard]] std::string timeText(Instant instant, const Desk& desk);
/// "2,047 entries and 312 photos, small"
[[nodiscard]] QString entriesText(const exchange::Manifest& manifest, const Desk& desk);
/// "Kiln Row, 17 May, 18:06"
[[nodiscard]] QString titleText(const exchange::Manifest& manifest, const Desk& desk);

}  // namespace burrow
