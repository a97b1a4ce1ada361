// Brings a list model from one set of rows to the next with as few signals as that takes, so that a
// view keeps its place and its focus.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <iterator>
#include <unordered_set>
#include <vector>

namespace burrow {

/// A list model over rows that have a `key`, each another, and compare with ==.
class RowsModel : public QAbstractListModel {
    Q_OBJECT
    QML_ANONYMOUS

public:
    using QAbstractListModel::QAbstractListModel;

protected:
    /// The row of an index; null where there is none.
    template <class Row>
    [[nodiscard]] const Row* rowAt(const std::vector<Row>& rows, const QModelIndex& index) const {
        const bool isOurs = checkIndex(index, CheckIndexOption::IndexIsValid);
        return isOurs ? &rows[static_cast<std::size_t>(index.row())] : nullptr;
    }

    template <class Row>
    [[nodiscard]] static int countOf(const std::vector<Row>& rows, const QModelIndex& parent) {
        return parent.isValid() ? 0 : static_cast<int>(rows.size());
    }

    template <class Row>
    void bring(std::vector<Row>& rows, std::vector<Row> next) {
        // Where those in both changed places, the view has to start anew.
        if (commonKeys(rows, next) != commonKeys(next, rows)) {
            beginResetModel();
            rows = std::move(next);
            endResetModel();
            return;
        }
        removeMissing(rows, next);
        insertAndChange(rows, std::move(next));
    }

private:
    template <class Row>
    static auto keysOf(const std::vector<Row>& rows) {
        std::unordered_set<decltype(Row::key)> keys;
        for (const auto& row : rows) keys.insert(row.key);
        return keys;
    }

    template <class Row>
    static auto commonKeys(const std::vector<Row>& rows, const std::vector<Row>& others) {
        const auto known = keysOf(others);
        std::vector<decltype(Row::key)> keys;
        for (const auto& row : rows) {
            if (known.contains(row.key)) keys.push_back(row.key);
        }
        return keys;
    }

    template <class Row>
    void removeMissing(std::vector<Row>& rows, const std::vector<Row>& next) {
        const auto stay = keysOf(next);
        for (int i = static_cast<int>(rows.size()) - 1; i >= 0; --i) {
            if (stay.contains(rows[static_cast<std::size_t>(i)].key)) continue;
            beginRemoveRows({}, i, i);
            rows.erase(rows.begin() + i);
            endRemoveRows();
        }
    }

    template <class Row>
    void insertAndChange(std::vector<Row>& rows, std::vector<Row> next) {
        for (std::size_t i = 0; i < next.size(); ++i) {
            const int row = static_cast<int>(i);
            if (i == rows.size()) {
                // Thousands may follow at the end: in one piece.
                beginInsertRows({}, row, static_cast<int>(next.size()) - 1);
                std::move(next.begin() + row, next.end(), std::back_inserter(rows));
                endInsertRows();
                return;
            }
            if (rows[i].key != next[i].key) {
                beginInsertRows({}, row, row);
                rows.insert(rows.begin() + row, std::move(next[i]));
                endInsertRows();
            } else if (!(rows[i] == next[i])) {
                rows[i] = std::move(next[i]);
                emit dataChanged(index(row), index(row));
            }
        }
    }
};

}  // namespace burrow
