// Bytes to sort texts by as compareNatural() does: made once for each, where comparing would read both
// again and again.
#pragma once

#include <string>
#include <string_view>

namespace burrow {

/// Adds bytes that stand in the same order as compareNatural() (text.h) puts texts without NUL.
void addNaturalKey(std::string& key, std::string_view text);

}  // namespace burrow
