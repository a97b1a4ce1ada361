#include "sexing/evidence.h"

#include <algorithm>

#include "model/digest.h"

namespace burrow::sexing {
namespace {

/// The history in its order, with what it says about skins.
class Skins {
public:
    explicit Skins(std::span<const Fact> facts) : facts_(facts) {}

    [[nodiscard]] const Fact* find(const EntryId& id) const {
        const auto at = std::find_if(facts_.begin(), facts_.end(),
                                     [&](const Fact& fact) { return fact.id == id; });
        return at == facts_.end() ? nullptr : &*at;
    }

    /// The skin that an examination names: a photo's is its moult, which need not be on record.
    [[nodiscard]] EntryId named(const EntryId& about) const {
        const auto* fact = find(about);
        const bool isPhoto = fact != nullptr && fact->kind == FactKind::photo;
        return isPhoto ? fact->body.about.value_or(about) : about;
    }

    /// Its carapace, as it was written down or measured since.
    [[nodiscard]] std::optional<Millimetres> carapace(const Fact& moult) const {
        return markOf(moult, facts_).carapace;
    }

    /// The skin that the animal wore: it has had it since its last moult before then.
    [[nodiscard]] std::optional<EntryId> worn(const Fact& when) const {
        std::optional<EntryId> last;
        for (const auto& fact : facts_) {
            if (fact.kind != FactKind::moulted || !happenedBefore(fact, when)) continue;
            last = fact.id;
        }
        return last;
    }

private:
    std::span<const Fact> facts_;
};

std::optional<Decisive> decisiveIn(const Fact& fact) {
    switch (fact.kind) {
        case FactKind::moulted:
            if (fact.body.ultimate.value_or(false)) return Decisive::ultimateMoult;
            break;
        case FactKind::sexed:
            // Hooks and bulbs that are missing say nothing: they come with the last moult.
            if (fact.body.look == Look::mature && fact.body.sex == Sex::male) {
                return Decisive::hooksOrBulbs;
            }
            break;
        case FactKind::spermWeb: return Decisive::spermWeb;
        case FactKind::sacLaid: return Decisive::sac;
        default: break;
    }
    return std::nullopt;
}

Sighting examination(const Fact& fact, const Skins& skins) {
    Sighting seen;
    // Before it was written down what was looked at, it was the moult.
    seen.look = fact.body.look.value_or(Look::moult);
    seen.says = fact.body.sex.value_or(Sex::unknown);
    seen.clarity = fact.body.clarity;
    seen.judge = fact.body.judge.value_or(std::string());
    if (seen.look != Look::moult) {
        seen.skin = skins.worn(fact);
        return seen;
    }
    if (!fact.body.about) return seen;
    seen.skin = skins.named(*fact.body.about);
    if (const auto* moult = skins.find(*seen.skin)) {
        seen.moultDay = moult->day;
        seen.carapace = skins.carapace(*moult);
    }
    return seen;
}

}  // namespace

std::vector<Sighting> sightingsOf(const Subject& subject, std::span<const Fact> history,
                                  std::optional<Order> order) {
    std::vector<Fact> facts(history.begin(), history.end());
    std::sort(facts.begin(), facts.end(), happenedBefore);
    const Skins skins(facts);
    const bool sizeTells = order.value_or(Order::tarantula) == Order::tarantula;
    std::vector<Sighting> sightings;
    bool hadLastMoult = false;
    for (const auto& fact : facts) {
        const auto decisive = decisiveIn(fact);
        if (!decisive && fact.kind != FactKind::sexed) continue;
        Sighting seen;
        if (fact.kind == FactKind::sexed) seen = examination(fact, skins);
        if (decisive) {
            seen.look = Look::mature;
            seen.says = decisive == Decisive::sac ? Sex::female : Sex::male;
        }
        seen.entry = fact.id;
        seen.day = fact.day;
        seen.decisive = decisive;
        seen.sizeTells = sizeTells;
        hadLastMoult = hadLastMoult || decisive == Decisive::ultimateMoult;
        sightings.push_back(std::move(seen));
    }
    // Bought as a mature male: nothing happened here that would say so.
    if (subject.mature && subject.sex == Sex::male && !hadLastMoult) {
        Sighting seen;
        seen.day = subject.acquired.value_or(CivilDay{});
        seen.look = Look::mature;
        seen.says = Sex::male;
        seen.decisive = Decisive::hooksOrBulbs;
        sightings.insert(sightings.begin(), std::move(seen));
    }
    return sightings;
}

}  // namespace burrow::sexing
