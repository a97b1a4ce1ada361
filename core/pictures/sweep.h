// Photo files that no entry names: what is left when the program ends, or the device fails, between
// keeping a photo and writing the entry that names it.
#pragma once

#include <chrono>
#include <set>

#include "base/hash.h"
#include "pictures/store.h"

namespace burrow::pictures {

/// Between keeping a photo and naming it lie seconds. A younger file is left alone.
inline constexpr std::chrono::seconds sweepAge = std::chrono::hours(1);

/// The hashes by which the files of a photo folder are named, without the files too young to be judged.
/// Empty where there is no folder.
Result<std::set<Sha256>> settledPhotos(const std::filesystem::path& folder,
                                       std::chrono::seconds age = sweepAge);

/// Removes the files of those photos, and files of that age that were never finished. The number of
/// files removed.
Result<std::int64_t> removePhotos(const std::filesystem::path& folder,
                                  const std::set<Sha256>& photos,
                                  std::chrono::seconds age = sweepAge);

}  // namespace burrow::pictures
