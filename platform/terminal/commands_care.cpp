// Commands about what is due and what happened.
#include <fmt/format.h>

#include "base/files.h"
#include "files/developer.h"
#include "files/picture_file.h"
#include "pictures/store.h"
#include "tags/code.h"
#include "tags/symbol.h"
#include "terminal/commands.h"
#include "terminal/describe.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

/// Enough for four years of one animal; `show` says how many there are when there are more.
constexpr int mostShown = 2000;

/// A photo named by file: kept beside the book first, so that the entry can name it.
Done keepPhoto(const Setting& /*setting*/, const Path& book, const std::string& file,
               FactBody& body) {
    DeviceFiles files;
    QtDeveloper developer;
    BURROW_TRY(const auto bytes, files.read(file, pictures::Limits().bytes));
    pictures::Store store(pictures::Store::folderFor(book), files);
    BURROW_TRY(const auto photo, store.keep(bytes, developer));
    body.picture = photo.picture;
    body.original = photo.original;
    if (!body.role) body.role = PhotoRole::animal;
    return {};
}

Result<FactBody> readFields(const Setting& setting, Book& book, FactKind kind,
                            const std::vector<std::string>& fields) {
    FactBody body;
    std::string photoFile;
    for (const auto& field : fields) {
        const auto equals = field.find('=');
        if (equals == std::string::npos) {
            return fail(Trouble::badInput, {"log.noEquals", {{"field", field}}});
        }
        const auto name = field.substr(0, equals);
        const auto value = field.substr(equals + 1);
        if (kind == FactKind::photo && name == "file") {
            photoFile = value;
        } else if (kind == FactKind::rehoused && name == "enclosure") {
            BURROW_TRY(body.enclosure, findEnclosure(book, value));
        } else {
            BURROW_DO(setField(body, kind, name, value));
        }
    }
    // The picture comes last: a mistake in another field must not leave files behind.
    if (!photoFile.empty()) BURROW_DO(keepPhoto(setting, book.path(), photoFile, body));
    BURROW_DO(checkComplete(body, kind));
    return body;
}

Result<Message> logEntry(const Setting& setting, const Path& path, const std::string& tag,
                         const std::string& kindText, const std::vector<std::string>& fields,
                         const std::string& at, json& value) {
    const auto kind = parseFactKind(kindText);
    if (!kind) return fail(Trouble::badInput, {"log.unknownKind", {{"kind", kindText}}});
    std::optional<Instant> happenedAt;
    if (!at.empty()) {
        BURROW_TRY(happenedAt, readMoment(at, setting.zone));
    }
    BURROW_TRY(auto book, openToWrite(path, setting));
    BURROW_TRY(const auto subject, findSubject(book, tag));
    BURROW_TRY(auto body, readFields(setting, book, *kind, fields));
    BURROW_TRY(const auto changes,
               book.record(FactDraft{subject, *kind, std::move(body), happenedAt}));
    BURROW_TRY(const auto kept, burrow::kept(book, subject));
    value = {{"code", kept->subject.number},
             {"event", std::string(spec(*kind).name)},
             {"id", changes.entries.front().text()}};
    return Message{"said.logged",
                   {{"code", kept->subject.number}, {"event", std::string(spec(*kind).name)}}};
}

}  // namespace

int due(const Setting& setting, const Path& path, const std::string& on) {
    auto& console = setting.console;
    const auto day = maybeDay(on);
    if (!day) return console.trouble(day.error());
    auto book = openToRead(path, setting);
    if (!book) return console.trouble(book.error());
    const auto room = roomOn(*book, setting, *day);
    if (!room) return console.trouble(room.error());
    json lines = json::array();
    std::string shelf = "\n";
    for (const auto& visit : room->visits()) {
        const auto& resident = *visit.resident;
        if (const auto here = resident.kept.place.shelfOnly().text(); here != shelf) {
            shelf = here;
            console.line(here.empty() ? console.words().say("said.noShelf") : here);
        }
        for (const auto& answer : visit.answers) {
            lines.push_back(toJson(resident, answer, console));
            console.line(fmt::format("  {:<6} {:<28} {}", resident.subject().number,
                                     resident.subject().species,
                                     sentence(resident, answer, console)));
        }
    }
    if (lines.empty()) console.line(console.words().say("said.nothingDue"));
    console.value(lines);
    return done;
}

