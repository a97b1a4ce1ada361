// The room as a map: its racks, their shelves, and on each a hole for every tub.
#pragma once

#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct ShelfMapRow {
    QString key;      ///< the shelf, as ShelvesModel and ShelfModel name it
    QString heading;  ///< room and rack, on the first shelf of each rack
    QString name;     ///< "Shelf A"
    QString note;     ///< "12 tubs, 3 to feed, 1 on hold"
    /// One for each tub in the order of a walk: "open" where something is due, "slash" where a feeding is
    /// held back, "done" where it is looked after for today.
    QStringList holes;

    friend bool operator==(const ShelfMapRow&, const ShelfMapRow&) = default;
};

/// Whoever stands in the room is on it, also those in quarantine; who is on loan or gone is not.
class ShelfMapModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)

public:
    enum Role { ShelfRole = Qt::UserRole + 1, HeadingRole, NameRole, NoteRole, HolesRole };

    explicit ShelfMapModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] int count() const { return static_cast<int>(rows_.size()); }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

signals:
    void deskChanged();
    void countChanged();

private:
    void read();

    QPointer<Desk> desk_;
    std::vector<ShelfMapRow> rows_;
};

}  // namespace burrow
