// Records that come in from tables and spreadsheets.
#include <fmt/format.h>

#include <algorithm>

#include "base/files.h"
#include "exchange/bad_rows.h"
#include "exchange/bring_photos.h"
#include "exchange/mapping.h"
#include "files/developer.h"
#include "journal/backups.h"
#include "terminal/commands.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

/// A million rows of events take about 80 MB.
constexpr std::uint64_t csvLimit = 1'000'000'000;

/// A mapping with the spellings of a large collection.
constexpr std::uint64_t mapLimit = 4'000'000;

struct LoadedCsv {
    exchange::CsvKind kind;
    Path path;
    Bytes bytes;
    std::vector<exchange::MappedTable> mapped;  ///< what a mapping makes of it
};

/// Reads each file that has a mapping as the mapping says.
Done applyMaps(std::vector<LoadedCsv>& loaded, const std::vector<Path>& maps) {
    DeviceFiles device;
    for (const auto& path : maps) {
        BURROW_TRY(const auto bytes, device.read(path, mapLimit));
        BURROW_TRY(const auto mapping, exchange::mappingFromJson(textOf(bytes)));
        const auto csv = std::find_if(loaded.begin(), loaded.end(), [&](const LoadedCsv& each) {
            return each.kind == mapping.kind;
        });
        if (csv == loaded.end()) {
            return fail(Trouble::badInput,
                        {"bring.mapWithoutFile",
                         {{"map", path.string()}, {"file", std::string(name(mapping.kind))}}});
        }
        BURROW_TRY(csv->mapped, exchange::applyMapping(textOf(csv->bytes), mapping));
    }
    return {};
}

/// What bring() is given, and for each the file it comes from.
struct Sources {
    std::vector<exchange::CsvSource> tables;
    std::vector<std::size_t> file;
};

Sources sourcesOf(const std::vector<LoadedCsv>& loaded) {
    Sources sources;
    for (std::size_t i = 0; i < loaded.size(); ++i) {
        const auto& csv = loaded[i];
        if (csv.mapped.empty()) {
            sources.tables.push_back({csv.kind, textOf(csv.bytes)});
            sources.file.push_back(i);
        }
        for (const auto& table : csv.mapped) {
            sources.tables.push_back({table.kind, table.text, &table.original});
            sources.file.push_back(i);
        }
    }
    return sources;
}

Result<std::vector<LoadedCsv>> load(const BringFiles& files) {
    DeviceFiles device;
    std::vector<LoadedCsv> loaded;
    const auto add = [&](exchange::CsvKind kind, const Path& path) -> Done {
        if (path.empty()) return {};
        BURROW_TRY(auto bytes, device.read(path, csvLimit));
        loaded.push_back({kind, path, std::move(bytes), {}});
        return {};
    };
    BURROW_DO(add(exchange::CsvKind::enclosures, files.enclosures));
    BURROW_DO(add(exchange::CsvKind::animals, files.animals));
    BURROW_DO(add(exchange::CsvKind::events, files.events));
    BURROW_DO(add(exchange::CsvKind::tags, files.tags));
    BURROW_DO(add(exchange::CsvKind::settings, files.settings));
    BURROW_DO(applyMaps(loaded, files.maps));
    if (loaded.empty()) return fail(Trouble::badInput, {"bring.noFile"});
    return loaded;
}

Done takePhotos(exchange::IncomingPhotos& photos, const Path& folder,
                const std::vector<exchange::CsvSource>& tables) {
    if (folder.empty()) return {};
    BURROW_TRY(const auto named, exchange::picturesNamed(tables));
    return photos.take(folder, named);
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

json tellBad(const exchange::BringReport& report, const Console& console) {
    json rows = json::array();
    for (const auto& row : report.bad) {
        rows.push_back(toJson(row, console));
        if (!console.isJson()) fmt::print(stderr, "{}\n", console.say(describe(row, console)));
    }
    return rows;
}

}  // namespace

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
    const auto sources = sourcesOf(*loaded);
    std::vector<std::vector<exchange::BadRow>> bad(loaded->size());
    exchange::BringOptions options;
    options.skipBad = files.skipBad;
    if (files.skipBad) {
        // A row that is bad as an animal is bad as what happened to it, and is handed back once.
        options.onBadRow = [&](const auto& row) {
            auto& rows = bad[sources.file[row.source]];
            if (rows.empty() || rows.back().line != row.line) rows.push_back(row);
        };
    }
    DeviceFiles device;
    QtDeveloper developer;
    exchange::IncomingPhotos photos(*book, device, developer);
    if (const auto taken = takePhotos(photos, files.photos, sources.tables); !taken) {
        return console.trouble(taken.error());
    }
    const auto report = exchange::bring(*book, sources.tables, options);
    if (!report) return console.trouble(report.error());
    if (report->isDone) photos.keep();

    json value{{"enclosures", report->enclosures},
               {"animals", report->animals},
               {"events", report->events},
               {"tags", report->tags},
               {"settings", report->settings},
               {"photos", photos.count()},
               {"bad_rows", report->badRows},
               {"bad", tellBad(*report, console)},
               {"done", report->isDone}};
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

}  // namespace burrow::terminal
