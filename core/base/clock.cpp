#include "base/clock.h"

#include <chrono>

namespace burrow {

Instant SystemClock::now() const {
    const auto since = std::chrono::system_clock::now().time_since_epoch();
    return {std::chrono::duration_cast<std::chrono::milliseconds>(since).count()};
}

}  // namespace burrow
