// What other devices are known to have, from the last file that came from each.
#pragma once

#include "exchange/manifest.h"
#include "storage/sqlite.h"

namespace burrow::exchange {

/// Remembers what the file says its device has, unless a later file of it said so before. Inside the
/// transaction that takes the file in.
Done rememberPeer(storage::Connection& connection, const Manifest& manifest);

/// Empty for a device that never wrote a file that came here.
Result<VersionVector> peerVector(storage::Connection& connection, const DeviceId& device);

/// Whether the book has all entries that a file counts: by the number and the ids of each author's, without
/// reading the file. False does not mean that one is lacking.
Result<bool> hasAll(storage::Connection& connection, const Totals& totals);

}  // namespace burrow::exchange
