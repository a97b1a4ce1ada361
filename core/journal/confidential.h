// What is left out of files for others unless asked for. An entry is passed on whole or not at all; so
// who bought an animal and for how much stand in an amendment of their own beside the fact.
#pragma once

#include <nlohmann/json.hpp>

#include "model/fact.h"

namespace burrow {

/// Whether an entry with this body is left out: one marked confidential, or one that names a party or a
/// price, as only the confidential part of a fact does (and facts of the first version).
[[nodiscard]] bool isConfidential(const nlohmann::json& body);

/// Whether the fact has something that must stand beside it. One that is confidential as a whole has
/// not: it is left out itself.
[[nodiscard]] bool hasConfidentialPart(const FactBody& body);
/// The body without its party and its price.
[[nodiscard]] FactBody withoutConfidentialPart(FactBody body);

/// Gives the body of a fact the confidential fields of another one, and takes its own away.
void takeConfidentialPart(nlohmann::json& body, const nlohmann::json& from);
[[nodiscard]] bool sameConfidentialPart(const nlohmann::json& a, const nlohmann::json& b);

}  // namespace burrow
