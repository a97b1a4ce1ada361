// The notifier of this device.
#pragma once

#include <memory>

#include "ports/notifier.h"

namespace burrow {

/// On a desktop, or a phone that runs one, over its session bus; elsewhere one that shows nothing yet, and
/// says so each time it is asked.
[[nodiscard]] std::unique_ptr<Notifier> deviceNotifier();

}  // namespace burrow
