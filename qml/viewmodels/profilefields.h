// The facts of a species as the fields of a form: between what a keeper fills in and what a file of a
// profile holds.
#pragma once

#include <nlohmann/json.hpp>
#include <span>

#include "viewmodels/formmodel.h"

namespace burrow {

enum class FactShape { line, names, range, term, yesNo };

/// A fact under the name that files give it.
struct ProfileFact {
    const char* name;
    FactShape shape;
    bool isSourced;                             ///< it has a source beside its value
    std::span<const std::string_view> terms{};  ///< to choose from, as files spell them
};

/// In the order of the form.
[[nodiscard]] std::span<const ProfileFact> profileFacts();

/// The name of the field for where a fact comes from.
[[nodiscard]] std::string sourceField(const ProfileFact& fact);
/// What a field starts with; empty for a fact that is not in `object`.
[[nodiscard]] QString enteredOf(const ProfileFact& fact, const nlohmann::json& object);
[[nodiscard]] QString sourceOf(const ProfileFact& fact, const nlohmann::json& object);

/// What was entered as a file holds it; null for what can't be read.
[[nodiscard]] nlohmann::json factFrom(const ProfileFact& fact, const QString& entered,
                                      const QString& source);

}  // namespace burrow
