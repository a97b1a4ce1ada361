#include "sexing/judge.h"

#include <algorithm>
#include <cmath>

#include "sexing/ledger.h"

namespace burrow::sexing {
namespace {

/// Odds and chances of what is left to see, for a look that is made as well as can be expected.
constexpr auto expectedClarity = Clarity::clearly;

class Judging {
public:
    Judging(std::span<const Sighting> sightings, const SexingRules& rules, const Question& question)
        : sightings_(sightings),
          rules_(rules),
          question_(question),
          ledger_(ledgerOf(sightings, rules, question.species)) {}

    Finding finding() {
        finding_.prior = rules_.prior();
        finding_.female = ledger_.female;
        finding_.isDecisive = ledger_.isDecisive;
        finding_.stop = rules_.stop(std::max(ledger_.female, 1 - ledger_.female));
        if (finding_.stop) {
            finding_.verdict = ledger_.female > 0.5 ? Sex::female : Sex::male;
        }
        finding_.ledger = std::move(ledger_.lines);
        addConflicts();
        if (!finding_.isSettled()) addWhatSettles();
        return std::move(finding_);
    }

private:
    void addConflicts() {
        std::vector<std::size_t> female;
        std::vector<std::size_t> male;
        std::vector<std::size_t> disputed;
        for (std::size_t at = 0; at < finding_.ledger.size(); ++at) {
            const auto& line = finding_.ledger[at];
            if (line.part == Part::disputed) disputed.push_back(at);
            if (line.weight == 0 || line.seen.decisive) continue;
            (line.seen.says == Sex::female ? female : male).push_back(at);
        }
        if (!disputed.empty()) add(ConflictKind::settled, std::move(disputed));
        for (auto& thing : ledger_.things) {
            if (thing.saysBoth) add(ConflictKind::sameSkin, std::move(thing.lines));
        }
        if (!female.empty() && !male.empty()) {
            female.insert(female.end(), male.begin(), male.end());
            std::sort(female.begin(), female.end());
            add(ConflictKind::looks, std::move(female));
        }
        const bool isOther = question_.recorded != Sex::unknown &&
                             finding_.verdict != Sex::unknown &&
                             question_.recorded != finding_.verdict;
        if (isOther) add(ConflictKind::recorded, {});
    }

    void add(ConflictKind kind, std::vector<std::size_t> factors) {
        Message why("sexing.conflict." + std::string(name(kind)));
        if (kind == ConflictKind::recorded) {
            why.arguments = {{"sexWord", std::string(burrow::name(question_.recorded))}};
        }
        finding_.conflicts.push_back({kind, std::move(factors), std::move(why)});
    }

    /// P(female) after one more look at a skin that nobody has looked at.
    [[nodiscard]] double after(Sex says, std::optional<Millimetres> carapace) const {
        Sighting seen;
        seen.day = CivilDay{0};
        seen.look = Look::moult;
        seen.says = says;
        seen.clarity = expectedClarity;
        seen.carapace = carapace;
        seen.sizeTells = question_.sizeTells;
        // A skin of its own: this identifier is nobody's.
        seen.entry = seen.skin = EntryId{Uuid::named("a moult to come")};
        std::vector<Sighting> all(sightings_.begin(), sightings_.end());
        all.push_back(std::move(seen));
        return ledgerOf(all, rules_, question_.species).female;
    }

    void addWhatSettles() {
        if (ledger_.isDisputed) {
            suggest(Settles::record);
            return;
        }
        if (const auto* best = bestWaiting()) {
            auto& what = suggest(Settles::waitingMoult);
            what.moult = best->moult;
            what.ifFemale = after(Sex::female, best->carapace);
            what.ifMale = after(Sex::male, best->carapace);
            what.why.arguments = {{"day", best->day}};
        }
        auto& clear = suggest(Settles::clearMoult);
        if (question_.sizeTells) {
            clear.why.id += ".sized";
            clear.why.arguments = {{"size", rules_.largeCarapace().value}};
        }
        const auto size =
            question_.sizeTells ? std::optional(rules_.largeCarapace()) : std::nullopt;
        clear.ifFemale = after(Sex::female, size);
        clear.ifMale = after(Sex::male, size);
        if (isUnclear()) suggest(Settles::secondOpinion);
        if (question_.sizeTells) suggest(Settles::grown);
    }

    WouldSettle& suggest(Settles what) {
        finding_.wouldSettle.push_back(
            {what, {}, {}, {}, Message("sexing.settles." + std::string(name(what)))});
        return finding_.wouldSettle.back();
    }

    [[nodiscard]] const WaitingMoult* bestWaiting() const {
        const auto bits = [&](const WaitingMoult& moult) {
            return expectedBits(finding_.female,
                                question_.sizeTells ? moult.carapace : std::nullopt, rules_);
        };
        const auto best =
            std::max_element(question_.waiting.begin(), question_.waiting.end(),
                             [&](const WaitingMoult& a, const WaitingMoult& b) {
                                 return std::pair(bits(a), a.day) < std::pair(bits(b), b.day);
                             });
        return best == question_.waiting.end() ? nullptr : &*best;
    }

    /// Whether somebody looked at a moult without seeing it well, or two looks disagree.
    [[nodiscard]] bool isUnclear() const {
        return !finding_.conflicts.empty() ||
               std::any_of(finding_.ledger.begin(), finding_.ledger.end(), [](const Factor& line) {
                   return line.seen.look == Look::moult &&
                          (line.part == Part::cannotTell ||
                           line.seen.clarity.value_or(Clarity::partly) < Clarity::clearly);
               });
    }

    std::span<const Sighting> sightings_;
    const SexingRules& rules_;
    const Question& question_;
    Ledger ledger_;
    Finding finding_;
};

/// Of a coin that falls one way with chance p, in bits.
double entropy(double p) {
    if (p <= 0 || p >= 1) return 0;
    return -p * std::log2(p) - (1 - p) * std::log2(1 - p);
}

}  // namespace

bool Finding::isSettled() const {
    const bool isDisputed = std::any_of(
        conflicts.begin(), conflicts.end(),
        [](const Conflict& conflict) { return conflict.kind == ConflictKind::settled; });
    return stop && *stop >= Clarity::clearly && !isDisputed;
}

Finding judge(std::span<const Sighting> sightings, const SexingRules& rules,
              const Question& question) {
    return Judging(sightings, rules, question).finding();
}

double expectedBits(double female, std::optional<Millimetres> carapace, const SexingRules& rules) {
    const double plate = rules.moult(Sex::female, expectedClarity, carapace).value;
    const double none = rules.moult(Sex::male, expectedClarity, carapace).value;
    if (plate <= none) return 0;
    // Both ratios follow from the chances of seeing a plate in either sex, and these from them:
    // plate = f / m and none = (1 - f) / (1 - m).
    const double inMale = (1 - none) / (plate - none);
    const double inFemale = plate * inMale;
    const double seen = female * inFemale + (1 - female) * inMale;
    const double bits = entropy(seen) - female * entropy(inFemale) - (1 - female) * entropy(inMale);
    return std::max(0.0, bits);
}

}  // namespace burrow::sexing
