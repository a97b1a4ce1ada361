#include "room/sheets.h"

#include <algorithm>

#include "husbandry/prey.h"
#include "journal/fields.h"
#include "tags/code.h"

namespace burrow {
namespace {

documents::FeedingRule feedingFor(const Resident& resident, const Room& room, const Words& words) {
    const auto& stage = resident.plan.stage;
    const auto rules = room.rulesFor(resident);
    const auto interval = mealGap(stage, rules);
    // A buyer offers what suits the size, not what the last refusals would call for.
    auto digest = resident.kept.digest;
    digest.refusalsInARow = 0;
    const PlanInput input{resident.kept.subject, digest, resident.kept.place, resident.profile};
    const auto prey =
        suggestPrey(input, stage, closuresOf(input, stage, rules), rules, room.day().today);
    const auto word = words.say({"prey." + prey.kind, {{"count", prey.count}}}, room.day().today);
    return {interval.least, interval.most,
            prey.count,     words.knows("prey." + prey.kind) ? word : prey.kind,
            prey.length,    rules.hours("leftovers.within")};
}

}  // namespace

documents::TagLabel tagLabelFor(const Resident& resident) {
    const auto& subject = resident.subject();
    return {resident.kept.tagCode.value_or(std::string()),
            subject.number,
            resident.profile != nullptr ? resident.profile->name : subject.species,
            subject.form,
            subject.sex,
            resident.profile != nullptr ? cautions(*resident.profile) : std::vector<Caution>{}};
}

documents::CareSheet careSheetFor(const Resident& resident, const Room& room,
                                  std::span<const Fact> facts, const Words& words) {
    const auto& subject = resident.subject();
    documents::CareSheet sheet;
    sheet.room = room.info().name;
    sheet.roomCode = room.info().code;
    sheet.contact = room.info().contact;
    sheet.date = room.day().today;
    sheet.number = subject.number;
    sheet.code = resident.kept.tagCode;
    sheet.species = subject.species;
    if (resident.profile != nullptr) sheet.profile = *resident.profile;
    sheet.form = subject.form;
    sheet.sex = subject.sex;
    sheet.headcount = subject.headcount;
    sheet.span = resident.plan.stage.span;
    sheet.hatched = subject.hatched;
    sheet.acquired = subject.acquired;
    sheet.sold = subject.standing == Standing::sold;
    for (const auto& fact : facts) {
        if (fact.kind == FactKind::moulted) sheet.moults.push_back(markOf(fact, facts));
        if (fact.kind == FactKind::offered) {
            sheet.meals.push_back({fact.day, fact.body.prey.value_or(std::string()),
                                   fact.body.preyLength, fact.body.count.value_or(1),
                                   fact.body.outcome.value_or(Outcome::ate)});
        }
    }
    const auto byDay = [](const auto& a, const auto& b) { return a.day < b.day; };
    std::stable_sort(sheet.moults.begin(), sheet.moults.end(), byDay);
    std::stable_sort(sheet.meals.begin(), sheet.meals.end(), byDay);
    sheet.feeding = feedingFor(resident, room, words);
    const auto rules = room.rulesFor(resident);
    sheet.dampenEveryDays = usual(dampGap(resident.plan.stage, resident.profile, rules));
    sheet.hardeningDays = rules.dayRange(ruleFor("hardening", resident.plan.stage.growing())).most;
    return sheet;
}

SetDraft hangTag(const std::string& code, SubjectId subject, Millimetres side) {
    const Tag tag{code, side, subject, std::nullopt};
    return {ThingType::tag, tagThing(code), toFields(tag)};
}

Done giveTags(Book& book, std::span<const ResidentPtr> residents) {
    std::vector<Draft> drafts;
    for (const auto& resident : residents) {
        if (resident->kept.tagCode) continue;
        drafts.emplace_back(
            hangTag(tags::generateCode(book.surroundings().random), resident->subject().id));
    }
    if (drafts.empty()) return {};
    BURROW_TRY(const auto changes, book.record(drafts));
    static_cast<void>(changes);
    return {};
}

}  // namespace burrow
