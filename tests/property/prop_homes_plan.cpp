// The plan of a room's homes: every move goes into a home that is empty by then and allows the animal
// its room, nobody is moved who must be left alone, and whoever follows the plan move by move, planning
// anew after each, comes to its end. Besides, a room worked out by hand.
#include <rapidcheck.h>

#include <cstdlib>
#include <map>

#include "husbandry/plain_forecast.h"
#include "room/homes_plan.h"
#include "support/joined.h"
#include "support/profiles.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const homes::HomeRules& homeRules() {
    static const auto rules = homes::HomeRules::fromJson(slurp(std::string(BURROW_ASSETS_DIR) +
                                                               "/rules/tables/homes.json"))
                                  .value();
    return rules;
}

const Room::Reference& reference() {
    static const auto rules = Rules::fromJson(assetFiles("rules")).value();
    static const Room::Reference shared{shipped(), rules};
    return shared;
}

const PlanDay& today() {
    static const PlanDay day{Zone::utc().dayOf(fridayEvening), Zone::utc()};
    return day;
}

/// A room of which each test makes what it needs.
class Keeping {
public:
    EnclosureId addHome(const std::string& name, double length, double width, double height,
                        double ground) {
        const EnclosureId id{book().newId()};
        const Enclosure home{
            id, name, {length}, {width}, {height}, {ground}, Place::parse("A / " + name), {}};
        book().record(SetDraft{ThingType::enclosure, id.uuid, toFields(home)}).value();
        return id;
    }
    SubjectId addAnimal(const std::string& number, const std::string& species, double span,
                        std::optional<EnclosureId> home, Form form = Form::animal) {
        Subject subject;
        subject.number = number;
        subject.species = species;
        subject.form = form;
        subject.enclosure = home;
        const SubjectId id{book().newId()};
        book().record(SetDraft{ThingType::subject, id.uuid, toFields(subject)}).value();
        if (span > 0) log(id, FactKind::measured, -200, {.span = Millimetres{span}});
        return id;
    }
    void log(SubjectId id, FactKind kind, int days, FactBody body = {}) {
        const Instant at{fridayEvening.ms + days * msPerDay};
        book().record(FactDraft{id, kind, std::move(body), at}).value();
    }

    [[nodiscard]] Room room() { return Room::load(book(), reference(), today()).value(); }
    [[nodiscard]] HomesPlan plan() {
        const PlainForecast forecast;
        return homesPlan(room(), enclosures(book()).value(), homeRules(), forecast);
    }
    [[nodiscard]] Book& book() { return phones_.front()->book(); }

private:
    std::vector<std::unique_ptr<Device>> phones_ = roomOf(1, 3);
};

const Housed& of(const HomesPlan& plan, SubjectId id) {
    return *std::ranges::find_if(
        plan.housed, [&](const Housed& housed) { return housed.resident->subject().id == id; });
}

