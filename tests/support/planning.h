// Random subjects for the planner: any form, any species, any history, any input that may be missing.
#pragma once

#include <rapidcheck.h>

#include <algorithm>
#include <cstdlib>

#include "husbandry/explain.h"
#include "husbandry/plain_forecast.h"
#include "support/husbandry.h"

namespace burrow::test {

inline const Rules& sharedRules() {
    static const auto rules = shippedRules();
    return rules;
}
inline const Profiles& sharedProfiles() {
    static const auto profiles = shippedProfiles();
    return profiles;
}
inline const Words& sharedWords() {
    static const auto words = englishWords();
    return words;
}
inline const Forecast& plainForecast() {
    static const PlainForecast forecast;
    return forecast;
}

template <class T>
std::optional<T> perhaps(T value) {
    return *rc::gen::arbitrary<bool>() ? std::optional<T>(value) : std::nullopt;
}

/// Of every kind that can happen, those that change a plan most more often.
inline FactKind anyFactKind() {
    const auto kinds = factKinds();
    if (*rc::gen::inRange(0, 3) == 0) return FactKind::offered;
    return kinds[*rc::gen::inRange<std::size_t>(0, kinds.size())].kind;
}

inline FactBody anyFactBody(FactKind kind, CivilDay when) {
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
        case FactKind::photo:
            body.role = *rc::gen::element(PhotoRole::animal, PhotoRole::moult);
            break;
        case FactKind::lent: body.until = perhaps(when + *rc::gen::inRange(0, 90)); break;
        case FactKind::died:
        case FactKind::sold: body.count = 1; break;
        default: break;
    }
    return body;
}

/// A subject with up to thirty facts, and the day on which it is planned: that of the last fact or
/// up to a year later.
struct PlanCase {
    Record record;
    const Profile* profile = nullptr;
    std::optional<HomeSize> home;
    std::optional<CivilDay> quarantinedSince;
    std::optional<LoggedWarmth> warmth;
    PlanDay day{{}, Zone::utc()};

    [[nodiscard]] PlanInput input() const {
        auto input = record.input(profile);
        input.home = home;
        input.quarantinedSince = quarantinedSince;
        input.warmth = warmth;
        return input;
    }
    [[nodiscard]] Plan plan(const Rules& rules = sharedRules()) const {
        return planFor(input(), rules, day, plainForecast());
    }
};

inline Subject anySubject(CivilDay when) {
    Subject subject;
    subject.id = SubjectId{Uuid::named(std::to_string(*rc::gen::inRange(1, 9)))};
    subject.form =
        *rc::gen::element(Form::animal, Form::animal, Form::animal, Form::group, Form::lot);
    subject.headcount = subject.form == Form::animal ? 1 : *rc::gen::inRange(0, 30);
    subject.sex = *rc::gen::element(Sex::unknown, Sex::female, Sex::male);
    subject.mature = *rc::gen::inRange(0, 6) == 0;
    subject.hatched = perhaps(when - *rc::gen::inRange(0, 2000));
    subject.acquired = perhaps(when - *rc::gen::inRange(-5, 100));
    subject.quarantined = *rc::gen::inRange(0, 4) == 0;
    subject.standing =
        *rc::gen::element(Standing::here, Standing::here, Standing::here, Standing::here,
                          Standing::onLoan, Standing::sold, Standing::dead, Standing::given);
    return subject;
}

inline PlanCase anyPlanCase() {
    PlanCase made;
    auto when = CivilDay{*rc::gen::inRange(18'000, 22'000)};
    made.record.subject = anySubject(when);
    const auto species = *rc::gen::inRange<std::size_t>(0, sharedProfiles().all().size() + 3);
    if (species < sharedProfiles().all().size()) {
        made.profile = &sharedProfiles().all()[species];
        made.record.subject.species = made.profile->name;
    }
    made.record.place = Place::parse(
        *rc::gen::element<std::string>("Nursery / A / 1 / 2", "Room / A / 2 / 1", "B / 1", ""));
    const int count = *rc::gen::inRange(0, 30);
    for (int i = 0; i < count; ++i) {
        when = when + *rc::gen::inRange(0, 12);
        const auto kind = anyFactKind();
        made.record.add(when, kind, anyFactBody(kind, when));
    }
    made.day.today =
        when + *rc::gen::element(0, 1, 3, *rc::gen::inRange(0, 60), *rc::gen::inRange(0, 400));
    if (*rc::gen::arbitrary<bool>()) {
        made.home = HomeSize{{*rc::gen::inRange(0, 600) * 1.0},
                             {*rc::gen::inRange(0, 300) * 1.0},
                             {*rc::gen::inRange(0, 600) * 1.0},
                             {*rc::gen::inRange(0, 200) * 1.0}};
    }
    made.quarantinedSince = perhaps(made.day.today - *rc::gen::inRange(-2, 90));
    if (*rc::gen::inRange(0, 3) == 0) {
        made.warmth = LoggedWarmth{{*rc::gen::inRange(100, 420) / 10.0},
                                   made.day.today - *rc::gen::inRange(-1, 6)};
    }
    return made;
}

/// A case of one animal that is here.
inline PlanCase anyAnimalCase() {
    auto made = anyPlanCase();
    made.record.subject.form = Form::animal;
    made.record.subject.headcount = 1;
    made.record.subject.standing = Standing::here;
    return made;
}

inline bool isSpoken(const Message& message, CivilDay today) {
    const auto text = sharedWords().say(message, today);
    return !text.empty() && text.find('[') == std::string::npos;
}

}  // namespace burrow::test
