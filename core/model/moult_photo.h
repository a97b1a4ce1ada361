// Photos of moults among the facts of an animal.
#pragma once

#include "model/fact.h"

namespace burrow {

/// A photo that shows a shed skin.
[[nodiscard]] inline bool isMoultPhoto(const Fact& fact) {
    return fact.kind == FactKind::photo && fact.body.role == PhotoRole::moult && fact.body.picture;
}

/// The moult that such a photo is of: itself, where no moult was written down.
[[nodiscard]] inline EntryId moultOf(const Fact& photo) {
    return photo.body.about.value_or(photo.id);
}

}  // namespace burrow
