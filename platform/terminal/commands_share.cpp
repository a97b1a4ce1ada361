// One visit to a shared folder.
#include <memory>

#include "exchange/share.h"
#include "files/developer.h"
#include "terminal/describe_bundle.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

struct Typed {
    Path book;
    Path folder;
    std::string photos = "full";
    bool confidential = false;
    bool anew = false;
};

json listOf(const std::vector<exchange::NotTaken>& files) {
    json list = json::array();
    for (const auto& [name, reason] : files) {
        list.push_back({{"name", name}, {"reason", toJson(reason)}});
    }
    return list;
}

void tellNotTaken(const char* id, const std::vector<exchange::NotTaken>& files,
                  const Console& console) {
    for (const auto& [name, reason] : files) {
        console.line(console.say({id, {{"name", name}, {"reason", console.say(reason)}}}));
    }
}

void tell(const exchange::ShareReport& report, const Console& console) {
    console.line(console.say({"said.shared",
                              {{"files", report.filesTaken},
                               {"added", report.entriesAdded},
                               {"photosIn", report.photosAdded},
                               {"written", report.entriesWritten},
                               {"photosOut", report.photosWritten}}}));
    tellNotTaken("said.waiting", report.waiting, console);
    tellNotTaken("said.refused", report.refused, console);
    warn(report.ahead, report.forked, report.isNewDevice, report.differences, console);
    console.value({{"files_taken", report.filesTaken},
                   {"added", report.entriesAdded},
                   {"photos_added", report.photosAdded},
                   {"written", report.entriesWritten},
                   {"photos_written", report.photosWritten},
                   {"waiting", listOf(report.waiting)},
                   {"refused", listOf(report.refused)},
                   {"passed_over", report.passedOver},
                   {"new_device", report.isNewDevice},
                   {"differences", report.differences}});
}

int share(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    auto book = openToWrite(typed.book, setting);
    if (!book) return console.trouble(book.error());
    QtDeveloper developer;
    DeviceFiles files;
    exchange::ShareOptions options;
    options.photos = exchange::parsePhotoChoice(typed.photos).value_or(exchange::PhotoChoice::none);
    options.withConfidential = typed.confidential;
    options.anew = typed.anew;
    options.program = std::string("Burrowbook ") + BURROW_VERSION;
    options.developer = &developer;
    options.onProgress = showProgress(console);
    const auto report = exchange::visitSharedFolder(*book, typed.folder, files, options);
    endProgress();
    if (!report) return console.trouble(report.error());
    tell(*report, console);
    return done;
}

}  // namespace

void addShareCommand(CLI::App& app, Command& chosen) {
    const auto typed = std::make_shared<Typed>();
    auto& t = *typed;
    auto* command = addCommand(
        app, t.book, chosen, "share",
        "Visit a folder that is carried between your devices: take in what the others wrote there, "
        "and write what they lack.",
        "burrow share kiln-row.book ~/Sync/kiln-row",
        [typed](const Setting& s) { return share(s, *typed); });
    command->add_option("FOLDER", t.folder, "the folder; it must be there")->required();
    command->add_option("--photos", t.photos, "none, reduced or full (full)")
        ->check(CLI::IsMember({"none", "reduced", "full"}));
    command->add_flag("--confidential", t.confidential,
                      "also what is marked confidential, prices and buyers");
    command->add_flag("--anew", t.anew, "write everything once more");
}

}  // namespace burrow::terminal
