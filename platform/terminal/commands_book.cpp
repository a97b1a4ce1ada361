// Commands that make and look over a book.
#include <fmt/format.h>

#include "demo_room.h"
#include "journal/check.h"
#include "room/chores.h"
#include "terminal/commands.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

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
