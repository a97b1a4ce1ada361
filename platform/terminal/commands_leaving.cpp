// Commands by which records leave for other programs, and come from them.
#include <fmt/format.h>

#include <algorithm>

#include "base/files.h"
#include "exchange/leave.h"
#include "exchange/mapping.h"
#include "room/air_leave.h"
#include "room/calendar.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

struct LeavingTyped {
    Path book;
    Path to;
    Path out;
    Path file;
    std::string kind;
    int days = 60;
    bool jsonOnly = false;
    bool csvOnly = false;
    bool withoutPhotos = false;
};

constexpr std::uint64_t csvLimit = 1'000'000'000;

int leaveBook(const Setting& setting, const LeavingTyped& typed) {
    auto& console = setting.console;
    auto book = openToRead(typed.book, setting);
    if (!book) return console.trouble(book.error());
    exchange::LeaveOptions options;
    options.csv = !typed.jsonOnly;
    options.json = !typed.csvOnly;
    options.photos = !typed.withoutPhotos;
    options.more.push_back(airTable());
    const auto report = exchange::leave(*book, typed.to, options);
    if (!report) return console.trouble(report.error());
    json files = json::array();
    for (const auto& file : report->files) files.push_back(file.filename().string());
    console.line(console.say({"said.left",
                              {{"animals", report->animals},
                               {"enclosures", report->enclosures},
                               {"events", report->events},
                               {"photos", report->photos},
                               {"folder", typed.to.string()}}}));
    if (report->photosMissing > 0) {
        console.line(console.say({"said.photosMissing", {{"count", report->photosMissing}}}));
    }
    console.value({{"folder", typed.to.string()},
                   {"files", std::move(files)},
                   {"animals", report->animals},
                   {"enclosures", report->enclosures},
                   {"events", report->events},
                   {"tags", report->tags},
                   {"photos", report->photos},
                   {"photos_missing", report->photosMissing}});
    return done;
}

int calendar(const Setting& setting, const LeavingTyped& typed) {
    auto& console = setting.console;
    auto book = openToRead(typed.book, setting);
    if (!book) return console.trouble(book.error());
    const auto room = roomOn(*book, setting, std::nullopt);
    if (!room) return console.trouble(room.error());
    const auto dates = calendarOf(*room, setting.reference.words, setting.clock.now(), typed.days);
    if (dates.events.empty()) return console.trouble(Message{"calendar.nothing"});
    DeviceFiles files;
    const auto text = exchange::icalendar(dates);
    if (const auto written = files.write(typed.out, bytesOf(text)); !written) {
        return console.trouble(written.error());
    }
    const auto count = static_cast<std::int64_t>(dates.events.size());
    console.line(console.say({"said.calendar", {{"count", count}, {"file", typed.out.string()}}}));
    console.value({{"file", typed.out.string()}, {"events", count}});
    return done;
}

// --- mappings ------------------------------------------------------------------------------------

std::optional<exchange::CsvKind> kindNamed(const std::string& text) {
    using exchange::CsvKind;
    for (const auto kind : {CsvKind::animals, CsvKind::enclosures, CsvKind::events}) {
        if (exchange::name(kind) == text) return kind;
    }
    return std::nullopt;
}

json toJson(const exchange::MapQuestion& question, const exchange::Mapping& mapping,
            const Console& console) {
    json object{{"open", question.isOpen},
                {"value", question.value},
                {"count", question.count},
                {"choices", question.choices},
                {"text", console.say(question.text)}};
    object["column"] = question.column ? json(mapping.columns[*question.column].column) : json();
    return object;
}

void showColumns(const exchange::Mapping& mapping, const exchange::MapReview& review,
                 const Console& console) {
    for (std::size_t i = 0; i < mapping.columns.size(); ++i) {
        const auto& column = mapping.columns[i];
        const auto target =
            column.target.empty() ? console.words().say("said.mapKept") : column.target;
        std::string samples;
        for (const auto& sample : review.columns[i].samples) {
            samples += samples.empty() ? "" : "; ";
            samples += sample.written;
            if (sample.becomes != sample.written) samples += " > " + sample.becomes;
        }
        console.line(fmt::format("  {:<24} {:<16} {}", column.column, target, samples));
    }
}

