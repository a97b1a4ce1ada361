#include "husbandry/plain_forecast.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace burrow {
namespace {

/// How many of its own last intervals, and growth steps, count.
constexpr int lastSteps = 3;
/// A moult further away than that is not worth a date.
constexpr double farthest = 10 * 365.25;

struct Interval {
    double days = 0;
    int own = 0;
};

/// The mean of the last intervals that the record shows; those of no days are slips.
Interval usualInterval(const Digest& digest, double ofStage) {
    const auto& moults = digest.recentMoults;
    double sum = 0;
    int count = 0;
    for (auto i = moults.size(); i > 1 && count < lastSteps; --i) {
        const int days = moults[i - 1].day - moults[i - 2].day;
        if (days <= 0) continue;
        sum += days;
        ++count;
    }
    return count > 0 ? Interval{sum / count, count} : Interval{ofStage, 0};
}

/// The law of one interval, see the header.
class Law {
public:
    Law(double median, double spread)
        : median_(median), shape_(std::numbers::pi / (spread * std::numbers::sqrt3)) {}

    [[nodiscard]] double over(double days) const {
        if (days <= 0) return 0;
        return 1 / (1 + std::pow(median_ / days, shape_));
    }
    [[nodiscard]] double quantile(double part) const {
        if (part >= 1) return farthest;
        return std::min(farthest, median_ * std::pow(part / (1 - part), 1 / shape_));
    }
    /// Of those not over after `waited` days.
    [[nodiscard]] double quantileAfter(double waited, double part) const {
        const double over = this->over(waited);
        return std::max(waited, quantile(over + part * (1 - over)));
    }
    [[nodiscard]] double overWithin(double waited, double days) const {
        const double over = this->over(waited);
        return over >= 1 ? 0 : (this->over(waited + days) - over) / (1 - over);
    }

private:
    double median_;
    double shape_;
};

bool hasNoNextMoult(const PlanInput& input, const StageJudgement& stage) {
    return input.isSeveral() || stage.stage == Stage::matureMale;
}

/// The mean growth of the last moults at which it was measured twice running.
std::optional<double> ownRatio(const Digest& digest) {
    const auto& moults = digest.recentMoults;
    double sum = 0;
    int count = 0;
    for (auto i = moults.size(); i > 1 && count < lastSteps; --i) {
        const auto& before = moults[i - 2];
        const auto& after = moults[i - 1];
        const auto& a = before.carapace && after.carapace ? before.carapace : before.span;
        const auto& b = before.carapace && after.carapace ? after.carapace : after.span;
        if (!a || !b || a->value <= 0 || b->value <= 0) continue;
        sum += std::log(*b / *a);
        ++count;
    }
    if (count == 0) return std::nullopt;
    return std::exp(sum / count);
}

}  // namespace

std::string_view name(ForecastBasis basis) {
    switch (basis) {
        case ForecastBasis::ownMoults: return "own_moults";
        case ForecastBasis::stage: return "stage";
        case ForecastBasis::model: return "model";
    }
    return {};
}

std::optional<MoultForecast> PlainForecast::nextMoult(const ForecastQuestion& q) const {
    const auto& digest = q.input.digest;
    const auto last = digest.lastMoult();
    if (!last || hasNoNextMoult(q.input, q.stage)) return std::nullopt;
    const auto interval =
        usualInterval(digest, q.rules.days(ruleFor("forecast.interval", q.stage.growing())));
    const Law law(interval.days, q.rules.factor("forecast.spread"));
    const double waited = std::max(0, q.today - *last);
    const auto on = [&](double days) { return *last + static_cast<int>(std::lround(days)); };
    MoultForecast forecast;
    forecast.basis = interval.own > 0 ? ForecastBasis::ownMoults : ForecastBasis::stage;
    forecast.intervals = interval.own;
    forecast.usualInterval = std::max(1, static_cast<int>(std::lround(interval.days)));
    forecast.lookFrom = on(law.quantile(0.1));
    forecast.soonest = on(law.quantileAfter(waited, 0.1));
    forecast.median = on(law.quantileAfter(waited, 0.5));
    forecast.latest = on(law.quantileAfter(waited, 0.9));
    forecast.soon = law.overWithin(waited, q.within);
    return forecast;
}

std::optional<SpanForecast> PlainForecast::spanAfterMoult(const ForecastQuestion& q) const {
    if (!q.stage.span || q.stage.stage == Stage::matureMale) return std::nullopt;
    const auto own = q.input.isSeveral() ? std::nullopt : ownRatio(q.input.digest);
    SpanForecast forecast;
    forecast.basis = own ? ForecastBasis::ownMoults : ForecastBasis::stage;
    // A moulted skin is measured wet or dry, stretched or curled: growth below none is an error.
    const double ratio = std::max(1.0, own.value_or(q.rules.factor("growth.ratio")));
    forecast.afterNextMoult = *q.stage.span * ratio;
    if (q.input.profile != nullptr) {
        const auto grown = std::max(*q.stage.span, q.input.profile->adultSpan.value.most);
        forecast.afterNextMoult = std::min(forecast.afterNextMoult, grown);
    }
    return forecast;
}

}  // namespace burrow
