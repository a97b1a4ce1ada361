// The readings of the air as a table for other programs.
#pragma once

#include "exchange/leave.h"

namespace burrow {

/// air.csv: place, at, celsius, humidity. A place at a time, oldest first.
[[nodiscard]] exchange::LeaveTable airTable();

}  // namespace burrow
