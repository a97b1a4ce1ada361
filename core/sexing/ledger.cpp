#include "sexing/ledger.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace burrow::sexing {
namespace {

Clarity clarityOf(const Sighting& seen) { return seen.clarity.value_or(Clarity::partly); }

/// The days first, then whatever tells two sightings apart, so that any order of arrival gives this one.
auto orderOf(const Sighting& seen) {
    return std::tuple(seen.day, seen.entry.value_or(EntryId{}), seen.look, seen.says,
                      clarityOf(seen), seen.judge);
}

std::vector<Sighting> inOrder(std::span<const Sighting> sightings) {
    std::vector<Sighting> sorted(sightings.begin(), sightings.end());
    std::sort(sorted.begin(), sorted.end(),
              [](const Sighting& a, const Sighting& b) { return orderOf(a) < orderOf(b); });
    // The same entry twice, from two books that were united, was seen once.
    const auto isSame = [](const Sighting& a, const Sighting& b) {
        return a.entry ? a.entry == b.entry : a == b;
    };
    sorted.erase(std::unique(sorted.begin(), sorted.end(), isSame), sorted.end());
    return sorted;
}

Ratio ratioOf(const Sighting& seen, const SexingRules& rules, std::string_view species) {
    if (seen.decisive) return rules.decisive(*seen.decisive);
    if (seen.says == Sex::unknown) return {};
    switch (seen.look) {
        case Look::moult:
            // The sizes of the table are those of tarantulas.
            return rules.moult(seen.says, clarityOf(seen),
                               seen.sizeTells ? seen.carapace : std::nullopt);
        case Look::underside: return rules.underside(seen.says, clarityOf(seen));
        case Look::colour: return rules.colour(seen.says, species);
        case Look::mature: break;
    }
    return {};
}

/// What cannot count whatever else there is; nothing for the rest.
std::optional<Part> idle(const Sighting& seen) {
    if (seen.says == Sex::unknown) return Part::cannotTell;
    if (seen.look == Look::mature && !seen.decisive) return Part::tellsNothing;
    return std::nullopt;
}

/// Gives every line its part where something settles the sex; false where nothing does.
bool settle(Ledger& ledger) {
    bool female = false;
    bool male = false;
    for (const auto& line : ledger.lines) {
        if (!line.seen.decisive) continue;
        (line.seen.says == Sex::female ? female : male) = true;
    }
    ledger.isDisputed = female && male;
    ledger.isDecisive = female != male;
    if (ledger.isDisputed) {
        for (auto& line : ledger.lines) {
            if (line.seen.decisive) line.part = Part::disputed;
        }
    }
    if (!ledger.isDecisive) return false;
    const auto settled = female ? Sex::female : Sex::male;
    bool isCounted = false;
    for (auto& line : ledger.lines) {
        if (idle(line.seen)) continue;
        if (line.seen.decisive && !isCounted) {
            line.part = Part::counts;
            line.weight = 1;
            isCounted = true;
        } else {
            line.part = line.seen.says == settled ? Part::setAside : Part::corrected;
        }
    }
    return true;
}

/// Of the lines about one thing the clearest counts. Its own keeper's comes before another's.
void chooseClearest(Ledger& ledger, SameThing& thing) {
    auto clearest = Clarity::barely;
    bool female = false;
    bool male = false;
    for (const auto at : thing.lines) {
        const auto& seen = ledger.lines[at].seen;
        clearest = std::max(clearest, clarityOf(seen));
        (seen.says == Sex::female ? female : male) = true;
    }
    thing.saysBoth = female && male;
    std::vector<std::size_t> best;
    for (const auto at : thing.lines) {
        ledger.lines[at].part = Part::sameSkin;
        if (clarityOf(ledger.lines[at].seen) == clearest) best.push_back(at);
    }
    const auto says = ledger.lines[best.front()].seen.says;
    const bool isOne = std::all_of(best.begin(), best.end(), [&](std::size_t at) {
        return ledger.lines[at].seen.says == says;
    });
    if (!isOne) {
        for (const auto at : best) ledger.lines[at].part = Part::cancels;
        return;
    }
    const auto chosen = std::min_element(best.begin(), best.end(), [&](auto a, auto b) {
        const auto isOther = [&](std::size_t at) { return !ledger.lines[at].seen.judge.empty(); };
        return std::pair(isOther(a), a) < std::pair(isOther(b), b);
    });
    ledger.lines[*chosen].part = Part::counts;
    ledger.lines[*chosen].weight = 1;
}

/// Of those that say the same, the one that tells most counts in full and the others in part.
void discount(Ledger& ledger, double share) {
    for (const auto says : {Sex::female, Sex::male}) {
        Factor* strongest = nullptr;
        for (auto& line : ledger.lines) {
            if (line.part != Part::counts || line.seen.says != says || line.weight == 0) continue;
            const auto strength = [](const Factor& f) { return std::abs(std::log(f.ratio)); };
            if (strongest == nullptr || strength(line) > strength(*strongest)) strongest = &line;
        }
        for (auto& line : ledger.lines) {
            if (line.part != Part::counts || line.seen.says != says || &line == strongest) continue;
            line.part = Part::agrees;
            line.weight = share;
        }
    }
}

void weigh(Ledger& ledger, double share) {
    // By look and skin: what names no skin may be of the same one.
    std::map<std::pair<Look, EntryId>, SameThing> things;
    for (std::size_t at = 0; at < ledger.lines.size(); ++at) {
        const auto& line = ledger.lines[at];
        if (line.seen.decisive || idle(line.seen)) continue;
        const bool isColour = line.seen.look == Look::colour;
        const auto skin = isColour ? EntryId{} : line.seen.skin.value_or(EntryId{});
        things[{line.seen.look, skin}].lines.push_back(at);
    }
    for (auto& [key, thing] : things) {
        chooseClearest(ledger, thing);
        ledger.things.push_back(std::move(thing));
    }
    discount(ledger, share);
}

}  // namespace

double chanceOf(double logOdds) {
    if (logOdds < 0) return std::exp(logOdds) / (1 + std::exp(logOdds));
    return 1 / (1 + std::exp(-logOdds));
}

double logOddsOf(double chance) { return std::log(chance) - std::log1p(-chance); }

Ledger ledgerOf(std::span<const Sighting> sightings, const SexingRules& rules,
                std::string_view species) {
    Ledger ledger;
    for (auto& seen : inOrder(sightings)) {
        Factor line;
        auto ratio = ratioOf(seen, rules, species);
        line.ratio = ratio.value;
        line.row = std::move(ratio.row);
        line.source = std::move(ratio.source);
        line.part = idle(seen).value_or(Part::counts);
        line.seen = std::move(seen);
        ledger.lines.push_back(std::move(line));
    }
    if (!settle(ledger)) weigh(ledger, rules.agreeingShare());
    double logOdds = logOddsOf(rules.prior());
    for (auto& line : ledger.lines) {
        line.before = chanceOf(logOdds);
        line.logOdds = line.weight * std::log(line.ratio);
        logOdds += line.logOdds;
        line.after = chanceOf(logOdds);
        line.why = seenMessage(line.seen);
        line.counted = countedMessage(line);
    }
    ledger.female = chanceOf(logOdds);
    return ledger;
}

}  // namespace burrow::sexing
