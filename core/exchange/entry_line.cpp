#include "exchange/entry_line.h"

#include <array>
#include <charconv>
#include <limits>

#include "base/text.h"
#include "exchange/refuse.h"

namespace burrow::exchange {
namespace {

using nlohmann::json;

// Years 1 to 9999, in days and in milliseconds around 1970: what a CivilDay can be shown as.
constexpr std::int64_t firstDay = -719'162;
constexpr std::int64_t lastDay = 2'932'896;
constexpr std::int64_t msPerDay = 86'400'000;
constexpr std::int64_t mostOrdinal = std::int64_t{1} << 53U;  // exact in every JSON reader
constexpr std::size_t mostWord = 64;
constexpr std::size_t fieldCount = 12;

tl::unexpected<Error> refuseField(const char* field) {
    return fail(Trouble::badInput, {"line.field", {{"field", std::string(field)}}});
}

void appendNumber(std::string& out, std::int64_t number) {
    std::array<char, 24> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), number).ptr;
    out.append(digits.data(), end);
}

Result<std::int64_t> integerAt(const json& line, const char* field, std::int64_t least,
                               std::int64_t most) {
    const auto at = line.find(field);
    if (at == line.end() || !at->is_number_integer()) return refuseField(field);
    // A number past the signed range would come out negative.
    const bool isHuge =
        at->is_number_unsigned() &&
        at->get<std::uint64_t>() > std::uint64_t{std::numeric_limits<std::int64_t>::max()};
    const auto value = at->get<std::int64_t>();
    if (isHuge || value < least || value > most) return refuseField(field);
    return value;
}

/// Kinds and zones: short and of plain letters, so that they can be shown and compared anywhere.
Result<std::string> wordAt(const json& line, const char* field) {
    const auto at = line.find(field);
    if (at == line.end() || !at->is_string()) return refuseField(field);
    const auto& word = at->get_ref<const std::string&>();
    constexpr std::string_view plain =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_-+/.";
    const bool isPlain = word.find_first_not_of(plain) == std::string::npos;
    if (word.empty() || word.size() > mostWord || !isPlain) return refuseField(field);
    return word;
}

Result<Uuid> uuidAt(const json& line, const char* field) {
    const auto at = line.find(field);
    if (at == line.end() || !at->is_string()) return refuseField(field);
    const auto uuid = Uuid::parse(at->get_ref<const std::string&>());
    if (!uuid) return refuseField(field);
    return *uuid;
}

}  // namespace

void appendLine(const StoredEntry& entry, std::string& out) {
    // By hand, because a book has a million of them. The journal's bodies are written by the same JSON
    // library with sorted keys: they are handed on as they stand.
    out += R"({"act":)";
    appendNumber(out, entry.act);
    out.append(R"(,"body":)").append(entry.body).append(R"(,"day":)");
    appendNumber(out, entry.day.days);
    out.append(R"(,"device":")").append(entry.device.text()).append(R"(","happened_at":)");
    appendNumber(out, entry.happenedAt.ms);
    out += R"(,"hlc":)";
    appendNumber(out, entry.hlc);
    out.append(R"(,"id":")").append(entry.id.text());
    out.append(R"(","kind":")").append(entry.kind).append(R"(","recorded_at":)");
    appendNumber(out, entry.recordedAt.ms);
    out += R"(,"seq":)";
    appendNumber(out, entry.seq);
    if (entry.thing) {
        out.append(R"(,"thing":")").append(entry.thing->text()).append(R"(","zone":")");
    } else {
        out += R"(,"thing":null,"zone":")";
    }
    out.append(entry.zone).append("\"}\n");
}

Result<Entry> entryFromLine(std::string_view line) {
    if (line.size() > limit::lineBytes) return refuse({"line.tooLong"});
    BURROW_DO(checkJsonText(line, limit::nesting));
    auto parsed = json::parse(line, nullptr, false);
    if (!parsed.is_object()) return refuse({"line.notJson"});
    Entry entry;
    BURROW_TRY(entry.id.uuid, uuidAt(parsed, "id"));
    BURROW_TRY(entry.device.uuid, uuidAt(parsed, "device"));
    BURROW_TRY(entry.seq, integerAt(parsed, "seq", 1, mostOrdinal));
    BURROW_TRY(entry.act, integerAt(parsed, "act", 1, entry.seq));
    BURROW_TRY(entry.hlc, integerAt(parsed, "hlc", 0, std::numeric_limits<std::int64_t>::max()));
    BURROW_TRY(entry.kind, wordAt(parsed, "kind"));
    BURROW_TRY(entry.zone, wordAt(parsed, "zone"));
    constexpr auto firstMs = firstDay * msPerDay;
    constexpr auto lastMs = (lastDay + 1) * msPerDay - 1;
    BURROW_TRY(entry.recordedAt.ms, integerAt(parsed, "recorded_at", firstMs, lastMs));
    BURROW_TRY(entry.happenedAt.ms, integerAt(parsed, "happened_at", firstMs, lastMs));
    BURROW_TRY(const auto day, integerAt(parsed, "day", firstDay, lastDay));
    entry.day.days = static_cast<std::int32_t>(day);
    const auto thing = parsed.find("thing");
    if (thing == parsed.end()) return refuseField("thing");
    if (!thing->is_null()) {
        BURROW_TRY(entry.thing, uuidAt(parsed, "thing"));
    }
    const auto body = parsed.find("body");
    if (body == parsed.end() || !body->is_object()) return refuseField("body");
    entry.body = std::move(*body);
    // All twelve were found, so one more is one that this version would lose.
    if (parsed.size() != fieldCount) return refuse({"line.unknownField"});
    return entry;
}

Done checkJsonText(std::string_view text, int depth) {
    if (!isUtf8(text)) return refuse({"line.notUtf8"});
    int open = 0;
    bool inString = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (c == '\0') return refuse({"line.nul"});
        if (inString) {
            if (c == '\\') {
                if (text.substr(i + 1, 5) == "u0000") return refuse({"line.nul"});
                ++i;  // what is escaped ends no string
            }
            if (c == '"') inString = false;
            continue;
        }
        if (c == '"') inString = true;
        if (c == '{' || c == '[') ++open;
        if (c == '}' || c == ']') --open;
        if (open > depth) return refuse({"line.tooDeep"});
    }
    return {};
}

}  // namespace burrow::exchange
