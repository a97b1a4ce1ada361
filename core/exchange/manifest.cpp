#include "exchange/manifest.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "exchange/entry_line.h"
#include "exchange/refuse.h"

namespace burrow::exchange {
namespace {

using nlohmann::json;

constexpr const char* formatName = "burrow bundle";
constexpr std::array<std::string_view, 3> extents{"everything", "lacking", "chosen"};
constexpr std::array<std::string_view, 3> photoChoices{"none", "reduced", "full"};
constexpr std::int64_t mostNumber = std::int64_t{1} << 53U;
constexpr std::int64_t mostDay = 2'932'896;  // the year 9999

template <class Value>
std::optional<Value> parseName(const std::array<std::string_view, 3>& names,
                               std::string_view text) {
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (names[i] == text) return static_cast<Value>(i);
    }
    return std::nullopt;
}

json toJson(const Totals& totals) {
    json authors = json::object();
    for (const auto& [device, share] : totals.authors) {
        authors[device.text()] = {{"first", share.first},
                                  {"last", share.last},
                                  {"count", share.count},
                                  {"digest", share.digest.text()}};
    }
    json entries{{"count", totals.entries},
                 {"bytes", totals.bytes},
                 {"sha256", totals.sha256.hex()},
                 {"animals", totals.animals},
                 {"authors", std::move(authors)}};
    if (totals.firstDay) entries["first_day"] = isoDate(*totals.firstDay);
    if (totals.lastDay) entries["last_day"] = isoDate(*totals.lastDay);
    return entries;
}

/// Takes values out of a manifest, and remembers the first that was not as it must be.
class Reader {
public:
    [[nodiscard]] bool isFine() const { return fine_; }

    const json& object(const json& in, const char* key, std::size_t most) {
        static const json nothing = json::object();
        const auto at = in.find(key);
        if (at != in.end() && at->is_object() && at->size() <= most) return *at;
        fine_ = false;
        return nothing;
    }
    std::int64_t number(const json& in, const char* key, std::int64_t least = 0,
                        std::int64_t most = mostNumber) {
        const auto at = in.find(key);
        if (at == in.end() || !at->is_number_integer()) return failed<std::int64_t>();
        if (at->is_number_unsigned() && at->get<std::uint64_t>() > std::uint64_t{mostNumber}) {
            return failed<std::int64_t>();
        }
        const auto value = at->get<std::int64_t>();
        return value < least || value > most ? failed<std::int64_t>() : value;
    }
    std::uint64_t size(const json& in, const char* key) {
        return static_cast<std::uint64_t>(number(in, key));
    }
    bool flag(const json& in, const char* key) {
        const auto at = in.find(key);
        return at != in.end() && at->is_boolean() ? at->get<bool>() : failed<bool>();
    }
    std::string text(const json& in, const char* key) {
        const auto at = in.find(key);
        if (at == in.end() || !at->is_string()) return failed<std::string>();
        const auto& value = at->get_ref<const std::string&>();
        return value.size() > limit::nameBytes ? failed<std::string>() : value;
    }
    Uuid uuid(const json& in, const char* key) { return taken(Uuid::parse(text(in, key))); }
    Sha256 hash(const json& in, const char* key) { return taken(Sha256::parse(text(in, key))); }
    /// Nothing where the key is not there.
    std::optional<CivilDay> day(const json& in, const char* key) {
        if (!in.contains(key)) return std::nullopt;
        return taken(parseIsoDate(text(in, key)));
    }
    template <class Value>
    Value taken(std::optional<Value> value) {
        return value ? *std::move(value) : failed<Value>();
    }

private:
    template <class Value>
    Value failed() {
        fine_ = false;
        return {};
    }
    bool fine_ = true;
};

Totals readTotals(Reader& read, const json& entries) {
    Totals totals;
    totals.entries = read.number(entries, "count", 0, limit::entries);
    totals.bytes = read.size(entries, "bytes");
    totals.sha256 = read.hash(entries, "sha256");
    totals.animals = read.number(entries, "animals", 0, std::min(totals.entries, limit::animals));
    totals.firstDay = read.day(entries, "first_day");
    totals.lastDay = read.day(entries, "last_day");
    for (const auto& [device, share] : read.object(entries, "authors", limit::authors).items()) {
        const auto last = read.number(share, "last", 1);
        totals.authors[DeviceId{read.taken(Uuid::parse(device))}] = {
            read.number(share, "first", 1, last), last,
            read.number(share, "count", 1, totals.entries), read.uuid(share, "digest")};
    }
    return totals;
}

void readPhotos(Reader& read, const json& text, Manifest& manifest) {
    const auto& photos = read.object(text, "photos", 10);
    for (const auto& [picture, bytes] : read.object(photos, "full", limit::photos).items()) {
        const bool isSize = bytes.is_number_unsigned();
        manifest.photos[read.taken(Sha256::parse(picture))] =
            read.taken(isSize ? std::optional(bytes.get<std::uint64_t>()) : std::nullopt);
    }
    for (const auto& [full, copy] : read.object(photos, "reduced", limit::photos).items()) {
        manifest.reduced[read.taken(Sha256::parse(full))] = {read.hash(copy, "sha256"),
                                                             read.size(copy, "bytes")};
    }
}

}  // namespace

