#include "room/room.h"

#include <algorithm>

#include "room/own_profiles.h"

namespace burrow {

ResidentPtr Room::make(Kept kept) const {
    auto resident = std::make_shared<Resident>();
    resident->kept = std::move(kept);
    resident->profiles = profiles_;
    resident->profile = profiles_->find(resident->kept.subject.species);
    resident->warmth = warmthAt(warmths_, resident->kept.place);
    resident->plan = planFor(resident->input(), *rules_, day_);
    return resident;
}

void Room::sort() {
    std::vector<PlanInput> inputs;
    inputs.reserve(residents_.size());
    for (const auto& resident : residents_) inputs.push_back(resident->input());
    std::vector<ResidentPtr> sorted;
    sorted.reserve(residents_.size());
    for (const auto at : walkOrder(inputs)) sorted.push_back(residents_[at]);
    residents_ = std::move(sorted);
}

Result<Room> Room::load(Book& book, const Reference& reference, const PlanDay& day) {
    Room room;
    room.day_ = day;
    BURROW_DO(room.readSettings(book, reference));
    BURROW_TRY(auto everyone, roster(book));
    room.residents_.reserve(everyone.size());
    for (auto& kept : everyone) room.residents_.push_back(room.make(std::move(kept)));
    room.sort();
    return room;
}

Done Room::readSettings(Book& book, const Reference& reference) {
    BURROW_TRY(info_, roomInfo(book));
    rules_ = std::make_shared<const Rules>(reference.rules.withPossible(info_.rules));
    profiles_ = withOwnProfiles(reference.profiles, info_);
    warmths_.clear();
    if (reference.air != nullptr) {
        BURROW_TRY(warmths_, recentWarmth(book, day_, *reference.air));
    }
    return {};
}

/// Settings are names, rules, profiles and the air: nobody's record changes, and plans only where a
/// rule, a profile or the temperature does.
Result<Room> Room::withSettings(Book& book, const Reference& reference) const {
    Room room = *this;
    BURROW_DO(room.readSettings(book, reference));
    const bool sameProfiles = info_.profiles == room.info_.profiles;
    if (sameProfiles) room.profiles_ = profiles_;
    for (auto& resident : room.residents_) {
        const auto subject = resident->input().ruleSubject();
        const bool sameRules = rules_->of(subject).sameValues(room.rules_->of(subject));
        const bool sameWarmth = resident->warmth == warmthAt(room.warmths_, resident->kept.place);
        if (!sameRules || !sameProfiles || !sameWarmth) resident = room.make(resident->kept);
    }
    return room;
}

void Room::remove(SubjectId id) {
    const auto found = std::find_if(residents_.begin(), residents_.end(),
                                    [&](const ResidentPtr& r) { return r->subject().id == id; });
    if (found != residents_.end()) residents_.erase(found);
}

/// At its place in the walk: the others stand in order already.
void Room::insert(ResidentPtr resident) {
    const auto input = resident->input();
    const auto place = std::upper_bound(residents_.begin(), residents_.end(), input,
                                        [](const PlanInput& made, const ResidentPtr& other) {
                                            return walksBefore(made, other->input());
                                        });
    residents_.insert(place, std::move(resident));
}

/// Those an act is about, and those who live in an enclosure that it is about.
std::vector<SubjectId> Room::touchedBy(const ChangeSet& changes) const {
    auto touched = changes.subjects;
    if (!changes.enclosures.empty()) {
        const auto& homes = changes.enclosures;
        for (const auto& resident : residents_) {
            const auto& home = resident->subject().enclosure;
            const bool isOfThem =
                home && std::find(homes.begin(), homes.end(), *home) != homes.end();
            if (isOfThem) touched.push_back(resident->subject().id);
        }
    }
    std::sort(touched.begin(), touched.end());
    touched.erase(std::unique(touched.begin(), touched.end()), touched.end());
    return touched;
}

Result<Room> Room::after(Book& book, const Reference& reference, const ChangeSet& changes) const {
    // Of more than that, each looked up among all, reading everyone is quicker.
    constexpr std::size_t most = 100;
    const auto touched = touchedBy(changes);
    // A change set does not say whose tags they are.
    if (changes.tags || touched.size() > most) return load(book, reference, day_);
    Room room = *this;
    if (changes.settings) {
        BURROW_TRY(room, withSettings(book, reference));
    }
    for (const auto id : touched) {
        BURROW_TRY(auto changed, burrow::kept(book, id));
        room.remove(id);
        if (changed) room.insert(room.make(*std::move(changed)));
    }
    return room;
}

ResidentPtr Room::find(SubjectId id) const {
    const auto found = std::find_if(residents_.begin(), residents_.end(),
                                    [&](const ResidentPtr& r) { return r->subject().id == id; });
    return found == residents_.end() ? nullptr : *found;
}

std::vector<Visit> Room::visits() const {
    std::vector<Visit> visits;
    for (const auto& resident : residents_) {
        Visit visit{resident, {}};
        for (const auto& answer : resident->plan.answers) {
            if (isListed(answer)) visit.answers.push_back(answer);
        }
        if (!visit.answers.empty()) visits.push_back(std::move(visit));
    }
    return visits;
}

}  // namespace burrow
