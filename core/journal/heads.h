// Which of several values of the same thing count. A value that was written by someone who knew
// another one replaces it, whatever the clocks say; values of which neither writer knew the other's
// stand side by side until somebody settles them.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "base/ids.h"

namespace burrow {

/// A value and what its writer knew of the others.
struct Said {
    EntryId entry;
    Uuid device;
    std::int64_t seq = 0;
    std::int64_t stamp = 0;  ///< hybrid logical clock
    bool isRetracted =
        false;  ///< does not count, but what it replaced stays replaced by what replaced it
    /// The entries it replaced. Nothing for an entry of the first version, which did not write them: it
    /// replaced all that its own device said before.
    std::optional<std::vector<EntryId>> over;
};

/// The places of those values that nobody replaced, the one that counts first: the greatest by (stamp,
/// entry). Depends only on which values there are, not on their order. Empty only when all of them are
/// retracted; where all replace each other in a circle, which no device writes, all are given.
[[nodiscard]] std::vector<std::size_t> headsOf(std::span<const Said> values);

}  // namespace burrow
