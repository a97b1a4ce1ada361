// What a large room costs, as ratios in one run: planning everyone over a scan of SQLite that merely reads
// the rows it needs; planning again after one entry over planning everyone; the first lines of the due list
// of the large room over those of a small one; and memory for each subject. Ends with 1 when one is over its
// bound.
//   bench_plan [--folder FOLDER] [--subjects N] [--entries N]   20,000 and 5,000,000; kept in the folder
//   bench_plan --short                                           1,000 and 20,000; bounds are not looked at
#include <malloc.h>
#include <sqlite3.h>

#include <algorithm>
#include <chrono>
#include <cstring>
#include <functional>
#include <random>

#include "bench/large_book.h"
#include "room/front.h"
#include "room/room.h"

namespace {

using namespace burrow;
using namespace burrow::test;
using Seconds = std::chrono::duration<double>;

struct Asked {
    std::filesystem::path folder;
    std::int64_t subjects = 20'000;
    std::int64_t entries = 5'000'000;
    bool isShort = false;
};

Asked readCommandLine(int argc, char** argv) {
    Asked asked;
    for (int i = 1; i < argc; ++i) {
        const std::string_view word = argv[i];
        const char* value = i + 1 < argc ? argv[i + 1] : "";
        if (word == "--short") {
            asked.isShort = true;
            asked.subjects = 1000;
            asked.entries = 20'000;
        } else if (word == "--folder") {
            asked.folder = value;
        } else if (word == "--subjects") {
            asked.subjects = std::atoll(value);
        } else if (word == "--entries") {
            asked.entries = std::atoll(value);
        }
    }
    return asked;
}

double secondsFor(const std::function<void()>& work) {
    const auto start = std::chrono::steady_clock::now();
    work();
    return Seconds(std::chrono::steady_clock::now() - start).count();
}

/// The middle of several runs, each after `before`, which is not counted.
double median(
    int runs, const std::function<void()>& work, const std::function<void()>& before = [] {}) {
    std::vector<double> times;
    for (int i = 0; i < runs; ++i) {
        before();
        times.push_back(secondsFor(work));
    }
    std::nth_element(times.begin(), times.begin() + runs / 2, times.end());
    return times[static_cast<std::size_t>(runs / 2)];
}

const Room::Reference& reference() {
    static const auto profiles = shippedProfiles();
    static const auto rules = shippedRules();
    static const Room::Reference shared{profiles, rules};
    return shared;
}

PlanDay today() { return PlanDay::at(fridayEvening, Zone::utc()); }

/// Steps through every row of the tables that a plan is made from and reads each column, with SQLite alone.
std::int64_t scan(sqlite3* database) {
    constexpr const char* sql =
        "SELECT s.id, s.number, s.form, s.species, s.sex, s.hatched, s.acquired, s.source, "
        "s.standing, s.quarantined, s.mature, s.enclosure, s.place, s.mother, s.father, "
        "s.headcount, s.note, e.place, d.state, e.length_mm, e.width_mm, e.height_mm, "
        "e.substrate_mm FROM subject s LEFT JOIN enclosure e ON e.id = s.enclosure LEFT JOIN "
        "digest d ON d.subject = s.id";
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v2(database, sql, -1, &statement, nullptr) != SQLITE_OK) return -1;
    std::int64_t bytes = 0;
    const int columns = sqlite3_column_count(statement);
    while (sqlite3_step(statement) == SQLITE_ROW) {
        for (int column = 0; column < columns; ++column) {
            const void* value = sqlite3_column_blob(statement, column);
            if (value != nullptr) bytes += sqlite3_column_bytes(statement, column);
        }
    }
    sqlite3_finalize(statement);
    return bytes;
}

Book openBook(const std::filesystem::path& path) {
    static const FixedClock clock{fridayEvening};
    // Not the same twice: a book that is kept holds the entries of the run before.
    static SeededRandom random(std::random_device{}());
    return Book::open(path, storage::Access::readWrite, {clock, random, Zone::utc()}).value();
}

/// From nothing to the first lines of the due list, as the app does it.
std::size_t openToFirstLines(const std::filesystem::path& path) {
    auto book = openBook(path);
    const auto first = notedFront(path);
    const auto room = first.empty() ? Room::load(book, reference(), today())
                                    : Room::loadOnly(book, reference(), today(), first);
    const auto listed = room.value().listed();
    constexpr std::size_t screen = 12;
    std::size_t said = 0;
    for (std::size_t i = 0; i < std::min(screen, listed.size()); ++i) {
        said += listed[i]->resident()->plan.of(Care::feed).reason.id.size();
    }
    return said;
}

