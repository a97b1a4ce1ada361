// An open book with what every command needs around it.
#pragma once

#include <filesystem>
#include <memory>

#include "files/reference.h"
#include "room/room.h"
#include "terminal/console.h"

namespace burrow::terminal {

/// What stays the same for the whole run of the program.
struct Setting {
    const Clock& clock;
    Random& random;
    Zone zone;
    const Reference& reference;
    Console& console;

    [[nodiscard]] Surroundings surroundings() const { return {clock, random, zone}; }
};

/// Opens for writing; reads only where the file or its folder may not be written.
Result<Book> openToRead(const std::filesystem::path& path, const Setting& setting);
Result<Book> openToWrite(const std::filesystem::path& path, const Setting& setting);

/// The room on that day, today where nothing is given.
Result<Room> roomOn(Book& book, const Setting& setting, std::optional<CivilDay> day);

/// The trade's numbers with the keeper's own of that book.
Result<std::shared_ptr<const RoomTables>> tablesOf(Book& book, const Setting& setting);

/// The room on a day, and one of its subjects.
struct Looking {
    Book book;
    Room room;
    ResidentPtr resident;
};
/// `on` as in maybeDay.
Result<Looking> lookAt(const Setting& setting, const std::filesystem::path& path,
                       const std::string& tag, const std::string& on);

/// The one subject a typed word means: its number ("214", "KR-214"), or the code of its tag. Fails with
/// `notFound` for none, and for several with the same number.
Result<SubjectId> findSubject(Book& book, const std::string& word);
/// The enclosure of that name.
Result<EnclosureId> findEnclosure(Book& book, const std::string& name);

/// A moment as typed; what it leaves open is filled in from the keeper's zone.
Result<Instant> readMoment(const std::string& text, const Zone& zone);
Result<CivilDay> readDay(const std::string& text);
/// Nothing for an empty text.
Result<std::optional<CivilDay>> maybeDay(const std::string& text);

}  // namespace burrow::terminal
