// Commands that make, fill and look over a book.
#include <fmt/format.h>

#include <fstream>

#include "base/files.h"
#include "demo_room.h"
#include "exchange/bad_rows.h"
#include "journal/backups.h"
#include "journal/check.h"
#include "room/chores.h"
#include "terminal/commands.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

/// A million rows of events take about 80 MB.
constexpr std::uint64_t csvLimit = 1'000'000'000;

struct LoadedCsv {
    exchange::CsvKind kind;
    Path path;
    Bytes bytes;
};

Result<std::vector<LoadedCsv>> load(const BringFiles& files) {
    DeviceFiles device;
    std::vector<LoadedCsv> loaded;
    const auto add = [&](exchange::CsvKind kind, const Path& path) -> Done {
        if (path.empty()) return {};
        BURROW_TRY(auto bytes, device.read(path, csvLimit));
        loaded.push_back({kind, path, std::move(bytes)});
        return {};
    };
    BURROW_DO(add(exchange::CsvKind::enclosures, files.enclosures));
    BURROW_DO(add(exchange::CsvKind::animals, files.animals));
    BURROW_DO(add(exchange::CsvKind::events, files.events));
    if (loaded.empty()) return fail(Trouble::badInput, {"bring.noFile"});
    return loaded;
}

/// Writes the rows that were left out to a file of their own.
Result<Path> writeBadRows(const LoadedCsv& source, std::span<const exchange::BadRow> bad,
                          const Console& console) {
    const auto text = exchange::badRowsFile(
        textOf(source.bytes), bad, [&](const Message& message) { return console.say(message); });
    DeviceFiles device;
    const auto path = exchange::badRowsPath(source.path);
    BURROW_DO(device.write(path, bytesOf(text)));
    return path;
}

Message describe(const exchange::BadRow& row, const Console& console) {
    const std::string id = row.column.empty() ? "bring.badRow" : "bring.badCell";
    return {id,
            {{"file", std::string(name(row.kind))},
             {"line", row.line},
             {"column", row.column},
             {"reason", console.say(row.reason)}}};
}

json toJson(const exchange::BadRow& row, const Console& console) {
    return {{"file", std::string(name(row.kind))},
            {"line", row.line},
            {"column", row.column.empty() ? json() : json(row.column)},
            {"reason", terminal::toJson(row.reason)},
            {"text", console.say(describe(row, console))}};
}

}  // namespace

int newBook(const Setting& setting, const Path& path, const std::string& room,
            const std::string& code) {
    const auto book = Book::create(path, room, code, setting.surroundings());
    if (!book) return setting.console.trouble(book.error());
    setting.console.line(setting.console.say(
        {"said.newBook", {{"room", room}, {"file", path.filename().string()}}}));
    setting.console.value({{"book", book->id().text()}, {"room", room}, {"code", code}});
    return done;
}

int demo(const Setting& setting, const Path& path, const DemoOptions& options) {
    auto& console = setting.console;
    auto until = setting.surroundings().today();
    if (!options.until.empty()) {
        const auto day = readDay(options.until);
        if (!day) return console.trouble(day.error());
        until = *day;
    }
    const auto made =
        demo::makeRoom(path, {options.animals, options.years, options.seed, until, setting.zone},
                       {setting.reference.profiles, setting.reference.rules});
    if (!made) return console.trouble(made.error());
    console.line(
        console.say({"said.demo", {{"animals", made->subjects}, {"entries", made->entries}}}));
    console.value({{"subjects", made->subjects}, {"entries", made->entries}});
    return done;
}

int bringIn(const Setting& setting, const Path& path, const BringFiles& files) {
    auto& console = setting.console;
    const auto loaded = load(files);
    if (!loaded) return console.trouble(loaded.error());
    auto book = openToWrite(path, setting);
    if (!book) return console.trouble(book.error());

    const Backups backups(path, setting.clock, setting.zone);
    if (const auto kept = backups.ensure(BackupReason::beforeImport); !kept) {
        return console.trouble(kept.error());
    }
    std::vector<exchange::CsvSource> sources;
    for (const auto& csv : *loaded) sources.push_back({csv.kind, textOf(csv.bytes)});
    std::vector<std::vector<exchange::BadRow>> bad(sources.size());
    exchange::BringOptions options;
    options.skipBad = files.skipBad;
    if (files.skipBad) options.onBadRow = [&](const auto& row) { bad[row.source].push_back(row); };
    const auto report = exchange::bring(*book, sources, options);
    if (!report) return console.trouble(report.error());

    json rows = json::array();
    for (const auto& row : report->bad) {
        rows.push_back(toJson(row, console));
        if (!console.isJson()) fmt::print(stderr, "{}\n", console.say(describe(row, console)));
    }
    json value{{"enclosures", report->enclosures}, {"animals", report->animals},
               {"events", report->events},         {"bad_rows", report->badRows},
               {"bad", std::move(rows)},           {"done", report->isDone}};
    if (!report->isDone) {
        console.value(value);
        return console.trouble(Message{"bring.refused", {{"count", report->badRows}}});
    }
    for (std::size_t i = 0; i < loaded->size(); ++i) {
        if (bad[i].empty()) continue;
        const auto written = writeBadRows((*loaded)[i], bad[i], console);
        if (!written) return console.trouble(written.error());
        value["bad_files"].push_back(written->string());
        console.line(console.say({"said.badRows", {{"file", written->string()}}}));
    }
    console.line(console.say({"said.brought",
                              {{"enclosures", report->enclosures},
                               {"animals", report->animals},
                               {"events", report->events}}}));
    console.value(value);
    return done;
}

int checkBook(const Setting& setting, const Path& path, bool repairIt) {
    auto& console = setting.console;
    auto book = repairIt ? openToWrite(path, setting) : openToRead(path, setting);
    if (!book) return console.trouble(book.error());
    if (repairIt) {
        if (const auto mended = repair(*book); !mended) return console.trouble(mended.error());
    }
    std::int64_t swept = 0;
    if (repairIt) {
        const auto removed = sweepPhotos(path);
        if (!removed) return console.trouble(removed.error());
        swept = *removed;
    }
    auto report = check(*book);
    if (!report) return console.trouble(report.error());
    DeviceFiles files;
    const auto photos = report->isSound() ? lookOverPhotos(*book, files) : PhotoState();
    if (!photos) return console.trouble(photos.error());
    if (photos->damaged > 0) {
        report->findings.push_back({"check.photos", {{"count", photos->damaged}}});
    }
    json findings = json::array();
    for (const auto& finding : report->findings) {
        auto found = terminal::toJson(finding);
        found["text"] = console.say(finding);
        findings.push_back(std::move(found));
        if (!console.isJson()) fmt::print(stderr, "{}\n", console.say(finding));
    }
    console.value({{"sound", report->isSound()},
                   {"entries", report->entries},
                   {"subjects", report->subjects},
                   {"photos",
                    {{"whole", photos->whole},
                     {"elsewhere", photos->elsewhere},
                     {"damaged", photos->damaged},
                     {"swept", swept}}},
                   {"findings", std::move(findings)}});
    if (!report->isSound()) return refused;
    console.line(console.say(
        {"said.sound", {{"entries", report->entries}, {"subjects", report->subjects}}}));
    return done;
}

}  // namespace burrow::terminal
