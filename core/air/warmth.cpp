#include "air/warmth.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace burrow::air {
namespace {

constexpr double msPerHour = 3'600'000;

/// Integral over a straight line from `a` to `b`, of length 1, of what lies above the base.
double lineAbove(double a, double b, double base) {
    const double low = std::min(a, b) - base;
    const double high = std::max(a, b) - base;
    if (low >= 0) return (low + high) / 2;
    if (high <= 0) return 0;
    return high * high / (2 * (high - low));
}

double lineExcess(double a, double b, const WarmthScale& scale) {
    const double above = lineAbove(a, b, scale.base.value);
    return scale.top ? above - lineAbove(a, b, scale.top->value) : above;
}

/// Mean over one turn of the sine between the extremes of what lies above the base.
double sineAbove(double least, double most, double base) {
    const double middle = (least + most) / 2;
    const double swing = (most - least) / 2;
    if (least >= base) return middle - base;
    if (most <= base) return 0;
    const double angle = std::asin((base - middle) / swing);
    return ((middle - base) * (std::numbers::pi / 2 - angle) + swing * std::cos(angle)) /
           std::numbers::pi;
}

/// Adds up stretches of line, day by day.
class Days {
public:
    Days(const WarmthScale& scale, const Zone& zone) : scale_(scale), zone_(zone) {}

    /// A stretch between two readings, cut at the midnights it passes.
    void add(Instant from, double a, Instant to, double b) {
        const auto whole = static_cast<double>(to.ms - from.ms);
        auto at = from;
        double value = a;
        while (at < to) {
            open(at);
            const auto end = std::min(to, nextDay_);
            const double part = static_cast<double>(end.ms - from.ms) / whole;
            const double reached = a + (b - a) * part;
            take(static_cast<double>(end.ms - at.ms) / msPerHour, value, reached);
            at = end;
            value = reached;
        }
    }
    std::vector<DayWarmth> finish() {
        close();
        return std::move(days_);
    }

private:
    void open(Instant at) {
        if (isOpen_ && at < nextDay_) return;
        close();
        const auto day = zone_.dayOf(at);
        nextDay_ = zone_.at(day + 1, 0);
        // A zone that skips a midnight, or a whole day, still moves on.
        if (nextDay_ <= at) nextDay_ = Instant{at.ms + static_cast<std::int64_t>(msPerHour)};
        isOpen_ = true;
        if (!days_.empty() && days_.back().day == day) return;
        days_.push_back({day, {1e9}, {-1e9}, {0}, 0, std::nullopt});
        excess_ = degrees_ = 0;
    }
    void take(double hours, double a, double b) {
        auto& day = days_.back();
        day.hours += hours;
        degrees_ += hours * (a + b) / 2;
        excess_ += hours * lineExcess(a, b, scale_);
        day.least = std::min({day.least, Celsius{a}, Celsius{b}});
        day.most = std::max({day.most, Celsius{a}, Celsius{b}});
    }
    void close() {
        if (days_.empty()) return;
        auto& day = days_.back();
        // Sums are rounded: the mean of equal readings is the reading.
        day.mean = std::clamp(Celsius{degrees_ / day.hours}, day.least, day.most);
        if (day.hours >= enoughHours) day.dayDegrees = excess_ / day.hours;
    }

    const WarmthScale& scale_;
    const Zone& zone_;
    std::vector<DayWarmth> days_;
    Instant nextDay_;
    bool isOpen_ = false;
    double excess_ = 0;
    double degrees_ = 0;
};

}  // namespace

std::vector<DayWarmth> warmthByDay(std::span<const Sample> samples, const WarmthScale& scale,
                                   const Zone& zone, const AirRules& rules) {
    const std::int64_t longest = std::int64_t{rules.longestGapMinutes} * 60'000;
    Days days(scale, zone);
    const Sample* last = nullptr;
    for (const auto& sample : samples) {
        if (!sample.temperature) continue;
        if (last != nullptr && sample.at > last->at && sample.at.ms - last->at.ms <= longest) {
            days.add(last->at, last->temperature->value, sample.at, sample.temperature->value);
        }
        last = &sample;
    }
    return days.finish();
}

double dayDegreesBetween(Celsius least, Celsius most, const WarmthScale& scale) {
    const double above = sineAbove(least.value, most.value, scale.base.value);
    return scale.top ? above - sineAbove(least.value, most.value, scale.top->value) : above;
}

}  // namespace burrow::air
