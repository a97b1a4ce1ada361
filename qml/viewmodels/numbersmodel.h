// Every number of the tables of thumb: what it is, where it comes from, and which are the keeper's own.
#pragma once

#include "room/own_numbers.h"
#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct NumbersRow {
    QString key;              ///< "sexing/moult/7_to_11.clearly"
    QString heading;          ///< on the first row of each table
    QString title;            ///< "7 to 11, clearly"
    QString value;            ///< "where a plate shows 12, where none shows 0.18"
    QString from;             ///< "as shipped"
    QString source;           ///< empty where all of them are the keeper's own
    QString also;             ///< the keeper's own beside the shipped ones, one a line
    bool fromKeeper = false;  ///< any of them

    friend bool operator==(const NumbersRow&, const NumbersRow&) = default;
};

class NumbersModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    /// "312 numbers, 2 of them your own"
    Q_PROPERTY(QString summary READ summary NOTIFY summaryChanged FINAL)

public:
    enum Role {
        PlaceRole = Qt::UserRole + 1,
        HeadingRole,
        TitleRole,
        ValueRole,
        FromRole,
        SourceRole,
        AlsoRole,
        OwnRole
    };

    explicit NumbersModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString summary() const;
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

signals:
    void deskChanged();
    void summaryChanged();

private:
    void read();
    [[nodiscard]] NumbersRow rowOf(const NumberTable& table, const NumberRow& row) const;

    QPointer<Desk> desk_;
    std::vector<NumbersRow> rows_;
    std::int64_t count_ = 0;  ///< of numbers that can be changed
    std::int64_t own_ = 0;    ///< of the keeper's
};

}  // namespace burrow