/// An adult of 140 mm needs a floor of 420 by 210 mm, 70 mm of ground and 140 mm of air above it, and must
/// not fall more than 210 mm (rules home.*_spans; table "space",
/// terrestrial.adult).
bool aRoomByHand() {
    Checks check;
    Keeping keeping;
    const auto small = keeping.addHome("small", 200, 200, 200, 80);
    const auto shallow = keeping.addHome("shallow", 450, 300, 300, 40);
    const auto right = keeping.addHome("right", 450, 300, 250, 100);
    keeping.addHome("narrow", 430, 215, 250, 0);
    keeping.addHome("huge", 900, 600, 450, 0);
    const auto cramped = keeping.addAnimal("1", "Brachypelma hamorii", 140, small);
    const auto falls = keeping.addAnimal("2", "Brachypelma hamorii", 140, shallow);
    const auto content = keeping.addAnimal("3", "Brachypelma hamorii", 140, right);
    const auto unknown = keeping.addAnimal("4", "Brachypelma hamorii", 0, std::nullopt);
    keeping.addAnimal("5", "Neoholothele incei", 14, std::nullopt, Form::group);
    auto plan = keeping.plan();
    check.that(of(plan, cramped).state == HomeState::tooSmall, "140 mm in 200 mm is too small");
    check.that(of(plan, falls).state == HomeState::ground,
               "a drop of 260 mm is a matter of ground");
    check.that(of(plan, falls).ground->least.value == 90, "300 less 210 mm of drop");
    check.that(of(plan, content).state == HomeState::fits, "a home that fits");
    check.that(of(plan, unknown).state == HomeState::unknown, "no size, no judgement");
    check.that(plan.several == 1, "a group is not judged");
    check.that(plan.free.size() == 2 && plan.free[0].home.name == "narrow", "two stand empty");
    check.that(plan.moves.size() == 1 && plan.moves[0].to.name == "narrow",
               "the smaller that fits");
    const auto& move = plan.moves.at(0);
    check.that(move.depth.least.value == 70 && move.depth.most.value == 110, "depth of ground");
    // 430 x 215 x 70 mm are 6.47 litres.
    check.that(move.ground && std::abs(move.ground->volume.value - 6.4715) < 1e-9, "litres");
    check.that(move.fit && move.fit->isGood(), "it fits there");
    check.that(!move.cautions.empty(), "there is always something to mind");
    const auto fact = factOf(plan, move);
    check.that(fact.kind == FactKind::rehoused && fact.body.enclosure == move.to.id, "its fact");
    // Freshly moulted, it stays.
    keeping.log(cramped, FactKind::moulted, -1);
    plan = keeping.plan();
    check.that(plan.moves.empty() && plan.waiting.size() == 1, "a soft one is not moved");
    if (!check.ok()) std::puts("A room by hand");
    return check.ok();
}

/// What the keeper says of one animal counts for its home, and for what is due.
bool anOwnRuleCountsEverywhere() {
    Checks check;
    Keeping keeping;
    const auto home = keeping.addHome("right", 450, 300, 250, 100);
    const auto animal = keeping.addAnimal("1", "Brachypelma hamorii", 140, home);
    const auto isDue = [&] {
        return keeping.room().find(animal)->plan.of(Care::rehouse).state == State::due;
    };
    check.that(of(keeping.plan(), animal).state == HomeState::fits && !isDue(), "three spans do");
    const auto rule = std::string(setting::rule) + "home.floor_spans@animal:" + animal.text();
    keeping.book()
        .record(SetDraft{ThingType::book, keeping.book().id().uuid, {{rule, std::string("4")}}})
        .value();
    check.that(of(keeping.plan(), animal).state == HomeState::tooSmall && isDue(), "four do not");
    if (!check.ok()) std::puts("An own rule");
    return check.ok();
}

/// Two that each need the other's home.
bool aCircleGoesThroughATub() {
    Checks check;
    Keeping keeping;
    const auto low = keeping.addHome("low", 500, 300, 250, 100);
    const auto high = keeping.addHome("high", 300, 300, 450, 40);
    // Up on stems: 2 x 1.5 spans of floor and 3 of air; 99 mm need 198 mm of floor, and 297 of height.
    const auto climber = keeping.addAnimal("1", "Poecilotheria regalis", 90, low);
    const auto walker = keeping.addAnimal("2", "Brachypelma hamorii", 140, high);
    keeping.log(climber, FactKind::measured, -10, {.span = Millimetres{99}});
    for (int step = 0; step < 6; ++step) {
        const auto plan = keeping.plan();
        if (plan.moves.empty()) break;
        const auto fact = factOf(plan, plan.moves.front());
        keeping.book().record(fact).value();
        const auto& place = of(plan, fact.subject).resident->kept.place;
        static_cast<void>(place);
    }
    const auto room = keeping.room();
    check.that(room.find(climber)->subject().enclosure == high, "the climber is in the high one");
    check.that(room.find(walker)->subject().enclosure == low, "the walker in the low one");
    check.that(keeping.plan().moves.empty(), "nothing is left to do");
    if (!check.ok()) std::puts("A circle");
    return check.ok();
}

