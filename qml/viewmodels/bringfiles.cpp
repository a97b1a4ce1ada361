#include "viewmodels/bringfiles.h"

#include <algorithm>

#include "exchange/bring_photos.h"
#include "exchange/csv.h"
#include "journal/backups.h"

namespace burrow {
namespace {

using exchange::Mapping;

/// A million rows of events take about 80 MB.
constexpr std::uint64_t csvLimit = 200'000'000;
/// Enough to see how a sheet is written; what comes later is read the same way, or asked about.
constexpr std::size_t rowsLookedAt = 20'000;
/// Fewer columns with a name like ours are chance.
constexpr std::ptrdiff_t fewestColumns = 2;

struct Reading {
    std::optional<ChosenFile> file;
    std::optional<Mapping> mapping;
};

bool isMappingFile(const std::filesystem::path& path) { return path.extension() == ".json"; }

Result<Reading> readOne(const std::filesystem::path& path, const Profiles& profiles,
                        CivilDay today) {
    DeviceFiles device;
    auto csv = std::make_shared<CsvFile>();
    csv->path = path;
    BURROW_TRY(csv->bytes, device.read(path, csvLimit));
    const auto text = textOf(csv->bytes);
    Reading reading;
    if (isMappingFile(path)) {
        BURROW_TRY(reading.mapping, exchange::mappingFromJson(text));
        return reading;
    }
    const MessageArgument name{"file", path.filename().string()};
    // What is no CSV at all says so itself; any other header is one to ask about.
    if (const auto reader = exchange::CsvReader::open(text); !reader) {
        return fail(Trouble::badInput, {"bring.noCsv", {name}});
    }
    reading.file = ChosenFile{csv, std::nullopt, false};
    if (const auto kind = exchange::recogniseCsv(text)) {
        csv->kind = *kind;
        return reading;
    }
    BURROW_TRY(csv->sheet, exchange::readSheet(text, rowsLookedAt));
    auto mapping = exchange::proposeMapping(csv->sheet, profiles, today);
    const auto known = std::count_if(mapping.columns.begin(), mapping.columns.end(),
                                     [](const auto& column) { return !column.target.empty(); });
    if (known < fewestColumns) return fail(Trouble::badInput, {"bring.unknownHeader", {name}});
    csv->kind = mapping.kind;
    reading.file->mapping = std::move(mapping);
    return reading;
}

/// Gives each mapping to the file of its kind that has none that fits better.
void handOut(std::vector<Mapping> mappings, ChosenFiles& files, std::vector<Message>& refused) {
    for (auto& mapping : mappings) {
        const auto found = std::find_if(files.begin(), files.end(), [&](const ChosenFile& file) {
            return file.mapping && file.kind() == mapping.kind;
        });
        if (found == files.end()) {
            refused.push_back({"bring.mapForNothing"});
        } else {
            found->mapping = std::move(mapping);
        }
    }
}

/// From the folder that leave() puts beside its tables.
Done takePhotos(exchange::IncomingPhotos& photos, const ChosenFiles& files,
                const BringTables& tables) {
    BURROW_TRY(const auto named, exchange::picturesNamed(tables.sources));
    for (const auto& file : files) {
        if (named.empty() || file.kind() != exchange::CsvKind::events) continue;
        BURROW_DO(photos.take(file.csv->path.parent_path() / "photos", named));
    }
    return {};
}

}  // namespace

bool isOpen(const Mapping& mapping, const exchange::Sheet& sheet, const Profiles& profiles) {
    return exchange::reviewMapping(mapping, sheet, profiles).isOpen();
}

Result<BringTables> tablesOf(const ChosenFiles& files) {
    BringTables tables;
    for (std::size_t i = 0; i < files.size(); ++i) {
        const auto text = textOf(files[i].csv->bytes);
        if (!files[i].mapping) {
            tables.sources.push_back({files[i].csv->kind, text});
            tables.fileOf.push_back(i);
            continue;
        }
        BURROW_TRY(auto mapped, exchange::applyMapping(text, *files[i].mapping));
        for (auto& table : mapped) {
            tables.made.push_back(std::make_unique<exchange::MappedTable>(std::move(table)));
            const auto& made = *tables.made.back();
            tables.sources.push_back({made.kind, made.text, &made.original});
            tables.fileOf.push_back(i);
        }
    }
    return tables;
}

BringLook lookAt(Book& book, const std::vector<std::filesystem::path>& paths, ChosenFiles known,
                 const Profiles& profiles, CivilDay today, exchange::BringOptions options) {
    BringLook look;
    look.files = std::move(known);
    std::vector<Mapping> mappings;
    for (const auto& path : paths) {
        auto reading = readOne(path, profiles, today);
        if (!reading) {
            look.refused.push_back(reading.error().message);
            continue;
        }
        if (reading->file) look.files.push_back(*std::move(reading->file));
        if (reading->mapping) mappings.push_back(*std::move(reading->mapping));
    }
    handOut(std::move(mappings), look.files, look.refused);
    bool anyOpen = false;
    for (auto& file : look.files) {
        file.isOpen = file.mapping && isOpen(*file.mapping, file.csv->sheet, profiles);
        anyOpen |= file.isOpen;
    }
    if (look.files.empty() || anyOpen) return look;
    const auto tables = tablesOf(look.files);
    if (!tables) {
        look.trouble = tables.error().message;
        return look;
    }
    options.onlyLook = true;
    auto report = exchange::bring(book, tables->sources, options);
    if (report) {
        look.report = *std::move(report);
        for (auto& row : look.report->bad) row.source = tables->fileOf[row.source];
    } else {
        look.trouble = report.error().message;
    }
    return look;
}

Result<Brought> bringIn(Book& book, const ChosenFiles& files, exchange::BringOptions options,
                        Darkroom* darkroom) {
    const auto& around = book.surroundings();
    const Backups backups(book.path(), around.clock, around.zone);
    BURROW_TRY(const auto kept, backups.ensure(BackupReason::beforeImport));
    static_cast<void>(kept);
    BURROW_TRY(const auto tables, tablesOf(files));
    Brought brought;
    brought.bad.resize(files.size());
    options.onBadRow = [&](const exchange::BadRow& row) {
        // What is bad as an animal is bad as what happened to it, and is handed back once.
        auto& rows = brought.bad[tables.fileOf[row.source]];
        if (rows.empty() || rows.back().line != row.line) rows.push_back(row);
    };
    std::optional<exchange::IncomingPhotos> photos;
    if (darkroom != nullptr) {
        photos.emplace(book, darkroom->files(), darkroom->developer());
        BURROW_DO(takePhotos(*photos, files, tables));
    }
    BURROW_TRY(auto report, exchange::bring(book, tables.sources, options));
    if (!report.isDone) {
        return fail(Trouble::badInput, {"bring.changedMeanwhile", {{"count", report.badRows}}});
    }
    if (photos) photos->keep();
    brought.changes = std::move(report.changes);
    return brought;
}

}  // namespace burrow