int show(const Setting& setting, const Path& path, const std::string& tag) {
    auto& console = setting.console;
    auto looking = lookAt(setting, path, tag, {});
    if (!looking) return console.trouble(looking.error());
    const auto facts = history(looking->book, looking->resident->subject().id, mostShown);
    if (!facts) return console.trouble(facts.error());
    const auto& subject = looking->resident->subject();
    console.line(fmt::format("{}  {}  {}", subject.number, subject.species, name(subject.sex)));
    console.line(looking->resident->kept.place.text());
    auto value = toJson(*looking->resident, console);
    value["history"] = json::array();
    for (const auto& fact : *facts) {
        value["history"].push_back(toJson(fact));
        console.line("  " + line(fact, console));
    }
    console.value(value);
    return done;
}

int scan(const Setting& setting, const Path& path, const Path& picture) {
    auto& console = setting.console;
    DeviceFiles files;
    const auto bytes = files.read(picture, pictures::Limits().bytes);
    if (!bytes) return console.trouble(bytes.error());
    const auto decoded = decodePicture(*bytes, true);
    if (!decoded) return console.trouble(decoded.error());
    const auto grey = decoded->convertToFormat(QImage::Format_Grayscale8);
    const auto found = tags::decode(
        {grey.constBits(), grey.width(), grey.height(), static_cast<int>(grey.bytesPerLine())},
        tags::Effort::thorough);
    const auto* nearest = tags::nearestCentre(found, {grey.width() / 2.0, grey.height() / 2.0});
    if (nearest == nullptr) return console.trouble(Message{"scan.none"});
    const auto reading = tags::parsePayload(nearest->bytes);
    if (std::holds_alternative<tags::DamagedTag>(reading)) {
        return console.trouble(Message{"scan.damaged"});
    }
    if (const auto* foreign = std::get_if<tags::ForeignSymbol>(&reading)) {
        const std::string id = foreign->webAddress ? "scan.webAddress" : "scan.foreign";
        return console.trouble(Message{id, {{"shown", foreign->shown}}});
    }
    const auto* own = std::get_if<tags::OwnTag>(&reading);
    if (own == nullptr) return console.trouble(Message{"scan.unreadable"});

    const auto looking = lookAt(setting, path, own->code, {});
    if (!looking && looking.error().trouble == Trouble::notFound &&
        looking.error().message.id == "tag.unknown") {
        return console.trouble(Message{"scan.unbound", {{"code", tags::displayCode(own->code)}}});
    }
    if (!looking) return console.trouble(looking.error());
    const auto& resident = *looking->resident;
    auto value = toJson(resident, console);
    value["tag"] = own->code;
    value["care"] = json::array();
    console.line(fmt::format("{}  {}", resident.subject().number, resident.subject().species));
    for (const auto& answer : resident.plan.answers) {
        if (answer.state != State::due && answer.state != State::hold) continue;
        value["care"].push_back(toJson(resident, answer, console));
        console.line("  " + sentence(resident, answer, console));
    }
    console.value(value);
    return done;
}

int log(const Setting& setting, const Path& path, const std::string& tag, const std::string& kind,
        const std::vector<std::string>& fields, const std::string& at) {
    json value;
    const auto said = logEntry(setting, path, tag, kind, fields, at, value);
    if (!said) return setting.console.trouble(said.error());
    setting.console.line(setting.console.say(*said));
    setting.console.value(value);
    return done;
}

int undo(const Setting& setting, const Path& path) {
    auto& console = setting.console;
    auto book = openToWrite(path, setting);
    if (!book) return console.trouble(book.error());
    const auto undone = book->undo();
    if (!undone) return console.trouble(undone.error());
    json entries = json::array();
    for (const auto& entry : undone->second) {
        // What stood beside another entry so that it can be left out of files is no event of its own.
        const bool isBeside = undone->second.size() > 1 && entry.kind == entrykind::amend &&
                              entry.body.value("confidential", false);
        if (isBeside) continue;
        entries.push_back({{"id", entry.id.text()}, {"event", entry.kind}});
        console.line(console.say({"said.undone", {{"event", entry.kind}}}));
    }
    console.value({{"undone", entries}});
    return done;
}

}  // namespace burrow::terminal
