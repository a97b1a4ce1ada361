#include "air/alarms.h"

#include <algorithm>
#include <cmath>

namespace burrow::air {
namespace {

constexpr std::int64_t msPerMinute = 60'000;

/// One side of one range.
struct Side {
    Breach breach;
    double limit;
    bool isUpper;
    Patience patience;

    /// How far outside; negative inside.
    [[nodiscard]] double beyond(double value) const {
        return isUpper ? value - limit : limit - value;
    }
};

const char* messageId(Breach breach) {
    switch (breach) {
        case Breach::tooCold: return "air.alarm.tooCold";
        case Breach::tooWarm: return "air.alarm.tooWarm";
        case Breach::tooDry: return "air.alarm.tooDry";
        case Breach::tooDamp: return "air.alarm.tooDamp";
    }
    return "";
}

/// Follows the readings of one side.
class Watch {
public:
    Watch(const Side& side, int longestGapMinutes, std::vector<Alarm>& alarms)
        : side_(side), longestGap_(longestGapMinutes * msPerMinute), alarms_(alarms) {}

    void take(Instant at, double value) {
        if (alarm_ && at.ms - last_.ms > longestGap_) end();
        last_ = at;
        const double beyond = side_.beyond(value);
        if (beyond > 0) {
            if (!alarm_) alarm_ = Alarm{side_.breach, at, at, value, side_.limit, false, {}};
            alarm_->until = at;
            if (beyond > side_.beyond(alarm_->worst)) alarm_->worst = value;
            alarm_->isOpen = true;
        } else if (alarm_) {
            alarm_->isOpen = false;
            if (beyond <= -side_.patience.back) end();
        }
    }
    void finish() {
        if (!alarm_) return;
        const bool isOpen = alarm_->isOpen;
        end(isOpen);
    }

private:
    void end(bool isOpen = false) {
        const auto lasted = alarm_->until.ms - alarm_->from.ms;
        alarm_->isOpen = isOpen;
        if (isOpen || lasted >= side_.patience.leastMinutes * msPerMinute) {
            const double hours = std::round(static_cast<double>(lasted) / msPerMinute / 6) / 10;
            alarm_->why = {messageId(side_.breach),
                           {{"worst", std::round(10 * alarm_->worst) / 10},
                            {"limit", side_.limit},
                            {"hours", hours}}};
            alarms_.push_back(std::move(*alarm_));
        }
        alarm_.reset();
    }

    Side side_;
    std::int64_t longestGap_;
    std::vector<Alarm>& alarms_;
    std::optional<Alarm> alarm_;
    Instant last_;
};

template <class Unit, class Read>
void watch(std::span<const Sample> samples, const Range<Unit>& range, Breach below, Breach above,
           const Patience& patience, const AirRules& rules, Read read, std::vector<Alarm>& alarms) {
    Watch low({below, range.least.value, false, patience}, rules.longestGapMinutes, alarms);
    Watch high({above, range.most.value, true, patience}, rules.longestGapMinutes, alarms);
    for (const auto& sample : samples) {
        const auto& value = read(sample);
        if (!value) continue;
        low.take(sample.at, value->value);
        high.take(sample.at, value->value);
    }
    low.finish();
    high.finish();
}

}  // namespace

std::vector<Alarm> alarms(std::span<const Sample> samples, const AirRange& range,
                          const AirRules& rules) {
    std::vector<Alarm> all;
    if (range.warmth) {
        watch(
            samples, *range.warmth, Breach::tooCold, Breach::tooWarm, rules.warmth, rules,
            [](const Sample& sample) -> const auto& { return sample.temperature; }, all);
    }
    if (range.humidity) {
        watch(
            samples, *range.humidity, Breach::tooDry, Breach::tooDamp, rules.humidity, rules,
            [](const Sample& sample) -> const auto& { return sample.humidity; }, all);
    }
    std::stable_sort(all.begin(), all.end(), [](const Alarm& a, const Alarm& b) {
        return a.from != b.from ? a.from < b.from : a.breach < b.breach;
    });
    return all;
}

}  // namespace burrow::air
