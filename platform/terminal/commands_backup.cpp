// Commands that keep copies of a book and go back to them.
#include <fmt/format.h>

#include <memory>

#include "journal/restore.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

Backups backupsOf(const Setting& setting, const Path& book) {
    return {book, setting.clock, setting.zone};
}

/// "8 May, 19:14" in the keeper's zone.
Message moment(const Setting& setting, Instant at) {
    const auto minute = setting.zone.secondOfDay(at) / 60;
    return {"said.moment",
            {{"day", setting.zone.dayOf(at)},
             {"hour", fmt::format("{:02}", minute / 60)},
             {"minute", fmt::format("{:02}", minute % 60)}}};
}

std::string fileName(const Path& path) { return path.filename().string(); }

json toJson(const Backup& backup) {
    return {{"file", backup.file.string()},
            {"made_at", isoInstant(backup.madeAt)},
            {"reason", std::string(name(backup.reason))},
            {"bytes", backup.bytes}};
}

json toJson(const BookContents& contents) {
    return {{"entries", contents.entries},
            {"subjects", contents.subjects},
            {"version", contents.version},
            {"last_written",
             contents.lastRecordedAt ? json(isoInstant(*contents.lastRecordedAt)) : json()}};
}

json toJson(const OnlyHere& only) {
    return {{"entries", only.entries},
            {"things", only.things},
            {"from", only.from ? json(isoDate(*only.from)) : json()},
            {"to", only.to ? json(isoDate(*only.to)) : json()}};
}

json toJson(const RestorePreview& preview) {
    return {{"backup", toJson(preview.backup)},
            {"current", preview.current ? toJson(*preview.current) : json()},
            {"lost", toJson(preview.lost)},
            {"gained", toJson(preview.gained)}};
}

int makeBackup(const Setting& setting, const Path& path, bool onlyIfDue) {
    auto& console = setting.console;
    const auto backups = backupsOf(setting, path);
    // Opened for writing once: a book of an earlier version is brought to this one first.
    if (const auto book = openToRead(path, setting); !book) return console.trouble(book.error());
    std::optional<Backup> made;
    if (onlyIfDue) {
        auto maybe = backups.makeIfDue();
        if (!maybe) return console.trouble(maybe.error());
        made = *std::move(maybe);
    } else {
        auto asked = backups.make(BackupReason::asked);
        if (!asked) return console.trouble(asked.error());
        made = *std::move(asked);
    }
    if (!made) {
        console.line(console.words().say("said.noBackupDue"));
        console.value({{"made", nullptr}});
        return done;
    }
    const auto contents = contentsOf(made->file);
    if (!contents) return console.trouble(contents.error());
    auto value = toJson(*made);
    value.update(toJson(*contents));
    console.line(console.say({"said.backup",
                              {{"file", fileName(made->file)},
                               {"entries", contents->entries},
                               {"subjects", contents->subjects}}}));
    console.value({{"made", std::move(value)}});
    return done;
}

int listBackups(const Setting& setting, const Path& path) {
    auto& console = setting.console;
    const auto kept = backupsOf(setting, path).list();
    if (!kept) return console.trouble(kept.error());
    json values = json::array();
    for (const auto& backup : *kept) {
        auto value = toJson(backup);
        const auto contents = contentsOf(backup.file);
        if (contents) value.update(toJson(*contents));
        value["readable"] = contents.has_value();
        values.push_back(std::move(value));
        console.line(console.say({contents ? "said.aBackup" : "said.unreadableBackup",
                                  {{"file", fileName(backup.file)},
                                   {"moment", console.say(moment(setting, backup.madeAt))},
                                   {"entries", contents ? contents->entries : 0},
                                   {"subjects", contents ? contents->subjects : 0},
                                   {"mb", static_cast<double>(backup.bytes) / 1e6}}}));
    }
    if (kept->empty()) console.line(console.words().say("said.noBackups"));
    console.value(values);
    return done;
}

/// A file, or the name of one in the folder of backups.
Path findBackup(const Backups& backups, const std::string& word) {
    std::error_code ignored;
    for (const auto& path : {backups.folder() / word, backups.folder() / (word + ".book")}) {
        if (Path(word).has_filename() && std::filesystem::is_regular_file(path, ignored)) {
            return path;
        }
    }
    return word;
}

void tell(const RestorePreview& preview, const Console& console) {
    if (!preview.current) console.line(console.words().say("said.nothingToLose"));
    if (preview.lost.entries > 0) {
        console.line(console.say({"said.wouldGo",
                                  {{"entries", preview.lost.entries},
                                   {"from", *preview.lost.from},
                                   {"to", *preview.lost.to}}}));
    }
    if (preview.gained.entries > 0) {
        console.line(console.say({"said.wouldCome", {{"entries", preview.gained.entries}}}));
    }
    if (preview.current && preview.lost.entries + preview.gained.entries == 0) {
        console.line(console.words().say("said.sameEntries"));
    }
}

int restoreBook(const Setting& setting, const Path& path, const std::string& word, bool isSure) {
    auto& console = setting.console;
    const auto backups = backupsOf(setting, path);
    const auto backup = findBackup(backups, word);
    if (!isSure) {
        const auto preview = previewRestore(backups, backup);
        if (!preview) return console.trouble(preview.error());
        tell(*preview, console);
        console.line(console.words().say("said.notYetRestored"));
        auto value = toJson(*preview);
        value["done"] = false;
        console.value(value);
        return done;
    }
    const auto restored = restore(backups, backup, setting.surroundings());
    if (!restored) return console.trouble(restored.error());
    auto value = toJson(restored->was);
    value["done"] = true;
    value["kept"] = restored->kept ? json(restored->kept->string()) : json();
    value["device"] = restored->device.text();
    console.line(console.say({"said.restored",
                              {{"entries", restored->was.backup.entries},
                               {"subjects", restored->was.backup.subjects}}}));
    if (restored->kept) {
        console.line(console.say({"said.keptBefore", {{"file", fileName(*restored->kept)}}}));
    }
    console.value(value);
    return done;
}

struct Typed {
    Path book;
    std::string backup;
    bool ifDue = false;
    bool isSure = false;
};

}  // namespace

void addBackupCommands(CLI::App& app, Command& chosen) {
    auto typed = std::make_shared<Typed>();
    auto& t = *typed;
    auto* backup = addCommand(app, t.book, chosen, "backup", "Keep a copy of the book beside it.",
                              "burrow backup kiln-row.book", [typed](const Setting& s) {
                                  return makeBackup(s, typed->book, typed->ifDue);
                              });
    backup->add_flag("--if-due", t.ifDue,
                     "only where today has none yet and something was written");
    addCommand(app, t.book, chosen, "backups", "The copies of a book, newest first.",
               "burrow backups kiln-row.book",
               [typed](const Setting& s) { return listBackups(s, typed->book); });
    auto* back = addCommand(app, t.book, chosen, "restore",
                            "What going back to a copy would change; with --yes, go back to it.",
                            "burrow restore kiln-row.book 20260508T191400Z-daily --yes",
                            [typed](const Setting& s) {
                                return restoreBook(s, typed->book, typed->backup, typed->isSure);
                            });
    back->add_option("BACKUP", t.backup, "its name as `burrow backups` gives it, or a file")
        ->required();
    back->add_flag("--yes", t.isSure, "do it; the book as it is becomes a backup first");
}

}  // namespace burrow::terminal