void showQuestions(const exchange::MapReview& review, const Console& console) {
    for (const auto& question : review.questions) {
        auto text = fmt::format("{} {}", question.isOpen ? '*' : '-', console.say(question.text));
        if (!question.choices.empty()) {
            text += fmt::format(" ({})", fmt::join(question.choices, ", "));
        }
        console.line(text);
    }
    console.line(console.words().say(review.isOpen() ? "said.mapOpen" : "said.mapDone"));
}

int map(const Setting& setting, const LeavingTyped& typed) {
    auto& console = setting.console;
    DeviceFiles files;
    const auto bytes = files.read(typed.file, csvLimit);
    if (!bytes) return console.trouble(bytes.error());
    const auto sheet = exchange::readSheet(textOf(*bytes));
    if (!sheet) return console.trouble(sheet.error());
    const auto& profiles = setting.reference.profiles;
    const auto today = setting.surroundings().today();
    const auto kind = kindNamed(typed.kind);
    const auto mapping = kind ? exchange::proposeMapping(*sheet, *kind, profiles, today)
                              : exchange::proposeMapping(*sheet, profiles, today);
    const auto review = exchange::reviewMapping(mapping, *sheet, profiles);
    const auto text = exchange::mappingToJson(mapping);
    const std::string kindName(exchange::name(mapping.kind));

    if (exchange::recogniseCsv(textOf(*bytes))) {
        console.line(
            console.say({"said.mapFits", {{"file", typed.file.string()}, {"kind", kindName}}}));
    }
    console.line(console.say({"said.map", {{"kind", kindName}}}));
    showColumns(mapping, review, console);
    showQuestions(review, console);
    if (!typed.out.empty()) {
        if (const auto written = files.write(typed.out, bytesOf(text)); !written) {
            return console.trouble(written.error());
        }
        console.line(console.say({"said.mapWritten", {{"file", typed.out.string()}}}));
    }
    json questions = json::array();
    for (const auto& question : review.questions) {
        questions.push_back(toJson(question, mapping, console));
    }
    console.value({{"mapping", json::parse(text)},
                   {"questions", std::move(questions)},
                   {"open", review.isOpen()}});
    return done;
}

}  // namespace

void addLeavingCommands(CLI::App& app, Command& chosen) {
    auto typed = std::make_shared<LeavingTyped>();
    auto& t = *typed;
    auto* leave = addCommand(app, t.book, chosen, "leave",
                             "Take everything along: CSV tables, one JSON document, the photos.",
                             "burrow leave kiln-row.book --to kiln-row-files",
                             [typed](const Setting& s) { return leaveBook(s, *typed); });
    leave->add_option("--to", t.to, "the folder; made where it is missing")->required();
    auto* jsonOnly = leave->add_flag("--json-only", t.jsonOnly, "no tables");
    leave->add_flag("--csv-only", t.csvOnly, "no document")->excludes(jsonOnly);
    leave->add_flag("--without-photos", t.withoutPhotos, "no photos");

    auto* dates = addCommand(app, t.book, chosen, "calendar",
                             "Due dates as a file that any calendar takes (iCalendar).",
                             "burrow calendar kiln-row.book --out kiln-row.ics --days 60",
                             [typed](const Setting& s) { return calendar(s, *typed); });
    dates->add_option("--out", t.out, "the calendar file")->required();
    dates->add_option("--days", t.days, "what opens in so many days (60)")
        ->check(CLI::Range(0, 3660));

    auto* map = app.add_subcommand("map", "How a spreadsheet of your own can be brought in.");
    map->footer(
        "Example:\n  burrow map my-list.csv --out map.json\n"
        "  burrow bring kiln-row.book --animals my-list.csv --map map.json");
    map->add_option("FILE", t.file, "the spreadsheet, saved as CSV")->required();
    map->add_option("--kind", t.kind, "animals, enclosures or events (by its columns)")
        ->check(CLI::IsMember({"animals", "enclosures", "events"}));
    map->add_option("--out", t.out, "write the mapping here, to be edited and used");
    map->callback([&chosen, typed] {
        chosen = [typed](const Setting& s) { return terminal::map(s, *typed); };
    });
}

}  // namespace burrow::terminal
