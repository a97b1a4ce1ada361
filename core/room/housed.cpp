// One animal and its home.
#include <algorithm>
#include <cmath>

#include "husbandry/premoult.h"
#include "room/homes_plan.h"

namespace burrow {
namespace {

using homes::Age;
using homes::Dweller;

// What a forecast does not say: how sure it is of the size, and how the intervals after the next one go.
// The next interval's own spread comes from its quantiles.
constexpr double laterSpread = 0.3;
constexpr double growthSpread = 0.05;
constexpr double spanError = 0.03;
/// Between the median of a log-normal law and the quantile of nine in ten lie so many deviations.
constexpr double deviationsToNineInTen = 1.2816;

Age ageOf(Stage stage) {
    switch (stage) {
        case Stage::sling: return Age::sling;
        case Stage::juvenile: return Age::juvenile;
        case Stage::adult:
        case Stage::matureMale: break;
    }
    return Age::adult;
}

Habit habitOf(const Resident& resident) {
    return resident.profile != nullptr ? resident.profile->habit.value : Habit::terrestrial;
}

Dweller dwellerOf(const Resident& resident, Stage stage, Millimetres span, const Rules& rules) {
    return {habitOf(resident),
            ageOf(stage),
            span,
            rules.factor("home.floor_spans"),
            rules.factor("home.width_spans"),
            rules.factor("home.height_spans"),
            rules.factor("home.ground_spans")};
}

/// The same animal with another span: its age goes with it.
Dweller grownTo(const Resident& resident, Millimetres span, const Rules& rules, CivilDay today) {
    auto digest = resident.kept.digest;
    digest.span = span;
    digest.carapace.reset();
    const auto known = resident.input();
    const PlanInput input{known.subject, digest, known.place, known.profile, known.home};
    return dwellerOf(resident, judgeStage(input, rules, today).stage, span, rules);
}

bool hasSizes(const Enclosure& home) {
    return home.length.value > 0 && home.width.value > 0 && home.height.value > 0;
}

/// Days between now and the next moult as a log-normal law.
homes::MoultOutlook outlookOf(const MoultForecast& moult, CivilDay today) {
    homes::MoultOutlook outlook;
    outlook.nextDays = std::max(1, moult.median - today);
    const double latest = std::max(1, moult.latest - today);
    outlook.nextSpread =
        std::max(0.05, std::log(latest / outlook.nextDays) / deviationsToNineInTen);
    outlook.laterDays = moult.usualInterval;
    outlook.laterSpread = laterSpread;
    return outlook;
}

homes::GrowthOutlook growthOf(const Housed& housed) {
    homes::GrowthOutlook growth;
    growth.ratio = std::max(1.0, housed.grown->span / housed.dweller->span);
    growth.spread = growthSpread;
    growth.spanError = spanError;
    if (const auto* profile = housed.resident->profile; profile != nullptr) {
        growth.limit = std::max(housed.dweller->span, profile->adultSpan.value.most);
    }
    return growth;
}

void askForecasts(Housed& housed, const Room& room, const Rules& rules, const Forecast& forecasts) {
    const auto& resident = *housed.resident;
    const auto& stage = resident.plan.stage;
    const auto input = resident.input();
    const ForecastQuestion question{input, stage, rules, room.day().today,
                                    premoultWindow(stage, rules)};
    housed.moult = forecasts.nextMoult(question);
    const auto next = housed.moult ? forecasts.spanAfterMoult(question) : std::nullopt;
    if (next) housed.grown = grownTo(resident, next->afterNextMoult, rules, room.day().today);
}

void judgeHome(Housed& housed, const homes::HomeRules& rules) {
    const auto& home = *housed.home;
    housed.fit = homes::fitOf(*housed.dweller, home, rules);
    if (!hasSizes(home)) {
        const bool isAmiss = std::ranges::any_of(housed.fit.findings, [](const auto& finding) {
            return finding.verdict == homes::Verdict::amiss &&
                   (finding.point == homes::Point::floorLength ||
                    finding.point == homes::Point::floorWidth);
        });
        housed.state = isAmiss ? HomeState::tooSmall : HomeState::unknown;
        return;
    }
    const auto ground = homes::groundFor(*housed.dweller, home, rules);
    if (!ground) {
        housed.state = HomeState::tooSmall;
        return;
    }
    housed.fitsWhenGrown =
        !housed.grown || homes::groundFor(*housed.grown, home, rules).has_value();
    const bool isDeepKnown = home.substrate.value > 0;
    if (isDeepKnown && !housed.fit.isGood()) {
        housed.state = HomeState::ground;
        housed.ground = ground;
    } else {
        housed.state = housed.fitsWhenGrown ? HomeState::fits : HomeState::soon;
    }
}

}  // namespace

std::string_view name(HomeState state) {
    switch (state) {
        case HomeState::inSpareTub: return "in_spare_tub";
        case HomeState::tooSmall: return "too_small";
        case HomeState::ground: return "ground";
        case HomeState::soon: return "soon";
        case HomeState::fits: return "fits";
        case HomeState::unknown: return "unknown";
    }
    return {};
}

Housed housedIn(const Room& room, const ResidentPtr& resident, const std::optional<Enclosure>& home,
                const homes::HomeRules& rules, const Forecast& forecasts) {
    Housed housed;
    housed.resident = resident;
    housed.home = home;
    const auto& stage = resident->plan.stage;
    if (!stage.span) return housed;
    const auto own = room.rulesFor(*resident);
    housed.dweller = dwellerOf(*resident, stage.stage, *stage.span, own);
    askForecasts(housed, room, own, forecasts);
    if (home) {
        judgeHome(housed, rules);
        if (housed.grown) {
            housed.outgrown =
                homes::outgrown(*housed.dweller, *home, outlookOf(*housed.moult, room.day().today),
                                growthOf(housed));
        }
    } else if (resident->kept.place.position == spareTub) {
        housed.state = HomeState::inSpareTub;
    }
    const bool isMoultNear =
        housed.moult && housed.moult->lookFrom - own.days("home.ahead") <= room.day().today;
    housed.isDue = housed.state == HomeState::tooSmall || housed.state == HomeState::inSpareTub ||
                   (!housed.fitsWhenGrown && isMoultNear);
    return housed;
}

}  // namespace burrow
