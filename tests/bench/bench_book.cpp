// What it costs to log one event until it is acknowledged, over a bare SQLite insert of the same bytes
// with the same durability (WAL, synchronous FULL) into a table with the journal's two indices. The
// ratio of the two should stay under 1.5. The book holds 1,000 animals and 300,000 entries.
#include <benchmark/benchmark.h>
#include <sqlite3.h>

#include <cstdlib>

#include "support/book.h"

namespace {

using namespace burrow;
using namespace burrow::test;

constexpr int animals = 1000;
constexpr int entries = 300'000;

FactBody cricket() {
    FactBody body;
    body.prey = "cricket";
    body.preyLength = Millimetres{8};
    body.count = 1;
    body.outcome = Outcome::ate;
    return body;
}

/// Filled once: both measurements run beside the same amount of data.
struct FullRoom {
    FullRoom() {
        auto act = room.book.beginAct().value();
        for (int i = 0; i < animals; ++i) {
            Subject subject;
            subject.number = std::to_string(i);
            subject.species = "Brachypelma hamorii";
            ids.push_back(SubjectId{room.book.newId()});
            must(act.add(SetDraft{ThingType::subject, ids.back().uuid, toFields(subject)}));
        }
        for (int i = 0; i < entries; ++i) {
            const Instant at{fridayEvening.ms - (entries - i) * std::int64_t{60'000}};
            must(act.add(FactDraft{ids[static_cast<std::size_t>(i % animals)], FactKind::offered,
                                   cricket(), at}));
        }
        if (!act.commit()) std::abort();
    }
    TestBook room;
    std::vector<SubjectId> ids;
};

FullRoom& fullRoom() {
    static FullRoom room;
    return room;
}

void logOneEvent(benchmark::State& state) {
    auto& full = fullRoom();
    std::size_t next = 0;
    for (auto _ : state) {
        full.room.clock.set({full.room.clock.now().ms + 1000});
        const auto id = full.ids[next++ * 37 % animals];
        const auto done = full.room.book.record(FactDraft{id, FactKind::offered, cricket(), {}});
        if (!done) state.SkipWithError("not logged");
    }
}

void bareInsert(benchmark::State& state) {
    fullRoom();
    const ScratchFolder folder;
    sqlite3* database = nullptr;
    sqlite3_open((folder.path() / "bare.db").c_str(), &database);
    sqlite3_exec(
        database,
        "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;"
        "CREATE TABLE entry (n INTEGER PRIMARY KEY, id BLOB NOT NULL UNIQUE, device INTEGER, "
        "seq INTEGER, body TEXT NOT NULL, at INTEGER, UNIQUE (device, seq));"
        "WITH RECURSIVE c (x) AS (VALUES (1) UNION ALL SELECT x + 1 FROM c WHERE x < 300000) "
        "INSERT INTO entry SELECT x, randomblob(16), 1, x, "
        "'{\"count\":1,\"outcome\":\"ate\",\"prey\":\"cricket\",\"prey_mm\":8.0}', x FROM c",
        nullptr, nullptr, nullptr);
    sqlite3_stmt* insert = nullptr;
    sqlite3_prepare_v2(
        database,
        "INSERT INTO entry (id, device, seq, body, at) VALUES (randomblob(16), 1, ?, "
        "'{\"count\":1,\"outcome\":\"ate\",\"prey\":\"cricket\",\"prey_mm\":8.0}', ?)",
        -1, &insert, nullptr);
    std::int64_t seq = entries;
    for (auto _ : state) {
        sqlite3_bind_int64(insert, 1, ++seq);
        sqlite3_bind_int64(insert, 2, seq);
        if (sqlite3_step(insert) != SQLITE_DONE) state.SkipWithError("not inserted");
        sqlite3_reset(insert);
    }
    sqlite3_finalize(insert);
    sqlite3_close(database);
}

BENCHMARK(logOneEvent)->Unit(benchmark::kMicrosecond)->UseRealTime();
BENCHMARK(bareInsert)->Unit(benchmark::kMicrosecond)->UseRealTime();

}  // namespace

BENCHMARK_MAIN();
