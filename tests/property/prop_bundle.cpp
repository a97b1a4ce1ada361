// Entries as lines and back, and bundles with random damage.
#include <rapidcheck.h>

#include <fstream>

#include "exchange/entry_line.h"
#include "support/exchange.h"

using namespace burrow;
using namespace burrow::test;
using namespace burrow::exchange;
using nlohmann::json;

namespace {

/// Any text that UTF-8 can write, with what JSON has to escape.
std::string anyText() {
    static const std::vector<std::string> pieces{"a",
                                                 "Z",
                                                 "0",
                                                 " ",
                                                 "\"",
                                                 "\\",
                                                 "/",
                                                 "\n",
                                                 "\t",
                                                 "\x01",
                                                 "\xC3\xA4",
                                                 "\xE2\x80\xAE",
                                                 "<b>",
                                                 "{",
                                                 "}",
                                                 "[",
                                                 "\xF0\x9F\x95\xB7",
                                                 "'; --",
                                                 "\\u0",
                                                 "u0000"};
    std::string text;
    const int count = *rc::gen::inRange(0, 12);
    for (int i = 0; i < count; ++i) text += *rc::gen::elementOf(pieces);
    return text;
}

json anyValue(int depth) {
    switch (*rc::gen::inRange(0, depth > 0 ? 8 : 6)) {
        case 0: return nullptr;
        case 1: return *rc::gen::arbitrary<bool>();
        case 2: return *rc::gen::arbitrary<std::int64_t>();
        case 3: return *rc::gen::inRange(-1'000'000, 1'000'000) / 1000.0;
        case 4:
        case 5: return anyText();
        case 6: {
            json list = json::array();
            for (int i = *rc::gen::inRange(0, 4); i > 0; --i) list.push_back(anyValue(depth - 1));
            return list;
        }
        default: {
            json object = json::object();
            for (int i = *rc::gen::inRange(0, 4); i > 0; --i) {
                object[anyText()] = anyValue(depth - 1);
            }
            return object;
        }
    }
}

Uuid anyUuid() {
    Uuid uuid;
    for (auto& byte : uuid.bytes) byte = *rc::gen::arbitrary<std::uint8_t>();
    return uuid;
}

StoredEntry anyEntry(const std::string& body) {
    StoredEntry entry;
    entry.id = EntryId{anyUuid()};
    entry.device = DeviceId{anyUuid()};
    entry.seq = *rc::gen::inRange<std::int64_t>(1, std::int64_t{1} << 53);
    entry.act = *rc::gen::inRange<std::int64_t>(1, entry.seq + 1);
    entry.hlc = *rc::gen::inRange<std::int64_t>(0, std::numeric_limits<std::int64_t>::max());
    entry.kind = *rc::gen::element("set", "amend", "retract", "offered", "kind_from_the_future");
    if (*rc::gen::arbitrary<bool>()) entry.thing = anyUuid();
    entry.body = body;
    entry.recordedAt.ms = *rc::gen::inRange<std::int64_t>(-62'135'596'800'000, 253'402'300'800'000);
    entry.happenedAt.ms = *rc::gen::inRange<std::int64_t>(-62'135'596'800'000, 253'402'300'800'000);
    entry.day.days = *rc::gen::inRange(-719'162, 2'932'897);
    entry.zone =
        *rc::gen::element("UTC", "Europe/Berlin", "America/Argentina/Buenos_Aires", "Etc/GMT+12");
    return entry;
}

}  // namespace

int main() {
    bool ok = true;
    ok &= rc::check("a line gives its entry back, and the entry its line", [] {
        auto object = json::object();
        for (int i = *rc::gen::inRange(0, 6); i > 0; --i) object[anyText()] = anyValue(6);
        const auto body = object.dump();
        const auto entry = anyEntry(body);
        std::string line;
        appendLine(entry, line);
        RC_ASSERT(line.ends_with('\n') && line.find('\n') == line.size() - 1);
        const auto read = entryFromLine(std::string_view(line).substr(0, line.size() - 1));
        RC_ASSERT(read.has_value());
        RC_ASSERT(read->id == entry.id && read->device == entry.device);
        RC_ASSERT(read->seq == entry.seq && read->act == entry.act && read->hlc == entry.hlc);
        RC_ASSERT(read->kind == entry.kind && read->zone == entry.zone);
        RC_ASSERT(read->thing == entry.thing && read->day == entry.day);
        RC_ASSERT(read->recordedAt == entry.recordedAt && read->happenedAt == entry.happenedAt);
        RC_ASSERT(read->body.dump() == body);
        // The keys stand as a JSON library that sorts them would write them.
        RC_ASSERT(json::parse(line).dump() + "\n" == line);
    });
    ok &= rc::check("bytes that are no line never get through as one", [] {
        const std::string body = "{}";  // the entry only looks at it
        const auto entry = anyEntry(body);
        std::string line;
        appendLine(entry, line);
        line.pop_back();
        const auto at = static_cast<std::size_t>(*rc::gen::inRange<std::size_t>(0, line.size()));
        line[at] = static_cast<char>(*rc::gen::arbitrary<std::uint8_t>());
        const auto read = entryFromLine(line);
        if (!read) return;
        // What is read all the same is an entry that can be written again.
        std::string again;
        appendLine(StoredEntry{.id = read->id,
                               .device = read->device,
                               .seq = read->seq,
                               .act = read->act,
                               .hlc = read->hlc,
                               .kind = read->kind,
                               .thing = read->thing,
                               .body = "{}",
                               .recordedAt = read->recordedAt,
                               .happenedAt = read->happenedAt,
                               .day = read->day,
                               .zone = read->zone},
                   again);
        RC_ASSERT(entryFromLine(std::string_view(again).substr(0, again.size() - 1)).has_value());
    });

    TestBook room;
    const auto animal = room.add("001", "Grammostola pulchra");
    for (int i = 0; i < 40; ++i) room.log(animal, FactKind::watered);
    photograph(room, animal, "a view");
    const auto file = room.folder.path() / "out.burrow";
    ExportOptions options;
    options.photos = PhotoChoice::full;
    exportBundle(room.book, file, options).value();
    DeviceFiles files;
    const auto whole = files.read(file, 1 << 24).value();
    TestBook other(2);
    must(other.book.connection().execute("PRAGMA synchronous = OFF"));
    const auto before = dumpOf(other.book);
    TakeInOptions takeIn;
    takeIn.fromOtherBook = true;
    mergeBundle(other.book, file, files, takeIn).value();
    const auto brought = dumpOf(other.book);
    takeBackBundle(other.book, files).value();

    ok &= rc::check("a damaged bundle brings all or nothing", [&] {
        auto bytes = whole;
        for (int i = *rc::gen::inRange(1, 4); i > 0; --i) {
            const auto at = *rc::gen::inRange<std::size_t>(0, bytes.size());
            switch (*rc::gen::inRange(0, 4)) {
                case 0: bytes[at] = *rc::gen::arbitrary<std::uint8_t>(); break;
                case 1: bytes.resize(std::max<std::size_t>(at, 1)); break;
                case 2: bytes.insert(bytes.begin() + static_cast<long>(at), 5, 0); break;
                default: bytes.erase(bytes.begin() + static_cast<long>(at)); break;
            }
        }
        const auto damaged = room.folder.path() / "damaged.burrow";
        must(files.write(damaged, bytes));
        const auto taken = mergeBundle(other.book, damaged, files, takeIn);
        RC_ASSERT(dumpOf(other.book) == (taken ? brought : before));
        if (taken) takeBackBundle(other.book, files).value();
    });
    return ok ? 0 : 1;
}
