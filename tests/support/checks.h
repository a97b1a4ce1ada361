// Checks against published and computed values in programs that use no test framework.
#pragma once

#include <cmath>
#include <iostream>
#include <string>

namespace burrow::test {

/// Counts what was checked and says what does not hold.
class Checks {
public:
    void that(bool holds, const std::string& what) {
        ++count_;
        if (holds) return;
        ok_ = false;
        std::cerr << "does not hold: " << what << '\n';
    }
    void near(double value, double expected, double tolerance, const std::string& what) {
        const bool holds = std::abs(value - expected) <= tolerance;
        that(holds, what + ": " + std::to_string(value) + ", expected " + std::to_string(expected));
    }
    /// Whether all of at least `least` checks held.
    [[nodiscard]] bool ok(int least) const { return ok_ && count_ >= least; }

private:
    bool ok_ = true;
    int count_ = 0;
};

}  // namespace burrow::test
