// The planner over random histories: what must hold for every animal on every day.
#include <rapidcheck.h>

#include <algorithm>

#include "support/husbandry.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const Rules& rules() {
    static const auto shared = shippedRules();
    return shared;
}

const Profiles& profiles() {
    static const auto shared = shippedProfiles();
    return shared;
}

const Words& words() {
    static const auto shared = englishWords();
    return shared;
}

template <class T>
std::optional<T> perhaps(T value) {
    return *rc::gen::arbitrary<bool>() ? std::optional<T>(value) : std::nullopt;
}

FactBody anyBody(FactKind kind) {
    FactBody body;
    switch (kind) {
        case FactKind::offered:
            body.outcome =
                *rc::gen::element(Outcome::ate, Outcome::part, Outcome::refused, Outcome::leftIn);
            body.prey = perhaps(*rc::gen::element<std::string>("cricket", "Fruit flies", "dubia"));
            body.preyLength = perhaps(Millimetres{*rc::gen::inRange(1, 40) * 1.0});
            body.count = perhaps(*rc::gen::inRange(0, 6));
            break;
        case FactKind::moulted:
            body.span = perhaps(Millimetres{*rc::gen::inRange(5, 280) * 1.0});
            body.carapace = perhaps(Millimetres{*rc::gen::inRange(10, 400) / 10.0});
            if (*rc::gen::inRange(0, 8) == 0) body.ultimate = true;
            break;
        case FactKind::measured:
            body.span = perhaps(Millimetres{*rc::gen::inRange(5, 280) * 1.0});
            break;
        case FactKind::seen: body.count = *rc::gen::inRange(0, 20); break;
        case FactKind::sexed: body.sex = *rc::gen::element(Sex::female, Sex::male); break;
        default: break;
    }
    return body;
}

FactKind anyKind() {
    return *rc::gen::element(FactKind::offered, FactKind::offered, FactKind::offered,
                             FactKind::leftoversOut, FactKind::watered, FactKind::dampened,
                             FactKind::premoultSign, FactKind::moulted, FactKind::measured,
                             FactKind::fangsBlack, FactKind::seen, FactKind::note, FactKind::sexed,
                             FactKind::died, FactKind::lent, FactKind::returned);
}

/// A subject with up to thirty facts, and the day on which it is planned: that of the last fact or
/// up to sixty days later.
struct Case {
    Record record;
    const Profile* profile = nullptr;
    PlanDay day{{}, Zone::utc()};

    [[nodiscard]] PlanInput input() const { return record.input(profile); }
    [[nodiscard]] Plan plan() const { return planFor(input(), rules(), day); }
};

Case anyCase(std::vector<Form> forms = {Form::animal, Form::animal, Form::group, Form::lot}) {
    Case made;
    auto when = CivilDay{*rc::gen::inRange(18'000, 22'000)};
    auto& subject = made.record.subject;
    subject.form = *rc::gen::elementOf(forms);
    subject.headcount = subject.form == Form::animal ? 1 : *rc::gen::inRange(0, 200);
    subject.sex = *rc::gen::element(Sex::unknown, Sex::female, Sex::male);
    subject.mature = *rc::gen::inRange(0, 6) == 0;
    subject.hatched = perhaps(when - *rc::gen::inRange(0, 2000));
    subject.acquired = perhaps(when - *rc::gen::inRange(-5, 100));
    subject.standing = *rc::gen::element(Standing::here, Standing::here, Standing::here,
                                         Standing::here, Standing::onLoan, Standing::sold);
    const auto species = *rc::gen::inRange<std::size_t>(0, profiles().all().size() + 3);
    if (species < profiles().all().size()) made.profile = &profiles().all()[species];
    const int count = *rc::gen::inRange(0, 30);
    for (int i = 0; i < count; ++i) {
        when = when + *rc::gen::inRange(0, 12);
        const auto kind = anyKind();
        made.record.add(when, kind, anyBody(kind));
    }
    made.day.today = when + *rc::gen::inRange(0, 60);
    return made;
}

/// Not newly come, which would hold it back by itself.
Case anyKeptAnimal() {
    auto made = anyCase({Form::animal});
    made.record.subject.standing = Standing::here;
    made.record.subject.acquired.reset();
    return made;
}

/// The rules that hold for it.
Rules rulesOf(const Case& made) { return rules().of(made.input().ruleSubject()); }

