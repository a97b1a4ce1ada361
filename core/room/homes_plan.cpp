#include "room/homes_plan.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace burrow {
namespace {

using homes::Dweller;

/// Where there are too few homes: who is in a tub goes before who is in too small a home.
int urgencyOf(HomeState state) {
    if (state == HomeState::inSpareTub) return 9;
    return state == HomeState::tooSmall ? 6 : 3;
}

std::optional<homes::Held> heldBy(const Housed& housed, const Room& room) {
    const auto& resident = *housed.resident;
    const auto rules = room.rulesFor(resident);
    const auto input = resident.input();
    const double soon = housed.moult ? housed.moult->soon : 0;
    const auto closures = closuresOf(input, resident.plan.stage, rules, soon);
    const auto closing = closingOn(closures, input, room.day().today);
    if (!closing) return std::nullopt;
    switch (closing->because) {
        case Because::hardening: return homes::Held::hardening;
        case Because::premoult:
        case Because::likelyPremoult: return homes::Held::premoult;
        case Because::eggSac: return homes::Held::sac;
        // One in a spare tub was moved for this plan, and must not wait for its home.
        case Because::settling:
            if (housed.state == HomeState::inSpareTub) return std::nullopt;
            return homes::Held::settling;
        default: return std::nullopt;
    }
}

homes::Manner mannerOf(const Housed& housed) {
    homes::Manner manner;
    manner.habit = housed.dweller->habit;
    manner.age = housed.dweller->age;
    // Of an unknown species all of it may be true.
    const auto* profile = housed.resident->profile;
    manner.temperament = profile != nullptr ? profile->temperament.value : Temperament::defensive;
    manner.isFast = profile == nullptr || profile->fast.value;
    manner.hasHairs = profile == nullptr || profile->hairs.value != Hairs::none;
    manner.venom = profile != nullptr ? profile->venom.value : Venom::significant;
    return manner;
}

Millimetres upToCentimetre(Millimetres depth) { return {std::ceil(depth.value / 10) * 10}; }

/// As deep as it is where that will do, else as little as it takes, in whole centimetres; a digger gets
/// the middle of what is allowed.
Millimetres depthFor(const Range<Millimetres>& allowed, const Enclosure& home, Habit habit) {
    if (home.substrate >= allowed.least && home.substrate <= allowed.most) return home.substrate;
    const auto middle = allowed.least + (allowed.most - allowed.least) * 0.5;
    const auto wanted = upToCentimetre(habit == Habit::fossorial ? middle : allowed.least);
    return std::min(wanted, allowed.most);
}

/// Puts a plan together.
class Planning {
public:
    Planning(const Room& room, std::span<const Enclosure> enclosures, const homes::HomeRules& rules,
             const Forecast& forecasts)
        : room_(room), enclosures_(enclosures), rules_(rules), forecasts_(forecasts) {
        for (std::size_t i = 0; i < enclosures.size(); ++i) places_[enclosures[i].id] = i;
    }

    HomesPlan make() {
        lookAtEveryone();
        findHomes();
        listFree();
        putInOrder();
        return std::move(plan_);
    }

private:
    void lookAtEveryone() {
        for (const auto& resident : room_.residents()) {
            const auto& subject = resident->subject();
            if (!subject.isKept()) continue;
            const auto home = homeOf(subject);
            if (home) ++livedIn_[*home];
            const bool isHere = subject.standing == Standing::here;
            if (subject.form != Form::animal) ++plan_.several;
            if (!isHere || subject.form != Form::animal) continue;
            auto housed =
                housedIn(room_, resident, home ? std::optional(enclosures_[*home]) : std::nullopt,
                         rules_, forecasts_);
            if (housed.isDue) movers_.push_back(plan_.housed.size());
            plan_.housed.push_back(std::move(housed));
        }
    }
    [[nodiscard]] std::optional<std::size_t> homeOf(const Subject& subject) const {
        if (!subject.enclosure) return std::nullopt;
        const auto found = places_.find(*subject.enclosure);
        return found == places_.end() ? std::nullopt : std::optional(found->second);
    }
    /// Homes without an enclosure of the book have numbers after those that have one.
    [[nodiscard]] std::size_t fromOf(std::size_t who) const {
        const auto home = homeOf(plan_.housed[who].resident->subject());
        return home.value_or(enclosures_.size() + who);
    }

