// A sheet under its mapping, as the tables that bring() reads.
#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "exchange/cell_dates.h"
#include "exchange/cell_measures.h"
#include "exchange/csv.h"
#include "exchange/mapping_reading.h"

namespace burrow::exchange {
namespace {

using Type = MapTarget::Type;
using Columns = std::vector<std::string>;

/// What bring() reads as exact text; everything else stands in one way only.
bool isText(CsvKind kind, std::string_view column) {
    const auto* target = findTarget(kind, column);
    return target == nullptr || target->type == Type::text || target->type == Type::species;
}

/// A table that grows row by row.
class Table {
public:
    Table(CsvKind kind, Columns columns) : columns_(std::move(columns)) {
        table_.kind = kind;
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            table_.text += (i == 0 ? "" : ",") + columns_[i];
        }
        table_.text += '\n';
    }
    void add(const MappedRow& row, const Original::Row& original) {
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            if (i > 0) table_.text += ',';
            const auto found = row.find(columns_[i]);
            if (found == row.end() || found->second.empty()) continue;
            table_.text += csvCell(
                isText(table_.kind, columns_[i]) ? guardedText(found->second) : found->second, ',');
        }
        table_.text += '\n';
        table_.original.rows.push_back(original);
    }
    void addUnread(const Original::Row& row, std::string column, Message problem) {
        table_.original.unread.push_back({row, std::move(column), std::move(problem)});
    }
    void setFollowsAnimals() { table_.original.followsAnimals = true; }
    [[nodiscard]] bool isEmpty() const { return table_.original.rows.empty(); }
    /// With the keeper's own names of the columns.
    MappedTable take(const Mapping& mapping) {
        for (const auto& column : mapping.columns) {
            if (!column.target.empty()) {
                table_.original.columns.try_emplace(column.target, column.column);
            }
        }
        return std::move(table_);
    }

private:
    Columns columns_;
    MappedTable table_;
};

/// The columns of the keeper's list that are events of their own.
bool isEventOfAnimal(std::string_view target) {
    for (const auto* event :
         {"span_mm", "carapace_mm", "mass_g", "last_moult", "last_fed", "last_watered"}) {
        if (target == event) return true;
    }
    return false;
}

/// What goes into another column of the table: the time into the day, the shelf into the place.
bool isPart(std::string_view target) {
    for (const auto* part : {"time", "room", "rack", "shelf", "position"}) {
        if (target == part) return true;
    }
    return false;
}

Columns columnsOf(CsvKind kind) {
    Columns columns;
    for (const auto& target : mapTargets(kind)) {
        const bool isInOther = kind == CsvKind::animals && isEventOfAnimal(target.name);
        if (!isInOther && !isPart(target.name)) columns.emplace_back(target.name);
    }
    return columns;
}

class Applying {
public:
    explicit Applying(const Mapping& mapping)
        : mapping_(mapping),
          main_(mapping.kind, columnsOf(mapping.kind)),
          events_(CsvKind::events,
                  {"code", "at", "event", "outcome", "span_mm", "carapace_mm", "mass_g"}),
          number_(mapping.numberFrom.value_or(1)) {
        events_.setFollowsAnimals();
    }

    Result<std::vector<MappedTable>> run(std::string_view text) {
        BURROW_TRY(auto reader, CsvReader::open(text));
        BURROW_DO(orderColumns(reader.columns()));
        const bool hasSizes = std::any_of(
            mapping_.columns.begin(), mapping_.columns.end(), [](const ColumnMapping& column) {
                return !column.isLeftOut &&
                       (column.target == "span_mm" || column.target == "carapace_mm" ||
                        column.target == "mass_g");
            });
        if (mapping_.kind == CsvKind::animals && hasSizes && !mapping_.sizesOn) {
            return fail(Trouble::badInput, {"map.openSizes"});
        }
        while (const auto row = reader.next()) {
            const Original::Row original{row->line, row->raw};
            if (row->problem) {
                main_.addUnread(original, {}, *row->problem);
                continue;
            }
            // Spreadsheets write rows in which nothing stands.
            const bool isBlank = std::all_of(row->cells.begin(), row->cells.end(),
                                             [](const auto& cell) { return cell.empty(); });
            if (isBlank) continue;
            BURROW_DO(checkAnswered(row->cells));
            if (const auto* column = unreadEvent(row->cells)) {
                main_.addUnread(original, column->column, whyUnread(*column, row->cells));
            } else {
                add(readRow(mapping_, row->cells), original);
            }
        }
        std::vector<MappedTable> tables;
        tables.push_back(main_.take(mapping_));
        if (!events_.isEmpty()) tables.push_back(events_.take(mapping_));
        return tables;
    }

private:
    /// Columns are found by name: a later version of the sheet may have them in another order, or more.
    Done orderColumns(const Columns& columns) {
        std::vector<ColumnMapping> ordered;
        auto known = mapping_.columns;
        for (const auto& column : columns) {
            const auto found = std::find_if(known.begin(), known.end(),
                                            [&](const auto& k) { return k.column == column; });
            if (found == known.end()) {
                ordered.push_back({column});
                continue;
            }
            ordered.push_back(*found);
            known.erase(found);
        }
        for (const auto& gone : known) {
            const auto* target = findTarget(mapping_.kind, gone.target);
            if (target == nullptr || gone.isLeftOut) continue;
            return fail(Trouble::badInput, {"map.columnGone", {{"column", gone.column}}});
        }
        mapping_.columns = std::move(ordered);
        return {};
    }

