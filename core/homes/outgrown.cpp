#include "homes/outgrown.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace burrow::homes {
namespace {

/// Standard normal distribution function.
double normal(double x) { return std::erfc(-x / std::sqrt(2.0)) / 2; }

struct LogNormal {
    double mean = 0;  ///< of the logarithm
    double deviation = 0;

    [[nodiscard]] double atMost(double value) const {
        if (value <= 0) return 0;
        const double off = std::log(value) - mean;
        if (deviation <= 0) return off >= 0 ? 1 : 0;
        return normal(off / deviation);
    }
};

/// The moult that makes it too large: how likely each is, and when it comes.
struct Moult {
    double chance = 0;
    LogNormal days;
};
using Moults = std::array<Moult, moultsAhead>;

/// The logarithm of the span, moult by moult, as a normal distribution.
class Growing {
public:
    Growing(const Dweller& dweller, const GrowthOutlook& growth) : growth_(growth) {
        mean_ = std::log(std::max(dweller.span.value, 1e-6));
        variance_ = growth.spanError * growth.spanError;
        const double step = std::log(std::max(growth.ratio, 1.0));
        if (growth.limit) {
            const double room = std::log(growth.limit->value) - mean_;
            pull_ = room > 0 ? std::min(step / room, 1.0) : 0;
            limit_ = mean_ + std::max(room, 0.0);
        } else {
            step_ = step;
        }
    }
    /// Nobody shrinks: the step is a normal one cut off at zero, with the mean and variance of that.
    void moult() {
        const double step = pull_ * (limit_ - mean_) + step_;
        const double spread = growth_.spread;
        double gained = std::max(step, 0.0);
        double squared = gained * gained;
        if (spread > 0) {
            const double up = normal(step / spread);
            const double density =
                std::exp(-step * step / (2 * spread * spread)) / std::sqrt(2 * std::numbers::pi);
            gained = step * up + spread * density;
            squared = (step * step + spread * spread) * up + step * spread * density;
        }
        mean_ += gained;
        variance_ = variance_ * (1 - pull_) * (1 - pull_) + squared - gained * gained;
    }
    [[nodiscard]] double chanceAbove(double logarithm) const {
        if (variance_ <= 0) return mean_ > logarithm ? 1 : 0;
        return normal((mean_ - logarithm) / std::sqrt(variance_));
    }

private:
    const GrowthOutlook& growth_;
    double mean_ = 0;
    double variance_ = 0;
    double step_ = 0;
    double pull_ = 0;
    double limit_ = 0;
};

Moults moultsUntil(double largest, const Dweller& dweller, const MoultOutlook& outlook,
                   const GrowthOutlook& growth) {
    Moults moults;
    Growing growing(dweller, growth);
    double reached = 0;
    double mean = 0;
    double variance = 0;
    double median = std::max(outlook.nextDays, 0.5);
    for (std::size_t i = 0; i < moults.size(); ++i) {
        growing.moult();
        const double above = std::max(reached, growing.chanceAbove(largest));
        const double spread = i == 0 ? outlook.nextSpread : outlook.laterSpread;
        const double factor = std::exp(spread * spread);
        mean += median * std::sqrt(factor);
        variance += median * median * factor * (factor - 1);
        const double squared = std::log1p(variance / (mean * mean));
        moults[i] = {above - reached, {std::log(mean) - squared / 2, std::sqrt(squared)}};
        reached = above;
        median = i == 0 ? std::max(outlook.laterDays, 0.5) : median * outlook.lengthening;
    }
    return moults;
}

double chanceBy(const Moults& moults, double days) {
    double chance = 0;
    for (const auto& moult : moults) {
        if (moult.chance > 1e-9) chance += moult.chance * moult.days.atMost(days);
    }
    return chance;
}

/// The first whole day by which the chance is reached.
std::optional<int> dayOf(const Moults& moults, double chance) {
    constexpr int farthest = 20'000;
    if (chanceBy(moults, farthest) < chance) return std::nullopt;
    int early = 0;
    int late = farthest;
    while (late - early > 1) {
        const int middle = early + (late - early) / 2;
        (chanceBy(moults, middle) < chance ? early : late) = middle;
    }
    return late;
}

Message reasonFor(const Outgrown& outgrown) {
    if (outgrown.now) return {"homes.outgrown.now"};
    const auto days = [](int count) { return std::int64_t{count}; };
    if (outgrown.median && outgrown.late) {
        return {"homes.outgrown.about",
                {{"days", days(*outgrown.median)},
                 {"early", days(*outgrown.early)},
                 {"late", days(*outgrown.late)}}};
    }
    if (outgrown.median) {
        return {"homes.outgrown.perhaps",
                {{"days", days(*outgrown.median)}, {"early", days(*outgrown.early)}}};
    }
    return {"homes.outgrown.never", {{"chance", std::round(100 * outgrown.chanceEver)}}};
}

}  // namespace

std::optional<Outgrown> outgrown(const Dweller& dweller, const Enclosure& home,
                                 const MoultOutlook& moults, const GrowthOutlook& growth) {
    const auto largest = largestSpan(dweller, home);
    if (!largest) return std::nullopt;
    Outgrown answer;
    answer.now = dweller.span > *largest;
    if (answer.now) {
        answer.chanceAtNextMoult = answer.chanceEver = 1;
        answer.early = answer.median = answer.late = 0;
    } else {
        const auto ahead = moultsUntil(std::log(largest->value), dweller, moults, growth);
        answer.chanceAtNextMoult = ahead.front().chance;
        for (const auto& moult : ahead) answer.chanceEver += moult.chance;
        answer.early = dayOf(ahead, 0.1);
        answer.median = dayOf(ahead, 0.5);
        answer.late = dayOf(ahead, 0.9);
    }
    answer.why = reasonFor(answer);
    return answer;
}

}  // namespace burrow::homes
