// A book as text, so that two of them can be compared.
#pragma once

#include <functional>
#include <string_view>

#include "storage/sqlite.h"

namespace burrow {

/// Everything that follows from which entries a book has, line by line in a fixed order: the entries by
/// device, number and id, then the projections. Left out is what belongs to this file alone: the order of
/// arrival, its own device, what it heard of other clocks, its arrivals. Two books with the same entries
/// give the same bytes.
Done dumpLogical(storage::Connection& connection,
                 const std::function<Done(std::string_view line)>& sink);

}  // namespace burrow
