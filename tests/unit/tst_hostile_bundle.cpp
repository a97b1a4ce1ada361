// Bundles that nobody should take in: each is refused with a sentence, and the book, its photos and its
// folder are as they were. The files are put together independently of the writer.
#include <QtTest>

#include <fstream>
#include <set>

#include "exchange/bundle_reader.h"
#include "exchange/entry_line.h"
#include "exchange/seal.h"
#include "exchange/zip_reader.h"
#include "support/assets.h"
#include "support/exchange.h"
#include "support/zip_bytes.h"

using namespace burrow;
using namespace burrow::test;
using namespace burrow::exchange;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

constexpr const char* device = "0195aaaa-0000-7000-8000-00000000000d";
constexpr const char* animal = "0195aaaa-0000-7000-8000-00000000000a";

/// A line of entries.jsonl as FORMAT.md describes it.
std::string line(int number, json body = {{"text", "webbed over the dish"}},
                 const std::string& kind = "note") {
    char id[37];
    std::snprintf(id, sizeof id, "0195aaaa-0000-7000-8000-%012x", 0x1000 + number);
    return json{{"act", number},
                {"body", std::move(body)},
                {"day", 20'581},
                {"device", device},
                {"happened_at", fridayEvening.ms},
                {"hlc", (fridayEvening.ms << 16) + number},
                {"id", id},
                {"kind", kind},
                {"recorded_at", fridayEvening.ms},
                {"seq", number},
                {"thing", animal},
                {"zone", "Europe/Berlin"}}
               .dump() +
           "\n";
}

/// What a bundle is made of; the manifest fits until something is changed.
struct Parts {
    std::string entries = line(1) + line(2);
    std::vector<Bytes> photos;
    json manifest;

    explicit Parts(BookId book) {
        json authors;
        // The digest is the exclusive or of the two ids, which differ in their last digits.
        authors[device] = {{"first", 1},
                           {"last", 2},
                           {"count", 2},
                           {"digest", "00000000-0000-0000-0000-000000000003"}};
        manifest = {
            {"format", "burrow bundle"},
            {"version", 1},
            {"program", "a hand"},
            {"book", {{"id", book.text()}, {"room", "Kiln Row"}, {"code", "KR"}}},
            {"device", device},
            {"written_at", fridayEvening.ms},
            {"extent", "everything"},
            {"left_out", {{"confidential", true}, {"photos", "none"}, {"missing_photos", 0}}},
            {"entries",
             {{"count", 2},
              {"animals", 1},
              {"first_day", "2026-05-08"},
              {"last_day", "2026-05-08"},
              {"authors", authors}}},
            {"vector", json::object()},
            {"photos", {{"full", json::object()}, {"reduced", json::object()}}}};
        count();
    }
    /// Takes the manifest's size and hash of the entries from them.
    void count() {
        manifest["entries"]["bytes"] = entries.size();
        manifest["entries"]["sha256"] = Sha256::of(entries).hex();
    }
    [[nodiscard]] std::vector<ZipPart> zip() const {
        return {deflatedPart("entries.jsonl", entries),
                deflatedPart("manifest.json", manifest.dump())};
    }
};

}  // namespace

class TestHostileBundle : public QObject {
    Q_OBJECT

private:
    TestBook room_;
    DeviceFiles files_;
    std::string before_;
    std::vector<std::string> beside_;

    fs::path file() const { return room_.folder.path() / "in.burrow"; }

    void write(const std::string& bytes) {
        std::ofstream out(file(), std::ios::binary);
        out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    }

    /// The id of the sentence it is refused with; empty where it was taken in.
    std::string takeIn() {
        const auto taken = mergeBundle(room_.book, file(), files_);
        if (taken) return {};
        // Every refusal is a sentence of its own that says what became of the book.
        static const auto words = englishWords();
        const auto sentence = words.say(taken.error().message, {});
        if (sentence.find("Nothing was changed") == std::string::npos) return "[" + sentence;
        return taken.error().message.id;
    }
    std::string takeIn(const std::vector<ZipPart>& parts, const ZipEnd& end = {}) {
        write(zipOf(parts, end));
        return takeIn();
    }
    std::string takeIn(const Parts& parts) { return takeIn(parts.zip()); }

