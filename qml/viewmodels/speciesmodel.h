// The species that this app knows, by any of their names.
#pragma once

#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct SpeciesRow {
    QString key;  ///< the valid name
    QString tradeNames;
    QString note;  ///< "Tree-dwelling tarantula. 3 kept"

    friend bool operator==(const SpeciesRow&, const SpeciesRow&) = default;
};

class SpeciesModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    /// Part of any name; all are shown while it is empty.
    Q_PROPERTY(QString filter READ filter WRITE setFilter NOTIFY filterChanged FINAL)
    Q_PROPERTY(int count READ count NOTIFY filterChanged FINAL)
    Q_PROPERTY(QString summary READ summary NOTIFY filterChanged FINAL)

public:
    enum Role { NameRole = Qt::UserRole + 1, TradeNamesRole, NoteRole };

    explicit SpeciesModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString filter() const { return filter_; }
    void setFilter(const QString& filter);
    [[nodiscard]] int count() const { return static_cast<int>(rows_.size()); }
    [[nodiscard]] QString summary() const;
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

signals:
    void deskChanged();
    void filterChanged();

private:
    void read();
    [[nodiscard]] bool fits(const Profile& profile) const;
    [[nodiscard]] QString noteFor(const Profile& profile) const;

    QPointer<Desk> desk_;
    QString filter_;
    std::vector<SpeciesRow> rows_;
};

}  // namespace burrow
