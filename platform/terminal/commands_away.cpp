// The keeper is away: the plan, and the sheet for a sitter as PDF.
#include <fmt/format.h>

#include "husbandry/plain_forecast.h"
#include "room/away_sheet.h"
#include "room/tables.h"
#include "terminal/printing.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

struct AwayTyped {
    Path book;
    Path out;
    std::string from;
    std::string to;
    std::string on;
    std::string paper = "a4";
    std::optional<std::string> call;
};

struct Planned {
    Room room;
    AwayPlan plan;
};

Result<Planned> planned(const Setting& setting, const AwayTyped& typed) {
    BURROW_TRY(const auto from, readDay(typed.from));
    BURROW_TRY(const auto to, readDay(typed.to));
    BURROW_TRY(const auto on, maybeDay(typed.on));
    BURROW_TRY(auto book,
               typed.call ? openToWrite(typed.book, setting) : openToRead(typed.book, setting));
    if (typed.call) {
        const json line = typed.call->empty() ? json() : json(*typed.call);
        BURROW_TRY(const auto changes,
                   book.record(SetDraft{
                       ThingType::book, book.id().uuid, {{burrow::setting::sitterCall, line}}}));
        static_cast<void>(changes);
    }
    BURROW_TRY(auto room, roomOn(book, setting, on));
    const PlainForecast forecast;
    BURROW_TRY(auto plan, planAway(room, {from, to}, room.tables()->away, forecast));
    return Planned{std::move(room), std::move(plan)};
}

json taskJson(const AwayTask& task, const Console& console) {
    json object{{"code", task.resident->subject().number},
                {"species", task.resident->subject().species},
                {"place", task.resident->kept.place.text()},
                {"care", std::string(name(task.care))}};
    if (task.prey) object["amount"] = console.say(task.prey->amount());
    return object;
}

json visitsJson(std::span<const AwayVisit> visits, const Console& console) {
    json list = json::array();
    for (const auto& visit : visits) {
        json tasks = json::array();
        for (const auto& task : visit.tasks) tasks.push_back(taskJson(task, console));
        list.push_back({{"day", isoDate(visit.day)}, {"tasks", std::move(tasks)}});
    }
    return list;
}

json shutJson(const Shut& shut, const Console& console) {
    json reasons = json::array();
    for (const auto& reason : shut.reasons) {
        reasons.push_back(
            {{"because", std::string(name(reason.because))}, {"text", console.say(reason.says)}});
    }
    return {{"code", shut.resident->subject().number},
            {"species", shut.resident->subject().species},
            {"place", shut.resident->kept.place.text()},
            {"estimate", shut.isEstimate()},
            {"reasons", std::move(reasons)}};
}

void print(const char* heading, std::span<const AwayVisit> visits, const Console& console) {
    if (visits.empty()) return;
    console.line(console.say(Message(heading)));
    for (const auto& visit : visits) {
        console.line("  " + console.words().longDay(visit.day));
        for (const auto& shelf : shelvesOf(visit.tasks, console.words(), console.today())) {
            console.line("    " + (shelf.place.isEmpty() ? console.say(Message("away.noPlace"))
                                                         : shelf.place.text()));
            for (const auto& line : shelf.lines) console.line("      " + line);
        }
    }
}

void print(const AwayPlan& plan, const Console& console) {
    print("away.before", plan.before, console);
    print("away.visits", plan.visits, console);
    if (!plan.shut.empty()) console.line(console.say(Message("away.stayShut")));
    for (const auto& shut : plan.shut) {
        console.line(fmt::format("  {:<6} {}", shut.resident->subject().number,
                                 shutText(shut, console.words(), console.today())));
    }
    if (!plan.waits.empty()) console.line(console.say(Message("away.waits")));
    for (const auto& wait : plan.waits) {
        console.line(fmt::format("  {:<6} {}", wait.resident->subject().number,
                                 waitText(wait, console.words(), console.today())));
    }
    console.line(console.say(plan.summary));
}

json planJson(const AwayPlan& plan, const Console& console) {
    json shut = json::array();
    for (const auto& each : plan.shut) shut.push_back(shutJson(each, console));
    json waits = json::array();
    for (const auto& wait : plan.waits) {
        waits.push_back({{"code", wait.resident->subject().number},
                         {"care", std::string(name(wait.care))},
                         {"days_late", wait.lateBy},
                         {"too_long", wait.isLong},
                         {"text", waitText(wait, console.words(), console.today())}});
    }
    return {{"from", isoDate(plan.days.from)},
            {"to", isoDate(plan.days.to)},
            {"last_meal", isoDate(plan.lastMeal)},
            {"before", visitsJson(plan.before, console)},
            {"visits", visitsJson(plan.visits, console)},
            {"shut", std::move(shut)},
            {"waits", std::move(waits)},
            {"summary", toJson(plan.summary)},
            {"estimate", console.say(Message("sitter.estimate"))}};
}

/// The number of its pages.
Result<std::int64_t> writeSheet(const Setting& setting, const AwayTyped& typed,
                                const Planned& made) {
    Printing printing;
    BURROW_DO(printing.start());
    const auto& words = setting.reference.words;
    const auto paper = typed.paper == "a5" ? documents::Paper::a5 : documents::Paper::a4;
    BURROW_TRY(const auto pages,
               documents::sitterSheets(sitterSheetFor(made.plan, made.room, words), paper, words,
                                       printing.measure()));
    BURROW_DO(printing.write(typed.out, pages, words.say("away.file")));
    return static_cast<std::int64_t>(pages.size());
}

int away(const Setting& setting, const AwayTyped& typed) {
    auto& console = setting.console;
    const auto made = planned(setting, typed);
    if (!made) return console.trouble(made.error());
    auto value = planJson(made->plan, console);
    print(made->plan, console);
    if (!typed.out.empty()) {
        const auto pages = writeSheet(setting, typed, *made);
        if (!pages) return console.trouble(pages.error());
        console.line(
            console.say({"said.printed", {{"pages", *pages}, {"file", typed.out.string()}}}));
        value["file"] = typed.out.string();
        value["pages"] = *pages;
    }
    console.value(value);
    return done;
}

}  // namespace

void addAwayCommand(CLI::App& app, Command& chosen) {
    auto typed = std::make_shared<AwayTyped>();
    auto& t = *typed;
    auto* command =
        addCommand(app, t.book, chosen, "away",
                   "Before, during and after an absence; and the sheet for a sitter, as PDF.",
                   "burrow away kiln-row.book --from 2026-07-03 --to 2026-07-17 --out sitter.pdf",
                   [typed](const Setting& s) { return away(s, *typed); });
    command->add_option("--from", t.from, "first day away, YYYY-MM-DD")->required();
    command->add_option("--to", t.to, "last day away, YYYY-MM-DD")->required();
    command->add_option("--out", t.out, "the PDF");
    command->add_option("--paper", t.paper, "a4 or a5")->check(CLI::IsMember({"a4", "a5"}));
    command->add_option("--call", t.call, "whom the sitter calls besides you; kept in the book");
    command->add_option("--on", t.on, "planned on this day, YYYY-MM-DD (today)");
}

}  // namespace burrow::terminal
