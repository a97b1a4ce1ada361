#include "model/table.h"

#include <algorithm>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <set>

#include "base/text.h"

namespace burrow {
namespace {

using nlohmann::json;

struct At {
    std::string_view table;
    std::string_view row;

    [[nodiscard]] tl::unexpected<Error> refuse(std::string id, std::string_view field = {}) const {
        return fail(Trouble::badInput, {std::move(id),
                                        {{"table", std::string(table)},
                                         {"row", std::string(row.substr(0, 60))},
                                         {"field", std::string(field.substr(0, 60))}}});
    }
};

std::string textOf(const json& object, const char* field) {
    const auto found = object.find(field);
    if (found == object.end() || !found->is_string()) return {};
    return std::string(trimmed(found->get_ref<const std::string&>()));
}

Result<std::variant<double, std::string>> cellOf(const json& value, const TableColumn& column,
                                                 const At& at) {
    if (!column.limits) {
        if (!value.is_string() || value.get_ref<const std::string&>().empty()) {
            return at.refuse("table.noWord", column.name);
        }
        return std::variant<double, std::string>(value.get<std::string>());
    }
    if (!value.is_number()) return at.refuse("table.noNumber", column.name);
    const auto number = value.get<double>();
    if (number < column.limits->least || number > column.limits->most) {
        auto refused = at.refuse("table.range", column.name);
        auto& arguments = refused.value().message.arguments;
        arguments.push_back({"least", column.limits->least});
        arguments.push_back({"most", column.limits->most});
        return refused;
    }
    return std::variant<double, std::string>(number);
}

bool isKnown(std::string_view field, const TableShape& shape) {
    return field == "id" || field == "source" ||
           std::any_of(shape.columns.begin(), shape.columns.end(),
                       [&](const TableColumn& column) { return column.name == field; });
}

}  // namespace

double TableRow::number(std::string_view column) const {
    const auto cell = numberIfAny(column);
    if (!cell) std::abort();
    return *cell;
}

std::optional<double> TableRow::numberIfAny(std::string_view column) const {
    const auto found = cells_.find(column);
    if (found == cells_.end()) return std::nullopt;
    const auto* number = std::get_if<double>(&found->second);
    if (number == nullptr) std::abort();
    return *number;
}

const std::string& TableRow::word(std::string_view column) const {
    static const std::string none;
    const auto found = cells_.find(column);
    if (found == cells_.end()) return none;
    const auto* word = std::get_if<std::string>(&found->second);
    if (word == nullptr) std::abort();
    return *word;
}

Result<Tables> Tables::fromJson(std::string_view file, std::span<const TableShape> shapes) {
    const auto object = json::parse(file, nullptr, false);
    if (!object.is_object()) return At{}.refuse("table.unreadable");
    Tables tables;
    for (const auto& shape : shapes) {
        const auto list = object.find(shape.name);
        if (list == object.end() || !list->is_array()) {
            return At{shape.name, {}}.refuse("table.missing");
        }
        std::set<std::string> ids;
        auto& rows = tables.tables_[std::string(shape.name)];
        for (const auto& item : *list) {
            if (!item.is_object()) return At{shape.name, {}}.refuse("table.unreadable");
            TableRow row;
            row.id = textOf(item, "id");
            row.source = textOf(item, "source");
            const At at{shape.name, row.id};
            if (row.id.empty() || row.source.empty()) return at.refuse("table.noSource");
            if (!ids.insert(row.id).second) return at.refuse("table.twice");
            for (const auto& [field, value] : item.items()) {
                if (!isKnown(field, shape)) return at.refuse("table.unknownField", field);
            }
            for (const auto& column : shape.columns) {
                const auto cell = item.find(column.name);
                if (cell == item.end()) {
                    if (column.mayBeEmpty) continue;
                    return at.refuse("table.noCell", column.name);
                }
                BURROW_TRY(auto taken, cellOf(*cell, column, at));
                row.cells_.emplace(column.name, std::move(taken));
            }
            rows.push_back(std::move(row));
        }
    }
    if (object.size() != shapes.size()) return At{}.refuse("table.unreadable");
    return tables;
}

const std::vector<TableRow>& Tables::rows(std::string_view table) const {
    const auto found = tables_.find(table);
    if (found == tables_.end()) std::abort();
    return found->second;
}

const TableRow* Tables::find(std::string_view table, std::string_view id) const {
    const auto& all = rows(table);
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const TableRow& row) { return row.id == id; });
    return found == all.end() ? nullptr : &*found;
}

}  // namespace burrow
