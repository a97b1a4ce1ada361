// Commands that write bundles and take them in.
#include <fstream>
#include <memory>

#include "base/text.h"
#include "files/developer.h"
#include "terminal/describe_bundle.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using exchange::PhotoChoice;
using nlohmann::json;

struct Typed {
    Path book;
    Path file;
    std::string madeFor;
    std::vector<std::string> animals;
    std::string photos = "full";
    bool confidential = false;
    bool otherBook = false;
    Path passphraseFrom;
};

/// The first line of a file, or of the standard input for "-": what is typed as an argument could be read by
/// everyone on the machine.
Result<std::string> passphrase(const Path& from) {
    if (from.empty()) return std::string();
    std::string line;
    if (from == "-") {
        std::string all;
        for (int c = std::getchar(); c != EOF && c != '\n'; c = std::getchar()) {
            all += static_cast<char>(c);
        }
        line = all;
    } else {
        std::ifstream file(from);
        if (!file) {
            return fail(Trouble::notFound, {"file.missing", {{"file", from.filename().string()}}});
        }
        std::getline(file, line);
    }
    if (line.ends_with('\r')) line.pop_back();
    return line;
}

/// The one device whose id ends as it was typed.
Result<DeviceId> findPeer(Book& book, const std::string& typed) {
    BURROW_TRY(const auto known, exchange::peers(book));
    std::optional<DeviceId> found;
    for (const auto& peer : known) {
        if (!peer.device.text().ends_with(lowerAscii(typed))) continue;
        if (found) return fail(Trouble::badInput, {"peer.several", {{"device", typed}}});
        found = peer.device;
    }
    if (!found) return fail(Trouble::notFound, {"peer.unknown", {{"device", typed}}});
    return *found;
}

Result<exchange::ExportOptions> exportOptions(Book& book, const Typed& typed) {
    exchange::ExportOptions options;
    options.program = std::string("Burrowbook ") + BURROW_VERSION;
    options.selection.withConfidential = typed.confidential;
    options.photos = exchange::parsePhotoChoice(typed.photos).value_or(PhotoChoice::none);
    BURROW_TRY(options.passphrase, passphrase(typed.passphraseFrom));
    if (!typed.madeFor.empty()) {
        BURROW_TRY(options.madeFor, findPeer(book, typed.madeFor));
    }
    if (!typed.animals.empty()) {
        auto& subjects = options.selection.subjects.emplace();
        for (const auto& animal : typed.animals) {
            BURROW_TRY(const auto subject, findSubject(book, animal));
            subjects.insert(subject);
        }
    }
    return options;
}

int exportBook(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    auto book = openToRead(typed.book, setting);
    if (!book) return console.trouble(book.error());
    auto options = exportOptions(*book, typed);
    if (!options) return console.trouble(options.error());
    QtDeveloper developer;
    options->developer = &developer;
    options->onProgress = showProgress(console);
    const auto written = exchange::exportBundle(*book, typed.file, *options);
    endProgress();
    if (!written) return console.trouble(written.error());
    console.line(console.say({"said.wroteBundle", {{"file", typed.file.string()}}}));
    describe(*written, console);
    auto value = toJson(*written);
    value["file"] = typed.file.string();
    value["sealed"] = !options->passphrase.empty();
    console.value(value);
    return done;
}

int peekInto(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    const auto secret = passphrase(typed.passphraseFrom);
    if (!secret) return console.trouble(secret.error());
    exchange::PeekOptions options;
    options.passphrase = *secret;
    options.onProgress = showProgress(console);
    const auto contents = exchange::peek(typed.file, options);
    endProgress();
    if (!contents) return console.trouble(contents.error());
    describe(contents->manifest, console);
    if (contents->isSealed) console.line(console.say(Message{"said.bundleSealed"}));
    auto value = toJson(contents->manifest);
    value["file"] = typed.file.string();
    value["bytes"] = contents->fileBytes;
    value["sealed"] = contents->isSealed;
    console.value(value);
    return done;
}

void tell(const exchange::TakenIn& taken, const Console& console) {
    const auto& merge = taken.merge;
    const auto say = [&](const Message& message) { console.line(console.say(message)); };
    if (merge.added == 0 && taken.photosAdded == 0) {
        say({"said.nothingNew"});
    } else {
        say({"said.takenIn",
             {{"added", merge.added}, {"photos", taken.photosAdded}, {"known", merge.known}}});
    }
    if (merge.unknown > 0) say({"said.unknownKinds", {{"count", merge.unknown}}});
    warn(merge.ahead, merge.forked, merge.isNewDevice, taken.differences, console);
    auto value = toJson(merge);
    value["photos_added"] = taken.photosAdded;
    value["photos_known"] = taken.photosKnown;
    value["photos_unnamed"] = taken.photosUnnamed;
    value["differences"] = taken.differences;
    value["from"] = toJson(taken.manifest);
    console.value(value);
}

