// What a device would remind of on a day, and when.
#include <fmt/format.h>

#include "files/reminder_file.h"
#include "room/reminders.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

struct RemindersTyped {
    Path book;
    std::string on;
    std::string round;
    std::string quiet;
    std::string told;
};

/// "18:30" in minutes of the day.
std::optional<int> minuteOf(std::string_view text) {
    const auto moment = parseIsoMoment("2000-01-01T" + std::string(text));
    const bool isTime = text.size() == 5 && moment && moment->secondOfDay;
    return isTime ? std::optional(*moment->secondOfDay / 60) : std::nullopt;
}

std::string clockText(const Zone& zone, Instant at) {
    const int minute = zone.secondOfDay(at) / 60;
    return fmt::format("{:02}:{:02}", minute / 60, minute % 60);
}

Result<ReminderChoice> choiceFrom(const RemindersTyped& typed, ReminderChoice choice) {
    if (!typed.round.empty()) {
        const auto minute = minuteOf(typed.round);
        if (!minute) return fail(Trouble::badInput, {"remind.oddTime", {{"text", typed.round}}});
        choice.roundMinute = *minute;
    }
    if (typed.quiet.empty()) return choice;
    const std::string_view quiet = typed.quiet;
    const auto dash = quiet.find('-');
    const auto from = minuteOf(quiet.substr(0, dash));
    const auto until =
        dash == std::string_view::npos ? std::nullopt : minuteOf(quiet.substr(dash + 1));
    if (!from || !until)
        return fail(Trouble::badInput, {"remind.oddQuiet", {{"text", typed.quiet}}});
    choice.quietFrom = *from;
    choice.quietUntil = *until;
    return choice;
}

json toJson(const Reminder& reminder, const Room& room, const Console& console) {
    json subjects = json::array();
    for (const auto id : reminder.subjects) {
        const auto stub = room.stub(id);
        subjects.push_back({{"id", id.text()}, {"code", stub ? stub->walk().number : ""}});
    }
    return {{"when", isoInstant(reminder.when)},
            {"local", isoDate(room.day().zone.dayOf(reminder.when)) + "T" +
                          clockText(room.day().zone, reminder.when)},
            {"id", reminder.id},
            {"urgent", reminder.isUrgent},
            {"title", console.say(reminder.title)},
            {"text", sentence(reminder, console.words(), console.today())},
            {"subjects", std::move(subjects)},
            {"keys", reminder.keys}};
}

int reminders(const Setting& setting, const RemindersTyped& typed) {
    auto& console = setting.console;
    const auto rules = loadReminderRules();
    if (!rules) return console.trouble(rules.error());
    const auto choice = choiceFrom(typed, rules->usual);
    if (!choice) return console.trouble(choice.error());
    auto now = setting.clock.now();
    if (!typed.on.empty()) {
        const auto moment = readMoment(typed.on, setting.zone);
        if (!moment) return console.trouble(moment.error());
        now = *moment;
    }
    auto book = openToRead(typed.book, setting);
    if (!book) return console.trouble(book.error());
    const auto room = roomOn(*book, setting, setting.zone.dayOf(now));
    if (!room) return console.trouble(room.error());
    console.setToday(room->day().today);
    const auto told = toldFrom(typed.told);
    json list = json::array();
    for (const auto& reminder : remindersFor(*room, *rules, *choice, told, now)) {
        list.push_back(toJson(reminder, *room, console));
        console.line(console.say({"said.reminder",
                                  {{"day", setting.zone.dayOf(reminder.when)},
                                   {"time", clockText(setting.zone, reminder.when)},
                                   {"title", console.say(reminder.title)}}}));
        console.line("  " + sentence(reminder, console.words(), console.today()));
    }
    if (list.empty()) console.line(console.say(Message("said.noReminder")));
    console.value(list);
    return done;
}

}  // namespace

void addReminderCommand(CLI::App& app, Command& chosen) {
    auto typed = std::make_shared<RemindersTyped>();
    auto& t = *typed;
    auto* command = addCommand(app, t.book, chosen, "reminders",
                               "What a device would remind of from a moment on, that day.",
                               "burrow reminders kiln-row.book --on 2026-05-08T12:00 --json",
                               [typed](const Setting& s) { return reminders(s, *typed); });
    command->add_option("--on", t.on, "the moment, YYYY-MM-DDThh:mm (now)");
    command->add_option("--round", t.round, "when the round is said, hh:mm (18:30)");
    command->add_option("--quiet", t.quiet, "hours without any, hh:mm-hh:mm (21:30-08:00)");
    command->add_option("--told", t.told,
                        "what was told already: [{\"at\": ms since 1970, \"keys\": [...]}]");
}

}  // namespace burrow::terminal
