// The cells of one CSV row by column name.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/civil.h"
#include "base/message.h"
#include "base/units.h"
#include "model/terms.h"

namespace burrow::exchange {

struct CellProblem {
    std::string column;
    Message reason;
};

/// What reading a row throws, inside RowMaker only.
struct BadCell {
    CellProblem problem;
};

[[noreturn]] void refuse(std::string_view column, Message reason);

/// Remembers which cells were asked for, so that the rest can be kept as notes. The header and the cells
/// must outlive it; what it cannot read it refuses with a BadCell.
class RowCells {
public:
    RowCells(const std::vector<std::string>& header, const std::vector<std::string>& cells,
             char delimiter);
    RowCells(const RowCells&) = delete;
    RowCells& operator=(const RowCells&) = delete;

    /// Empty where there is no such column.
    [[nodiscard]] const std::string& text(std::string_view column) const;
    /// Whether anything stands there, be it that the text is empty (see guardedText).
    [[nodiscard]] bool isGiven(std::string_view column) const;
    [[nodiscard]] const std::string& needed(std::string_view column) const;
    [[nodiscard]] std::optional<CivilDay> day(std::string_view column) const;
    [[nodiscard]] Millimetres millimetres(std::string_view column) const;
    [[nodiscard]] bool flag(std::string_view column) const;
    template <class Term>
    [[nodiscard]] Term term(std::string_view column, Term usual) const {
        const auto& value = text(column);
        if (value.empty()) return usual;
        const auto term = parseTerm<Term>(value);
        if (!term) refuse(column, {"cell.word", {{"value", value}}});
        return *term;
    }
    /// Where the delimiter is not a comma, a comma may be the decimal sign.
    [[nodiscard]] std::string number(std::string text) const;
    /// The note, and after it the cells nobody asked for, "colour: red; feeder: tongs".
    [[nodiscard]] std::string noteAndRest() const;
    [[nodiscard]] const std::vector<std::string>& columns() const { return header_; }

private:
    [[nodiscard]] std::string rest() const;

    const std::vector<std::string>& header_;
    const std::vector<std::string>& cells_;
    std::vector<std::string> plain_;  // the cells without their apostrophes, where there are any
    mutable std::vector<bool> isUsed_;
    char delimiter_;
};

}  // namespace burrow::exchange
