// A book in a folder of its own, with a clock and a random source that tests control.
#pragma once

#include <filesystem>
#include <random>
#include <stdexcept>
#include <string>

#include "journal/book.h"
#include "journal/fields.h"
#include "journal/roster.h"

namespace burrow::test {

/// The message's id, and what SQLite said where it said anything.
inline std::string describe(const Error& error) {
    const auto* cause = error.message.find("cause");
    const auto* text = cause != nullptr ? std::get_if<std::string>(cause) : nullptr;
    return error.message.id + (text != nullptr ? ": " + *text : std::string());
}

/// For what has no value to show that it worked.
template <class T>
void must(const Result<T>& done) {
    if (!done) throw std::runtime_error(describe(done.error()));
}

/// The value by itself: what a loop may run over.
template <class T>
T got(Result<T> result) {
    return std::move(result).value();
}

/// A folder that goes with its owner.
class ScratchFolder {
public:
    explicit ScratchFolder(
        const std::filesystem::path& parent = std::filesystem::temp_directory_path()) {
        std::random_device device;
        path_ = parent / ("burrow-test-" + std::to_string(device()) + std::to_string(device()));
        std::filesystem::create_directories(path_);
    }
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;
    ~ScratchFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

/// 8 May 2026, 19:14 UTC: a Friday evening in the room.
inline constexpr Instant fridayEvening{1'778'267'640'000};
inline constexpr std::int64_t msPerDay = 86'400'000;

class TestBook {
public:
    explicit TestBook(std::uint64_t seed = 1)
        : random(seed),
          book(Book::create(folder.path() / "kiln-row.book", "Kiln Row", "KR", surroundings())
                   .value()) {}

    Surroundings surroundings() { return {clock, random, Zone::utc()}; }

    SubjectId add(const std::string& number, const std::string& species, Form form = Form::animal,
                  int count = 1) {
        Subject subject;
        subject.number = number;
        subject.species = species;
        subject.form = form;
        subject.headcount = count;
        const SubjectId id{book.newId()};
        book.record(SetDraft{ThingType::subject, id.uuid, toFields(subject)}).value();
        return id;
    }

    ChangeSet log(SubjectId subject, FactKind kind, FactBody body = {},
                  std::optional<Instant> at = std::nullopt) {
        return book.record(FactDraft{subject, kind, std::move(body), at}).value();
    }

    Kept kept(SubjectId id) { return burrow::kept(book, id).value().value(); }

    ScratchFolder folder;
    FixedClock clock{fridayEvening};
    SeededRandom random;
    Book book;
};

}  // namespace burrow::test
