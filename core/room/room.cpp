#include "room/room.h"

#include <algorithm>

#include "husbandry/walk_key.h"
#include "journal/everyone.h"
#include "room/own_numbers.h"
#include "room/own_profiles.h"
#include "room/stub_maker.h"
#include "room/tables.h"

namespace burrow {
namespace {

/// Neighbours in one piece: copied whole when one of them changes, and one shared pointer each in every
/// snapshot. About the root of the most that a room holds.
constexpr std::size_t piece = 128;

/// Bytes in the order of walksBefore().
std::string keyOf(const WalkPlace& walk) {
    return walkKey(walk.isQuarantined, walk.place, walk.number, walk.id);
}

}  // namespace

// --- everyone ------------------------------------------------------------------------------------

Residents::Iterator& Residents::Iterator::operator++() {
    if (++at_ == (*runs_)[run_]->stubs.size()) {
        at_ = 0;
        ++run_;
    }
    return *this;
}

const ResidentPtr& Residents::operator[](std::size_t at) const {
    auto run = runs_->begin();
    while (at >= (*run)->stubs.size()) at -= (*run++)->stubs.size();
    return (*run)->stubs[at]->resident();
}

Residents::operator std::span<const ResidentPtr>() const {
    std::call_once(row_->once, [this] { row_->all.assign(begin(), end()); });
    return row_->all;
}

StubPtr Room::make(const Kept& kept) const {
    return std::make_shared<const Stub>(kept, profiles().find(kept.subject.species), basis_);
}

void Room::fill(std::vector<StubPtr> stubs) {
    std::vector<std::pair<std::string, std::size_t>> keys;
    keys.reserve(stubs.size());
    for (std::size_t at = 0; at < stubs.size(); ++at)
        keys.emplace_back(keyOf(stubs[at]->walk()), at);
    std::sort(keys.begin(), keys.end());
    count_ = stubs.size();
    runs_.clear();
    for (std::size_t first = 0; first < keys.size(); first += piece) {
        auto run = std::make_shared<Neighbours>();
        const auto end = std::min(keys.size(), first + piece);
        run->ids.reserve(end - first);
        run->stubs.reserve(end - first);
        for (auto at = first; at < end; ++at) {
            auto& stub = stubs[keys[at].second];
            run->ids.push_back(stub->id());
            run->stubs.push_back(std::move(stub));
        }
        runs_.push_back(std::move(run));
    }
}

Result<Room> Room::load(Book& book, const Reference& reference, const PlanDay& day) {
    Room room;
    BURROW_DO(room.readSettings(book, reference, day));
    StubMaker stubs(room.basis_);
    BURROW_DO(forEachKept(book, [&](Kept kept) { stubs.add(std::move(kept)); }));
    room.fill(stubs.finish());
    return room;
}

Result<Room> Room::loadOnly(Book& book, const Reference& reference, const PlanDay& day,
                            std::span<const SubjectId> those) {
    Room room;
    room.isWhole_ = false;
    BURROW_DO(room.readSettings(book, reference, day));
    BURROW_TRY(auto everyone, burrow::kept(book, those));
    StubMaker stubs(room.basis_);
    for (auto& kept : everyone) stubs.add(std::move(kept));
    room.fill(stubs.finish());
    return room;
}

// --- after an act --------------------------------------------------------------------------------

Done Room::readSettings(Book& book, const Reference& reference, const PlanDay& day) {
    BURROW_TRY(auto info, roomInfo(book));
    auto basis = std::make_shared<PlanBasis>();
    basis->day = day;
    basis->rules = std::make_shared<const Rules>(reference.rules.withPossible(info.rules));
    basis->profiles = withOwnProfiles(reference.profiles, info);
    if (reference.numbers != nullptr) {
        // Most settings are no numbers: those are not worked out again.
        const bool isKept = info_ && basis_->tables && haveSameNumbers(*info_, info);
        basis->tables = isKept ? basis_->tables : reference.numbers->with(info);
        BURROW_TRY(basis->warmths, recentWarmth(book, day, basis->tables->air));
    }
    basis_ = std::move(basis);
    info_ = std::make_shared<const RoomInfo>(std::move(info));
    return {};
}

/// Settings are names, rules, profiles, numbers and the air: nobody's record changes, and plans only where
/// a rule, a profile or the temperature does.
Result<Room> Room::withSettings(Book& book, const Reference& reference) const {
    Room room = *this;
    room.row_ = std::make_shared<Residents::Row>();
    BURROW_DO(room.readSettings(book, reference, day()));
    const bool sameProfiles = info_->profiles == room.info_->profiles;
    const bool sameAir = basis_->warmths == room.basis_->warmths;
    if (sameProfiles && sameAir && info_->rules == room.info_->rules) {
        if (basis_->tables == room.basis_->tables) {
            room.basis_ = basis_;
        } else {
            auto basis = std::make_shared<PlanBasis>(*basis_);
            basis->tables = room.basis_->tables;
            room.basis_ = std::move(basis);
        }
        return room;
    }
    if (sameProfiles) {
        auto basis = std::make_shared<PlanBasis>(*room.basis_);
        basis->profiles = basis_->profiles;
        room.basis_ = std::move(basis);
    }
    for (auto& run : room.runs_) {
        auto changed = std::make_shared<Neighbours>(*run);
        for (auto& stub : changed->stubs) {
            const auto kept = stub->kept();
            const RuleSubject subject{kept.subject.id, kept.subject.species, kept.place,
                                      profiles().find(kept.subject.species)};
            const bool sameRules = rules().of(subject).sameValues(room.rules().of(subject));
            const bool sameWarmth =
                warmthAt(basis_->warmths, kept.place) == warmthAt(room.basis_->warmths, kept.place);
            if (!sameRules || !sameProfiles || !sameWarmth) stub = room.make(kept);
        }
        run = std::move(changed);
    }
    return room;
}

std::optional<Room::At> Room::placeOf(SubjectId id) const {
    for (std::size_t run = 0; run < runs_.size(); ++run) {
        const auto& ids = runs_[run]->ids;
        const auto found = std::find(ids.begin(), ids.end(), id);
        if (found != ids.end()) return At{run, static_cast<std::size_t>(found - ids.begin())};
    }
    return std::nullopt;
}

void Room::remove(At at) {
    --count_;
    if (runs_[at.run]->ids.size() == 1) {
        runs_.erase(runs_.begin() + static_cast<std::ptrdiff_t>(at.run));
        return;
    }
    auto run = std::make_shared<Neighbours>(*runs_[at.run]);
    run->ids.erase(run->ids.begin() + static_cast<std::ptrdiff_t>(at.place));
    run->stubs.erase(run->stubs.begin() + static_cast<std::ptrdiff_t>(at.place));
    runs_[at.run] = std::move(run);
}

void Room::put(At at, StubPtr stub) {
    auto run = std::make_shared<Neighbours>(*runs_[at.run]);
    run->stubs[at.place] = std::move(stub);
    runs_[at.run] = std::move(run);
}

/// At its place in the walk: the others stand in order already.
void Room::insert(StubPtr stub) {
    const auto key = keyOf(stub->walk());
    const auto isAfter = [&](const StubPtr& other) { return key < keyOf(other->walk()); };
    // The last piece that begins before it takes it in.
    auto to = std::partition_point(runs_.begin(), runs_.end(),
                                   [&](const auto& run) { return !isAfter(run->stubs.front()); });
    ++count_;
    if (to != runs_.begin()) --to;
    if (to == runs_.end()) {
        runs_.push_back(
            std::make_shared<const Neighbours>(Neighbours{{stub->id()}, {std::move(stub)}}));
        return;
    }
    auto run = std::make_shared<Neighbours>(**to);
    const auto place = std::partition_point(run->stubs.begin(), run->stubs.end(),
                                            [&](const StubPtr& each) { return !isAfter(each); });
    run->ids.insert(run->ids.begin() + (place - run->stubs.begin()), stub->id());
    run->stubs.insert(place, std::move(stub));
    if (run->ids.size() < 2 * piece) {
        *to = std::move(run);
        return;
    }
    const auto half = static_cast<std::ptrdiff_t>(piece);
    auto rest = std::make_shared<Neighbours>();
    rest->ids.assign(run->ids.begin() + half, run->ids.end());
    rest->stubs.assign(run->stubs.begin() + half, run->stubs.end());
    run->ids.resize(piece);
    run->stubs.resize(piece);
    *to = std::move(run);
    runs_.insert(to + 1, std::move(rest));
}

/// What was read again takes the place of what stood there.
void Room::bring(std::optional<Kept> changed, SubjectId id) {
    const auto at = placeOf(id);
    auto stub = changed ? make(*changed) : nullptr;
    if (at && stub && keyOf(runs_[at->run]->stubs[at->place]->walk()) == keyOf(stub->walk())) {
        return put(*at, std::move(stub));
    }
    if (at) remove(*at);
    if (stub) insert(std::move(stub));
}

/// Those an act is about, and those who live in an enclosure that it is about.
std::vector<SubjectId> Room::touchedBy(const ChangeSet& changes) const {
    auto touched = changes.subjects;
    const auto& homes = changes.enclosures;
    if (!homes.empty()) {
        forEach([&](const StubPtr& stub) {
            const auto home = stub->kept().subject.enclosure;
            const bool isOfThem =
                home && std::find(homes.begin(), homes.end(), *home) != homes.end();
            if (isOfThem) touched.push_back(stub->id());
        });
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
    if (changes.tags || touched.size() > most) return load(book, reference, day());
    Room room = *this;
    room.row_ = std::make_shared<Residents::Row>();
    if (changes.settings) {
        BURROW_TRY(room, withSettings(book, reference));
    }
    for (const auto id : touched) {
        BURROW_TRY(auto changed, burrow::kept(book, id));
        room.bring(std::move(changed), id);
    }
    return room;
}

// --- looking -------------------------------------------------------------------------------------

StubPtr Room::stub(SubjectId id) const {
    const auto at = placeOf(id);
    return at ? runs_[at->run]->stubs[at->place] : nullptr;
}

ResidentPtr Room::find(SubjectId id) const {
    const auto found = stub(id);
    return found ? found->resident() : nullptr;
}

std::vector<StubPtr> Room::listed() const {
    std::vector<StubPtr> listed;
    forEach([&](const StubPtr& stub) {
        if (stub->glance().isListed()) listed.push_back(stub);
    });
    return listed;
}

Visit visitOf(const Stub& stub) {
    Visit visit{stub.resident(), {}};
    for (const auto& answer : visit.resident->plan.answers) {
        if (isListed(answer)) visit.answers.push_back(answer);
    }
    return visit;
}

std::vector<Visit> Room::visits() const {
    std::vector<Visit> visits;
    for (const auto& stub : listed()) visits.push_back(visitOf(*stub));
    return visits;
}

}  // namespace burrow
