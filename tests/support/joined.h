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

/// A device with a clock of its own. Its files go with it.
class Device {
public:
    /// The first of a room makes the book, the others join it.
    Device(std::uint64_t seed, std::optional<BookId> joins)
        : random(seed),
          book(joins ? Book::join(folder.path() / "room.book", *joins, surroundings()).value()
                     : Book::create(folder.path() / "room.book", "Kiln Row", "KR", surroundings())
                           .value()) {}

    Surroundings surroundings() { return {clock, random, Zone::utc()}; }

    /// An entry as a newer version might write it.
    void writeUnknown(const Uuid& thing) {
        Entry entry;
        entry.id = EntryId{book.newId()};
        entry.seq = entry.act = ++unknown;
        entry.hlc = clock.now().ms << 16;
        entry.kind = "levitated";
        entry.thing = thing;
        entry.body = {{"mm", 3}};
        entry.recordedAt = entry.happenedAt = clock.now();
        entry.zone = "UTC";
        entry.device = DeviceId{book.newId()};
        auto merge = Merge::begin(book, {"newer.burrow", entry.device}).value();
        must(merge.add(entry));
        merge.commit().value();
    }

    ScratchFolder folder{memoryFolder()};
    FixedClock clock{fridayEvening};
    SeededRandom random;
    Book book;
    std::int64_t unknown = 0;
};

inline std::vector<std::unique_ptr<Device>> roomOf(int count, std::uint64_t seed) {
    std::vector<std::unique_ptr<Device>> room;
    for (int i = 0; i < count; ++i) {
        const auto joins = room.empty() ? std::nullopt : std::optional(room.front()->book.id());
        room.push_back(std::make_unique<Device>(seed + static_cast<std::uint64_t>(i) * 977, joins));
    }
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
    return merged(to.book, lacking(from.book, to.book, selection));
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
