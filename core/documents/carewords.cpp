#include "documents/carewords.h"

#include <algorithm>

namespace burrow::documents {
namespace {

std::int64_t whole(int number) { return number; }

/// Sentences of a sheet name days only through printedDay, so the day of reading does not matter.
std::string say(const Words& words, const Message& message) { return words.say(message, {}); }

std::string warmth(const Profile& profile, const Words& words) {
    const bool burrows = profile.habit.value == Habit::fossorial;
    const auto& range = profile.warmth.value;
    return say(words, {burrows ? "careSheet.warmth.burrower" : "careSheet.warmth",
                       {{"least", range.least.value}, {"most", range.most.value}}});
}

std::string_view dampId(Damp damp) {
    switch (damp) {
        case Damp::dry: return "careSheet.damp.dry";
        case Damp::moderate: return "careSheet.damp.moderate";
        case Damp::moist: return "careSheet.damp.moist";
        case Damp::swamp: break;
    }
    return "careSheet.damp.swamp";
}

/// Nothing for a species that is not known: a guess would read as a rule.
std::string damp(const CareSheet& sheet, const Words& words) {
    if (!sheet.profile) return {};
    auto line = words.say(dampId(sheet.profile->damp.value));
    if (sheet.dampenEveryDays) {
        line += ' ' + say(words, {"careSheet.dampen", {{"days", whole(*sheet.dampenEveryDays)}}});
    }
    return line;
}

std::string feeding(const FeedingRule& rule, const Words& words) {
    const Message gap =
        rule.everyDaysLeast == rule.everyDaysMost
            ? Message{"careSheet.every", {{"days", whole(rule.everyDaysMost)}}}
            : Message{"careSheet.everyRange",
                      {{"least", whole(rule.everyDaysLeast)}, {"most", whole(rule.everyDaysMost)}}};
    Message what{"careSheet.feeding", {{"gap", say(words, gap)}}};
    if (!rule.prey.empty()) {
        what.id = rule.preyLength ? "careSheet.feeding.sized" : "careSheet.feeding.prey";
        what.arguments.push_back({"count", whole(rule.count)});
        what.arguments.push_back({"prey", rule.prey});
        if (rule.preyLength) what.arguments.push_back({"length", rule.preyLength->value});
    }
    return say(words, what) + ' ' +
           say(words, {"careSheet.leftovers", {{"hours", whole(rule.leftoversHours)}}});
}

std::string subject(const CareSheet& sheet, const Words& words) {
    const auto count = whole(sheet.headcount);
    if (sheet.form == Form::group) return say(words, {"careSheet.group", {{"count", count}}});
    if (sheet.form == Form::lot) return say(words, {"careSheet.lot", {{"count", count}}});
    switch (sheet.sex) {
        case Sex::female: return words.say("careSheet.female");
        case Sex::male: return words.say("careSheet.male");
        case Sex::unknown: break;
    }
    return words.say("careSheet.unsexed");
}

/// The latest day of what was eaten whole or in part.
std::optional<CivilDay> lastMeal(const std::vector<Meal>& meals) {
    std::optional<CivilDay> last;
    for (const auto& meal : meals) {
        const bool eaten = meal.outcome == Outcome::ate || meal.outcome == Outcome::part;
        if (eaten && (!last || meal.day > *last)) last = meal.day;
    }
    return last;
}

std::optional<CivilDay> lastMoult(const std::vector<MoultMark>& moults) {
    std::optional<CivilDay> last;
    for (const auto& moult : moults) {
        if (!last || moult.day > *last) last = moult.day;
    }
    return last;
}

}  // namespace

std::string printedDay(CivilDay day, const Words& words) {
    // Seen from far away every day is named with its year.
    constexpr int farAway = 1000;
    return words.day(day, day + farAway);
}

std::vector<Rule> careRules(const CareSheet& sheet, const Words& words) {
    const auto* profile = sheet.profile ? &*sheet.profile : nullptr;
    std::vector<Rule> rules{
        {words.say("careSheet.rule.housing"),
         profile != nullptr ? profile->housing : std::string()},
        {words.say("careSheet.rule.warmth"),
         profile != nullptr ? warmth(*profile, words) : std::string()},
        {words.say("careSheet.rule.damp"), damp(sheet, words)},
        {words.say("careSheet.rule.feeding"), feeding(sheet.feeding, words)},
        {words.say("careSheet.rule.afterMoult"),
         say(words, {"careSheet.afterMoult", {{"days", whole(sheet.hardeningDays)}}})},
        {words.say("careSheet.rule.refuses"), words.say("careSheet.refuses")},
        {words.say("careSheet.rule.handling"),
         profile != nullptr ? profile->handling : words.say("careSheet.handling.unknown")}};
    std::erase_if(rules, [](const Rule& rule) { return rule.line.empty(); });
    return rules;
}

std::string subjectLine(const CareSheet& sheet, const Words& words) {
    Message message{"careSheet.subject", {{"subject", subject(sheet, words)}}};
    if (sheet.span) {
        const bool isLong = sheet.profile && isMeasuredByBody(sheet.profile->order);
        message.id = isLong ? "careSheet.subject.length" : "careSheet.subject.span";
        message.arguments.push_back({"size", sheet.span->value});
    }
    return say(words, message);
}

std::string recentLine(const CareSheet& sheet, const Words& words) {
    std::string line;
    if (const auto day = lastMoult(sheet.moults)) {
        line = say(words, {"careSheet.lastMoult", {{"day", printedDay(*day, words)}}});
    }
    if (const auto day = lastMeal(sheet.meals)) {
        if (!line.empty()) line += ' ';
        line += say(words, {"careSheet.lastMeal", {{"day", printedDay(*day, words)}}});
    }
    return line;
}

std::string tradeLine(const CareSheet& sheet, const Words& words) {
    if (!sheet.profile || sheet.profile->listing.value == Listing::notChecked) {
        return words.say("careSheet.trade.unknown");
    }
    if (sheet.profile->listing.value != Listing::citesAppendixII) return {};
    return say(words,
               {"careSheet.trade", {{"day", printedDay(sheet.profile->listingAsOf, words)}}});
}

}  // namespace burrow::documents
