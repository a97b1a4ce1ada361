#include "viewmodels/numbersmodel.h"

#include <algorithm>

#include "room/number_words.h"

namespace burrow {
namespace {

/// The numbers that can be changed: what is fixed stands in the row's name. Where all are, all of them.
std::vector<TableNumber> shownOf(const NumberRow& row) {
    std::vector<TableNumber> shown;
    std::copy_if(row.numbers.begin(), row.numbers.end(), std::back_inserter(shown),
                 [](const TableNumber& number) { return !number.isFixed; });
    return shown.empty() ? row.numbers : shown;
}

}  // namespace

void NumbersModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &NumbersModel::read);
    read();
    emit deskChanged();
}

NumbersRow NumbersModel::rowOf(const NumberTable& table, const NumberRow& row) const {
    const auto& words = desk_->knowledge().words;
    const auto shown = shownOf(row);
    QStringList values;
    QStringList also;
    std::size_t own = 0;
    for (const auto& number : shown) {
        const auto text = columnText(number.key, number.value, words);
        values.append(toQt(text));
        if (!number.isOwn) continue;
        ++own;
        also.append(desk_->say(
            {"numbers.also", {{"number", text}, {"shipped", numberText(number.shipped)}}}));
    }
    const bool isAllOwn = own == shown.size();
    const char* from = isAllOwn  ? "ruleFrom.you"
                       : own > 0 ? "numbers.fromBoth"
                                 : "ruleFrom.shipped";
    return {.key = toQt(table.file + '/' + table.table + '/' + row.id),
            .heading = {},
            .title = toQt(rowHeading(row.id)),
            .value = values.join(QStringLiteral(", ")),
            .from = desk_->say(from),
            .source = isAllOwn ? QString() : toQt(row.source),
            .also = also.join(QChar::LineFeed),
            .fromKeeper = own > 0};
}

void NumbersModel::read() {
    std::vector<NumbersRow> rows;
    count_ = 0;
    own_ = 0;
    if (desk_->room()) {
        for (const auto& table : desk_->knowledge().numbers.list(desk_->room()->info())) {
            auto heading = toQt(tableHeading(table.file, table.table, desk_->knowledge().words));
            own_ += table.ownNumbers();
            for (const auto& row : table.rows) {
                count_ += std::count_if(row.numbers.begin(), row.numbers.end(),
                                        [](const TableNumber& number) { return !number.isFixed; });
                rows.push_back(rowOf(table, row));
                rows.back().heading = std::exchange(heading, QString());
            }
        }
    }
    bring(rows_, std::move(rows));
    emit summaryChanged();
}

QString NumbersModel::summary() const {
    if (!desk_) return {};
    return desk_->say(
        {own_ > 0 ? "numbers.summaryOwn" : "numbers.summary", {{"count", count_}, {"own", own_}}});
}

QVariant NumbersModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case PlaceRole: return row->key;
        case HeadingRole: return row->heading;
        case TitleRole: return row->title;
        case ValueRole: return row->value;
        case FromRole: return row->from;
        case SourceRole: return row->source;
        case AlsoRole: return row->also;
        case OwnRole: return row->fromKeeper;
        default: return {};
    }
}

QHash<int, QByteArray> NumbersModel::roleNames() const {
    return {{PlaceRole, "place"}, {HeadingRole, "heading"}, {TitleRole, "title"},
            {ValueRole, "value"}, {FromRole, "from"},       {SourceRole, "source"},
            {AlsoRole, "also"},   {OwnRole, "own"}};
}

}  // namespace burrow
