// The choices and stops of an examination, as pages ask for them.
#pragma once

#include "viewmodels/wording.h"

namespace burrow {

/// [{word, sub}]: female, male, can't tell.
[[nodiscard]] QVariantList sexChoices(const Desk& desk);
/// What a choice of them means; unknown outside of them.
[[nodiscard]] Sex sexOf(int choice);
[[nodiscard]] bool isSexChoice(int choice);
/// From "Barely" to "Beyond doubt".
[[nodiscard]] QStringList clarityWords(const Desk& desk);

}  // namespace burrow