std::string_view name(Extent extent) { return extents.at(static_cast<std::size_t>(extent)); }
std::string_view name(PhotoChoice choice) {
    return photoChoices.at(static_cast<std::size_t>(choice));
}
std::optional<PhotoChoice> parsePhotoChoice(std::string_view text) {
    return parseName<PhotoChoice>(photoChoices, text);
}

std::uint64_t Manifest::photoBytes() const {
    std::uint64_t sum = 0;
    for (const auto& [picture, bytes] : photos) sum += bytes;
    for (const auto& [full, copy] : reduced) sum += copy.bytes;
    return sum;
}

std::string toText(const Manifest& m) {
    json full = json::object();
    for (const auto& [picture, bytes] : m.photos) full[picture.hex()] = bytes;
    json reduced = json::object();
    for (const auto& [picture, copy] : m.reduced) {
        reduced[picture.hex()] = {{"sha256", copy.sha256.hex()}, {"bytes", copy.bytes}};
    }
    json text{{"format", formatName},
              {"version", bundleVersion},
              {"program", m.program},
              {"book", {{"id", m.book.text()}, {"room", m.room}, {"code", m.roomCode}}},
              {"device", m.device.text()},
              {"written_at", m.writtenAt.ms},
              {"extent", std::string(name(m.extent))},
              {"left_out",
               {{"confidential", !m.withConfidential},
                {"photos", std::string(name(m.photoChoice))},
                {"missing_photos", m.missingPhotos}}},
              {"entries", toJson(m.totals)},
              {"vector", burrow::toJson(m.vector)},
              {"photos", {{"full", std::move(full)}, {"reduced", std::move(reduced)}}}};
    if (m.madeFor) text["made_for"] = m.madeFor->text();
    return text.dump(1, ' ', false, json::error_handler_t::replace) + "\n";
}

Result<Manifest> manifestFrom(std::string_view bytes) {
    if (bytes.size() > limit::manifestBytes) return refuse({"bundle.tooLarge"});
    BURROW_DO(checkJsonText(bytes, limit::nesting));
    const auto text = json::parse(bytes, nullptr, false);
    const auto refused = refuse({"bundle.manifest"});
    if (!text.is_object()) return refused;
    Reader read;
    if (read.text(text, "format") != formatName) return refused;
    const auto version = read.number(text, "version", 1);
    if (read.isFine() && version > bundleVersion) {
        return fail(Trouble::newer, {"bundle.newer"});
    }
    Manifest m;
    m.program = read.text(text, "program");
    const auto& book = read.object(text, "book", 20);
    m.book = BookId{read.uuid(book, "id")};
    m.room = read.text(book, "room");
    m.roomCode = read.text(book, "code");
    m.device = DeviceId{read.uuid(text, "device")};
    m.writtenAt.ms = read.number(text, "written_at", 0, (mostDay + 1) * 86'400'000 - 1);
    m.extent = read.taken(parseName<Extent>(extents, read.text(text, "extent")));
    if (text.contains("made_for")) m.madeFor = DeviceId{read.uuid(text, "made_for")};
    const auto& leftOut = read.object(text, "left_out", 20);
    m.withConfidential = !read.flag(leftOut, "confidential");
    m.photoChoice = read.taken(parsePhotoChoice(read.text(leftOut, "photos")));
    m.missingPhotos = read.number(leftOut, "missing_photos");
    m.totals = readTotals(read, read.object(text, "entries", 20));
    m.vector = versionVectorFrom(read.object(text, "vector", 20));
    readPhotos(read, text, m);
    if (!read.isFine()) return refused;
    return m;
}

std::string filename::photo(const Sha256& picture) { return "photos/" + picture.hex() + ".jpg"; }
std::string filename::reduced(const Sha256& full) { return "reduced/" + full.hex() + ".jpg"; }

}  // namespace burrow::exchange
