// Where the photos of the open book are, for showing them.
#pragma once

#include <QUrl>

#include "base/hash.h"
#include "viewmodels/desk.h"

namespace burrow {

[[nodiscard]] QUrl pictureUrl(const Desk& desk, const Sha256& picture);
[[nodiscard]] QUrl thumbnailUrl(const Desk& desk, const Sha256& picture);

}  // namespace burrow
