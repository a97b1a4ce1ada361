#include "growth/measures.h"

#include <algorithm>
#include <cmath>

namespace burrow::growth {
namespace {

std::vector<Fact> inOrder(std::span<const Fact> history) {
    std::vector<Fact> facts(history.begin(), history.end());
    std::sort(facts.begin(), facts.end(), happenedBefore);
    return facts;
}

bool isOfSizes(const Fact& fact) {
    return fact.kind == FactKind::moulted || fact.kind == FactKind::measured;
}

}  // namespace

std::string_view name(Measure measure) { return measure == Measure::span ? "span" : "carapace"; }

std::vector<Measured> measureHistory(std::span<const Fact> history, Measure measure) {
    std::vector<Measured> values;
    int moults = 0;
    std::optional<Millimetres> before;  // the last value of an earlier moult
    int ofMoult = 0;                    // the moult of the last value
    for (const auto& fact : inOrder(history)) {
        if (fact.kind == FactKind::moulted) ++moults;
        const auto& size = measure == Measure::span ? fact.body.span : fact.body.carapace;
        if (!isOfSizes(fact) || !size || size->value <= 0) continue;
        if (!values.empty() && ofMoult != moults) before = values.back().size;
        ofMoult = moults;
        Measured value{fact.id, fact.day, *size, fact.body.method, moults};
        value.isOfTheMoult = fact.kind == FactKind::moulted || fact.body.about.has_value();
        if (before) value.factor = *size / *before;
        values.push_back(value);
    }
    return values;
}

std::vector<SizePair> sizePairs(std::span<const Fact> history) {
    std::vector<SizePair> pairs;
    std::optional<Millimetres> carapace;
    std::optional<Millimetres> span;
    const auto close = [&] {
        if (carapace && span) pairs.push_back({*carapace, *span});
        carapace.reset();
        span.reset();
    };
    for (const auto& fact : inOrder(history)) {
        if (fact.kind == FactKind::moulted) close();
        if (!isOfSizes(fact)) continue;
        if (fact.body.carapace && fact.body.carapace->value > 0) carapace = fact.body.carapace;
        if (fact.body.span && fact.body.span->value > 0) span = fact.body.span;
    }
    close();
    return pairs;
}

std::optional<SpanByCarapace> SpanByCarapace::of(std::span<const SizePair> pairs) {
    std::vector<Pair> logarithms;
    for (const auto& [carapace, span] : pairs) {
        logarithms.push_back({std::log(carapace.value), std::log(span.value)});
    }
    const auto line = fitLine(logarithms);
    if (!line) return std::nullopt;
    SpanByCarapace result;
    result.line_ = *line;
    const auto [least, most] = std::minmax_element(
        pairs.begin(), pairs.end(),
        [](const SizePair& a, const SizePair& b) { return a.carapace < b.carapace; });
    result.carapaces_ = {least->carapace, most->carapace};
    return result;
}

SpanByCarapace::Estimate SpanByCarapace::at(Millimetres carapace) const {
    constexpr double confidence = 0.95;
    const double x = std::log(carapace.value);
    const double y = line_.at(x);
    const double half = line_.halfWidthOfNext(x, confidence);
    Estimate estimate;
    estimate.span = {std::exp(y)};
    estimate.interval95 = {{std::exp(y - half)}, {std::exp(y + half)}};
    estimate.isBeyond = carapace < carapaces_.least || carapace > carapaces_.most;
    return estimate;
}

Message tooFewPairs(std::size_t pairs) {
    return {"growth.tooFewPairs",
            {{"pairs", static_cast<std::int64_t>(pairs)},
             {"needed", std::int64_t{SpanByCarapace::fewestPairs}}}};
}

}  // namespace burrow::growth
