#include "room/sex_case.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "model/digest.h"
#include "model/moult_photo.h"

namespace burrow {
namespace {

std::optional<Order> orderOf(const Kept& kept, const Profiles& profiles) {
    const auto* profile = profiles.find(kept.subject.species);
    return profile != nullptr ? std::optional(profile->order) : std::nullopt;
}

/// By which table its evidence is weighed: that of its species as it is called now.
std::string speciesOf(const Kept& kept, const Profiles& profiles) {
    const auto* profile = profiles.find(kept.subject.species);
    return profile != nullptr ? profile->name : kept.subject.species;
}

const Fact* findIn(const std::vector<Fact>& history, const EntryId& id) {
    const auto found = std::find_if(history.begin(), history.end(),
                                    [&](const Fact& fact) { return fact.id == id; });
    return found == history.end() ? nullptr : &*found;
}

std::vector<PhotographedMoult> moultsIn(const std::vector<Fact>& history) {
    std::vector<PhotographedMoult> moults;
    for (const auto& fact : history) {
        if (!isMoultPhoto(fact)) continue;
        const auto id = moultOf(fact);
        auto known = std::find_if(moults.begin(), moults.end(),
                                  [&](const auto& moult) { return moult.moult == id; });
        if (known == moults.end()) {
            const auto* moult = findIn(history, id);
            PhotographedMoult found{id, moult != nullptr ? moult->day : fact.day, {}, {}, false};
            if (moult != nullptr) found.carapace = markOf(*moult, history).carapace;
            known = moults.insert(moults.end(), std::move(found));
        }
        // The history runs backwards; photos are shown as they were taken.
        known->pictures.insert(known->pictures.begin(), *fact.body.picture);
    }
    for (const auto& fact : history) {
        if (fact.kind != FactKind::sexed || !fact.body.about) continue;
        for (auto& moult : moults) {
            const auto* about = findIn(history, *fact.body.about);
            const auto meant = about != nullptr && about->kind == FactKind::photo
                                   ? about->body.about.value_or(about->id)
                                   : *fact.body.about;
            moult.isLooked = moult.isLooked || moult.moult == meant;
        }
    }
    return moults;
}

/// The moult that is to be looked at: of those at which nobody has, the one that tells most; else the
/// newest.
ToBeSexed chosenOf(const SexCase& at, const sexing::SexingRules& rules, bool sizeTells) {
    ToBeSexed row{at.kept.subject.id,
                  at.moults.front(),
                  at.kept.subject.sex != Sex::unknown,
                  0,
                  at.finding.female,
                  0};
    bool isChosen = false;
    for (const auto& moult : at.moults) {
        if (moult.isLooked) continue;
        ++row.waiting;
        const auto bits =
            sexing::expectedBits(row.female, sizeTells ? moult.carapace : std::nullopt, rules);
        if (isChosen && bits <= row.bits) continue;
        row.moult = moult;
        row.bits = bits;
        isChosen = true;
    }
    return row;
}

bool isOpen(const SexCase& at) {
    const auto& subject = at.kept.subject;
    if (subject.form != Form::animal || !subject.isKept() || at.moults.empty()) return false;
    const auto& ledger = at.finding.ledger;
    const bool isSupported = std::any_of(
        ledger.begin(), ledger.end(), [](const sexing::Factor& line) { return line.weight > 0; });
    const auto& conflicts = at.finding.conflicts;
    const bool isContradicted =
        std::any_of(conflicts.begin(), conflicts.end(), [](const sexing::Conflict& conflict) {
            return conflict.kind == sexing::ConflictKind::recorded;
        });
    return !at.finding.isSettled() &&
           (subject.sex == Sex::unknown || !isSupported || isContradicted);
}

Result<std::vector<SubjectId>> withMoultPhotos(Book& book) {
    BURROW_TRY(auto rows, book.connection().query(
                              "SELECT DISTINCT subject FROM fact INDEXED BY fact_photo WHERE kind "
                              "= 'photo' AND json_extract(body, '$.role') = 'moult'"));
    std::vector<SubjectId> subjects;
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return subjects;
        if (const auto id = Uuid::fromBytes(rows.blob(0))) subjects.push_back(SubjectId{*id});
    }
}

/// The moult that an entry is, shows or judges, by what it says itself.
std::optional<EntryId> moultNamedBy(const Fact& fact) {
    if (fact.kind == FactKind::moulted) return fact.id;
    if (isMoultPhoto(fact)) return moultOf(fact);
    return fact.kind == FactKind::sexed ? fact.body.about : std::nullopt;
}

}  // namespace

Result<std::optional<EntryId>> moultToSex(Book& book, const Fact& entry) {
    auto named = moultNamedBy(entry);
    if (!named) return named;
    BURROW_TRY(const auto facts, history(book, entry.subject, wholeHistory));
    for (const auto& fact : facts) {
        if (fact.id == *named && isMoultPhoto(fact)) return std::optional(*moultNamedBy(fact));
    }
    const bool isShown = std::any_of(facts.begin(), facts.end(), [&](const Fact& fact) {
        return isMoultPhoto(fact) && fact.body.about == named;
    });
    return isShown ? named : std::nullopt;
}

Result<std::optional<SexCase>> sexCase(Book& book, SubjectId subject,
                                       const sexing::SexingRules& rules, const Profiles& profiles) {
    BURROW_TRY(auto kept, burrow::kept(book, subject));
    if (!kept) return std::optional<SexCase>();
    SexCase found;
    found.kept = *std::move(kept);
    BURROW_TRY(found.history, history(book, subject, wholeHistory));
    const auto order = orderOf(found.kept, profiles);
    if (found.kept.subject.form == Form::animal) {
        found.moults = moultsIn(found.history);
        found.sightings = sexing::sightingsOf(found.kept.subject, found.history, order);
    }
    std::vector<sexing::WaitingMoult> waiting;
    for (const auto& moult : found.moults) {
        if (!moult.isLooked) waiting.push_back({moult.moult, moult.day, moult.carapace});
    }
    const auto species = speciesOf(found.kept, profiles);
    const sexing::Question question{species, found.kept.subject.sex, waiting,
                                    order.value_or(Order::tarantula) == Order::tarantula};
    found.finding = sexing::judge(found.sightings, rules, question);
    return std::optional(std::move(found));
}

Result<std::vector<ToBeSexed>> toBeSexed(Book& book, const sexing::SexingRules& rules,
                                         const Profiles& profiles) {
    BURROW_TRY(const auto subjects, withMoultPhotos(book));
    std::vector<ToBeSexed> rows;
    for (const auto& subject : subjects) {
        BURROW_TRY(const auto found, sexCase(book, subject, rules, profiles));
        if (!found || !isOpen(*found)) continue;
        const auto order = orderOf(found->kept, profiles);
        rows.push_back(
            chosenOf(*found, rules, order.value_or(Order::tarantula) == Order::tarantula));
    }
    // A hundredth of a bit more is no reason to come first.
    const auto rank = [](const ToBeSexed& row) {
        return std::tuple(row.waiting == 0, row.isRecorded, -std::lround(10 * row.bits),
                          row.moult.day, row.subject);
    };
    std::sort(rows.begin(), rows.end(),
              [&](const ToBeSexed& a, const ToBeSexed& b) { return rank(a) < rank(b); });
    return rows;
}

}  // namespace burrow
