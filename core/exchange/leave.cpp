#include "exchange/leave.h"

#include <array>
#include <set>
#include <system_error>

#include "base/file_writer.h"
#include "exchange/csv.h"
#include "exchange/leave_json.h"
#include "exchange/leave_tables.h"
#include "journal/projector.h"
#include "pictures/store.h"

namespace burrow::exchange {
namespace {

namespace fs = std::filesystem;

constexpr std::array tables{CsvKind::settings, CsvKind::enclosures, CsvKind::animals,
                            CsvKind::tags};

/// Copies one photo at a time; what is there already under its hash is not copied again.
Done copyPhotos(Book& book, const std::set<Sha256>& pictures, const fs::path& folder,
                LeaveReport& report) {
    DeviceFiles files;
    const pictures::Store store(pictures::Store::folderFor(book.path()), files);
    for (const auto& picture : pictures) {
        const auto bytes = files.read(store.picturePath(picture), pictures::Limits().bytes);
        if (!bytes || Sha256::of(*bytes) != picture) {
            ++report.photosMissing;
            continue;
        }
        const auto target = folder / photoName(picture);
        if (!files.exists(target)) BURROW_DO(files.write(target, *bytes));
        ++report.photos;
    }
    return {};
}

/// The files under way: they get their names together, when all of them are whole.
class Outgoing {
public:
    explicit Outgoing(fs::path folder) : folder_(std::move(folder)) {}

    Result<Sink> begin(const std::string& name) {
        std::error_code ignored;
        if (fs::exists(folder_ / name, ignored)) {
            return fail(Trouble::badInput, {"leave.exists", {{"file", name}}});
        }
        BURROW_TRY(auto file, FileWriter::create(folder_ / name));
        files_.push_back(std::make_unique<FileWriter>(std::move(file)));
        return Sink([out = files_.back().get()](std::string_view text) {
            return out->write(bytesOf(text));
        });
    }
    Done add(const std::string& name, std::string_view text) {
        BURROW_TRY(const auto sink, begin(name));
        return sink(text);
    }
    Done placeAll(LeaveReport& report) {
        for (const auto& file : files_) BURROW_DO(file->flush());
        for (const auto& file : files_) {
            if (auto placed = file->finish(); !placed) {
                std::error_code ignored;
                for (const auto& path : report.files) fs::remove(path, ignored);
                return placed;
            }
            report.files.push_back(file->path());
        }
        return {};
    }

private:
    fs::path folder_;
    std::vector<std::unique_ptr<FileWriter>> files_;
};

Sink nowhere() {
    return [](std::string_view) { return Done(); };
}

class Leave {
public:
    Leave(Book& book, const fs::path& folder, const LeaveOptions& options)
        : book_(book), folder_(folder), options_(options), out_(folder) {}

    Result<LeaveReport> run() {
        // What is written while this goes on belongs to another day.
        BURROW_TRY(const auto still, storage::Snapshot::take(book_.connection()));
        BURROW_TRY(all_, gather(book_));
        BURROW_DO(out_.add("read-me.md", leaveDescription()));
        if (options_.csv) BURROW_DO(writeTables());
        BURROW_DO(writeEvents());
        if (options_.photos) BURROW_DO(copyPhotos(book_, pictures_, folder_, report_));
        BURROW_DO(out_.placeAll(report_));
        report_.animals = static_cast<std::int64_t>(all_.animals.size());
        report_.enclosures = static_cast<std::int64_t>(all_.enclosures.size());
        report_.tags = static_cast<std::int64_t>(all_.tags.size());
        return std::move(report_);
    }

private:
    Done writeTables() {
        for (const auto kind : tables) {
            BURROW_TRY(const auto sink, out_.begin(std::string(name(kind)) + ".csv"));
            BURROW_DO(writeTable(kind, all_, sink));
        }
        for (const auto& table : options_.more) {
            BURROW_TRY(const bool hasAny, table.hasAny(book_));
            if (hasAny) BURROW_DO(writeMore(table));
        }
        return {};
    }

    Done writeMore(const LeaveTable& table) {
        BURROW_TRY(const auto sink, out_.begin(table.file));
        const LeaveRow write = [&sink](std::span<const std::string> cells) -> Done {
            std::string line;
            for (const auto& cell : cells) {
                if (&cell != &cells.front()) line += ',';
                line += csvCell(cell, ',');
            }
            return sink(line + "\r\n");
        };
        BURROW_DO(write(table.columns));
        return table.write(book_, write);
    }

    /// The tables and the document are filled from one reading.
    Done writeEvents() {
        Sink events = nowhere();
        Sink photos = nowhere();
        Sink document = nowhere();
        if (options_.csv) {
            BURROW_TRY(events, out_.begin("events.csv"));
            BURROW_TRY(photos, out_.begin("photos.csv"));
        }
        if (options_.json) {
            BURROW_DO(out_.add("book.schema.json", leaveSchema()));
            BURROW_TRY(document, out_.begin("book.json"));
        }
        EventTables rows(all_, events, photos);
        JsonDocument json(all_, document);
        BURROW_DO(rows.writeHeaders());
        BURROW_DO(json.begin(book_, book_.surroundings().clock.now()));
        for (const auto& animal : all_.animals) {
            BURROW_DO(json.beginAnimal(animal));
            BURROW_DO(writeHistory(animal, rows, json));
            BURROW_DO(json.endAnimal());
        }
        return options_.json ? json.end(book_) : Done();
    }

    Done writeHistory(const GatheredAnimal& animal, EventTables& rows, JsonDocument& json) {
        BURROW_TRY(const auto facts, factsOf(book_.connection(), animal.recorded.id));
        for (const auto& fact : facts) {
            if (options_.csv) BURROW_DO(rows.write(animal, fact));
            if (options_.json) BURROW_DO(json.event(fact));
            if (fact.body.picture) pictures_.insert(*fact.body.picture);
            const bool tells = ++report_.events % 5000 == 0 && options_.onProgress;
            if (tells && !options_.onProgress(report_.events)) {
                return fail(Trouble::badInput, {"leave.stopped"});
            }
        }
        return {};
    }

    Book& book_;
    const fs::path& folder_;
    const LeaveOptions& options_;
    Outgoing out_;
    Gathered all_;
    LeaveReport report_;
    std::set<Sha256> pictures_;
};

}  // namespace

Result<LeaveReport> leave(Book& book, const fs::path& folder, const LeaveOptions& options) {
    return Leave(book, folder, options).run();
}

}  // namespace burrow::exchange