    /// Whether anything stands here that can be read in two ways, and nobody has said in which.
    Done checkAnswered(const std::vector<std::string>& cells) const {
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const auto& column = mapping_.columns[i];
            const auto* target = findTarget(mapping_.kind, column.target);
            if (target == nullptr || column.isLeftOut || cells[i].empty()) continue;
            const bool isDate = target->type == Type::day || target->type == Type::moment;
            if (isDate && !column.date) {
                const auto date = readDate(cells[i]);
                if (date && date->loose) {
                    return fail(Trouble::badInput, {"map.openDate", {{"column", column.column}}});
                }
            }
            if (target->type == Type::length && !column.unit) {
                const auto length = readLength(cells[i]);
                if (length && !length->unit) {
                    return fail(Trouble::badInput, {"map.openUnit", {{"column", column.column}}});
                }
            }
        }
        return {};
    }

    /// A column of an animal's row that is an event of its own and can't be read: the row as a whole is bad,
    /// so that it can be corrected and brought in as a whole.
    [[nodiscard]] const ColumnMapping* unreadEvent(const std::vector<std::string>& cells) const {
        if (mapping_.kind != CsvKind::animals) return nullptr;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const auto& column = mapping_.columns[i];
            if (column.isLeftOut || cells[i].empty() || !isEventOfAnimal(column.target)) continue;
            if (!readCell(mapping_, column, cells[i])) return &column;
        }
        return nullptr;
    }

    [[nodiscard]] Message whyUnread(const ColumnMapping& column,
                                    const std::vector<std::string>& cells) const {
        const auto at = static_cast<std::size_t>(&column - mapping_.columns.data());
        const std::string value(plainText(cells[at]));
        const auto* target = findTarget(mapping_.kind, column.target);
        if (target->type == Type::length) return {"cell.length", {{"value", value}}};
        if (target->type == Type::mass) return {"cell.mass", {{"value", value}}};
        return {"cell.dateAny", {{"value", value}}};
    }

    void add(MappedRow row, const Original::Row& original) {
        if (mapping_.kind == CsvKind::animals && mapping_.numberFrom && !row.contains("code")) {
            row["code"] = fmt::format("{:03}", number_++);
        }
        if (mapping_.kind == CsvKind::events && !mapping_.event.empty() && !row.contains("event")) {
            row["event"] = mapping_.event;
        }
        main_.add(row, original);
        if (mapping_.kind == CsvKind::animals) addEvents(row, original);
    }

    void addEvents(const MappedRow& row, const Original::Row& original) {
        const auto valueOf = [&](std::string_view target) {
            const auto found = row.find(target);
            return found == row.end() ? std::string() : found->second;
        };
        const auto add = [&](const char* event, const std::string& at, MappedRow more) {
            if (at.empty()) return;
            more["code"] = valueOf("code");
            more["at"] = at;
            more["event"] = event;
            events_.add(more, original);
        };
        add("moulted", valueOf("last_moult"), {});
        add("offered", valueOf("last_fed"), {{"outcome", "ate"}});
        add("watered", valueOf("last_watered"), {});
        MappedRow sizes;
        for (const auto* size : {"span_mm", "carapace_mm", "mass_g"}) {
            if (auto value = valueOf(size); !value.empty()) sizes[size] = std::move(value);
        }
        if (sizes.empty() || !mapping_.sizesOn) return;
        add("measured", isoDate(*mapping_.sizesOn), sizes);
    }

    Mapping mapping_;
    Table main_;
    Table events_;
    int number_;
};

}  // namespace

Result<std::vector<MappedTable>> applyMapping(std::string_view text, const Mapping& mapping) {
    return Applying(mapping).run(text);
}

}  // namespace burrow::exchange
