// What it costs to unite books, over what `sqlite3 .import` takes to put the same rows into a table with
// the journal's two indices: new entries, entries that are all here already, and one new entry into a
// large and a small book. Prints three ratios and ends with 1 when one is over its bound.
//   bench_merge           1,000,000 entries; one more into 5,000,000 and into 50,000
//   bench_merge --short   a hundredth of that, to see that it still runs; bounds are not looked at
#include <fmt/format.h>
#include <sqlite3.h>
#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <functional>

#include "journal/merge.h"
#include "journal/version_vector.h"
#include "support/book.h"

namespace {

using namespace burrow;
using namespace burrow::test;
using Seconds = std::chrono::duration<double>;

double secondsFor(const std::function<void()>& work) {
    const auto start = std::chrono::steady_clock::now();
    work();
    return Seconds(std::chrono::steady_clock::now() - start).count();
}

constexpr std::int64_t animals = 1000;

Uuid numbered(std::uint64_t space, std::int64_t number) {
    // As a version 7 UUID: the time in front, the rest random but repeatable.
    Uuid uuid = Uuid::named(fmt::format("{} {}", space, number));
    const auto ms = static_cast<std::uint64_t>(fridayEvening.ms + number * 1000);
    for (unsigned i = 0; i < 6; ++i) {
        uuid.bytes[i] = static_cast<std::uint8_t>(ms >> (40 - 8 * i));
    }
    return uuid;
}

/// Years of a large room, written by three devices: mostly meals, some notes, fields and amendments.
class Years {
public:
    explicit Years(std::int64_t count) : count_(count) {}

    [[nodiscard]] std::int64_t count() const { return count_; }
    [[nodiscard]] Entry at(std::int64_t i) const {
        Entry entry;
        // One device after the other, as files hold them.
        const auto share = count_ / 3 + 1;
        entry.device = DeviceId{Uuid::named(fmt::format("device {}", i / share))};
        entry.seq = entry.act = i % share + 1;
        entry.id = EntryId{numbered(1, i)};
        entry.recordedAt = entry.happenedAt = {fridayEvening.ms + i * 1000 - count_ * 1000};
        entry.hlc = entry.happenedAt.ms << 16;
        entry.day = {static_cast<std::int32_t>(entry.happenedAt.ms / msPerDay)};
        entry.zone = "Europe/Berlin";
        entry.thing = numbered(2, i * 7 % animals);
        if (i < animals) {
            entry.kind = "set";
            entry.thing = numbered(2, i);
            entry.body = {
                {"type", "subject"},
                {"over", nlohmann::json::object()},
                {"fields", {{"number", std::to_string(i)}, {"species", "Brachypelma hamorii"}}}};
        } else if (i % 50 == 0) {
            entry.kind = "amend";
            entry.thing = numbered(2, (i - 9) * 7 % animals);
            entry.body = {{"entry", numbered(1, i - 9).text()},
                          {"over", nlohmann::json::array()},
                          {"body", meal("refused")}};
        } else if (i % 10 == 0) {
            entry.kind = "note";
            entry.body = {{"text", fmt::format("webbed over the dish, {}", i)}};
        } else {
            entry.kind = "offered";
            entry.body = meal(i % 5 == 0 ? "refused" : "ate");
        }
        return entry;
    }

private:
    static nlohmann::json meal(const char* outcome) {
        return {{"count", 1}, {"outcome", outcome}, {"prey", "cricket"}, {"prey_mm", 8.0}};
    }
    std::int64_t count_;
};

/// Merges entries `from` to `to` and gives the seconds that the merge itself took; the entries are made
/// between, a portion at a time.
double mergeSeconds(Book& book, const Years& years, std::int64_t from, std::int64_t to) {
    constexpr std::int64_t portionSize = 10'000;
    std::optional<Merge> merge;
    auto seconds = secondsFor([&] {
        merge.emplace(Merge::begin(book, {"years.burrow", std::nullopt}).value());
    });
    std::vector<Entry> portion;
    for (auto next = from; next < to; next += portionSize) {
        portion.clear();
        for (auto i = next; i < std::min(to, next + portionSize); ++i)
            portion.push_back(years.at(i));
        seconds += secondsFor([&] {
            for (const auto& entry : portion) must(merge->add(entry));
        });
    }
    return seconds + secondsFor([&] { merge->commit().value(); });
}

std::string hex(const Uuid& uuid) {
    std::string text;
    for (const auto byte : uuid.bytes) text += fmt::format("{:02x}", byte);
    return text;
}

std::string inQuotes(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"') out += '"';
        out += c;
    }
    return out + "\"";
}

