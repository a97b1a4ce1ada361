#include "exchange/row_cells.h"

#include <algorithm>

#include "base/text.h"
#include "exchange/csv.h"

namespace burrow::exchange {

void refuse(std::string_view column, Message reason) {
    throw BadCell{{std::string(column), std::move(reason)}};
}

RowCells::RowCells(const std::vector<std::string>& header, const std::vector<std::string>& cells,
                   char delimiter)
    : header_(header), cells_(cells), isUsed_(header.size()), delimiter_(delimiter) {
    const auto isGuarded = [](const std::string& cell) {
        return plainText(cell).size() != cell.size();
    };
    if (std::none_of(cells.begin(), cells.end(), isGuarded)) return;
    for (const auto& cell : cells) plain_.emplace_back(plainText(cell));
}

const std::string& RowCells::text(std::string_view column) const {
    static const std::string none;
    for (std::size_t i = 0; i < header_.size(); ++i) {
        if (header_[i] != column) continue;
        isUsed_[i] = true;
        return plain_.empty() ? cells_[i] : plain_[i];
    }
    return none;
}

bool RowCells::isGiven(std::string_view column) const {
    for (std::size_t i = 0; i < header_.size(); ++i) {
        if (header_[i] == column) return !cells_[i].empty();
    }
    return false;
}

const std::string& RowCells::needed(std::string_view column) const {
    if (!isGiven(column)) refuse(column, {"cell.empty"});
    return text(column);
}

std::optional<CivilDay> RowCells::day(std::string_view column) const {
    const auto& value = text(column);
    if (value.empty()) return std::nullopt;
    const auto day = parseIsoDate(value);
    if (!day) refuse(column, {"cell.date", {{"value", value}}});
    return day;
}

Millimetres RowCells::millimetres(std::string_view column) const {
    const auto value = number(text(column));
    if (value.empty()) return {};
    const auto parsed = parseNumber(value);
    if (!parsed || *parsed < 0 || *parsed > 5000) {
        refuse(column, {"cell.millimetres", {{"value", value}}});
    }
    return {*parsed};
}

bool RowCells::flag(std::string_view column) const {
    const auto word = normalTerm(text(column));
    if (word.empty() || word == "no" || word == "false") return false;
    if (word == "yes" || word == "true") return true;
    refuse(column, {"cell.word", {{"value", text(column)}}});
}

std::string RowCells::number(std::string text) const {
    if (delimiter_ != ',') std::replace(text.begin(), text.end(), ',', '.');
    return text;
}

std::string RowCells::rest() const {
    std::string all;
    for (std::size_t i = 0; i < header_.size(); ++i) {
        // A file of bad rows carries the reason along, which is nothing about the animal.
        if (isUsed_[i] || cells_[i].empty() || header_[i] == "reason") continue;
        if (!all.empty()) all += "; ";
        const auto& cell = plain_.empty() ? cells_[i] : plain_[i];
        all += header_[i].empty() ? cell : header_[i] + ": " + cell;
    }
    return all;
}

std::string RowCells::noteAndRest() const {
    auto note = text("note");
    const auto others = rest();
    if (!note.empty() && !others.empty()) note += "; ";
    return note + others;
}

}  // namespace burrow::exchange
