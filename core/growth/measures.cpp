#include "growth/measures.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

namespace burrow::growth {
namespace {

/// A fact with sizes, and the skin that they are of.
struct Placed {
    const Fact* fact;
    int skin = 0;  ///< after how many moults
    CivilDay day;  ///< of the moult, where it is of its skin
    bool isOfTheMoult = false;
};

/// Oldest skin first, and oldest first within one.
std::vector<Placed> placed(std::span<const Fact> history) {
    std::vector<const Fact*> facts;
    for (const auto& fact : history) facts.push_back(&fact);
    std::sort(facts.begin(), facts.end(),
              [](const Fact* a, const Fact* b) { return happenedBefore(*a, *b); });
    std::map<EntryId, std::pair<int, CivilDay>> moults;
    for (const auto* fact : facts) {
        if (fact->kind != FactKind::moulted) continue;
        const int number = static_cast<int>(moults.size()) + 1;
        moults.emplace(fact->id, std::pair{number, fact->day});
    }
    std::vector<Placed> all;
    int skin = 0;
    for (const auto* fact : facts) {
        if (fact->kind == FactKind::moulted) {
            all.push_back({fact, ++skin, fact->day, true});
        } else if (fact->kind == FactKind::measured) {
            const auto of = fact->body.about ? moults.find(*fact->body.about) : moults.end();
            const bool isKnown = of != moults.end();
            all.push_back({fact, isKnown ? of->second.first : skin,
                           isKnown ? of->second.second : fact->day, fact->body.about.has_value()});
        }
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Placed& a, const Placed& b) { return a.skin < b.skin; });
    return all;
}

std::optional<Millimetres> sizeOf(const FactBody& body, Measure measure, std::string_view segment) {
    switch (measure) {
        case Measure::carapace: return body.carapace;
        case Measure::span: return body.span;
        case Measure::carapaceWidth: return body.carapaceWidth;
        case Measure::fang: return body.fang;
        case Measure::segment: break;
    }
    return body.segment == segment ? body.segmentLength : std::nullopt;
}

/// Factors over the last value of an earlier skin.
void compare(std::vector<Measured>& values) {
    std::optional<Millimetres> before;
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (i > 0 && values[i - 1].moult != values[i].moult) before = values[i - 1].size;
        values[i].factor.reset();
        if (before) values[i].factor = values[i].size / *before;
    }
}

}  // namespace

std::string_view name(Measure measure) {
    switch (measure) {
        case Measure::carapace: return "carapace";
        case Measure::span: return "span";
        case Measure::carapaceWidth: return "carapace_width";
        case Measure::fang: return "fang";
        case Measure::segment: break;
    }
    return "segment";
}

std::vector<Measured> measureHistory(std::span<const Fact> history, Measure measure,
                                     std::string_view segment) {
    std::vector<Measured> values;
    for (const auto& [fact, skin, day, isOfTheMoult] : placed(history)) {
        const auto& body = fact->body;
        const auto size = sizeOf(body, measure, segment);
        if (!size || size->value <= 0) continue;
        values.push_back({fact->id, day, *size, body.low, body.high, body.method, skin,
                          isOfTheMoult, std::nullopt});
    }
    compare(values);
    return values;
}

std::vector<Measured> onePerSkin(std::span<const Measured> values) {
    std::vector<Measured> skins;
    for (const auto& value : values) {
        if (skins.empty() || skins.back().moult != value.moult) {
            skins.push_back(value);
        } else if (value.isOfTheMoult || !skins.back().isOfTheMoult) {
            skins.back() = value;
        }
    }
    compare(skins);
    return skins;
}

std::vector<std::string> segmentsOf(std::span<const Fact> history) {
    std::set<std::string> names;
    for (const auto& fact : history) {
        const bool isOne = fact.kind == FactKind::measured && fact.body.segmentLength;
        if (isOne && fact.body.segment) names.insert(*fact.body.segment);
    }
    return {names.begin(), names.end()};
}

std::vector<SizePair> sizePairs(std::span<const Fact> history) {
    struct Skin {
        std::optional<Millimetres> carapace;
        std::optional<Millimetres> span;
    };
    std::map<int, Skin> skins;
    for (const auto& each : placed(history)) {
        const auto& body = each.fact->body;
        auto& skin = skins[each.skin];
        if (body.carapace && body.carapace->value > 0) skin.carapace = body.carapace;
        if (body.span && body.span->value > 0) skin.span = body.span;
    }
    std::vector<SizePair> pairs;
    for (const auto& [number, skin] : skins) {
        if (skin.carapace && skin.span) pairs.push_back({*skin.carapace, *skin.span});
    }
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
