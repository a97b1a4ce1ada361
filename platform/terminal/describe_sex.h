// Findings about the sex, and sizes, as JSON for scripts.
#pragma once

#include <CLI/CLI.hpp>

#include "room/sex_case.h"
#include "room/sizes.h"
#include "terminal/registry.h"

namespace burrow::terminal {

/// {code, species, recorded, verdict, stop, p_female, prior, settled, decisive, ledger, conflicts,
/// would_settle, text}
[[nodiscard]] nlohmann::json toJson(const SexCase& at, const Console& console);
/// {code, species, moult, day, carapace_mm, photos, waiting, p_female, bits}
[[nodiscard]] nlohmann::json toJson(const ToBeSexed& row, const Subject& subject);
/// {carapace: [...], span: [...], pairs, span_by_carapace, estimate, text}
[[nodiscard]] nlohmann::json toJson(const Sizes& sizes, const Console& console);

/// Asking for a second opinion, giving one, and taking it in.
void addOpinionCommands(CLI::App& app, Command& chosen);

}  // namespace burrow::terminal
