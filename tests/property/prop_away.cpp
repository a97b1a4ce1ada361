// The keeper is away: what a sitter may be asked for, and the sheet.
#include "documents/plain_measure.h"
#include "room/away_sheet.h"
#include "support/looking_ahead.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const AwayRules& awayRules() {
    static const auto shared =
        AwayRules::fromJson(slurp(std::string(BURROW_ASSETS_DIR) + "/rules/tables/away.json"))
            .value();
    return shared;
}

AwayPlan planned(AheadBook& at, int in, int length) {
    const auto from = at.today() + in;
    return planAway(at.room(), {from, from + length - 1}, awayRules(), plainForecast()).value();
}

bool hasTask(std::span<const AwayVisit> visits, SubjectId id, Care care) {
    return std::any_of(visits.begin(), visits.end(), [&](const AwayVisit& visit) {
        return std::any_of(visit.tasks.begin(), visit.tasks.end(), [&](const AwayTask& task) {
            return task.resident->subject().id == id && task.care == care;
        });
    });
}

bool isShutBecause(const AwayPlan& plan, SubjectId id, ShutBecause because) {
    const auto* shut = plan.shutFor(id);
    return shut != nullptr &&
           std::any_of(shut->reasons.begin(), shut->reasons.end(),
                       [&](const ShutReason& reason) { return reason.because == because; });
}

/// Nothing open is done with what is shut, everything falls into its days, and every word is there.
void aSitterIsNeverSentWhereNobodyShouldGo() {
    AheadBook at;
    at.fillAtRandom();
    const int in = *rc::gen::inRange(0, 12);
    const int length = *rc::gen::inRange(1, 30);
    const auto plan = planned(at, in, length);
    std::optional<CivilDay> last;
    for (const auto& visit : plan.before) {
        RC_ASSERT(visit.day >= at.today() && visit.day < plan.days.from);
        for (const auto& task : visit.tasks) {
            // What is fed before can be looked after before the keeper goes.
            if (task.care == Care::feed) RC_ASSERT(visit.day <= plan.lastMeal);
        }
    }
    for (const auto& visit : plan.visits) {
        RC_ASSERT(visit.day >= plan.days.from && visit.day <= plan.days.to);
        RC_ASSERT(!last || *last < visit.day);
        last = visit.day;
        RC_ASSERT(!visit.tasks.empty());
        for (const auto& task : visit.tasks) {
            RC_ASSERT(plan.shutFor(task.resident->subject().id) == nullptr);
            RC_ASSERT((task.care == Care::feed) == task.prey.has_value());
            if (task.care != Care::feed || visit.day == plan.days.to) continue;
            // Somebody comes on the day after, to look for what was left.
            const auto next =
                std::find_if(plan.visits.begin(), plan.visits.end(),
                             [&](const AwayVisit& other) { return other.day == visit.day + 1; });
            RC_ASSERT(next != plan.visits.end());
            RC_ASSERT(hasTask(std::span(&*next, 1), task.resident->subject().id, Care::leftovers));
        }
    }
    for (const auto& shut : plan.shut) {
        RC_ASSERT(!shut.reasons.empty());
        for (const auto& reason : shut.reasons) RC_ASSERT(isSpoken(reason.says, at.today()));
    }
    for (const auto& wait : plan.waits) {
        RC_ASSERT(wait.lateBy > 0);
        // Too long only where the sitter must not go.
        if (wait.isLong) RC_ASSERT(plan.shutFor(wait.resident->subject().id) != nullptr);
        RC_ASSERT(waitText(wait, sharedWords(), at.today()).find('[') == std::string::npos);
    }
    RC_ASSERT(isSpoken(plan.summary, at.today()));
}

void checkDays(Checks& checks) {
    const auto today = day("2026-05-08");
    checks.that(!checkAway({today - 1, today + 3}, today), "not from yesterday");
    checks.that(!checkAway({today + 3, today + 2}, today), "not back before leaving");
    checks.that(!checkAway({today, today + longestAway}, today), "not for too long");
    checks.that(checkAway({today, today}, today).has_value(), "a day is possible");
    for (const auto& message : {checkAway({today - 1, today}, today).error().message,
                                checkAway({today + 1, today}, today).error().message,
                                checkAway({today, today + 99}, today).error().message}) {
        checks.that(isSpoken(message, today), "said in words");
    }
    checks.that(!AwayRules::fromJson("{}"), "another file is refused");
    checks.that(!AwayRules::fromJson(R"({"waiting": [{"id": "sling", "meal_days": 3,
        "water_days": 1, "damp_days": 3, "source": "x"}]})"),
                "a stage is missing");
}