bool isSpoken(const Message& message, CivilDay today) {
    const auto text = words().say(message, today);
    return !text.empty() && text.find('[') == std::string::npos;
}

bool answersHold() {
    bool ok = true;
    ok &= rc::check("every care has an answer with a reason that can be spoken", [] {
        const auto made = anyCase();
        const auto today = made.day.today;
        const auto plan = made.plan();
        RC_ASSERT(isSpoken(plan.stage.how, today));
        for (const auto care : allCare) {
            const auto& answer = plan.of(care);
            RC_ASSERT(answer.care == care);
            RC_ASSERT(isSpoken(answer.reason, today));
            RC_ASSERT(isSpoken(answer.verb(made.record.subject.form), today));
            // Not in one expression: RC_ASSERT takes it apart and evaluates all of it.
            if (answer.amount) RC_ASSERT(isSpoken(*answer.amount, today));
            RC_ASSERT(answer.window.has_value() == (answer.state != State::none));
        }
    });
    ok &= rc::check("a window opens, is best and is late in that order", [] {
        const auto plan = anyCase().plan();
        for (const auto& answer : plan.answers) {
            if (!answer.window) continue;
            RC_ASSERT(answer.window->opens <= answer.window->best);
            RC_ASSERT(answer.window->best <= answer.window->late);
        }
    });
    ok &= rc::check("what is due has opened, and what is held opens after today", [] {
        const auto made = anyCase();
        for (const auto& answer : made.plan().answers) {
            if (answer.state == State::due) RC_ASSERT(answer.window->opens <= made.day.today);
            if (answer.state == State::hold) RC_ASSERT(answer.window->opens > made.day.today);
        }
    });
    ok &= rc::check("windows keep their order under any rules of the keeper's", [] {
        std::vector<std::pair<std::string, std::string>> mine;
        for (const auto* rule : rules().all()) {
            const bool isGap =
                std::holds_alternative<Range<double>>(rule->value) && rule->unit == RuleUnit::days;
            if (!isGap) continue;
            const int least = *rc::gen::inRange(1, 40);
            const int most = least + *rc::gen::inRange(0, 40);
            mine.emplace_back(rule->id, std::to_string(least) + "-" + std::to_string(most));
        }
        const auto own = rules().with(mine).value();
        const auto made = anyCase();
        for (const auto& answer : planFor(made.input(), own, made.day).answers) {
            RC_ASSERT(isSpoken(answer.reason, made.day.today));
            if (!answer.window) continue;
            RC_ASSERT(answer.window->opens <= answer.window->best);
            RC_ASSERT(answer.window->best <= answer.window->late);
            if (answer.state == State::hold) RC_ASSERT(answer.window->opens > made.day.today);
        }
    });
    ok &= rc::check("the same record gives the same plan", [] {
        const auto made = anyCase();
        const auto copy = made;
        RC_ASSERT(made.plan().answers == copy.plan().answers);
        RC_ASSERT(made.plan().phase == copy.plan().phase);
    });
    ok &= rc::check("nothing is planned for what is not here", [] {
        auto made = anyCase();
        made.record.subject.standing =
            *rc::gen::element(Standing::onLoan, Standing::dead, Standing::sold, Standing::given);
        for (const auto& answer : made.plan().answers) RC_ASSERT(answer.state == State::none);
    });
    return ok;
}

