// What it costs to write a book to a bundle, over what `zip -1` takes to write the same bytes; and how much
// memory that takes, and taking it in again. Each step runs in a process of its own, so that its peak can be
// told. Prints ratios and ends with 1 when one is over its bound (2; 200 MB).
//   bench_bundle           1,000,000 entries, then 2 GB of photos besides
//   bench_bundle --short   a hundredth of that, to see that it still runs; bounds are not looked at
#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <fstream>

#include "exchange/bundle.h"
#include "journal/merge.h"
#include "support/book.h"
#include "support/photos.h"

namespace {

using namespace burrow;
using namespace burrow::test;
using namespace burrow::exchange;
namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

constexpr double mostRatio = 2;
constexpr double mostMegabytes = 200;
constexpr std::int64_t animals = 1000;

double since(Clock::time_point start) {
    return std::chrono::duration<double>(Clock::now() - start).count();
}

struct Size {
    std::int64_t entries = 1'000'000;
    int photos = 2000;
    std::size_t photoBytes = 1'000'000;
};

Surroundings surroundings() {
    static const FixedClock clock(fridayEvening);
    static SeededRandom random(1);
    return {clock, random, Zone::utc()};
}

Entry entryAt(std::int64_t i) {
    Entry entry;
    entry.device = DeviceId{Uuid::named("the first device")};
    entry.seq = entry.act = i + 1;
    entry.id = EntryId{Uuid::named(fmt::format("entry {}", i))};
    entry.recordedAt = entry.happenedAt = {fridayEvening.ms - 2'000'000'000 + i * 1000};
    entry.hlc = entry.happenedAt.ms << 16;
    entry.day = {static_cast<std::int32_t>(entry.happenedAt.ms / msPerDay)};
    entry.zone = "Europe/Berlin";
    entry.thing = Uuid::named(fmt::format("animal {}", i * 7 % animals));
    entry.kind = i % 10 == 0 ? "note" : "offered";
    if (i % 10 == 0) {
        entry.body = {{"text", fmt::format("webbed over the dish, {}", i)}};
    } else {
        entry.body = {{"count", 1}, {"outcome", "ate"}, {"prey", "cricket"}, {"prey_mm", 8.0}};
    }
    return entry;
}

void makeBook(const fs::path& path, const Size& size) {
    auto book = Book::create(path, "Kiln Row", "KR", surroundings()).value();
    auto merge = Merge::begin(book, {"years", {}}).value();
    for (std::int64_t i = 0; i < size.entries; ++i) must(merge.add(entryAt(i)));
    merge.commit().value();
}

/// Photos that are as large as a phone's and as hard to pack: random bytes in a JPEG's frame.
void addPhotos(const fs::path& path, const Size& size) {
    auto book = Book::open(path, storage::Access::readWrite, surroundings()).value();
    DeviceFiles files;
    const pictures::Store store(pictures::Store::folderFor(path), files);
    std::mt19937_64 engine(7);
    const SubjectId animal{Uuid::named("animal 0")};
    auto act = book.beginAct().value();
    must(act.add(SetDraft{ThingType::subject, animal.uuid, {{"number", "001"}}}));
    for (int i = 0; i < size.photos; ++i) {
        std::string noise(size.photoBytes, '\0');
        // 0xFF begins a marker, so it does not occur.
        for (auto& c : noise) c = static_cast<char>(engine() % 255);
        const auto photo = jpegSaying(noise);
        const auto picture = Sha256::of(photo);
        must(files.write(store.picturePath(picture), photo));
        FactBody body;
        body.picture = picture;
        body.role = PhotoRole::animal;
        must(act.add(FactDraft{animal, FactKind::photo, body, {}}));
    }
    act.commit().value();
}

int step(const std::string& what, const fs::path& book, const fs::path& file, const Size& size) {
    const auto start = Clock::now();
    DeviceFiles files;
    if (what == "make") makeBook(book, size);
    if (what == "photos") addPhotos(book, size);
    if (what == "export" || what == "export-photos") {
        auto opened = Book::open(book, storage::Access::readWrite, surroundings()).value();
        ExportOptions options;
        if (what == "export-photos") options.photos = PhotoChoice::full;
        exportBundle(opened, file, options).value();
    }
    if (what == "join") joinFromBundle(book, file, files, surroundings()).value();
    if (what == "again") {
        auto opened = Book::open(book, storage::Access::readWrite, surroundings()).value();
        mergeBundle(opened, file, files).value();
    }
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    fmt::print("{} {}\n", since(start), static_cast<double>(usage.ru_maxrss) / 1024);
    return 0;
}

struct Cost {
    double seconds = 0;
    double megabytes = 0;
};

/// One step in a process of its own.
Cost costOf(const char* self, const std::string& what, const fs::path& book, const fs::path& file,
            const std::string& size) {
    const auto command =
        fmt::format("'{}' --do {} '{}' '{}' {}", self, what, book.string(), file.string(), size);
    Cost cost;
    auto* out = popen(command.c_str(), "r");
    const bool isRead = std::fscanf(out, "%lf %lf", &cost.seconds, &cost.megabytes) == 2;
    if (pclose(out) != 0 || !isRead) {
        fmt::print(stderr, "{} did not come to its end\n", what);
        std::exit(1);
    }
    return cost;
}

double secondsOf(const std::string& command) {
    const auto start = Clock::now();
    if (std::system(command.c_str()) != 0) std::exit(1);
    return since(start);
}

bool report(const char* what, double value, const char* unit, double most) {
    fmt::print("{:<44}{:>8.2f} {} (at most {})\n", what, value, unit, most);
    return value <= most;
}

int measure(const char* self, bool isShort) {
    const ScratchFolder folder;
    const auto at = [&](const char* name) { return folder.path() / name; };
    const std::string size = isShort ? "short" : "long";
    costOf(self, "make", at("a.book"), "", size);
    const auto out = costOf(self, "export", at("a.book"), at("a.burrow"), size);
    const auto inFolder = fmt::format("cd '{}' && ", folder.path().string());
    secondsOf(inFolder + "unzip -q a.burrow -d raw && sync");
    const auto zip = secondsOf(inFolder + "zip -1 -q ref.zip raw/entries.jsonl raw/manifest.json");
    const auto join = costOf(self, "join", at("b.book"), at("a.burrow"), size);
    const auto again = costOf(self, "again", at("b.book"), at("a.burrow"), size);
    fmt::print("entries: out {:.2f} s, zip -1 {:.2f} s; in {:.2f} s, in again {:.2f} s\n",
               out.seconds, zip, join.seconds, again.seconds);

    costOf(self, "photos", at("a.book"), "", size);
    const auto photosOut = costOf(self, "export-photos", at("a.book"), at("p.burrow"), size);
    secondsOf(inFolder + "unzip -q p.burrow -d rawp && sync");
    const auto photosZip = secondsOf(inFolder + "zip -1 -q -r refp.zip rawp");
    const auto photosJoin = costOf(self, "join", at("c.book"), at("p.burrow"), size);
    fmt::print("with photos: out {:.2f} s, zip -1 {:.2f} s; in {:.2f} s\n", photosOut.seconds,
               photosZip, photosJoin.seconds);

    bool isFine = report("writing entries over zip -1", out.seconds / zip, "", mostRatio);
    isFine &= report("writing entries and photos over zip -1", photosOut.seconds / photosZip, "",
                     mostRatio);
    isFine &= report("memory, writing entries", out.megabytes, "MB", mostMegabytes);
    isFine &= report("memory, taking entries in", join.megabytes, "MB", mostMegabytes);
    isFine &= report("memory, writing with photos", photosOut.megabytes, "MB", mostMegabytes);
    isFine &= report("memory, taking in with photos", photosJoin.megabytes, "MB", mostMegabytes);
    return isFine || isShort ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc == 6 && std::string(argv[1]) == "--do") {
        const bool isShort = std::string(argv[5]) == "short";
        return step(argv[2], argv[3], argv[4], isShort ? Size{10'000, 20, 100'000} : Size{});
    }
    return measure(argv[0], argc > 1 && std::string(argv[1]) == "--short");
}
