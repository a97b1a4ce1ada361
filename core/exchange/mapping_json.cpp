// Mappings as files, so that next month's sheet is read as this one was.
#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "base/text.h"
#include "exchange/mapping.h"

namespace burrow::exchange {
namespace {

using json = nlohmann::ordered_json;

constexpr std::string_view format = "burrowbook mapping";
constexpr int version = 1;

// A mapping file may come from anywhere: limits first.
constexpr std::size_t longestFile = 4'000'000;
constexpr std::size_t mostColumns = 1000;
constexpr std::size_t mostSpellings = 20'000;
constexpr std::size_t longestText = 1000;

json maybe(const auto& value) { return value ? json(std::string(name(*value))) : json(nullptr); }

json columnToJson(const Mapping& mapping, const ColumnMapping& column) {
    json object{{"column", column.column}};
    if (column.isLeftOut) {
        object["to"] = nullptr;
        return object;
    }
    object["to"] = column.target.empty() ? "note" : column.target;
    // What is kept in the note under its own name is another thing than the note itself.
    if (column.target.empty()) object["under_its_name"] = true;
    const auto* target = findTarget(mapping.kind, column.target);
    if (target == nullptr) return object;
    using Type = MapTarget::Type;
    if (target->type == Type::day || target->type == Type::moment) {
        object["dates"] = maybe(column.date);
    }
    if (target->type == Type::length) object["unit"] = maybe(column.unit);
    return object;
}

/// What reading a mapping throws, inside this file only.
struct NoMapping {
    std::string where;
};

std::string text(const json& value, const char* where) {
    if (!value.is_string()) throw NoMapping{where};
    auto text = value.get<std::string>();
    if (text.size() > longestText || text.find('\0') != std::string::npos) throw NoMapping{where};
    return text;
}

template <class Term, std::size_t N>
std::optional<Term> term(const json& object, const char* member, const std::array<Term, N>& terms) {
    const auto found = object.find(member);
    if (found == object.end() || found->is_null()) return std::nullopt;
    const auto wanted = text(*found, member);
    for (const auto term : terms) {
        if (name(term) == wanted) return term;
    }
    throw NoMapping{member};
}

ColumnMapping columnFrom(const json& object, CsvKind kind) {
    if (!object.is_object() || !object.contains("column")) throw NoMapping{"columns"};
    ColumnMapping column{text(object["column"], "column")};
    const auto to = object.find("to");
    if (to == object.end() || to->is_null()) {
        column.isLeftOut = true;
        return column;
    }
    column.target = text(*to, "to");
    if (findTarget(kind, column.target) == nullptr) throw NoMapping{column.target};
    if (object.value("under_its_name", json(false)) == true) column.target.clear();
    column.date = term(object, "dates",
                       std::array{DateOrder::iso, DateOrder::dayFirst, DateOrder::monthFirst});
    column.unit =
        term(object, "unit", std::array{LengthUnit::mm, LengthUnit::cm, LengthUnit::inch});
    return column;
}

std::map<std::string, std::string> spellingsFrom(const json& object, const char* where) {
    if (!object.is_object() || object.size() > mostSpellings) throw NoMapping{where};
    std::map<std::string, std::string> spellings;
    for (const auto& [written, meant] : object.items()) {
        spellings[text(json(written), where)] = text(meant, where);
    }
    return spellings;
}

Mapping read(const json& object) {
    if (!object.is_object() || object.value("format", json()) != format) throw NoMapping{"format"};
    if (object.value("version", json()) != version) throw NoMapping{"version"};
    Mapping mapping;
    bool isKnown = false;
    for (const auto kind : {CsvKind::animals, CsvKind::enclosures, CsvKind::events}) {
        if (object.value("kind", json()) != name(kind)) continue;
        mapping.kind = kind;
        isKnown = true;
    }
    if (!isKnown) throw NoMapping{"kind"};
    const auto columns = object.value("columns", json());
    if (!columns.is_array() || columns.size() > mostColumns) throw NoMapping{"columns"};
    for (const auto& column : columns) mapping.columns.push_back(columnFrom(column, mapping.kind));
    mapping.species = spellingsFrom(object.value("species", json::object()), "species");
    const auto words = object.value("words", json::object());
    if (!words.is_object() || words.size() > mostColumns) throw NoMapping{"words"};
    for (const auto& [target, spellings] : words.items()) {
        mapping.words[target] = spellingsFrom(spellings, "words");
    }
    if (const auto event = object.find("event"); event != object.end() && !event->is_null()) {
        mapping.event = text(*event, "event");
        if (!parseFactKind(mapping.event)) throw NoMapping{"event"};
    }
    if (const auto from = object.find("number_from"); from != object.end() && !from->is_null()) {
        const bool isFine = from->is_number_integer() && *from >= 1 && *from <= 1'000'000;
        if (!isFine) throw NoMapping{"number_from"};
        mapping.numberFrom = from->get<int>();
    }
    if (const auto day = object.find("sizes_on"); day != object.end() && !day->is_null()) {
        mapping.sizesOn = parseIsoDate(text(*day, "sizes_on"));
        if (!mapping.sizesOn) throw NoMapping{"sizes_on"};
    }
    return mapping;
}

}  // namespace

std::string mappingToJson(const Mapping& mapping) {
    json object{{"format", format}, {"version", version}, {"kind", name(mapping.kind)}};
    json columns = json::array();
    for (const auto& column : mapping.columns) columns.push_back(columnToJson(mapping, column));
    object["columns"] = std::move(columns);
    object["species"] = json(mapping.species);
    object["words"] = json(mapping.words);
    if (mapping.kind == CsvKind::events) {
        object["event"] = mapping.event.empty() ? json(nullptr) : json(mapping.event);
    }
    if (mapping.kind == CsvKind::animals) {
        object["number_from"] = mapping.numberFrom ? json(*mapping.numberFrom) : json(nullptr);
        object["sizes_on"] = mapping.sizesOn ? json(isoDate(*mapping.sizesOn)) : json(nullptr);
    }
    return object.dump(2, ' ', false, json::error_handler_t::replace) + "\n";
}

Result<Mapping> mappingFromJson(std::string_view text) {
    const auto noMapping = [](const std::string& where) {
        return fail(Trouble::badInput, {"map.noMapping", {{"where", where.substr(0, 60)}}});
    };
    if (text.size() > longestFile) return noMapping("size");
    const auto object = json::parse(text, nullptr, false);
    if (object.is_discarded()) return noMapping("JSON");
    try {
        return read(object);
    } catch (const NoMapping& why) {
        return noMapping(why.where);
    }
}

}  // namespace burrow::exchange