bool feedingIsSafe() {
    bool ok = true;
    ok &= rc::check("no animal is due to be fed while it hardens", [] {
        auto made = anyKeptAnimal();
        const auto moult = made.day.today;
        made.record.add(moult, FactKind::moulted);
        made.day.today = moult + *rc::gen::inRange(0, 20);
        const auto plan = made.plan();
        const auto hardening =
            rulesOf(made).dayRange(ruleFor("hardening", plan.stage.growing())).most;
        const bool isSoft = made.day.today < moult + hardening;
        RC_ASSERT((plan.of(Care::feed).state == State::hold) == isSoft);
        RC_ASSERT((plan.phase == Phase::hardening) == isSoft);
    });
    ok &= rc::check("black fangs end the hardening on their day", [] {
        auto made = anyKeptAnimal();
        made.record.add(made.day.today, FactKind::moulted);
        made.day.today = made.day.today + *rc::gen::inRange(0, 20);
        made.record.add(made.day.today, FactKind::fangsBlack);
        RC_ASSERT(made.plan().phase == Phase::between);
        RC_ASSERT(made.plan().of(Care::feed).state != State::hold);
    });
    ok &= rc::check("an animal in premoult is never due while the sign stands", [] {
        auto made = anyKeptAnimal();
        const auto sign = made.day.today;
        made.record.add(sign, FactKind::moulted).add(sign, FactKind::premoultSign);
        made.day.today = sign + *rc::gen::inRange(0, 60);
        const auto plan = made.plan();
        const int hold = rulesOf(made).days(ruleFor("premoult.hold", plan.stage.growing()));
        RC_ASSERT((plan.of(Care::feed).state == State::hold) == (made.day.today < sign + hold));
    });
    ok &= rc::check("water and damp are never held back", [] {
        const auto plan = anyCase().plan();
        RC_ASSERT(plan.of(Care::water).state != State::hold);
        RC_ASSERT(plan.of(Care::damp).state != State::hold);
    });
    ok &= rc::check("nothing that happens to one of them holds back a group", [] {
        auto made = anyCase({Form::group, Form::lot});
        made.record.subject.acquired.reset();
        RC_ASSERT(made.plan().of(Care::feed).state != State::hold);
    });
    ok &= rc::check("prey known to be left in keeps feeding from being due", [] {
        auto made = anyCase();
        FactBody offer;
        offer.outcome = Outcome::leftIn;
        made.record.add(made.day.today, FactKind::offered, offer);
        made.day.today = made.day.today + *rc::gen::inRange(0, 60);
        RC_ASSERT(made.plan().of(Care::feed).state != State::due);
    });
    ok &= rc::check("leftovers are due from the day after the offer at the latest", [] {
        auto made = anyCase();
        made.record.subject.standing = Standing::here;
        made.record.subject.headcount = 1;
        FactBody offer;
        offer.outcome = *rc::gen::element(Outcome::part, Outcome::refused, Outcome::leftIn);
        made.record.add(made.day.today, FactKind::offered, offer);
        made.day.today = made.day.today + *rc::gen::inRange(1, 30);
        RC_ASSERT(made.plan().of(Care::leftovers).state == State::due);
    });
    return ok;
}

bool mealsPutFeedingOff() {
    bool ok = true;
    ok &= rc::check("an accepted meal never makes feeding due earlier", [] {
        auto made = anyKeptAnimal();
        const auto before = made.plan();
        const int refusals = made.record.digest.refusalsInARow;
        FactBody offer;
        offer.outcome = *rc::gen::element(Outcome::ate, Outcome::part);
        made.record.add(made.day.today, FactKind::offered, offer);
        const auto after = made.plan();
        RC_ASSERT(after.of(Care::feed).state != State::due);
        // Eating shows that refusals were no premoult: what they lengthened it may shorten.
        if (refusals == 0) {
            RC_ASSERT(before.of(Care::feed).window->opens <= after.of(Care::feed).window->opens);
        }
    });
    ok &= rc::check("a refusal never makes feeding due earlier", [] {
        auto made = anyKeptAnimal();
        const auto before = made.plan().of(Care::feed).window.value();
        FactBody offer;
        offer.outcome = Outcome::refused;
        made.record.add(made.day.today, FactKind::offered, offer);
        RC_ASSERT(before.opens <= made.plan().of(Care::feed).window->opens);
    });
    ok &= rc::check("after water, none is due until the shortest gap has passed", [] {
        auto made = anyCase();
        made.record.add(made.day.today, FactKind::watered);
        RC_ASSERT(made.plan().of(Care::water).state != State::due);
    });
    return ok;
}

