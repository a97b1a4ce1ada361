// What the columns of a sheet most likely stand for.
#include <algorithm>
#include <set>

#include "exchange/cell_dates.h"
#include "exchange/cell_measures.h"
#include "exchange/mapping_reading.h"
#include "exchange/mapping_terms.h"

namespace burrow::exchange {
namespace {

using Type = MapTarget::Type;

bool isMeasureOfAnimal(std::string_view target) {
    return target == "span_mm" || target == "carapace_mm" || target == "mass_g";
}

/// How the cells of one column read as what it may stand for.
class ColumnReading {
public:
    ColumnReading(const Sheet& sheet, std::size_t column, const Mapping& mapping,
                  const MapTarget& target)
        : target_(target) {
        ColumnMapping guess{sheet.columns[column], std::string(target.name)};
        for (const auto& row : sheet.rows) {
            const auto& cell = row[column];
            if (cell.empty() || saysUnknown(cell)) continue;
            ++filled_;
            dates_.add(cell);
            const auto length = readLength(cell);
            if (length) ++lengths_;
            if (length && length->unit) ++withUnit_;
            if (readCell(mapping, guess, cell)) {
                ++read_;
            } else if (words_.size() <= mostWords) {
                words_.insert(cell);
            }
        }
    }

    /// More of it can be read than not; a column in which nothing stands is what it is called.
    [[nodiscard]] bool fits() const {
        switch (target_.type) {
            case Type::text:
            case Type::species: return true;
            case Type::day:
            case Type::moment: return dates_.read() * 2 >= filled_;
            case Type::length: return lengths_ * 2 >= filled_;
            // A few words that are not known can be asked about; free text is none of them.
            case Type::word: return read_ * 2 >= filled_ || words_.size() <= mostWords;
            case Type::time:
            case Type::mass:
            case Type::count: return read_ * 2 >= filled_;
        }
        return false;
    }
    [[nodiscard]] const MapTarget& target() const { return target_; }
    [[nodiscard]] const DateEvidence& dates() const { return dates_; }
    [[nodiscard]] bool allNameUnits() const { return withUnit_ == lengths_; }

private:
    static constexpr std::size_t mostWords = 12;
    const MapTarget& target_;
    std::set<std::string> words_;  // those that can't be read, as long as they are few
    std::int64_t filled_ = 0;
    std::int64_t read_ = 0;
    std::int64_t lengths_ = 0;
    std::int64_t withUnit_ = 0;
    DateEvidence dates_;
};

/// How well the names of the columns fit a kind of list.
int fitOf(CsvKind kind, const Sheet& sheet) {
    std::set<std::string> found;
    for (const auto& column : sheet.columns) {
        if (const auto target = targetNamed(kind, column)) found.insert(*target);
    }
    int fit = static_cast<int>(found.size());
    const auto has = [&](const char* target) { return found.contains(target); };
    if (kind == CsvKind::animals && has("species")) fit += 4;
    if (kind == CsvKind::events && has("at")) fit += 2;
    if (kind == CsvKind::events && (has("event") || has("prey") || has("outcome"))) fit += 2;
    if (kind == CsvKind::enclosures && has("length_mm") && has("width_mm")) fit += 4;
    return fit;
}

/// What is certain of how its cells are read.
void complete(ColumnMapping& column, const ColumnReading& reading) {
    const auto type = reading.target().type;
    column.date.reset();
    column.unit.reset();
    if (type == Type::day || type == Type::moment) column.date = reading.dates().order();
    if (type == Type::length) {
        column.unit = unitNamed(column.column);
        if (!column.unit && reading.allNameUnits()) column.unit = LengthUnit::mm;
    }
}

void proposeColumn(Mapping& mapping, std::set<std::string>& taken, const Sheet& sheet,
                   std::size_t at) {
    ColumnMapping column{sheet.columns[at]};
    const auto named = targetNamed(mapping.kind, column.column);
    const auto* target = named ? findTarget(mapping.kind, *named) : nullptr;
    if (target != nullptr && (target->isJoined || !taken.contains(*named))) {
        const ColumnReading reading(sheet, at, mapping, *target);
        if (reading.fits()) {
            taken.insert(*named);
            column.target = *named;
            complete(column, reading);
        }
    }
    mapping.columns.push_back(std::move(column));
}

/// Every spelling that means one species that is known here.
void proposeSpecies(Mapping& mapping, const Sheet& sheet, const Profiles& profiles) {
    std::set<std::string> seen;
    for (const auto& row : sheet.rows) {
        auto written = speciesWritten(mapping, row);
        if (written.empty() || !seen.insert(written).second) continue;
        const auto* profile = profiles.find(written);
        if (profile != nullptr && profile->name != written) {
            mapping.species[std::move(written)] = profile->name;
        }
    }
}

}  // namespace

void completeColumn(Mapping& mapping, const Sheet& sheet, std::size_t at, CivilDay today) {
    auto& column = mapping.columns[at];
    const auto* target = findTarget(mapping.kind, column.target);
    if (target == nullptr) return;
    complete(column, ColumnReading(sheet, at, mapping, *target));
    const bool isSize = mapping.kind == CsvKind::animals && isMeasureOfAnimal(target->name);
    if (isSize && !mapping.sizesOn) mapping.sizesOn = today;
}

Mapping proposeMapping(const Sheet& sheet, const Profiles& profiles, CivilDay today) {
    auto best = CsvKind::animals;
    for (const auto kind : {CsvKind::events, CsvKind::enclosures}) {
        if (fitOf(kind, sheet) > fitOf(best, sheet)) best = kind;
    }
    return proposeMapping(sheet, best, profiles, today);
}

Mapping proposeMapping(const Sheet& sheet, CsvKind kind, const Profiles& profiles, CivilDay today) {
    Mapping mapping;
    mapping.kind = kind;
    std::set<std::string> taken;
    for (std::size_t i = 0; i < sheet.columns.size(); ++i) {
        proposeColumn(mapping, taken, sheet, i);
    }
    proposeSpecies(mapping, sheet, profiles);
    const bool hasSizes = std::any_of(taken.begin(), taken.end(), isMeasureOfAnimal);
    if (kind == CsvKind::animals && hasSizes) mapping.sizesOn = today;
    return mapping;
}

}  // namespace burrow::exchange