    /// Those who find no home keep theirs, which is then none for others: until nothing changes.
    void findHomes() {
        auto leaving = movers_;
        while (true) {
            match(homesFor(leaving));
            const auto before = leaving.size();
            std::erase_if(leaving, [&](std::size_t who) { return !target_.contains(who); });
            const bool isSettled = std::ranges::all_of(
                target_, [&](const auto& pair) { return !isLivedInBeside(pair.second, leaving); });
            if (isSettled || leaving.size() == before) break;
        }
        for (const auto who : movers_) {
            if (target_.contains(who)) continue;
            plan_.without.push_back({who,
                                     std::nullopt,
                                     {"homes.match.none"},
                                     homes::leastVolume(*wanted(who), rules_)});
        }
    }
    /// Empty ones, and those that only such live in who are to leave.
    [[nodiscard]] std::vector<std::size_t> homesFor(std::span<const std::size_t> leaving) const {
        std::vector<std::size_t> offered;
        for (std::size_t i = 0; i < enclosures_.size(); ++i) {
            if (!isLivedInBeside(i, leaving)) offered.push_back(i);
        }
        return offered;
    }
    [[nodiscard]] bool isLivedInBeside(std::size_t home,
                                       std::span<const std::size_t> leaving) const {
        const auto lived = livedIn_.find(home);
        if (lived == livedIn_.end()) return false;
        const auto gone =
            std::ranges::count_if(leaving, [&](std::size_t who) { return fromOf(who) == home; });
        return lived->second > gone;
    }
    void match(std::span<const std::size_t> offered) {
        std::vector<homes::Seeker> seekers;
        for (const auto who : movers_) {
            seekers.push_back({who, *wanted(who), urgencyOf(plan_.housed[who].state)});
        }
        std::vector<homes::EmptyHome> empty;
        for (const auto home : offered) empty.push_back({enclosures_[home], std::nullopt});
        target_.clear();
        for (auto& placed : homes::matchHomes(seekers, empty, rules_)) {
            if (!placed.home) continue;
            const auto home = offered[*placed.home];
            // Its own is too small for it, now or soon.
            if (home == fromOf(placed.who)) continue;
            target_[placed.who] = home;
            depth_[placed.who] = depthNow(placed.who, enclosures_[home], placed.ground);
        }
    }
    /// How deep the ground may be both now and when it has grown; where nothing is right for both, now.
    [[nodiscard]] Range<Millimetres> depthNow(std::size_t who, const Enclosure& home,
                                              const Range<Millimetres>& grown) const {
        const auto now = homes::groundFor(*plan_.housed[who].dweller, home, rules_);
        if (!now) return grown;
        const Range<Millimetres> both{std::max(now->least, grown.least),
                                      std::min(now->most, grown.most)};
        return both.least <= both.most ? both : *now;
    }
    /// As large as the home must allow.
    [[nodiscard]] const std::optional<Dweller>& wanted(std::size_t who) const {
        const auto& housed = plan_.housed[who];
        return housed.grown ? housed.grown : housed.dweller;
    }

    void listFree() {
        for (std::size_t i = 0; i < enclosures_.size(); ++i) {
            if (livedIn_.contains(i)) continue;
            FreeHome free{enclosures_[i], std::nullopt};
            for (const auto& [who, home] : target_) {
                if (home == i) free.forWhom = who;
            }
            plan_.free.push_back(std::move(free));
        }
        std::ranges::stable_sort(plan_.free, [](const FreeHome& a, const FreeHome& b) {
            return homes::volume(a.home) < homes::volume(b.home);
        });
    }

    void putInOrder() {
        std::vector<homes::Move> moves;
        for (const auto who : movers_) {
            const auto found = target_.find(who);
            if (found == target_.end()) continue;
            moves.push_back({who, fromOf(who), found->second, heldBy(plan_.housed[who], room_),
                             mannerOf(plan_.housed[who])});
        }
        std::ranges::stable_sort(moves, std::ranges::greater(), [&](const homes::Move& move) {
            return urgencyOf(plan_.housed[move.who].state);
        });
        const auto rehousing = homes::rehousing(moves, {}, rules_);
        if (!rehousing) return;  // the matching gives no home twice, and nobody its own
        for (const auto& step : rehousing->steps) plan_.moves.push_back(moveOf(step));
        for (const auto& waits : rehousing->waiting) {
            plan_.waiting.push_back({waits.who, waits.waitsFor, waits.why, std::nullopt});
        }
        plan_.spareTubs = rehousing->spareTubs;
        plan_.summary = rehousing->summary;
    }
    [[nodiscard]] PlannedMove moveOf(const homes::Step& step) const {
        PlannedMove move{step.kind, step.who, std::nullopt, enclosures_[step.to], {},
                         {},        {},       step.why,     step.cautions};
        if (step.from < enclosures_.size()) move.from = enclosures_[step.from];
        const auto depth = depth_.find(step.who);
        if (step.kind == homes::StepKind::intoSpare || depth == depth_.end()) return move;
        move.depth = depth->second;
        const auto& housed = plan_.housed[step.who];
        const auto habit = housed.dweller->habit;
        auto ready = move.to;
        ready.substrate = depthFor(move.depth, move.to, habit);
        const auto* profile = housed.resident->profile;
        const auto damp = profile != nullptr ? profile->damp.value : Damp::moderate;
        const bool digs = habit == Habit::fossorial;
        auto ground =
            homes::groundOf(ready, ready.substrate, homes::mixFor(habit, damp), digs, rules_);
        if (ground) move.ground = *std::move(ground);
        move.fit = homes::fitOf(*housed.dweller, ready, rules_);
        return move;
    }

    const Room& room_;
    std::span<const Enclosure> enclosures_;
    const homes::HomeRules& rules_;
    const Forecast& forecasts_;
    std::map<EnclosureId, std::size_t> places_;
    std::map<std::size_t, std::ptrdiff_t> livedIn_;  // enclosures by how many live there
    std::vector<std::size_t> movers_;                // positions in `housed`
    std::map<std::size_t, std::size_t> target_;      // mover -> enclosure
    std::map<std::size_t, Range<Millimetres>> depth_;
    HomesPlan plan_;
};

}  // namespace

HomesPlan homesPlan(const Room& room, std::span<const Enclosure> enclosures,
                    const homes::HomeRules& rules, const Forecast& forecasts) {
    return Planning(room, enclosures, rules, forecasts).make();
}

FactDraft factOf(const HomesPlan& plan, const PlannedMove& move) {
    const auto& resident = *plan.housed[move.who].resident;
    FactDraft fact{resident.subject().id, FactKind::rehoused, {}, std::nullopt};
    if (move.kind == homes::StepKind::intoSpare) {
        fact.kind = FactKind::moved;
        fact.body.place = resident.kept.place;
        fact.body.place->position = spareTub;
    } else {
        fact.body.enclosure = move.to.id;
    }
    return fact;
}

}  // namespace burrow