/// Bytes that are held while a room is, besides what the book's own cache holds.
std::size_t bytesOf(const std::filesystem::path& path) {
    auto book = openBook(path);
    static_cast<void>(Room::load(book, reference(), today()).value());  // fills the cache
    malloc_trim(0);
    const auto before = mallinfo2().uordblks;
    const auto room = Room::load(book, reference(), today()).value();
    malloc_trim(0);
    return mallinfo2().uordblks - before;
}

class Report {
public:
    explicit Report(bool isShort) : isShort_(isShort) {}
    void ratio(const char* what, double seconds, double against, double bound) {
        const auto value = seconds / against;
        fmt::print("{:<46} {:>9.3f} ms {:>9.3f} ms  ratio {:.4f}, bound {:.4g}\n", what,
                   seconds * 1000, against * 1000, value, bound);
        isOver_ |= value > bound;
    }
    void bytes(const char* what, double value, double bound) {
        fmt::print("{:<46} {:>9.0f} bytes  bound {:.0f}\n", what, value, bound);
        isOver_ |= value > bound;
    }
    [[nodiscard]] int status() const { return isOver_ && !isShort_ ? 1 : 0; }

private:
    bool isShort_;
    bool isOver_ = false;
};

}  // namespace

int main(int argc, char** argv) {
    const auto asked = readCommandLine(argc, argv);
    const ScratchFolder scratch;
    const auto folder = asked.folder.empty() ? scratch.path() : asked.folder;
    const auto& profiles = reference().profiles;
    const auto large = largeBook(folder, asked.subjects, asked.entries, profiles);
    constexpr std::int64_t few = 200;
    const auto small = largeBook(folder, few, asked.entries / asked.subjects * few, profiles);
    Report report(asked.isShort);
    const int runs = asked.isShort ? 3 : 9;

    auto book = openBook(large);
    sqlite3* database = nullptr;
    if (sqlite3_open_v2(large.c_str(), &database, SQLITE_OPEN_READONLY, nullptr) != SQLITE_OK)
        return 2;
    std::int64_t bytes = 0;
    // Side by side, in turn, so that what else the machine does meets both.
    std::vector<double> full;
    std::vector<double> read;
    auto room = Room::load(book, reference(), today()).value();
    for (int i = 0; i < runs; ++i) {
        read.push_back(secondsFor([&] { bytes += scan(database); }));
        full.push_back(secondsFor([&] { room = Room::load(book, reference(), today()).value(); }));
    }
    sqlite3_close(database);
    const auto middle = [](std::vector<double> times) {
        std::sort(times.begin(), times.end());
        return times[times.size() / 2];
    };
    fmt::print("{} subjects, {} listed, {} bytes read\n", room.size(), room.listed().size(),
               bytes / runs);
    report.ratio("everyone planned, over a scan of the rows", middle(full), middle(read), 3);

    ChangeSet changes;
    const auto someone = LargeRoom::subject(asked.subjects / 2);
    const auto again = median(
        101, [&] { room = room.after(book, reference(), changes).value(); },
        [&] {
            FactBody meal;
            meal.outcome = Outcome::refused;
            changes =
                book.record(FactDraft{someone, FactKind::offered, meal, std::nullopt}).value();
        });
    for (int i = 0; i < 101; ++i) book.undo().value();
    report.ratio("planned again after one entry, over everyone", again, middle(full), 0.001);

    must(noteFront(large, room));
    std::vector<double> much;
    std::vector<double> little;
    std::size_t said = 0;
    for (int i = 0; i < runs; ++i) {
        much.push_back(secondsFor([&] { said += openToFirstLines(large); }));
        little.push_back(secondsFor([&] { said += openToFirstLines(small); }));
    }
    if (said == 0) return 2;
    report.ratio("first lines of the due list, over 200 subjects", middle(much), middle(little),
                 1.5);

    const auto held = static_cast<double>(bytesOf(large)) - static_cast<double>(bytesOf(small));
    report.bytes("memory for each subject", held / static_cast<double>(asked.subjects - few), 1000);
    return report.status();
}
