// Species for what a keeper has typed so far.
#pragma once

#include <QStringList>

#include "husbandry/profiles.h"

namespace burrow {

/// Valid names of species for what was typed so far: those with a name that holds it, then those
/// that it may be a slip of.
[[nodiscard]] QStringList speciesLike(const QString& typed, const Profiles& profiles, int most);

}  // namespace burrow
