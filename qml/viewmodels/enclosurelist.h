// The enclosures of the room to choose from, those that stand empty first.
#pragma once

#include "viewmodels/desk.h"
#include "viewmodels/rows.h"

namespace burrow {

struct EnclosureRow {
    QString key;  ///< its id
    QString name;
    QString note;  ///< "30 by 20 by 20 cm, Shelf A, tub 3. Empty"
    QString haystack;

    friend bool operator==(const EnclosureRow&, const EnclosureRow&) = default;
};

class EnclosureList : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    /// Part of a name, place or number of who lives there.
    Q_PROPERTY(QString query READ query WRITE setQuery NOTIFY queryChanged FINAL)
    /// "80 more. Type part of a name"; empty where all are shown.
    Q_PROPERTY(QString rest READ rest NOTIFY countChanged FINAL)

public:
    enum Role { EnclosureRole = Qt::UserRole + 1, NameRole, NoteRole };
    /// More than these are found by typing.
    static constexpr std::size_t most = 40;

    explicit EnclosureList(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString query() const { return query_; }
    void setQuery(const QString& query);
    [[nodiscard]] QString rest() const;
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

public slots:
    /// Reads them all; what was searched for before is forgotten.
    void read();

signals:
    void deskChanged();
    void queryChanged();
    void countChanged();

private:
    void show(const std::vector<Enclosure>& enclosures);
    void filter();

    QPointer<Desk> desk_;
    QString query_;
    std::vector<EnclosureRow> all_;
    std::vector<EnclosureRow> rows_;
    int hidden_ = 0;
};

}  // namespace burrow
