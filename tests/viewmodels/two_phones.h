// Two phones with the same room: the fixture's own book, and another one that started from its file.
#pragma once

#include "exchange/bundle.h"
#include "files/developer.h"
#include "journal/fields.h"
#include "ports/darkroom.h"
#include "viewmodels/desk_fixture.h"

namespace burrow::test {

class TwoPhones {
public:
    TwoPhones() : darkroom(files, developer) {
        at.openRoom();
        const auto start = at.folder.path() / "start.burrow";
        at.desk.ask<exchange::Manifest>(
            &at.desk, [start](Book& book) { return exchange::exportBundle(book, start, {}); },
            [](const Result<exchange::Manifest>& made) { made.value(); });
        at.settle();
        exchange::joinFromBundle(otherPath(), start, files, around()).value();
        other.emplace(Book::open(otherPath(), storage::Access::readWrite, around()).value());
    }

    [[nodiscard]] std::filesystem::path otherPath() const {
        return at.folder.path() / "other.book";
    }
    [[nodiscard]] Surroundings around() { return {at.clock, random, Zone::utc()}; }

    /// A file of the other phone, of all it has.
    QUrl fileOfTheOther(const exchange::ExportOptions& options = {}) {
        const auto path = at.folder.path() / ("other" + std::to_string(++fileCount) + ".burrow");
        exchange::exportBundle(*other, path, options).value();
        return QUrl::fromLocalFile(QString::fromStdString(path.string()));
    }
    /// Something new on the other phone.
    SubjectId addThere(const char* number, const char* species) {
        Subject subject;
        subject.number = number;
        subject.species = species;
        const SubjectId id{other->newId()};
        other->record(SetDraft{ThingType::subject, id.uuid, toFields(subject)}).value();
        return id;
    }

    DeskFixture at;
    SeededRandom random{99};
    DeviceFiles files;
    QtDeveloper developer;
    Darkroom darkroom;
    std::optional<Book> other;
    int fileCount = 0;
};

}  // namespace burrow::test
