// Which photos the journal names.
#pragma once

#include <set>

#include "base/hash.h"
#include "storage/sqlite.h"

namespace burrow {

/// Takes out of `photos` those that any entry names, also one that was retracted or amended since, and
/// one of a kind that only a later version knows.
Done crossOutNamed(storage::Connection& connection, std::set<Sha256>& photos);

/// The upright copies that facts name now.
Result<std::set<Sha256>> picturesShown(storage::Connection& connection);

}  // namespace burrow