Result<exchange::TakeInOptions> takeInOptions(const Typed& typed, QtDeveloper& developer,
                                              const Console& console) {
    exchange::TakeInOptions options;
    BURROW_TRY(options.passphrase, passphrase(typed.passphraseFrom));
    options.fromOtherBook = typed.otherBook;
    options.developer = &developer;
    options.onProgress = showProgress(console);
    return options;
}

int mergeIn(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    QtDeveloper developer;
    DeviceFiles files;
    const auto options = takeInOptions(typed, developer, console);
    if (!options) return console.trouble(options.error());
    auto book = openToWrite(typed.book, setting);
    if (!book) return console.trouble(book.error());
    const auto taken = exchange::mergeBundle(*book, typed.file, files, *options);
    endProgress();
    if (!taken) return console.trouble(taken.error());
    tell(*taken, console);
    if (taken->merge.arrival) console.line(console.say(Message{"said.undoAll"}));
    return done;
}

int join(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    QtDeveloper developer;
    DeviceFiles files;
    const auto options = takeInOptions(typed, developer, console);
    if (!options) return console.trouble(options.error());
    const auto taken =
        exchange::joinFromBundle(typed.book, typed.file, files, setting.surroundings(), *options);
    endProgress();
    if (!taken) return console.trouble(taken.error());
    console.line(
        console.say({"said.joined",
                     {{"file", typed.book.filename().string()}, {"room", taken->manifest.room}}}));
    tell(*taken, console);
    return done;
}

int listPeers(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    auto book = openToRead(typed.book, setting);
    if (!book) return console.trouble(book.error());
    const auto known = exchange::peers(*book);
    if (!known) return console.trouble(known.error());
    json list = json::array();
    for (const auto& peer : *known) {
        console.line(console.say(
            {"said.peer",
             {{"device", shortName(peer.device)}, {"day", setting.zone.dayOf(peer.writtenAt)}}}));
        list.push_back(
            {{"device", peer.device.text()}, {"written_at", isoInstant(peer.writtenAt)}});
    }
    if (known->empty()) console.line(console.say(Message{"said.noPeers"}));
    console.value({{"device", book->device().text()}, {"peers", std::move(list)}});
    return done;
}

void addPassphrase(CLI::App* command, Typed& typed) {
    command->add_option("--passphrase-from", typed.passphraseFrom,
                        "file whose first line is the passphrase; - for the standard input");
}

}  // namespace

void addExchangeCommands(CLI::App& app, Command& chosen) {
    const auto typed = std::make_shared<Typed>();
    auto& t = *typed;
    auto* out = addCommand(app, t.book, chosen, "export",
                           "Write the book, or a part of it, to a file for another device.",
                           "burrow export kiln-row.book kiln-row.burrow --photos reduced",
                           [typed](const Setting& s) { return exportBook(s, *typed); });
    out->add_option("FILE", t.file, "the bundle, by custom NAME.burrow")->required();
    out->add_option("--for", t.madeFor,
                    "only what this device lacked when it last wrote (see burrow peers)");
    out->add_option("--animals", t.animals, "only these, with what belongs to them");
    out->add_option("--photos", t.photos, "none, reduced or full (full)")
        ->check(CLI::IsMember({"none", "reduced", "full"}));
    out->add_flag("--confidential", t.confidential,
                  "also what is marked confidential, prices and buyers");
    addPassphrase(out, t);

    auto* look = app.add_subcommand("peek", "What is in a bundle, without taking it in.");
    look->footer("Example:\n  burrow peek kiln-row.burrow");
    look->add_option("FILE", t.file, "the bundle")->required();
    addPassphrase(look, t);
    look->callback(
        [&chosen, typed] { chosen = [typed](const Setting& s) { return peekInto(s, *typed); }; });

    auto* in = addCommand(app, t.book, chosen, "merge",
                          "Take a bundle into the book: all of it, or nothing.",
                          "burrow merge kiln-row.book from-phone.burrow",
                          [typed](const Setting& s) { return mergeIn(s, *typed); });
    in->add_option("FILE", t.file, "the bundle")->required();
    in->add_flag("--other-book", t.otherBook, "also where it is of another book");
    addPassphrase(in, t);

    auto* second = addCommand(app, t.book, chosen, "join",
                              "Start the same book on another device, from a bundle.",
                              "burrow join kiln-row.book kiln-row.burrow",
                              [typed](const Setting& s) { return join(s, *typed); });
    second->add_option("FILE", t.file, "the bundle")->required();
    addPassphrase(second, t);

    addCommand(app, t.book, chosen, "peers", "Other devices whose bundles were taken in.",
               "burrow peers kiln-row.book",
               [typed](const Setting& s) { return listPeers(s, *typed); });
    addShareCommand(app, chosen);
}

}  // namespace burrow::terminal
