// The whole planner over random subjects: an answer with words for every kind of care, rules in
// layers, the plan run forward and compared.
#include <cstdio>

#include "husbandry/premoult.h"
#include "husbandry/preview.h"
#include "support/planning.h"

using namespace burrow;
using namespace burrow::test;

namespace {

bool everythingHasAnAnswer() {
    bool ok = true;
    ok &= rc::check("why, and why not: for every subject and every kind, in words", [] {
        const auto made = anyPlanCase();
        const auto today = made.day.today;
        for (const auto care : allCare) {
            const auto why = explain(care, made.input(), sharedRules(), made.day, plainForecast());
            RC_ASSERT(why.answer.care == care);
            RC_ASSERT(isSpoken(why.answer.reason, today));
            RC_ASSERT(isSpoken(why.answer.verb(made.record.subject.form), today));
            if (why.answer.amount) RC_ASSERT(isSpoken(*why.answer.amount, today));
            for (const auto& line : why.working) RC_ASSERT(isSpoken(line, today));
            for (const auto& rule : why.rules) RC_ASSERT(!rule.source.empty());
            RC_ASSERT(!name(why.answer.because).empty() && parseCare(name(care)) == care);
        }
    });
    ok &= rc::check("states, windows and priorities fit together", [] {
        const auto made = anyPlanCase();
        const auto today = made.day.today;
        for (const auto& answer : made.plan().answers) {
            RC_ASSERT(answer.window.has_value() == (answer.state != State::none));
            RC_ASSERT((answer.priority != Priority::none) == (answer.state == State::due));
            if (!answer.window) continue;
            RC_ASSERT(answer.window->opens <= answer.window->best);
            RC_ASSERT(answer.window->best <= answer.window->late);
            if (answer.state == State::due) RC_ASSERT(answer.window->opens <= today);
            if (answer.state == State::hold) RC_ASSERT(answer.window->opens > today);
            const bool isNotYet =
                answer.state == State::waiting && answer.because != Because::preyLeftIn;
            if (isNotYet) RC_ASSERT(answer.window->opens > today);
        }
    });
    ok &= rc::check("an outlook says what the plan says", [] {
        const auto made = anyPlanCase();
        const auto plan = made.plan();
        const auto outlook = outlookFor(made.input(), sharedRules(), made.day, plainForecast());
        RC_ASSERT(outlook.stage == plan.stage.stage && outlook.phase == plan.phase);
        for (const auto care : allCare) {
            RC_ASSERT(outlook.of(care) == static_cast<const Verdict&>(plan.of(care)));
        }
    });
    ok &= rc::check("nothing is due where nothing is here", [] {
        auto made = anyPlanCase();
        made.record.subject.standing =
            *rc::gen::element(Standing::onLoan, Standing::dead, Standing::sold, Standing::given);
        for (const auto& answer : made.plan().answers) {
            RC_ASSERT(answer.state == State::none || answer.because == Because::onLoan);
        }
    });
    ok &= rc::check("hands are kept off what is soft, about to moult or with a sac", [] {
        const auto made = anyAnimalCase();
        const auto plan = made.plan();
        const bool isClosed = plan.of(Care::feed).state == State::hold;
        if (!isClosed) return;
        for (const auto care : {Care::measure, Care::rehouse}) {
            RC_ASSERT(plan.of(care).state != State::due);
        }
        RC_ASSERT(plan.of(Care::water).state != State::hold);
    });
    return ok;
}

/// So many cases that each reason comes up; the same ones every time.
bool everyReasonIsReached() {
    std::array<bool, becauseCount> seen{};
    rc::detail::TestParams params;
    params.seed = 20'260'508;
    params.maxSuccess = 4000;
    const auto result = rc::detail::checkTestable(
        [&seen] {
            const auto made = anyPlanCase();
            const auto outlook = outlookFor(made.input(), sharedRules(), made.day, plainForecast());
            for (const auto& verdict : outlook.verdicts) {
                seen[static_cast<std::size_t>(verdict.because)] = true;
            }
        },
        rc::detail::TestMetadata{}, params);
    bool ok = result.is<rc::detail::SuccessResult>();
    for (std::size_t i = 0; i < becauseCount; ++i) {
        if (seen[i]) continue;
        std::fprintf(stderr, "never reached: %s\n",
                     std::string(name(static_cast<Because>(i))).c_str());
        ok = false;
    }
    return ok;
}

// --- rules in layers -----------------------------------------------------------------------------

bool layersHold() {
    bool ok = true;
    ok &= rc::check("the most special value holds, and taking it back gives the next", [] {
        auto made = anyPlanCase();
        made.record.place = Place::parse("Nursery / A / 2 / 3");
        made.profile = &sharedProfiles().all()[0];
        made.record.subject.species = made.profile->name;
        const std::string id = "feed.interval.adult";
        const std::vector<std::pair<std::string, RuleOrigin>> special{
            {id + "@animal:" + made.record.subject.id.text(), RuleOrigin::animal},
            {id + "@place:A / 2 / 3", RuleOrigin::place},
            {id + "@place:Nursery", RuleOrigin::place},
            {id + "@species:" + made.profile->name, RuleOrigin::species},
            {id, RuleOrigin::keeper}};
        std::vector<OwnRule> own{{id + "@place:Elsewhere", "99"}, {id + "@species:Nobody", "98"}};
        std::vector<std::pair<double, RuleOrigin>> expected;
        for (std::size_t i = 0; i < special.size(); ++i) {
            if (!*rc::gen::arbitrary<bool>()) continue;
            own.emplace_back(special[i].first, std::to_string(20 + i));
            expected.emplace_back(20.0 + static_cast<double>(i), special[i].second);
        }
        const auto rules = sharedRules().with(own).value();
        const auto subject = made.input().ruleSubject();
        const auto layers = rules.layers(id, subject);
        RC_ASSERT(layers.size() >= expected.size() + 1);
        for (std::size_t i = 0; i < expected.size(); ++i) {
            RC_ASSERT(std::get<Range<double>>(layers[i].value).least == expected[i].first);
            RC_ASSERT(layers[i].origin == expected[i].second);
        }
        RC_ASSERT(layers.back().origin == RuleOrigin::assets);
        RC_ASSERT(*rules.of(subject).find(id) == layers.front());
        RC_ASSERT(rules.ownRules().size() == own.size());
    });
    ok &= rc::check("rules for others change nothing", [] {
        const auto made = anyPlanCase();
        const std::vector<OwnRule> own{
            {"feed.factor@species:Nobody", "3"},
            {"feed.factor@place:Elsewhere", "3"},
            {"feed.factor@animal:" + Uuid::named("somebody else").text(), "3"}};
        const auto rules = sharedRules().with(own).value();
        RC_ASSERT(made.plan(rules).answers == made.plan().answers);
    });
    ok &= rc::check("a greater factor never opens a meal sooner", [] {
        const auto made = anyAnimalCase();
        const double less = *rc::gen::inRange(2, 30) / 10.0;
        const double more = less + *rc::gen::inRange(0, 20) / 10.0;
        const auto opens = [&](double factor) {
            const std::vector<OwnRule> own{{"feed.factor", std::to_string(factor)}};
            return made.plan(sharedRules().with(own).value()).of(Care::feed).window->opens;
        };
        RC_ASSERT(opens(less) <= opens(more));
    });
    ok &= rc::check("a key reads back as it was written", [] {
        RuleKey key{"feed.factor", RuleScope::place, "Room / A, 2 @ the back: left"};
        RC_ASSERT(RuleKey::parse(key.text()) == key);
        key = {"feed.factor", RuleScope::animal, Uuid::named("x").text()};
        RC_ASSERT(RuleKey::parse(key.text()) == key);
        for (const char* bad : {"feed.factor@", "feed.factor@animal:7", "feed.factor@species: ",
                                "feed.factor@everyone:x", "feed.factor@moon:x"}) {
            RC_ASSERT(!RuleKey::parse(bad));
        }
    });
    return ok;
}

// --- what the record does to the plan ------------------------------------------------------------

bool theRecordCounts() {
    bool ok = true;
    ok &= rc::check("each refusal more makes a moult no less likely and the wait no shorter", [] {
        auto made = anyAnimalCase();
        const auto rules = sharedRules().of(made.input().ruleSubject());
        double chance = 0;
        for (int i = 0; i < 6; ++i) {
            const auto stage = judgeStage(made.input(), rules, made.day.today);
            const auto moult = plainForecast().nextMoult(
                {made.input(), stage, rules, made.day.today, premoultWindow(stage, rules)});
            const auto now = premoultChance(made.input(), moult, rules).posterior;
            RC_ASSERT(now >= chance && now <= 1);
            RC_ASSERT(retryFactor(i, rules) <= retryFactor(i + 1, rules));
            chance = now;
            FactBody offer;
            offer.outcome = Outcome::refused;
            made.record.add(made.day.today, FactKind::offered, offer);
        }
    });
    ok &= rc::check("a forecast is in order, and its chance grows with the days asked about", [] {
        const auto made = anyAnimalCase();
        const auto rules = sharedRules().of(made.input().ruleSubject());
        const auto stage = judgeStage(made.input(), rules, made.day.today);
        double chance = 0;
        for (const int within : {1, 7, 30, 365}) {
            const auto moult =
                plainForecast().nextMoult({made.input(), stage, rules, made.day.today, within});
            if (!moult) return;
            RC_ASSERT(moult->soonest <= moult->median && moult->median <= moult->latest);
            const bool isAhead = *made.record.digest.lastMoult() > made.day.today;
            RC_ASSERT(isAhead || moult->soonest >= made.day.today);
            RC_ASSERT(moult->soon >= chance && moult->soon <= 1);
            chance = moult->soon;
        }
    });
    ok &= rc::check("who was rehoused settles, and no longer than the rule says", [] {
        auto made = anyAnimalCase();
        made.record.subject.acquired.reset();
        made.record.add(made.day.today, FactKind::rehoused);
        const auto housed = made.day.today;
        made.day.today = housed + *rc::gen::inRange(0, 20);
        const auto rules = sharedRules().of(made.input().ruleSubject());
        const auto plan = made.plan();
        const int days = rules.days(ruleFor("settle", plan.stage.growing()));
        const bool isSettling = plan.of(Care::feed).because == Because::settling;
        if (isSettling) RC_ASSERT(made.day.today < housed + days);
        if (made.day.today < housed + days) RC_ASSERT(plan.of(Care::feed).state == State::hold);
    });
    ok &= rc::check("she is left alone with her sac, and fed again when it is out", [] {
        auto made = anyAnimalCase();
        made.record.subject.acquired.reset();
        made.record.add(made.day.today, FactKind::sacLaid);
        RC_ASSERT(made.plan().of(Care::feed).state == State::hold);
        made.record.add(made.day.today, FactKind::sacOut);
        RC_ASSERT(made.plan().of(Care::feed).because != Because::eggSac);
    });
    ok &= rc::check("the zone and the hour make no difference to civil days", [] {
        const auto made = anyPlanCase();
        auto other = made;
        other.day.zone = Zone::named(*rc::gen::element<std::string>(
                                         "Pacific/Auckland", "America/St_Johns", "Europe/Berlin"))
                             .value();
        const auto here = made.plan();
        const auto there = other.plan();
        for (const auto care : allCare) {
            if (care == Care::leftovers) continue;  // counted in hours
            RC_ASSERT(here.of(care) == there.of(care));
        }
    });
    return ok;
}

// --- forward and compared ------------------------------------------------------------------------

bool theFutureIsInOrder() {
    bool ok = true;
    ok &= rc::check("the plan run forward ends, keeps to its days and wants no meal too soon", [] {
        const auto made = anyPlanCase();
        const int days = *rc::gen::inRange(0, 40);
        const auto tasks =
            comingTasks(made.input(), sharedRules(), made.day, days, plainForecast());
        std::optional<CivilDay> meal;
        for (std::size_t i = 0; i < tasks.size(); ++i) {
            RC_ASSERT(tasks[i].day >= made.day.today && tasks[i].day < made.day.today + days);
            if (i > 0) RC_ASSERT(tasks[i - 1].day <= tasks[i].day);
            RC_ASSERT(tasks[i].prey.has_value() == (tasks[i].care == Care::feed));
            if (tasks[i].care != Care::feed) continue;
            if (meal) RC_ASSERT(tasks[i].day > *meal);
            meal = tasks[i].day;
        }
    });
    ok &= rc::check("a preview of no change is empty, and of one concerns only whom it is for", [] {
        std::vector<PlanCase> cases;
        std::vector<PlanInput> inputs;
        for (int i = 0; i < 4; ++i) cases.push_back(anyPlanCase());
        for (const auto& made : cases) inputs.push_back(made.input());
        const PlanDay day = cases.front().day;
        RC_ASSERT(previewRules(inputs, sharedRules(), sharedRules(), day, 28, plainForecast())
                      .lines.empty());
        const std::vector<OwnRule> own{{"feed.factor@place:Nursery", "2"}};
        const auto changed = sharedRules().with(own).value();
        const auto preview = previewRules(inputs, sharedRules(), changed, day, 28, plainForecast());
        int inNursery = 0;
        for (const auto& made : cases) inNursery += made.record.place.room == "Nursery" ? 1 : 0;
        RC_ASSERT(preview.concerned == inNursery);
        for (const auto& line : preview.lines) {
            RC_ASSERT(cases[line.input].record.place.room == "Nursery");
            RC_ASSERT(isSpoken(line.says(), day.today));
        }
        const auto feed = static_cast<std::size_t>(Care::feed);
        RC_ASSERT(preview.timesAfter[feed] <= preview.timesBefore[feed]);
    });
    return ok;
}

}  // namespace

int main() {
    bool ok = everythingHasAnAnswer();
    ok &= everyReasonIsReached();
    ok &= layersHold();
    ok &= theRecordCounts();
    ok &= theFutureIsInOrder();
    return ok ? 0 : 1;
}
