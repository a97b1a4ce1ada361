// Sizes over an animal's moults, as lists and plots take them.
#pragma once

#include "growth/measures.h"
#include "viewmodels/wording.h"

namespace burrow {

/// What the sizes of one kind come to, one for each skin.
struct SizeLines {
    QVariantList rows;    ///< [{name, value, sub, page, properties}], the last skin first
    QVariantList points;  ///< for the plot, oldest first; empty for fewer than two
    QVariantList labels;  ///< a year at its first day
    QString spoken;       ///< in words, for a screen reader

    friend bool operator==(const SizeLines&, const SizeLines&) = default;
};

/// `skins` as growth::onePerSkin() gives them; `what` names them ("Carapace").
[[nodiscard]] SizeLines sizeLines(std::span<const growth::Measured> skins, const std::string& what,
                                  const Desk& desk);

}  // namespace burrow
