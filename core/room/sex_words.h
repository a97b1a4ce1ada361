// How a finding is put into words, for the app and the terminal alike.
#pragma once

#include "sexing/judge.h"

namespace burrow {

/// "Female", "Could be either"
[[nodiscard]] Message verdictMessage(const sexing::Finding& finding);
/// "97 in 100 that it is a female"; never 0 or 100, which nobody can know.
[[nodiscard]] Message chanceMessage(double female);
/// "88 before, 97 in 100 with this moult"
[[nodiscard]] Message previewMessage(double before, double after);
/// "97 in 100 female if flap and pouches are seen, 12 in 100 if not"
[[nodiscard]] Message rangeMessage(const sexing::WouldSettle& what);

}  // namespace burrow