/// The rows as a file, and the shell that ships with SQLite bringing them in.
double importSeconds(const std::filesystem::path& folder, const Years& years) {
    const auto csv = folder / "entries.csv";
    {
        std::ofstream file(csv);
        for (std::int64_t i = 0; i < years.count(); ++i) {
            const auto e = years.at(i);
            file << hex(e.id.uuid) << ',' << hex(e.device.uuid) << ',' << e.seq << ',' << e.act
                 << ',' << e.hlc << ',' << e.kind << ',' << hex(e.thing.value_or(Uuid{})) << ','
                 << inQuotes(e.body.dump()) << ',' << e.recordedAt.ms << ',' << e.happenedAt.ms
                 << ',' << e.day.days << ',' << e.zone << '\n';
        }
    }
    const auto script = folder / "import.sql";
    std::ofstream(script)
        << "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;\n"
           "CREATE TABLE entry (id TEXT NOT NULL UNIQUE, device TEXT NOT NULL, seq INTEGER NOT "
           "NULL, act INTEGER NOT NULL, hlc INTEGER NOT NULL, kind TEXT NOT NULL, thing TEXT, body "
           "TEXT NOT NULL, recorded_at INTEGER NOT NULL, happened_at INTEGER NOT NULL, day INTEGER "
           "NOT NULL, zone TEXT NOT NULL);\n"
           "CREATE INDEX entry_of_device ON entry (device, seq, id);\n"
           ".import --csv "
        << csv.string() << " entry\n";
    const auto command = fmt::format("sqlite3 '{}' < '{}' > /dev/null",
                                     (folder / "imported.db").string(), script.string());
    return secondsFor([&] {
        if (std::system(command.c_str()) != 0) throw std::runtime_error("sqlite3 did not import");
    });
}

/// The middle of several single merges, each of one new entry.
double oneMoreSeconds(Book& book) {
    std::vector<double> times;
    for (std::int64_t i = 0; i < 101; ++i) {
        Entry entry = Years(1'000'000).at(999'999);
        entry.id = EntryId{numbered(3, i)};
        entry.thing = numbered(2, i * 7 % animals);
        entry.device = DeviceId{Uuid::named("one more")};
        entry.seq = entry.act = i + 1;
        entry.recordedAt = entry.happenedAt = {fridayEvening.ms + i * 1000};
        times.push_back(secondsFor([&] {
            auto merge = Merge::begin(book, {"one.burrow", std::nullopt}).value();
            must(merge.add(entry));
            merge.commit().value();
        }));
    }
    std::nth_element(times.begin(), times.begin() + 50, times.end());
    return times[50];
}

/// A book with so many entries.
std::unique_ptr<TestBook> bookOf(std::int64_t count) {
    auto room = std::make_unique<TestBook>();
    mergeSeconds(room->book, Years(count), 0, count);
    return room;
}

class Report {
public:
    explicit Report(bool isShort) : isShort_(isShort) {}
    void ratio(const char* what, double seconds, double reference, double bound) {
        const auto value = seconds / reference;
        fmt::print("{:<44} {:>8.2f} ms  {:>8.2f} ms  ratio {:.2f}, bound {:.1f}\n", what,
                   seconds * 1000, reference * 1000, value, bound);
        isOver_ |= value > bound;
    }
    [[nodiscard]] int status() const { return isOver_ && !isShort_ ? 1 : 0; }

private:
    bool isShort_;
    bool isOver_ = false;
};

}  // namespace

int main(int argc, char** argv) {
    const bool isShort = argc > 1 && std::strcmp(argv[1], "--short") == 0;
    const std::int64_t scale = isShort ? 100 : 1;
    Report report(isShort);
    {
        const Years years(1'000'000 / scale);
        TestBook room;
        const auto reference = importSeconds(room.folder.path(), years);
        const auto added = mergeSeconds(room.book, years, 0, years.count());
        report.ratio("all of it new, over sqlite3 .import", added, reference, 3.0);
        const auto again = mergeSeconds(room.book, years, 0, years.count());
        report.ratio("all of it here already, over the same", again, reference, 0.3);
    }
    {
        const auto small = bookOf(50'000 / scale);
        const auto large = bookOf(5'000'000 / scale);
        const auto little = oneMoreSeconds(small->book);
        const auto much = oneMoreSeconds(large->book);
        report.ratio("one more in a large book, over a small one", much, little, 1.5);
    }
    struct rusage usage {};
    getrusage(RUSAGE_SELF, &usage);
    fmt::print("{:<44} {:>8} MB\n", "most memory", usage.ru_maxrss / 1024);
    return report.status();
}
