// Bundles as lines for people and as JSON for scripts; and how far a long command has come.
#pragma once

#include "exchange/bundle.h"
#include "terminal/console.h"

namespace burrow::terminal {

/// Enough of a device's id to tell a keeper's few devices apart.
[[nodiscard]] std::string shortName(const DeviceId& device);

/// {book, room, code, device, written_at, extent, entries, animals, photos, ...}
[[nodiscard]] nlohmann::json toJson(const exchange::Manifest& manifest);
void describe(const exchange::Manifest& manifest, const Console& console);

/// {added, known, unknown, ahead, forked, new_device, arrival}
[[nodiscard]] nlohmann::json toJson(const MergeReport& merge);

/// What the keeper should know of clocks and copies, and what is to settle.
void warn(const std::vector<AheadDevice>& ahead, const std::vector<DeviceId>& forked,
          bool isNewDevice, std::int64_t differences, const Console& console);

/// Shows one line that is written over, where somebody looks at a terminal; never ends the work.
[[nodiscard]] exchange::OnProgress showProgress(const Console& console);
/// Takes the line away again.
void endProgress();

}  // namespace burrow::terminal
