// The choices and stops of an examination, as pages ask for them.
#pragma once

#include "viewmodels/wording.h"

namespace burrow {

/// [{word, sub}]: female, male, can't tell.
[[nodiscard]] QVariantList sexChoices(const Desk& desk);
/// What a choice of them means; unknown outside of them.
[[nodiscard]] Sex sexOf(int choice);
[[nodiscard]] bool isSexChoice(int choice);
/// "Wren sees a female. Seen: clearly", of another keeper's examination.
[[nodiscard]] QString opinionText(const FactBody& examination, const Desk& desk);
/// [{drawing, name}]: our own drawings, in the order in which they help.
[[nodiscard]] QVariantList sexDrawings(const Desk& desk);
/// From "Barely" to "Beyond doubt".
[[nodiscard]] QStringList clarityWords(const Desk& desk);

}  // namespace burrow
