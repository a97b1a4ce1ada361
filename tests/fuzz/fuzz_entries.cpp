// Entries of other devices, however strange, merged into a small room: what is taken in leaves a sound
// book, the same one in whatever order it came, and can be taken back.
//
// Of each line the first word is the kind, the second byte after it chooses the device, the third the
// thing, the fourth the entry it names where the body says "@"; the rest is the body.
#include <algorithm>
#include <nlohmann/json.hpp>

#include "fuzz/target.h"
#include "journal/check.h"
#include "journal/dump.h"
#include "journal/hlc.h"
#include "journal/merge.h"
#include "storage/copy.h"
#include "support/book.h"

using namespace burrow;

namespace {

/// A room as a file, from which each run gets a copy.
class Template {
public:
    Template() {
        test::TestBook room;
        const auto subject = room.add("214", "Brachypelma hamorii");
        const auto logged = room.log(subject, FactKind::watered);
        things.push_back(subject.uuid);
        things.push_back(room.book.id().uuid);
        things.push_back(Uuid::named("somewhere else"));
        named.push_back(logged.entries[0].uuid);
        test::must(room.book.connection().execute("PRAGMA wal_checkpoint(TRUNCATE)"));
        std::filesystem::copy_file(room.book.path(), path());
    }
    [[nodiscard]] std::filesystem::path path() const { return folder.path() / "template.book"; }

    test::ScratchFolder folder;
    std::vector<Uuid> things;
    std::vector<Uuid> named;
};

const Template& original() {
    static const auto* const made = new Template;
    return *made;
}

Uuid idOf(std::size_t line) { return Uuid::named("entry " + std::to_string(line)); }

std::vector<Entry> entriesFrom(std::string_view bytes) {
    std::vector<Entry> entries;
    while (!bytes.empty() && entries.size() < 40) {
        const auto line = bytes.substr(0, bytes.find('\n'));
        bytes.remove_prefix(std::min(bytes.size(), line.size() + 1));
        const auto space = line.find(' ');
        if (space == std::string_view::npos || line.size() < space + 5) continue;
        const auto choice = [&](std::size_t i) {
            return static_cast<std::size_t>(static_cast<unsigned char>(line[space + i]));
        };
        const auto at = static_cast<std::int64_t>(entries.size()) + 1;
        std::string text(line.substr(space + 4));
        if (const auto mark = text.find('@'); mark != std::string::npos) {
            const auto target = choice(3) % 8;
            text.replace(mark, 1, target == 0 ? original().named[0].text() : idOf(target).text());
        }
        Entry entry;
        entry.id = EntryId{idOf(static_cast<std::size_t>(at))};
        entry.device = DeviceId{Uuid::named("device " + std::to_string(choice(1) % 3))};
        entry.seq = 1 + static_cast<std::int64_t>(choice(1) / 3 % 8);
        entry.act = entry.seq;
        entry.hlc = hlc::pack(test::fridayEvening.ms + static_cast<std::int64_t>(choice(2)), at);
        entry.kind = line.substr(0, space);
        entry.thing = original().things[choice(2) % original().things.size()];
        entry.body = nlohmann::json::parse(text, nullptr, false);
        entry.recordedAt = entry.happenedAt = test::fridayEvening;
        entry.day = Zone::utc().dayOf(test::fridayEvening);
        entry.zone = "UTC";
        entries.push_back(std::move(entry));
    }
    return entries;
}

/// The logical dump after merging; empty where the entries were refused.
std::string merged(const std::vector<Entry>& entries, bool takesBack) {
    static const test::ScratchFolder folder;
    const auto path = folder.path() / "fuzz.book";
    std::filesystem::copy_file(original().path(), path,
                               std::filesystem::copy_options::overwrite_existing);
    FixedClock clock{test::fridayEvening};
    SeededRandom random(7);
    std::string dump;
    const auto sink = [&](std::string_view part) {
        dump += part;
        return Done();
    };
    {
        auto book = Book::open(path, storage::Access::readWrite, {clock, random, Zone::utc()});
        BURROW_REQUIRE(book.has_value());
        test::must(book->connection().execute("PRAGMA synchronous = OFF"));
        if (takesBack) test::must(dumpLogical(book->connection(), sink));
        const auto before = std::exchange(dump, {});
        const auto taken = [&]() -> Result<MergeReport> {
            BURROW_TRY(auto merge, Merge::begin(*book, {"fuzz", std::nullopt}));
            for (const auto& entry : entries) BURROW_DO(merge.add(entry));
            return merge.commit();
        }();
        const auto report = check(*book);
        BURROW_REQUIRE(report.has_value());
        for (const auto& finding : report->findings) {
            // A device that lacks some of its numbers is no damage of the file.
            BURROW_REQUIRE(finding.id == "check.gap");
        }
        if (taken) test::must(dumpLogical(book->connection(), sink));
        if (taken && takesBack && taken->arrival) {
            BURROW_REQUIRE(takeBackArrival(*book).has_value());
            std::string after;
            std::swap(after, dump);
            test::must(dumpLogical(book->connection(), sink));
            BURROW_REQUIRE(dump == before);
            dump = after;
        }
    }
    storage::removeDatabase(path);
    return dump;
}

}  // namespace

FUZZ_TARGET(entries) {
    auto entries = entriesFrom(bytes);
    if (entries.empty()) return;
    const auto forth = merged(entries, true);
    std::reverse(entries.begin(), entries.end());
    BURROW_REQUIRE(merged(entries, false) == forth);
}
