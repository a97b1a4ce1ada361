// The order of the walk as bytes, for sorting thousands.
#pragma once

#include <string>
#include <string_view>

#include "base/ids.h"
#include "model/place.h"

namespace burrow {

/// Bytes in the order of walksBefore() (due_list.h). `place` is that of the enclosure, else its own.
[[nodiscard]] std::string walkKey(bool isQuarantined, const Place& place, std::string_view number,
                                  SubjectId id);

}  // namespace burrow
