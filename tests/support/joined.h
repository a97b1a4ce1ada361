// Several devices that keep the same book.
#pragma once

#include <algorithm>
#include <memory>
#include <random>

#include "journal/differences.h"
#include "journal/dump.h"
#include "journal/merge.h"
#include "journal/version_vector.h"
#include "support/book.h"

namespace burrow::test {

/// Where files are only memory, so that thousands of books can be made and thrown away.
inline std::filesystem::path memoryFolder() {
    std::error_code error;
    const std::filesystem::path memory = "/dev/shm";
    return std::filesystem::is_directory(memory, error) ? memory
                                                        : std::filesystem::temp_directory_path();
}

/// An empty book, made once: making the tables takes longer than a whole short history.
class EmptyBook {
public:
    EmptyBook() {
        const FixedClock clock{fridayEvening};
        SeededRandom random(0xE3F7'12A9'55C0);  // of no device
        must(Book::join(path(), BookId{Uuid::named("Kiln Row")}, {clock, random, Zone::utc()}));
    }
    [[nodiscard]] std::filesystem::path path() const { return folder_.path() / "empty.book"; }

    static const EmptyBook& only() {
        static const EmptyBook book;
        return book;
    }

private:
    ScratchFolder folder_{memoryFolder()};
};

/// A device with a clock of its own, that joined the book of the room. Its files go with it.
class Device {
public:
    explicit Device(std::uint64_t seed) : random(seed), path(folder.path() / "room.book") {
        std::filesystem::copy_file(EmptyBook::only().path(), path);
        open();
        must(held_->becomeNewDevice());
    }

    Surroundings surroundings() { return {clock, random, Zone::utc()}; }
    [[nodiscard]] Book& book() { return *held_; }

    [[nodiscard]] bool hasBackUp() const {
        return std::filesystem::exists(folder.path() / "copy.book");
    }
    /// Keeps a copy of the book, as a backup of the whole phone does.
    void backUp() {
        const auto copy = folder.path() / "copy.book";
        std::filesystem::remove(copy);
        auto target = storage::Connection::open(copy, storage::Access::create).value();
        must(held_->connection().copyInto(target));
    }
    /// Goes on from that copy; what was written since is gone from this device.
    void restore() {
        const auto copy = folder.path() / "copy.book";
        held_.reset();
        for (const char* beside : {"-wal", "-shm"}) {
            std::filesystem::remove(path.string() + beside);
        }
        std::filesystem::copy_file(copy, path, std::filesystem::copy_options::overwrite_existing);
        open();
    }

    ScratchFolder folder{memoryFolder()};
    FixedClock clock{fridayEvening};
    SeededRandom random;
    std::filesystem::path path;

private:
    void open() {
        held_ = std::make_unique<Book>(
            Book::open(path, storage::Access::readWrite, surroundings()).value());
        // What is lost when the power goes is not asked here.
        must(held_->connection().execute("PRAGMA synchronous = OFF"));
    }

    std::unique_ptr<Book> held_;
};

/// An entry as a device elsewhere might have written it; the first of that device.
inline Entry foreign(Device& near, std::string kind, std::optional<Uuid> thing,
                     nlohmann::json body) {
    Entry entry;
    entry.id = EntryId{near.book().newId()};
    entry.device = DeviceId{near.book().newId()};
    entry.seq = entry.act = 1;
    entry.hlc = near.clock.now().ms << 16;
    entry.kind = std::move(kind);
    entry.thing = thing;
    entry.body = std::move(body);
    entry.recordedAt = entry.happenedAt = near.clock.now();
    entry.day = near.surroundings().today();
    entry.zone = "UTC";
    return entry;
}

inline std::vector<std::unique_ptr<Device>> roomOf(int count, std::uint64_t seed) {
    std::vector<std::unique_ptr<Device>> room;
    for (int i = 0; i < count; ++i) {
        room.push_back(std::make_unique<Device>(seed + static_cast<std::uint64_t>(i) * 977));
    }
    auto& first = room.front()->book();
    first.record(SetDraft{ThingType::book, first.id().uuid, {{setting::room, "Kiln Row"}}}).value();
    return room;
}

/// What `to` lacks of `from`, as its version vector says.
inline std::vector<Entry> lacking(Book& from, Book& to, const Selection& selection = {{}, true}) {
    std::vector<Entry> entries;
    const auto vector = versionVector(to.connection()).value();
    must(forEachEntryLacking(from.connection(), vector, selection,
                             [&](const StoredEntry& entry) -> Done {
                                 entries.push_back(entry.toEntry());
                                 return {};
                             }));
    return entries;
}

inline MergeReport merged(Book& to, const std::vector<Entry>& entries) {
    auto merge = Merge::begin(to, {"room.burrow", std::nullopt}).value();
    for (const auto& entry : entries) must(merge.add(entry));
    return merge.commit().value();
}

inline MergeReport sendAll(Device& from, Device& to, const Selection& selection = {{}, true}) {
    return merged(to.book(), lacking(from.book(), to.book(), selection));
}

inline std::string dumpOf(storage::Connection& connection) {
    std::string text;
    must(dumpLogical(connection, [&](std::string_view line) -> Done {
        text += line;
        text += '\n';
        return {};
    }));
    return text;
}
inline std::string dumpOf(Book& book) { return dumpOf(book.connection()); }

/// Whether what was kept step by step equals what a rebuild gives.
inline bool isRebuiltTheSame(Book& book) {
    const auto before = dumpOf(book);
    auto& connection = book.connection();
    must(connection.execute("BEGIN"));
    must(Projector(connection).rebuild());
    const bool isSame = dumpOf(book) == before;
    must(connection.execute("ROLLBACK"));
    return isSame;
}

/// Takes the choice that counts already, until nothing is left to settle.
inline void settleAll(Book& book) {
    for (int round = 0; round < 100; ++round) {
        const auto open = differences(book).value();
        if (open.empty()) return;
        settle(book, open.front(), 0).value();
    }
}

inline void shuffle(std::vector<Entry>& entries, std::uint64_t seed) {
    std::mt19937_64 engine(seed);
    std::shuffle(entries.begin(), entries.end(), engine);
}

}  // namespace burrow::test
