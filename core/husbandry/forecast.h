// What the planner asks about the future of an animal: its next moult, and its size after it. An
// interface, so that a better answer can take the place of the plain one (plain_forecast.h). Every
// forecast is an estimate and is shown as one.
#pragma once

#include <optional>

#include "husbandry/stage.h"

namespace burrow {

/// What a forecast was made from.
enum class ForecastBasis { ownMoults, stage, model };

/// In files and words: "own_moults", "stage", "model".
[[nodiscard]] std::string_view name(ForecastBasis basis);

/// The next moult, given that it has not come until `today`.
struct MoultForecast {
    ForecastBasis basis = ForecastBasis::stage;
    int intervals = 0;      ///< of its own, that it was made from
    int usualInterval = 0;  ///< days between two moults of an animal like this, at least 1
    CivilDay lookFrom;      ///< one in ten of such intervals is over by then
    CivilDay soonest;       ///< one chance in ten that it comes before
    CivilDay median;
    CivilDay latest;  ///< one chance in ten that it comes later
    double soon = 0;  ///< chance that it comes within the days that were asked about
};

struct SpanForecast {
    ForecastBasis basis = ForecastBasis::stage;
    Millimetres afterNextMoult;
};

struct ForecastQuestion {
    const PlanInput& input;
    const StageJudgement& stage;
    const Rules& rules;  ///< as they hold for the subject
    CivilDay today;
    int within = 1;  ///< days that `soon` is about
};

/// Pure: the same question has the same answer. Safe to ask from any thread.
class Forecast {
public:
    Forecast() = default;
    Forecast(const Forecast&) = delete;
    Forecast& operator=(const Forecast&) = delete;
    virtual ~Forecast() = default;

    /// Nothing where no moult is known, for a mature male, and for several under one tag.
    [[nodiscard]] virtual std::optional<MoultForecast> nextMoult(
        const ForecastQuestion& question) const = 0;
    /// Nothing where no size is known, and for a mature male.
    [[nodiscard]] virtual std::optional<SpanForecast> spanAfterMoult(
        const ForecastQuestion& question) const = 0;
};

}  // namespace burrow
