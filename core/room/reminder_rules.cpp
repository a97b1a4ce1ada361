#include "room/reminder_rules.h"

#include <array>

#include "model/table.h"

namespace burrow {
namespace {

constexpr int minutesADay = 24 * 60;
constexpr std::array allPriorities{Priority::low, Priority::usual, Priority::high,
                                   Priority::urgent};

std::vector<TableShape> shapes() {
    return {{"times", {{"minute", {{0, minutesADay - 1}}}}},
            {"limits", {{"count", {{1, 1000}}}}},
            {"round", {{"least"}}},
            {"apart", {{"care"}, {"because"}, {"least"}}}};
}

std::optional<Priority> priorityNamed(std::string_view text) {
    for (const auto priority : allPriorities) {
        if (name(priority) == text) return priority;
    }
    return std::nullopt;
}

std::optional<Because> becauseNamed(std::string_view text) {
    for (std::size_t i = 0; i < becauseCount; ++i) {
        if (name(static_cast<Because>(i)) == text) return static_cast<Because>(i);
    }
    return std::nullopt;
}

tl::unexpected<Error> damaged() { return fail(Trouble::badInput, {"remind.rules"}); }

Result<int> whole(const Tables& tables, std::string_view table, std::string_view id,
                  std::string_view column) {
    const auto* row = tables.find(table, id);
    if (row == nullptr) return damaged();
    return static_cast<int>(row->number(column));
}

Result<ApartRule> apartRule(const TableRow& row) {
    const auto care = parseCare(row.word("care"));
    const auto least = priorityNamed(row.word("least"));
    const auto because = becauseNamed(row.word("because"));
    const bool isForAny = row.word("because") == "any";
    if (!care || !least || (!because && !isForAny)) return damaged();
    return ApartRule{row.id, *care, because, *least};
}

int minuteOf(const Zone& zone, Instant at) { return zone.secondOfDay(at) / 60; }

bool isQuietMinute(const ReminderChoice& choice, int minute) {
    const int from = choice.quietFrom;
    const int until = choice.quietUntil;
    if (from <= until) return minute >= from && minute < until;
    return minute >= from || minute < until;
}

}  // namespace

bool ApartRule::fits(const Verdict& verdict) const {
    return verdict.care == care && verdict.state == State::due && verdict.priority >= least &&
           (!because || verdict.because == *because);
}

Result<ReminderRules> ReminderRules::fromJson(std::string_view file) {
    const auto wanted = shapes();
    BURROW_TRY(const auto tables, Tables::fromJson(file, wanted));
    ReminderRules rules;
    BURROW_TRY(rules.usual.roundMinute, whole(tables, "times", "round", "minute"));
    BURROW_TRY(rules.usual.quietFrom, whole(tables, "times", "quiet_from", "minute"));
    BURROW_TRY(rules.usual.quietUntil, whole(tables, "times", "quiet_until", "minute"));
    BURROW_TRY(rules.mostADay, whole(tables, "limits", "most_a_day", "count"));
    BURROW_TRY(rules.rememberedDays, whole(tables, "limits", "remembered_days", "count"));
    const auto* round = tables.find("round", "round");
    const auto from = round != nullptr ? priorityNamed(round->word("least")) : std::nullopt;
    if (!from) return damaged();
    rules.roundFrom = *from;
    for (const auto& row : tables.rows("apart")) {
        BURROW_TRY(auto rule, apartRule(row));
        rules.apart.push_back(std::move(rule));
    }
    return rules;
}

bool isQuiet(const ReminderChoice& choice, const Zone& zone, Instant at) {
    return isQuietMinute(choice, minuteOf(zone, at));
}

std::optional<Instant> afterQuiet(const ReminderChoice& choice, const Zone& zone, Instant at) {
    if (!isQuiet(choice, zone, at)) return at;
    const auto today = zone.dayOf(at);
    // Where the clocks change, the end of the quiet hours may not be on the clock, or be there twice.
    for (int days = 0; days <= 2; ++days) {
        const auto end = zone.at(today + days, choice.quietUntil * 60);
        if (end > at && !isQuiet(choice, zone, end)) return end;
    }
    return std::nullopt;
}

std::optional<Instant> roundOn(CivilDay day, const ReminderChoice& choice, const Zone& zone) {
    int minute = choice.roundMinute;
    if (isQuietMinute(choice, minute)) {
        const bool isOvernight = choice.quietFrom > choice.quietUntil;
        const bool isEvening = isOvernight && minute >= choice.quietFrom;
        minute = isEvening ? choice.quietFrom - 1 : choice.quietUntil;
    }
    const auto at = afterQuiet(choice, zone, zone.at(day, minute * 60));
    if (!at || zone.dayOf(*at) != day) return std::nullopt;
    return at;
}

}  // namespace burrow