bool preyFits() {
    bool ok = true;
    ok &= rc::check("prey is no longer than its part of the animal", [] {
        const auto made = anyCase();
        const auto stage = judgeStage(made.input(), rules(), made.day.today);
        const auto closures = closuresOf(made.input(), stage, rules());
        const auto prey = suggestPrey(made.input(), stage, closures, rules(), made.day.today);
        RC_ASSERT(prey.count >= 1);
        RC_ASSERT(prey.length >= Millimetres{1});
        RC_ASSERT(isSpoken(prey.reason, made.day.today));
        if (!stage.span || prey.serving == Serving::pieces) return;
        RC_ASSERT(prey.length <= *stage.span * 0.2);
    });
    ok &= rc::check("from the second refusal on prey is never longer than what was refused", [] {
        auto made = anyKeptAnimal();
        FactBody offer;
        offer.outcome = Outcome::ate;
        made.record.add(made.day.today, FactKind::offered, offer);
        offer.outcome = Outcome::refused;
        for (int refusal = 1; refusal <= 4; ++refusal) {
            const auto stage = judgeStage(made.input(), rules(), made.day.today);
            const auto closures = closuresOf(made.input(), stage, rules());
            const auto prey = suggestPrey(made.input(), stage, closures, rules(), made.day.today);
            if (refusal > 2 && offer.preyLength) RC_ASSERT(prey.length <= *offer.preyLength);
            offer.preyLength = prey.length;
            made.record.add(made.day.today, FactKind::offered, offer);
        }
    });
    return ok;
}

bool listsAreInOrder() {
    return rc::check("the list of a day keeps to the walk and to one line for each care", [] {
        const auto count = *rc::gen::inRange<std::size_t>(0, 12);
        std::vector<Case> cases;
        std::vector<PlanInput> inputs;
        for (std::size_t i = 0; i < count; ++i) {
            auto& made = cases.emplace_back(anyCase());
            made.record.subject.quarantined = *rc::gen::arbitrary<bool>();
            made.record.subject.number = std::to_string(*rc::gen::inRange(1, 300));
            made.record.place = Place::parse(
                *rc::gen::element<std::string>("A / 2", "A / 10", "B / 1", "", "Rack / A / 2"));
        }
        for (const auto& made : cases) inputs.push_back(made.input());
        const auto order = walkOrder(inputs);
        auto sorted = order;
        std::sort(sorted.begin(), sorted.end());
        for (std::size_t i = 0; i < count; ++i) RC_ASSERT(sorted[i] == i);
        for (std::size_t i = 1; i < count; ++i) {
            const auto& a = inputs[order[i - 1]];
            const auto& b = inputs[order[i]];
            RC_ASSERT(!a.subject.quarantined || b.subject.quarantined);
            if (a.subject.quarantined == b.subject.quarantined) {
                RC_ASSERT(compareWalk(a.place, b.place) <= 0);
            }
        }
        const PlanDay day{CivilDay{20'000}, Zone::utc()};
        const auto lines = dueList(inputs, rules(), day);
        const auto at = [&](std::size_t input) {
            return std::find(order.begin(), order.end(), input) - order.begin();
        };
        for (std::size_t i = 0; i < lines.size(); ++i) {
            const auto& line = lines[i];
            RC_ASSERT(line.answer ==
                      planFor(inputs[line.input], rules(), day).of(line.answer.care));
            RC_ASSERT(line.answer.state == State::due || line.answer.state == State::hold);
            if (i == 0) continue;
            const auto& last = lines[i - 1];
            RC_ASSERT(std::make_pair(at(last.input), last.answer.care) <
                      std::make_pair(at(line.input), line.answer.care));
        }
    });
}

bool namesAreFound() {
    return rc::check("every name of every species finds it, however it is written", [] {
        const auto& all = profiles().all();
        const auto& profile = all[*rc::gen::inRange<std::size_t>(0, all.size())];
        std::vector<std::string> names = profile.otherNames;
        names.push_back(profile.name);
        names.insert(names.end(), profile.tradeNames.begin(), profile.tradeNames.end());
        auto typed = *rc::gen::elementOf(names);
        for (auto& c : typed) {
            const bool isSmall = c >= 'a' && c <= 'z';
            if (isSmall && *rc::gen::arbitrary<bool>()) c = static_cast<char>(c - 'a' + 'A');
        }
        RC_ASSERT(profiles().find("  " + typed + " ") == &profile);
        auto slip = profile.name;
        slip[*rc::gen::inRange<std::size_t>(0, slip.size())] = 'x';
        const auto close = profiles().suggest(slip, 3);
        RC_ASSERT(std::find(close.begin(), close.end(), profile.name) != close.end());
    });
}

}  // namespace

int main() {
    bool ok = answersHold();
    ok &= feedingIsSafe();
    ok &= mealsPutFeedingOff();
    ok &= preyFits();
    ok &= listsAreInOrder();
    ok &= namesAreFound();
    return ok ? 0 : 1;
}
