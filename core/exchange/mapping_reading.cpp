#include "exchange/mapping_reading.h"

#include <fmt/format.h>

#include <cmath>
#include <utility>

#include "base/text.h"
#include "exchange/cell_dates.h"
#include "exchange/cell_measures.h"
#include "exchange/csv.h"
#include "exchange/mapping_terms.h"
#include "model/place.h"

namespace burrow::exchange {
namespace {

using Type = MapTarget::Type;

/// An inch is 25.4 mm, but nobody measures a spider to a hundredth of that.
std::string lengthText(Millimetres length) {
    return fmt::format("{}", std::round(length.value * 100) / 100);
}

std::optional<std::string> readDay(const ColumnMapping& column, std::string_view cell,
                                   bool withTime) {
    const auto date = readDate(cell);
    if (!date) return std::nullopt;
    auto day = date->certain;
    if (!day && column.date) day = date->loose->in(*column.date);
    if (!day) return std::nullopt;
    return withTime ? isoDate(*day) + date->time : isoDate(*day);
}

std::optional<std::string> readLengthCell(const ColumnMapping& column, std::string_view cell) {
    const auto length = readLength(cell);
    if (!length || (!length->unit && !column.unit)) return std::nullopt;
    return lengthText(length->in(column.unit.value_or(LengthUnit::mm)));
}

std::optional<std::string> readWord(const Mapping& mapping, const ColumnMapping& column,
                                    const std::string& cell) {
    if (const auto words = mapping.words.find(column.target); words != mapping.words.end()) {
        const auto found = words->second.find(cell);
        if (found != words->second.end()) return found->second;
    }
    return wordMeant(mapping.kind, column.target, cell);
}

template <class T, class Show>
std::optional<std::string> shown(const std::optional<T>& value, Show show) {
    return value ? std::optional<std::string>(show(*value)) : std::nullopt;
}

void join(std::string& all, const std::string& part, std::string_view between) {
    if (part.empty()) return;
    if (!all.empty()) all += between;
    all += part;
}

/// "Brachypelma" and "Brachypelma hamorii" in two columns are one name.
void joinSpecies(std::string& all, const std::string& part) {
    if (!all.empty() && lowerAscii(part).starts_with(lowerAscii(all) + " ")) all.clear();
    join(all, part, " ");
}

/// The parts of a place that stand in columns of their own, as one.
void joinPlace(MappedRow& row) {
    const auto take = [&row](const char* part) {
        const auto found = row.find(part);
        return found == row.end() ? std::string() : std::exchange(found->second, {});
    };
    const Place place{take("room"), take("rack"), take("shelf"), take("position")};
    if (!place.isEmpty()) join(row["place"], std::string(trimmed(place.text())), " / ");
}

}  // namespace

std::optional<std::string> readCell(const Mapping& mapping, const ColumnMapping& column,
                                    std::string_view cell) {
    const std::string text(plainText(cell));
    const auto* target = findTarget(mapping.kind, column.target);
    if (text.empty() || target == nullptr) return text;
    // "?" is no day, no name and no length; a note may be anything, and what is needed is left to be refused.
    const bool isFree = target->isRequired || target->name == "note";
    if (!isFree && saysUnknown(text)) return std::string();
    switch (target->type) {
        case Type::text:
        case Type::species: return text;
        case Type::word: return readWord(mapping, column, text);
        case Type::day: return readDay(column, text, false);
        case Type::moment: return readDay(column, text, true);
        case Type::time: return readTime(text);
        case Type::length: return readLengthCell(column, text);
        case Type::mass:
            return shown(readMass(text), [](Grams mass) { return fmt::format("{}", mass.value); });
        case Type::count:
            return shown(readCount(text), [](int count) { return std::to_string(count); });
    }
    return std::nullopt;
}

std::string speciesWritten(const Mapping& mapping, const std::vector<std::string>& cells) {
    std::string all;
    for (std::size_t i = 0; i < mapping.columns.size() && i < cells.size(); ++i) {
        const auto& column = mapping.columns[i];
        if (column.target == "species" && !column.isLeftOut) {
            joinSpecies(all, std::string(plainText(cells[i])));
        }
    }
    return all;
}

MappedRow readRow(const Mapping& mapping, const std::vector<std::string>& cells) {
    MappedRow row;
    std::string rest;
    for (std::size_t i = 0; i < mapping.columns.size() && i < cells.size(); ++i) {
        const auto& column = mapping.columns[i];
        if (column.isLeftOut || cells[i].empty()) continue;
        const std::string written(plainText(cells[i]));
        if (column.target.empty()) {
            join(rest, column.column.empty() ? written : column.column + ": " + written, "; ");
            continue;
        }
        if (column.target == "species") continue;
        const auto value = readCell(mapping, column, cells[i]).value_or(written);
        const auto between = column.target == "place" ? " / " : "; ";
        join(row[column.target], value, between);
    }
    if (const auto written = speciesWritten(mapping, cells); !written.empty()) {
        const auto meant = mapping.species.find(written);
        row["species"] = meant == mapping.species.end() ? written : meant->second;
    }
    if (!rest.empty()) join(row["note"], rest, "; ");
    joinPlace(row);
    // A word for the sex may say more: "mature male".
    if (const auto sex = row.find("sex"); sex != row.end() && mapping.kind == CsvKind::animals) {
        const auto comma = sex->second.find(", ");
        if (comma != std::string::npos) {
            join(row["status"], sex->second.substr(comma + 2), ", ");
            sex->second.resize(comma);
        }
    }
    if (const auto time = row.find("time"); time != row.end()) {
        auto& at = row["at"];
        if (!at.empty() && at.find('T') == std::string::npos) at += time->second;
    }
    return row;
}

}  // namespace burrow::exchange
