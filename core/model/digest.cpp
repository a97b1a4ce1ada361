#include "model/digest.h"

#include <algorithm>
#include <cstdlib>

namespace burrow {
namespace {

template <class T>
void keepRecent(std::vector<T>& recent, T newest) {
    if (recent.size() == Digest::recentKept) recent.erase(recent.begin());
    recent.push_back(std::move(newest));
}

void foldSizes(Digest& digest, const FactBody& body) {
    if (body.span) digest.span = body.span;
    if (body.carapace) digest.carapace = body.carapace;
}

void foldSizes(Digest& digest, const Fact& fact) {
    foldSizes(digest, fact.body);
    if (fact.body.span || fact.body.carapace) digest.sizedOn = fact.day;
}

/// Whether whoever wrote it has seen the animal, and not only its tub.
bool showsTheAnimal(const Fact& fact) {
    switch (fact.kind) {
        case FactKind::offered:
        case FactKind::premoultSign:
        case FactKind::moulted:
        case FactKind::measured:
        case FactKind::fangsBlack:
        case FactKind::seen:
        case FactKind::rehoused:
        case FactKind::sexed:
        case FactKind::spermWeb:
        case FactKind::paired:
        case FactKind::sacLaid:
        case FactKind::sacOut:
        case FactKind::returned: return true;
        case FactKind::photo: return fact.body.role == PhotoRole::animal;
        case FactKind::leftoversOut:
        case FactKind::watered:
        case FactKind::dampened:
        case FactKind::moved:
        case FactKind::note:
        case FactKind::died:
        case FactKind::sold:
        case FactKind::given:
        case FactKind::lent: break;
    }
    return false;
}

void foldBreeding(Digest& digest, const Fact& fact) {
    switch (fact.kind) {
        case FactKind::spermWeb: digest.spermWeb = fact.day; break;
        case FactKind::paired:
            digest.spermWeb.reset();
            digest.lastPaired = fact.day;
            // As many as anyone will log: other people's files may say anything.
            digest.pairings = std::min(digest.pairings + 1, 1000);
            break;
        case FactKind::sacLaid:
            digest.sacLaid = fact.day;
            digest.lastPaired.reset();
            digest.pairings = 0;
            break;
        default: digest.sacLaid.reset(); break;
    }
}

void foldOffer(Digest& digest, const Fact& fact) {
    const auto outcome = fact.body.outcome.value_or(Outcome::ate);
    Meal meal{fact.day, fact.body.prey.value_or(std::string()), fact.body.preyLength,
              fact.body.count.value_or(1), outcome};
    if (outcome == Outcome::ate || outcome == Outcome::part) {
        digest.lastAccepted = meal;
        digest.refusalsInARow = 0;
    } else if (outcome == Outcome::refused) {
        ++digest.refusalsInARow;
    }
    // Prey left in is no refusal yet: whether it was eaten shows when the leftovers come out.
    if (outcome == Outcome::ate) {
        digest.leftoversSince.reset();
    } else if (!digest.leftoversSince) {
        digest.leftoversSince = fact.happenedAt;
    }
    digest.lastOffer = meal;
    keepRecent(digest.recentOffers, std::move(meal));
}

void foldMoult(Digest& digest, const Fact& fact) {
    ++digest.moultCount;
    digest.fangsBlack.reset();
    digest.premoultSign.reset();
    digest.lastPremoultSign.reset();
    digest.refusalsInARow = 0;
    digest.lastPaired.reset();
    digest.pairings = 0;
    digest.sacLaid.reset();
    digest.hadUltimateMoult |= fact.body.ultimate.value_or(false);
    foldSizes(digest, fact);
    keepRecent(digest.recentMoults, MoultMark{fact.day, fact.body.span, fact.body.carapace});
}

/// The moult of whose skin a size was taken on that day; null where that can't be told.
MoultMark* markOfSkin(Digest& digest, CivilDay day) {
    auto& marks = digest.recentMoults;
    if (digest.moultCount == 1 && !marks.empty()) return &marks.front();
    // It bears the moult's time; on a phone in another zone that may have been the day beside it.
    const auto mark = std::find_if(marks.rbegin(), marks.rend(), [&](const MoultMark& moult) {
        return std::abs(moult.day - day) <= 1;
    });
    return mark == marks.rend() ? nullptr : &*mark;
}

/// A size taken of the skin that was shed is that moult's, and the animal's while it was the last one. Of
/// which moult one is that was written down later, without the moult's time, is for markOf() to say.
void foldMeasured(Digest& digest, const Fact& fact) {
    if (!fact.body.about || digest.recentMoults.empty()) return foldSizes(digest, fact);
    auto* mark = markOfSkin(digest, fact.day);
    if (mark == nullptr) return;
    if (mark == &digest.recentMoults.back()) foldSizes(digest, fact);
    if (fact.body.span) mark->span = fact.body.span;
    if (fact.body.carapace) mark->carapace = fact.body.carapace;
}

void foldStanding(Digest& digest, const Fact& fact, Standing standing) {
    // As many as a group can have: other people's files may say anything, any number of times.
    digest.gone = std::min(digest.gone + fact.body.count.value_or(1), 1'000'000);
    digest.standing = standing;
    digest.standingSince = fact.day;
}

}  // namespace

MoultMark markOf(const Fact& moult, std::span<const Fact> facts) {
    MoultMark mark{moult.day, moult.body.span, moult.body.carapace};
    const Fact* span = nullptr;
    const Fact* carapace = nullptr;
    for (const auto& fact : facts) {
        if (fact.kind != FactKind::measured || fact.body.about != moult.id) continue;
        if (fact.body.span && (span == nullptr || happenedBefore(*span, fact))) span = &fact;
        if (fact.body.carapace && (carapace == nullptr || happenedBefore(*carapace, fact))) {
            carapace = &fact;
        }
    }
    if (span != nullptr) mark.span = span->body.span;
    if (carapace != nullptr) mark.carapace = carapace->body.carapace;
    return mark;
}

void fold(Digest& digest, const Fact& fact) {
    if (!digest.firstEntry) digest.firstEntry = fact.day;
    digest.lastEntry = fact.day;
    if (showsTheAnimal(fact)) digest.lastLooked = fact.day;
    switch (fact.kind) {
        case FactKind::offered: foldOffer(digest, fact); break;
        case FactKind::leftoversOut: digest.leftoversSince.reset(); break;
        case FactKind::watered: digest.lastWatered = fact.day; break;
        case FactKind::dampened: digest.lastDampened = fact.day; break;
        case FactKind::premoultSign:
            if (!digest.premoultSign) digest.premoultSign = fact.day;
            digest.lastPremoultSign = fact.day;
            break;
        case FactKind::moulted: foldMoult(digest, fact); break;
        case FactKind::measured: foldMeasured(digest, fact); break;
        case FactKind::fangsBlack: digest.fangsBlack = fact.day; break;
        case FactKind::seen:
            digest.lastSeen = fact.day;
            digest.lastSeenCount = fact.body.count;
            break;
        case FactKind::rehoused: digest.lastRehoused = fact.day; break;
        case FactKind::sexed:
            // What is only evidence leaves standing what was told.
            if (fact.body.sex == Sex::unknown ? !fact.body.judge : tellsSex(fact.body)) {
                digest.sexed = fact.body.sex;
            }
            break;
        case FactKind::spermWeb:
        case FactKind::paired:
        case FactKind::sacLaid:
        case FactKind::sacOut: foldBreeding(digest, fact); break;
        case FactKind::died: foldStanding(digest, fact, Standing::dead); break;
        case FactKind::sold: foldStanding(digest, fact, Standing::sold); break;
        case FactKind::given: foldStanding(digest, fact, Standing::given); break;
        case FactKind::lent:
            digest.standing = Standing::onLoan;
            digest.standingSince = fact.day;
            digest.loanUntil = fact.body.until;
            break;
        case FactKind::returned:
            digest.standing = Standing::here;
            digest.standingSince = fact.day;
            digest.loanUntil.reset();
            break;
        case FactKind::moved:
        case FactKind::note:
        case FactKind::photo: break;
    }
}

Digest digestOf(std::span<const Fact> history) {
    Digest digest;
    for (const auto& fact : history) fold(digest, fact);
    return digest;
}

}  // namespace burrow
