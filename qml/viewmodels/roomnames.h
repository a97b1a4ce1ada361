// What a room may be called, and the code it has on its tags.
#pragma once

#include <QString>

#include "viewmodels/desk.h"

namespace burrow {

/// Why a trimmed name can't be a room's, in words; empty for one that can.
[[nodiscard]] QString roomNameError(const QString& name, const Desk& desk);
/// The same for a code in capitals.
[[nodiscard]] QString roomCodeError(const QString& code, const Desk& desk);
/// The first letters of its words, as a code to begin with: "Kiln Row" as "KR".
[[nodiscard]] QString codeFor(const QString& roomName);

}  // namespace burrow
