#include "exchange/mapping.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "exchange/csv.h"
#include "model/fact.h"

namespace burrow::exchange {
namespace {

using Type = MapTarget::Type;

const std::vector<MapTarget> animalTargets{{"code", CsvKind::animals, Type::text, true},
                                           {"species", CsvKind::animals, Type::species, true, true},
                                           {"sex", CsvKind::animals, Type::word},
                                           {"hatched_on", CsvKind::animals, Type::day},
                                           {"acquired_on", CsvKind::animals, Type::day},
                                           {"source", CsvKind::animals},
                                           {"status", CsvKind::animals, Type::word},
                                           {"quarantined_on", CsvKind::animals, Type::day},
                                           {"place", CsvKind::animals, Type::text, false, true},
                                           {"room", CsvKind::animals},
                                           {"rack", CsvKind::animals},
                                           {"shelf", CsvKind::animals},
                                           {"position", CsvKind::animals},
                                           {"enclosure", CsvKind::animals},
                                           {"mother", CsvKind::animals},
                                           {"father", CsvKind::animals},
                                           {"count", CsvKind::animals, Type::count},
                                           {"span_mm", CsvKind::animals, Type::length},
                                           {"carapace_mm", CsvKind::animals, Type::length},
                                           {"mass_g", CsvKind::animals, Type::mass},
                                           {"last_moult", CsvKind::animals, Type::moment},
                                           {"last_fed", CsvKind::animals, Type::moment},
                                           {"last_watered", CsvKind::animals, Type::moment},
                                           {"note", CsvKind::animals, Type::text, false, true}};

const std::vector<MapTarget> enclosureTargets{
    {"code", CsvKind::enclosures, Type::text, true},
    {"length_mm", CsvKind::enclosures, Type::length},
    {"width_mm", CsvKind::enclosures, Type::length},
    {"height_mm", CsvKind::enclosures, Type::length},
    {"substrate_mm", CsvKind::enclosures, Type::length},
    {"place", CsvKind::enclosures, Type::text, false, true},
    {"room", CsvKind::enclosures},
    {"rack", CsvKind::enclosures},
    {"shelf", CsvKind::enclosures},
    {"position", CsvKind::enclosures},
    {"note", CsvKind::enclosures, Type::text, false, true}};

Type typeOf(const FieldSpec& field) {
    switch (field.type) {
        case FieldType::count: return Type::count;
        case FieldType::millimetres: return Type::length;
        case FieldType::grams: return Type::mass;
        case FieldType::outcome:
        case FieldType::method:
        case FieldType::look:
        case FieldType::clarity:
        case FieldType::sex: return Type::word;
        case FieldType::day: return Type::day;
        default: return Type::text;
    }
}

std::vector<MapTarget> makeEventTargets() {
    std::vector<MapTarget> targets{{"code", CsvKind::events, Type::text, true},
                                   {"at", CsvKind::events, Type::moment, true},
                                   {"time", CsvKind::events, Type::time},
                                   {"event", CsvKind::events, Type::word, true}};
    for (const auto& field : factFields()) {
        // Photos and what belongs to them are files of a book, which no spreadsheet has.
        constexpr std::array<std::string_view, 9> ofBooks{"about",    "role",      "picture",
                                                          "original", "dried",     "low_mm",
                                                          "high_mm",  "height_mm", "text"};
        if (std::find(ofBooks.begin(), ofBooks.end(), field.name) != ofBooks.end()) continue;
        targets.push_back({field.name, CsvKind::events, typeOf(field)});
    }
    targets.push_back({"note", CsvKind::events, Type::text, false, true});
    return targets;
}

const std::vector<MapTarget>& targetsOf(CsvKind kind) {
    static const auto eventTargets = makeEventTargets();
    static const std::vector<MapTarget> none;
    switch (kind) {
        case CsvKind::animals: return animalTargets;
        case CsvKind::enclosures: return enclosureTargets;
        case CsvKind::events: return eventTargets;
        case CsvKind::tags:
        case CsvKind::settings: break;
    }
    return none;
}

}  // namespace

std::string_view name(DateOrder order) {
    constexpr std::array<std::string_view, 3> names{"iso", "day_first", "month_first"};
    return names.at(static_cast<std::size_t>(order));
}

std::string_view name(LengthUnit unit) {
    constexpr std::array<std::string_view, 3> names{"mm", "cm", "in"};
    return names.at(static_cast<std::size_t>(unit));
}

std::vector<MapTarget> mapTargets(CsvKind kind) { return targetsOf(kind); }

const MapTarget* findTarget(CsvKind kind, std::string_view name) {
    const auto& targets = targetsOf(kind);
    const auto found = std::find_if(targets.begin(), targets.end(),
                                    [&](const MapTarget& target) { return target.name == name; });
    return found == targets.end() ? nullptr : &*found;
}

Result<Sheet> readSheet(std::string_view text, std::size_t most) {
    BURROW_TRY(auto reader, CsvReader::open(text));
    Sheet sheet;
    sheet.columns = reader.columns();
    while (sheet.rows.size() < most) {
        auto row = reader.next();
        if (!row) break;
        if (!row->problem) sheet.rows.push_back(std::move(row->cells));
    }
    return sheet;
}

}  // namespace burrow::exchange