    Parts parts() { return Parts(room_.book.id()); }

private slots:
    void initTestCase() {
        // Hundreds of merges, none of which has to survive a power cut.
        must(room_.book.connection().execute("PRAGMA synchronous = OFF"));
        before_ = dumpOf(room_.book);
        write("");
        beside_ = filesBelow(room_.folder.path());
    }
    void cleanup() {
        QCOMPARE(dumpOf(room_.book), before_);
        QCOMPARE(filesBelow(room_.folder.path()), beside_);
    }

    /// What the others change is refused for that change alone.
    void theUnchangedOneIsTakenIn() {
        QCOMPARE(takeIn(parts()), std::string());
        QVERIFY(takeBackBundle(room_.book, files_));
    }

    void noBundles() {
        write("");
        QCOMPARE(takeIn(), std::string("bundle.notABundle"));
        write("just some text that is long enough to hold a header of any kind\n");
        QCOMPARE(takeIn(), std::string("bundle.notABundle"));
        write(std::string(100'000, '\0'));
        QCOMPARE(takeIn(), std::string("bundle.notABundle"));
        QCOMPARE(takeIn({}, {}), std::string("bundle.notABundle"));
        QCOMPARE(takeIn({{"readme.txt", "hello"}}), std::string("bundle.notABundle"));
        QCOMPARE(takeIn({deflatedPart("manifest.json", "{}")}), std::string("bundle.manifest"));
        QCOMPARE(peek(room_.book.path()).error().message.id, std::string("bundle.notABundle"));
        QCOMPARE(peek(room_.folder.path()).error().message.id, std::string("file.isFolder"));
        QCOMPARE(peek("/dev/zero").error().message.id, std::string("bundle.notABundle"));
    }

    void namesLeadNowhere() {
        for (const char* name :
             {"../entries.jsonl", "/etc/passwd", "photos/../../x.jpg", "..", ".", "a/./b", "a//b",
              "photos/", "C:\\x", "photos\\x.jpg", "entries.jsonl\n", "e\xC3\xA9.jpg",
              "\xE2\x80\xAEgpj.x", "<b>x</b>", "x'; DROP TABLE entry; --", "con:", "~", "a b"}) {
            auto zip = parts().zip();
            zip.push_back({name, "x"});
            const auto refusal = takeIn(zip);
            // Some libraries read a backslash as a slash: then it is a file that the manifest lacks.
            const std::set<std::string> right{"bundle.strangeName", "bundle.strangeFile",
                                              "bundle.otherFiles"};
            QVERIFY2(right.contains(refusal), (name + (" " + refusal)).c_str());
        }
        auto zip = parts().zip();
        zip.push_back({std::string("photos/a\0b.jpg", 14), "x"});
        QVERIFY(!takeIn(zip).empty());
        zip.back().name = std::string(5000, 'n');
        QCOMPARE(takeIn(zip), std::string("bundle.strangeName"));
        zip.back().name = "";
        QVERIFY(!takeIn(zip).empty());
    }

    /// Two names for one file, by the directory and by its own header.
    void namesThatDisagree() {
        auto zip = parts().zip();
        zip[0].localName = "../../entries.jsonl";
        QVERIFY(!takeIn(zip).empty());
        zip = parts().zip();
        zip[1].localName = "entries.jsonl";
        QVERIFY(!takeIn(zip).empty());
    }

    void onlyWhatTheManifestNames() {
        auto zip = parts().zip();
        zip.push_back({"more.txt", "x"});
        QCOMPARE(takeIn(zip), std::string("bundle.otherFiles"));
        zip = parts().zip();
        zip.erase(zip.begin());
        QCOMPARE(takeIn(zip), std::string("bundle.otherFiles"));
        zip = parts().zip();
        zip.push_back(zip[0]);
        QCOMPARE(takeIn(zip), std::string("bundle.nameTwice"));
        zip = parts().zip();
        zip.push_back(zip[1]);
        QCOMPARE(takeIn(zip), std::string("bundle.nameTwice"));
    }

    void onlyPlainFiles() {
        const std::uint32_t link = 0120777;
        const std::uint32_t folder = 040755;
        const std::uint32_t node = 020666;
        for (const auto mode : {link, folder, node}) {
            auto zip = parts().zip();
            zip[0].mode = mode;
            QCOMPARE(takeIn(zip), std::string("bundle.strangeFile"));
        }
        auto zip = parts().zip();
        zip.push_back({"photos/link.jpg", "/etc/passwd", {}, 0, 0, link});
        QCOMPARE(takeIn(zip), std::string("bundle.strangeFile"));
        zip = parts().zip();
        zip[0].flags = 1;  // encrypted
        QCOMPARE(takeIn(zip), std::string("bundle.strangeFile"));
        for (const int method : {1, 6, 9, 12, 14, 93, 95, 98, 99}) {
            zip = parts().zip();
            zip[0].method = static_cast<std::uint16_t>(method);
            const auto refusal = takeIn(zip);
            QVERIFY2(refusal == "bundle.strangeFile" || refusal == "bundle.damaged",
                     (std::to_string(method) + refusal).c_str());
        }
    }

    void bombs() {
        // 300 MB of zeros in 300 KB.
        Parts heavy = parts();
        heavy.entries.assign(300'000'000, '\0');
        heavy.manifest["entries"]["bytes"] = heavy.entries.size();
        QCOMPARE(takeIn(heavy), std::string("bundle.tooDense"));
        // The same, with a size that lies.
        auto zip = heavy.zip();
        zip[0].claimedSize = 1000;
        QVERIFY(!takeIn(zip).empty());
        // Many names for the same data.
        zip = parts().zip();
        zip.push_back({"photos/a.jpg", std::string(100'000, 'x')});
        for (int i = 0; i < 1000; ++i) {
            ZipPart shared{"photos/" + std::to_string(i) + ".jpg", zip[2].data};
            shared.sharesDataOf = 2;
            zip.push_back(shared);
        }
        QVERIFY(!takeIn(zip).empty());
        // More files than there is room for in memory, by the number alone.
        std::vector<ZipPart> many(60'000, ZipPart{"x", ""});
        for (std::size_t i = 0; i < many.size(); ++i) many[i].name = "n" + std::to_string(i);
        QVERIFY(!takeIn(many).empty());
        // A zip in a zip is a file like any other: it is not even looked into.
        zip = parts().zip();
        zip.push_back({"inner.zip", zipOf(heavy.zip())});
        QVERIFY(!takeIn(zip).empty());
    }

    /// The end record and its zip64 form may say anything.
    void directoriesThatLie() {
        const auto whole = zipOf(parts().zip());
        const auto end = whole.size() - 22;
        for (const auto at : {end + 8, end + 10, end + 12, end + 16}) {
            for (const std::uint32_t value : {0U, 1U, 0xFFFFU, 0x7FFFFFFFU, 0xFFFFFFFFU}) {
                auto bytes = whole;
                for (int i = 0; i < (at < end + 12 ? 2 : 4); ++i) {
                    bytes[at + static_cast<std::size_t>(i)] =
                        static_cast<char>(value >> 8 * i & 0xFF);
                }
                if (bytes == whole) continue;
                write(bytes);
                const auto refusal = takeIn();
                // A reader may do without the count; what it takes in is then all of it.
                if (refusal.empty()) QVERIFY(takeBackBundle(room_.book, files_));
            }
        }
        std::string locator;
        putLittle(locator, 0x07064b50, 4);
        putLittle(locator, 0, 4);
        putLittle(locator, 0xFFFFFFFFFFFFFF00ULL, 8);
        putLittle(locator, 1, 4);
        write(whole.substr(0, end) + locator + whole.substr(end));
        QCOMPARE(takeIn(), std::string("bundle.cut"));
    }

    void wrongHashes() {
        auto changed = parts();
        changed.entries[changed.entries.find("webbed")] = 'W';
        QCOMPARE(takeIn(changed), std::string("bundle.wrongHash"));
        changed = parts();
        changed.manifest["entries"]["sha256"] = Sha256::of("other").hex();
        QCOMPARE(takeIn(changed), std::string("bundle.wrongHash"));
        for (const char* key : {"count", "animals"}) {
            changed = parts();
            changed.manifest["entries"][key] = 3;
            QVERIFY2(!takeIn(changed).empty(), key);
        }
        changed = parts();
        changed.manifest["entries"]["bytes"] = 10;
        QCOMPARE(takeIn(changed), std::string("bundle.otherFiles"));
        changed = parts();
        changed.manifest["entries"]["authors"][device]["digest"] = animal;
        QCOMPARE(takeIn(changed), std::string("bundle.wrongHash"));
        auto zip = parts().zip();
        zip[0].claimedCrc = 1;
        QCOMPARE(takeIn(zip), std::string("bundle.damaged"));
    }

    void photosMustBePicturesAndTheirNames() {
        const auto with = [&](const Bytes& bytes, const Sha256& hash, const char* folder) {
            auto changed = parts();
            changed.entries =
                line(1, {{"picture", hash.hex()}, {"role", "animal"}}, "photo") + line(2);
            changed.count();
            auto& photos = changed.manifest["photos"];
            if (std::string(folder) == "photos") {
                photos["full"][hash.hex()] = bytes.size();
            } else {
                photos["reduced"][hash.hex()] = {{"sha256", Sha256::of(bytes).hex()},
                                                 {"bytes", bytes.size()}};
            }
            auto zip = changed.zip();
            zip.push_back({folder + ("/" + hash.hex() + ".jpg"), std::string(textOf(bytes))});
            return takeIn(zip);
        };
        const auto good = jpegSaying("the first");
        QCOMPARE(with(good, Sha256::of("another"), "photos"), std::string("bundle.wrongHash"));
        const auto text = std::string("<script>alert(1)</script>");
        const Bytes script(text.begin(), text.end());
        QCOMPARE(with(script, Sha256::of(script), "photos"), std::string("bundle.noPicture"));
        QCOMPARE(with(script, Sha256::of(good), "reduced"), std::string("bundle.noPicture"));
        auto cut = good;
        cut.resize(cut.size() - 2);
        QCOMPARE(with(cut, Sha256::of(cut), "photos"), std::string("bundle.noPicture"));
        const auto huge = jpegSaying("huge", 65'000, 65'000);
        QCOMPARE(with(huge, Sha256::of(huge), "photos"), std::string("bundle.noPicture"));
        QCOMPARE(with(good, Sha256::of(good), "photos"), std::string());
        QVERIFY(takeBackBundle(room_.book, files_));
        std::error_code ignored;
        fs::remove_all(pictures::Store::folderFor(room_.book.path()), ignored);  // empty folders
    }

    void strangeLines_data() {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QString>("refusal");
        const auto row = [](const char* title, const std::string& bytes, const char* refusal) {
            QTest::newRow(title) << QByteArray::fromStdString(bytes) << QString(refusal);
        };
        const auto with = [](const char* key, const json& value) {
            auto changed = json::parse(line(2));
            changed[key] = value;
            return changed.dump() + "\n";
        };
        row("empty", "\n", "line.notJson");
        row("text", "hello\n", "line.notJson");
        row("a list", "[1,2]\n", "line.notJson");
        row("half", line(2).substr(0, 50) + "\n", "line.notJson");
        row("two on a line", line(2).substr(0, line(2).size() - 1) + line(2), "line.notJson");
        row("no end", line(2).substr(0, line(2).size() - 1), "bundle.damaged");
        row("too long", with("body", {{"text", std::string(70'000, 'x')}}), "line.tooLong");
        row("much too long", std::string(1'000'000, 'x') + "\n", "line.tooLong");
        std::string deep(20, '[');
        deep += std::string(20, ']');
        row("deep", R"({"body":{"x":)" + deep + "}}\n", "line.tooDeep");
        row("very deep", std::string(60'000, '[') + "\n", "line.tooDeep");
        row("no UTF-8", with("body", {{"text", "AAAA"}}).replace(20, 1, "\xFF"), "line.notUtf8");
        row("surrogate",
            R"({"body":{"text":"\ud800"}})"
            "\n",
            "line.notJson");
        row("NUL", std::string("{\"a\":\"\0\"}\n", 10), "line.nul");
        row("escaped NUL", with("body", {{"text", std::string("a\0b", 3)}}), "line.nul");
        row("huge number", with("body", json::object()).replace(0, 7, "{\"act\":1e999,\"x\":"),
            "line.notJson");
        row("id", with("id", "not an id"), "line.field");
        row("id of nobody", with("id", 17), "line.field");
        row("seq", with("seq", 0), "line.field");
        row("seq as text", with("seq", "2"), "line.field");
        row("seq past all", with("seq", 18'446'744'073'709'551'615ULL), "line.field");
        row("act after seq", with("act", 3), "line.field");
        row("hlc", with("hlc", -1), "line.field");
        row("day", with("day", 2'932'897), "line.field");
        row("instant", with("happened_at", 253'402'300'800'000), "line.field");
        row("kind", with("kind", ""), "line.field");
        row("markup as kind", with("kind", "<b>note</b>"), "line.field");
        row("zone", with("zone", "Europe/Berlin'; --"), "line.field");
        row("thing", with("thing", "x"), "line.field");
        row("body", with("body", "text"), "line.field");
        row("more", with("more", 1), "line.unknownField");
    }
    void strangeLines() {
        QFETCH(QByteArray, bytes);
        QFETCH(QString, refusal);
        auto changed = parts();
        changed.entries = line(1) + bytes.toStdString();
        changed.count();
        QCOMPARE(QString::fromStdString(takeIn(changed)), refusal);
        // It says which line.
        if (!refusal.startsWith("line.")) return;
        const auto error = mergeBundle(room_.book, file(), files_).error();
        QVERIFY(error.message.find("line") != nullptr);
        QCOMPARE(std::get<std::int64_t>(*error.message.find("line")), 2);
    }

    void strangeManifests() {
        const auto with = [&](const std::string& text) {
            auto zip = parts().zip();
            zip[1] = deflatedPart("manifest.json", text);
            return takeIn(zip);
        };
        for (const char* text : {"", "null", "[]", "{", "\xFF", "{\"format\":\"other\"}"}) {
            QVERIFY2(!with(text).empty(), text);
        }
        QCOMPARE(with(std::string(200'000, '[')), std::string("line.tooDeep"));
        auto later = parts();
        later.manifest["version"] = 2;
        later.manifest.erase("vector");
        QCOMPARE(takeIn(later), std::string("bundle.newer"));
        // Every value, replaced by every kind of nonsense.
        const auto whole = parts().manifest.flatten();
        for (const auto& [path, value] : whole.items()) {
            for (const json& nonsense : {json(), json(-1), json(std::string(10'000, 'x')),
                                         json::array(), json(18'446'744'073'709'551'615ULL)}) {
                auto changed = parts();
                changed.manifest[json::json_pointer(path)] = nonsense;
                const auto refusal = takeIn(changed);
                if (refusal.empty()) QVERIFY(takeBackBundle(room_.book, files_));
            }
        }
    }

    /// Cut anywhere, it is refused.
    void cutAnywhere() {
        const auto whole = zipOf(parts().zip());
        for (std::size_t size = 0; size < whole.size(); size += size < 50 ? 1 : 13) {
            write(whole.substr(0, size));
            const auto refusal = takeIn();
            QVERIFY2(refusal == "bundle.cut" || refusal == "bundle.notABundle" ||
                         refusal == "bundle.damaged",
                     (std::to_string(size) + " " + refusal).c_str());
        }
    }

    /// With any one byte changed, it is refused, or what it brings is the same as before.
    void changedAnywhere() {
        const auto whole = zipOf(parts().zip());
        write(whole);
        QCOMPARE(takeIn(), std::string());
        const auto brought = dumpOf(room_.book);
        QVERIFY(takeBackBundle(room_.book, files_));
        for (std::size_t at = 0; at < whole.size(); at += 7) {
            auto changed = whole;
            changed[at] = static_cast<char>(changed[at] ^ 0x55);
            write(changed);
            if (!takeIn().empty()) continue;
            QVERIFY2(dumpOf(room_.book) == brought, std::to_string(at).c_str());
            QVERIFY(takeBackBundle(room_.book, files_));
        }
    }

    /// Markup, SQL and marks that turn the direction of writing are text like any other.
    void textStaysText() {
        for (const char* text :
             {"<img src=x onerror=alert(1)>", "'; DROP TABLE entry; --", "\xE2\x80\xAEgpj.exe",
              "\xE2\x81\xA6\xE2\x81\xA9", "{room}", "%s%n", "$(rm -rf /)", "\x1B[31mred"}) {
            auto changed = parts();
            changed.entries = line(1, {{"text", text}}) + line(2);
            changed.manifest["book"]["room"] = text;
            changed.count();
            QCOMPARE(takeIn(changed), std::string());
            const auto row =
                findEntry(room_.book.connection(),
                          EntryId{*Uuid::parse("0195aaaa-0000-7000-8000-000000001001")});
            QCOMPARE(row.value()->body["text"].get<std::string>(), std::string(text));
            QVERIFY(takeBackBundle(room_.book, files_));
            QCOMPARE(roomInfo(room_.book)->name, std::string("Kiln Row"));
        }
    }
};

QTEST_APPLESS_MAIN(TestHostileBundle)
#include "tst_hostile_bundle.moc"
