// Tables of the trade's own numbers as data: rows of a JSON file, each with where it comes from. One
// file holds one or more tables: {"bands": [{"id": "cricket.small", "least_mm": 3, ..., "source": "..."}]}
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/result.h"
#include "model/profile.h"

namespace burrow {

/// A column of numbers within limits, or of words where there are none.
struct TableColumn {
    std::string_view name;
    std::optional<Range<double>> limits = std::nullopt;
    bool mayBeEmpty = false;
};

struct TableShape {
    std::string_view name;
    std::vector<TableColumn> columns;
};

/// One row. Asking for a column that its shape does not have is a mistake in the program and ends it.
class TableRow {
public:
    std::string id;
    std::string source;  ///< a citation, or "common practice, no source"

    [[nodiscard]] double number(std::string_view column) const;
    [[nodiscard]] std::optional<double> numberIfAny(std::string_view column) const;
    [[nodiscard]] const std::string& word(std::string_view column) const;

private:
    friend class Tables;
    std::map<std::string, std::variant<double, std::string>, std::less<>> cells_;
};

class Tables {
public:
    /// Fails with `badInput`, and a message that names table and row, for a file that lacks a table
    /// or has one too many, and for a row without id, source or cell, with an id twice, with a cell
    /// nobody asked for, or a number outside its limits.
    static Result<Tables> fromJson(std::string_view file, std::span<const TableShape> shapes);

    /// In the order of the file.
    [[nodiscard]] const std::vector<TableRow>& rows(std::string_view table) const;
    [[nodiscard]] const TableRow* find(std::string_view table, std::string_view id) const;

private:
    std::map<std::string, std::vector<TableRow>, std::less<>> tables_;
};

}  // namespace burrow
