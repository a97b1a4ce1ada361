// Digests as compact bytes, private to one version of the program: whoever cannot read them folds the
// facts again.
#pragma once

#include <optional>
#include <span>

#include "base/files.h"
#include "model/digest.h"

namespace burrow {

[[nodiscard]] Bytes encodeDigest(const Digest& digest);
/// Nothing for bytes of another version, or damaged ones.
[[nodiscard]] std::optional<Digest> decodeDigest(std::span<const std::uint8_t> bytes);

}  // namespace burrow
