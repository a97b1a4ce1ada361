#include "terminal/session.h"

#include "tags/code.h"

namespace burrow::terminal {

namespace fs = std::filesystem;

Result<Book> openToWrite(const fs::path& path, const Setting& setting) {
    return Book::open(path, storage::Access::readWrite, setting.surroundings());
}

Result<Book> openToRead(const fs::path& path, const Setting& setting) {
    auto book = openToWrite(path, setting);
    if (book || book.error().trouble != Trouble::readOnly) return book;
    return Book::open(path, storage::Access::readOnly, setting.surroundings());
}

Result<Room> roomOn(Book& book, const Setting& setting, std::optional<CivilDay> day) {
    const auto today = day.value_or(setting.surroundings().today());
    setting.console.setToday(today);
    const auto& known = setting.reference;
    return Room::load(book, {known.profiles, known.rules, &known.numbers}, {today, setting.zone});
}

Result<std::shared_ptr<const RoomTables>> tablesOf(Book& book, const Setting& setting) {
    BURROW_TRY(const auto info, roomInfo(book));
    return setting.reference.numbers.with(info);
}

Result<Looking> lookAt(const Setting& setting, const fs::path& path, const std::string& tag,
                       const std::string& on) {
    BURROW_TRY(const auto day, maybeDay(on));
    BURROW_TRY(auto book, openToRead(path, setting));
    BURROW_TRY(const auto id, findSubject(book, tag));
    BURROW_TRY(auto room, roomOn(book, setting, day));
    auto resident = room.find(id);
    if (!resident) return fail(Trouble::notFound, {"tag.unknown", {{"tag", tag}}});
    return Looking{std::move(book), std::move(room), std::move(resident)};
}

Result<SubjectId> findSubject(Book& book, const std::string& word) {
    BURROW_TRY(const auto numbered, subjectsNumbered(book, word));
    if (numbered.size() == 1) return numbered.front();
    const auto missing = fail(Trouble::notFound, {"tag.unknown", {{"tag", word}}});
    if (numbered.size() > 1) return fail(Trouble::notFound, {"tag.clash", {{"tag", word}}});
    const auto code = tags::parseTyped(word);
    if (!code) return missing;
    BURROW_TRY(const auto tag, burrow::tag(book, *code));
    if (!tag) return missing;
    if (tag->subject) return *tag->subject;
    if (!tag->enclosure) return missing;
    BURROW_TRY(const auto inside, subjectsIn(book, *tag->enclosure));
    if (inside.size() == 1) return inside.front();
    return inside.empty() ? missing : fail(Trouble::notFound, {"tag.several", {{"tag", word}}});
}

Result<EnclosureId> findEnclosure(Book& book, const std::string& name) {
    BURROW_TRY(const auto all, enclosures(book));
    for (const auto& enclosure : all) {
        if (enclosure.name == name) return enclosure.id;
    }
    return fail(Trouble::notFound, {"enclosure.unknown", {{"enclosure", name}}});
}

Result<Instant> readMoment(const std::string& text, const Zone& zone) {
    const auto moment = parseIsoMoment(text);
    if (!moment) return fail(Trouble::badInput, {"moment.unreadable", {{"value", text}}});
    return zone.resolve(*moment);
}

Result<CivilDay> readDay(const std::string& text) {
    const auto day = parseIsoDate(text);
    if (!day) return fail(Trouble::badInput, {"day.unreadable", {{"value", text}}});
    return *day;
}

Result<std::optional<CivilDay>> maybeDay(const std::string& text) {
    if (text.empty()) return std::optional<CivilDay>();
    BURROW_TRY(const auto day, readDay(text));
    return std::optional(day);
}

}  // namespace burrow::terminal
