// Where the photos of the open book are, for showing them.
#pragma once

#include <QUrl>

#include "base/hash.h"
#include "viewmodels/desk.h"

namespace burrow {

[[nodiscard]] QUrl pictureUrl(const Desk& desk, const Sha256& picture);
/// Where a photo may be, the best one first: its original never leaves the device that took it.
[[nodiscard]] QStringList photoPaths(const Desk& desk, const FactBody& photo);
[[nodiscard]] QUrl thumbnailUrl(const Desk& desk, const Sha256& picture);

}  // namespace burrow