void anyRoom(Keeping& keeping) {
    std::vector<EnclosureId> made;
    for (int i = *rc::gen::inRange(2, 14); i > 0; --i) {
        const double length = *rc::gen::inRange(6, 60) * 10.0;
        made.push_back(keeping.addHome("E" + std::to_string(i), length, length * 0.6,
                                       *rc::gen::inRange(8, 60) * 10.0,
                                       *rc::gen::inRange(0, 12) * 10.0));
    }
    for (int i = *rc::gen::inRange(1, 10); i > 0; --i) {
        const auto& profile =
            shipped().all()[*rc::gen::inRange<std::size_t>(0, shipped().all().size())];
        const auto home =
            *rc::gen::inRange(0, 8) == 0 ? std::nullopt : std::optional(*rc::gen::elementOf(made));
        const auto id =
            keeping.addAnimal(std::to_string(i), profile.name, *rc::gen::inRange(0, 180), home);
        if (*rc::gen::inRange(0, 3) == 0) {
            keeping.log(id, FactKind::moulted, -*rc::gen::inRange(1, 400),
                        {.span = Millimetres{*rc::gen::inRange(10, 180) * 1.0}});
        }
        if (*rc::gen::inRange(0, 8) == 0) keeping.log(id, FactKind::premoultSign, -2);
    }
}

bool isHeld(const Room& room, const Housed& housed) {
    const auto& resident = *housed.resident;
    const auto rules = room.rulesFor(resident);
    const auto closing = closingOn(closuresOf(resident.input(), resident.plan.stage, rules),
                                   resident.input(), today().today);
    return closing && closing->because != Because::settling;
}

void checkPlan(const Room& room, const HomesPlan& plan) {
    std::map<EnclosureId, int> inside;
    for (const auto& resident : room.residents()) {
        if (resident->subject().enclosure) ++inside[*resident->subject().enclosure];
    }
    for (const auto& free : plan.free) RC_ASSERT(inside[free.home.id] == 0);
    for (const auto& move : plan.moves) {
        const auto& housed = plan.housed[move.who];
        RC_ASSERT(housed.isDue);
        RC_ASSERT(!isHeld(room, housed));
        if (move.from && move.kind != homes::StepKind::outOfSpare) --inside[move.from->id];
        if (move.kind == homes::StepKind::intoSpare) continue;
        RC_ASSERT(inside[move.to.id] == 0);
        ++inside[move.to.id];
        const auto wanted = housed.grown ? *housed.grown : *housed.dweller;
        RC_ASSERT(homes::groundFor(wanted, move.to, homeRules()).has_value());
        RC_ASSERT(move.ground.has_value());
        RC_ASSERT(move.depth.least <= move.depth.most);
    }
}

bool plansCanBeFollowed() {
    return rc::check("a plan followed move by move comes to its end", [] {
        Keeping keeping;
        anyRoom(keeping);
        auto room = keeping.room();
        auto plan = keeping.plan();
        checkPlan(room, plan);
        const auto most = 3 * plan.housed.size() + 1;
        for (std::size_t step = 0; !plan.moves.empty(); ++step) {
            RC_ASSERT(step < most);
            keeping.book().record(factOf(plan, plan.moves.front())).value();
            room = keeping.room();
            plan = keeping.plan();
            checkPlan(room, plan);
        }
        for (const auto& stays : plan.without) RC_ASSERT(stays.least.has_value());
    });
}

}  // namespace

int main() {
    bool isGood = aRoomByHand();
    isGood &= anOwnRuleCountsEverywhere();
    isGood &= aCircleGoesThroughATub();
    isGood &= plansCanBeFollowed();
    return isGood ? EXIT_SUCCESS : EXIT_FAILURE;
}
