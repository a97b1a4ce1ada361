// What is known of a species, in words.
#pragma once

#include <QVariantList>

#include "viewmodels/wording.h"

namespace burrow {

/// "Tree-dwelling tarantula"
[[nodiscard]] QString kindText(const Profile& profile, const Desk& desk);
/// "Mexican red knee, Mexican redknee"
[[nodiscard]] QString joinedNames(const std::vector<std::string>& names);
/// Every fact with its source: [{name, value, source, sub}].
[[nodiscard]] QVariantList profileLines(const Profile& profile, const Desk& desk);

}  // namespace burrow
