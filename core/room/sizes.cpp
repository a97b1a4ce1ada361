#include "room/sizes.h"

#include <cmath>

namespace burrow {
namespace {

double tenth(Millimetres length) { return std::round(10 * length.value) / 10; }

/// The name by which animals of one species are known to be of one.
std::string_view speciesOf(const Subject& subject, const Profiles& profiles) {
    const auto* profile = profiles.find(subject.species);
    return profile != nullptr ? std::string_view(profile->name) : subject.species;
}

Result<std::vector<growth::SizePair>> pairsOf(Book& book, const Subject& like,
                                              const Profiles& profiles) {
    std::vector<growth::SizePair> pairs;
    BURROW_TRY(const auto all, roster(book));
    for (const auto& kept : all) {
        const bool isLike = kept.subject.form == Form::animal &&
                            speciesOf(kept.subject, profiles) == speciesOf(like, profiles);
        if (!isLike) continue;
        BURROW_TRY(const auto facts, history(book, kept.subject.id, wholeHistory));
        const auto own = growth::sizePairs(facts);
        pairs.insert(pairs.end(), own.begin(), own.end());
    }
    return pairs;
}

Message whyNoLine(const Sizes& sizes) {
    const bool isEnough = sizes.pairs.size() >= growth::SpanByCarapace::fewestPairs;
    return isEnough ? Message("growth.sameCarapace") : growth::tooFewPairs(sizes.pairs.size());
}

Message estimateMessage(const Sizes& sizes, Millimetres carapace,
                        const growth::SpanByCarapace::Estimate& estimate) {
    return {"growth.estimate",
            {{"pairs", static_cast<std::int64_t>(sizes.pairs.size())},
             {"carapace", tenth(carapace)},
             {"span", tenth(estimate.span)},
             {"least", tenth(estimate.interval95.least)},
             {"most", tenth(estimate.interval95.most)}}};
}

Message saysOf(const Sizes& sizes) {
    if (!sizes.spanByCarapace) return whyNoLine(sizes);
    if (!sizes.estimate) return {};
    return estimateMessage(sizes, sizes.carapaces.back().size, *sizes.estimate);
}

}  // namespace

std::vector<Message> saidOf(const Sizes& sizes, Millimetres carapace) {
    if (!sizes.spanByCarapace) return {whyNoLine(sizes)};
    const auto estimate = sizes.spanByCarapace->at(carapace);
    std::vector<Message> said{estimateMessage(sizes, carapace, estimate)};
    if (estimate.isBeyond) said.emplace_back("growth.beyond");
    return said;
}

Result<std::optional<Sizes>> sizesOf(Book& book, SubjectId subject, const Profiles& profiles) {
    BURROW_TRY(const auto found, kept(book, subject));
    if (!found) return std::optional<Sizes>();
    Sizes sizes;
    BURROW_TRY(const auto facts, history(book, subject, wholeHistory));
    sizes.carapaces = growth::measureHistory(facts, growth::Measure::carapace);
    sizes.spans = growth::measureHistory(facts, growth::Measure::span);
    BURROW_TRY(sizes.pairs, pairsOf(book, found->subject, profiles));
    sizes.spanByCarapace = growth::SpanByCarapace::of(sizes.pairs);
    if (sizes.spanByCarapace && !sizes.carapaces.empty()) {
        sizes.estimate = sizes.spanByCarapace->at(sizes.carapaces.back().size);
    }
    sizes.says = saysOf(sizes);
    return std::optional(std::move(sizes));
}

}  // namespace burrow
