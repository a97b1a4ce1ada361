#include "room/room.h"

#include <algorithm>

#include "room/own_profiles.h"

namespace burrow {

ResidentPtr Room::make(Kept kept) const {
    auto resident = std::make_shared<Resident>();
    resident->kept = std::move(kept);
    resident->profiles = profiles_;
    resident->profile = profiles_->find(resident->kept.subject.species);
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
    BURROW_TRY(room.info_, roomInfo(book));
    auto rules = reference.rules;
    for (const auto& own : room.info_.rules) {
        if (auto changed = rules.with(std::span(&own, 1))) rules = *std::move(changed);
    }
    room.rules_ = std::make_shared<const Rules>(std::move(rules));
    room.profiles_ = withOwnProfiles(reference.profiles, room.info_);
    BURROW_TRY(auto everyone, roster(book));
    room.residents_.reserve(everyone.size());
    for (auto& kept : everyone) room.residents_.push_back(room.make(std::move(kept)));
    room.sort();
    return room;
}

Result<Room> Room::after(Book& book, const Reference& reference, const ChangeSet& changes) const {
    // Of more than that, each looked up among all, reading everyone is quicker.
    constexpr std::size_t most = 100;
    // An enclosure or a tag may concern several subjects, and rules concern all.
    const bool concernsMany = changes.subjects.size() > most;
    if (changes.settings || changes.tags || !changes.enclosures.empty() || concernsMany) {
        return load(book, reference, day_);
    }
    Room room = *this;
    for (const auto id : changes.subjects) {
        BURROW_TRY(auto changed, burrow::kept(book, id));
        const auto found =
            std::find_if(room.residents_.begin(), room.residents_.end(),
                         [&](const ResidentPtr& r) { return r->subject().id == id; });
        if (found != room.residents_.end()) room.residents_.erase(found);
        if (changed) room.residents_.push_back(room.make(*std::move(changed)));
    }
    room.sort();
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
