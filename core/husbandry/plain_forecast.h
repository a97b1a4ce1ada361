// The plain forecast: an animal's own last intervals again, else the usual one of its stage; its own
// growth at its last moults again, else one ratio for all. A stand-in until it is learnt from the
// whole collection.
//
// The interval is taken to be log-logistic with that median and a spread from the rules, because its
// chances and quantiles have closed forms: F(t) = 1 / (1 + (m / t)^k). The logarithm of the interval
// then has the standard deviation pi / (k sqrt 3) (Johnson, Kotz & Balakrishnan, Continuous
// Univariate Distributions vol. 2, ch. 23; from memory). "Not until today" is counted in by
// truncation: F(t | t > a) = (F(t) - F(a)) / (1 - F(a)).
#pragma once

#include "husbandry/forecast.h"

namespace burrow {

class PlainForecast final : public Forecast {
public:
    [[nodiscard]] std::optional<MoultForecast> nextMoult(
        const ForecastQuestion& question) const override;
    [[nodiscard]] std::optional<SpanForecast> spanAfterMoult(
        const ForecastQuestion& question) const override;
};

}  // namespace burrow