/// A calm adult with food and water needs nobody for five days; for three weeks it needs water.
void checkCalm(Checks& checks) {
    AheadBook at;
    const auto calm = at.tub("214", "Brachypelma hamorii", "A / 1", 140);
    at.ate(calm, -3, 1, 20);
    at.on(calm, FactKind::watered, 0);
    at.on(calm, FactKind::dampened, 0);
    auto plan = planned(at, 1, 5);
    checks.that(plan.shut.empty(), "it may be opened");
    checks.that(plan.visits.empty(), "nobody comes for five days");
    plan = planned(at, 1, 21);
    checks.that(hasTask(plan.visits, calm, Care::water), "somebody waters it in three weeks");
    checks.that(!hasTask(plan.visits, calm, Care::feed), "a meal can wait so long");
    checks.that(plan.visits.size() <= 2, "at most two visits");
}

void checkShut(Checks& checks) {
    AheadBook at;
    const auto fast = at.tub("301", "Pterinochilus murinus", "B / 1", 120);
    const auto strange = at.tub("302", "Strange animal", "B / 2", 80);
    const auto scorpion = at.tub("303", "Androctonus australis", "B / 3", 90);
    const auto soft = at.tub("304", "Brachypelma hamorii", "B / 4", 140);
    const auto guarding = at.tub("305", "Brachypelma hamorii", "B / 5", 140);
    at.on(soft, FactKind::moulted, -1);
    at.on(guarding, FactKind::sacLaid, -6);
    const auto plan = planned(at, 1, 14);
    checks.that(isShutBecause(plan, fast, ShutBecause::fast), "a fast one");
    checks.that(isShutBecause(plan, strange, ShutBecause::unknown), "an unknown one");
    checks.that(isShutBecause(plan, scorpion, ShutBecause::strongVenom), "strong venom");
    checks.that(isShutBecause(plan, soft, ShutBecause::hardening), "soft fangs");
    checks.that(isShutBecause(plan, guarding, ShutBecause::eggSac), "an egg sac");
    checks.that(plan.visits.empty(), "there is nothing for a sitter");
    checks.that(std::any_of(plan.waits.begin(), plan.waits.end(),
                            [](const AwayWait& wait) { return wait.isLong; }),
                "what gets too dry is said");
}

/// Every text within its page, every number on it, no price and no buyer.
void checkSheet(Checks& checks) {
    AheadBook at;
    at.set({{setting::sitterCall, "The neighbour, 12"}});
    for (int i = 0; i < 150; ++i) {
        const auto id = at.tub(std::to_string(100 + i),
                               i % 3 == 0 ? "Pterinochilus murinus" : "Brachypelma hamorii",
                               "Rack / " + std::to_string(i / 20) + " / " + std::to_string(i % 20),
                               i % 2 == 0 ? 25 : 140);
        at.ate(id, -4, 1, 6);
    }
    const auto room = at.room();
    const auto plan = planned(at, 2, 21);
    const auto sheet = sitterSheetFor(plan, room, sharedWords());
    checks.that(sheet.map.size() == 8, "eight shelves");
    checks.that(!sheet.visits.empty() && sheet.shut.size() >= 50, "there is much to say");
    const PlainMeasure measure;
    for (const auto paper : {documents::Paper::a4, documents::Paper::a5}) {
        const auto pages = documents::sitterSheets(sheet, paper, sharedWords(), measure).value();
        std::string all;
        bool fits = true;
        for (const auto& page : pages) {
            for (const auto& command : page.commands) {
                const auto* text = std::get_if<documents::Text>(&command);
                if (text == nullptr) continue;
                all += text->text + "\n";
                const auto width = measure.width(text->text, text->style);
                const auto left = text->align == documents::Align::left
                                      ? text->baseline.x
                                      : text->baseline.x - 0.5 * width;
                fits = fits && left >= Millimetres{0} && left + width <= page.width &&
                       text->baseline.y <= page.height;
            }
        }
        checks.that(fits, "all text stands on its page");
        checks.that(pages.size() >= 3, "it takes several pages");
        for (const char* wanted : {"The neighbour, 12", "249", "medical care", "estimates"}) {
            checks.that(all.find(wanted) != std::string::npos, wanted);
        }
        checks.that(all.find('[') == std::string::npos, "every sentence is there");
    }
    AheadBook nobody;
    const auto empty = planned(nobody, 1, 5);
    checks.that(!documents::sitterSheets(sitterSheetFor(empty, nobody.room(), sharedWords()),
                                         documents::Paper::a4, sharedWords(), measure),
                "there is no sheet of an empty room");
}

}  // namespace

int main() {
    Checks checks;
    checkDays(checks);
    checkCalm(checks);
    checkShut(checks);
    checkSheet(checks);
    bool ok = checks.ok(30);
    setenv("RC_PARAMS", "max_success=60", 0);
    ok &= rc::check("a sitter is never sent where nobody should go",
                    aSitterIsNeverSentWhereNobodyShouldGo);
    return ok ? 0 : 1;
}
