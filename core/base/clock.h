// The time of day as a port: planners take a day, recorders take a clock.
#pragma once

#include "base/civil.h"

namespace burrow {

class Clock {
public:
    virtual ~Clock() = default;
    [[nodiscard]] virtual Instant now() const = 0;
};

class SystemClock final : public Clock {
public:
    [[nodiscard]] Instant now() const override;
};

/// Stands still until told otherwise.
class FixedClock final : public Clock {
public:
    explicit FixedClock(Instant at) : at_(at) {}
    [[nodiscard]] Instant now() const override { return at_; }
    void set(Instant at) { at_ = at; }

private:
    Instant at_;
};

}  // namespace burrow
