// What of the due list is shown: the choices of its sheet, and what was chosen.
#pragma once

#include "room/due_filter.h"
#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct DueChoice {
    QString key;
    bool isFirst = false;  ///< of the kinds of care, or of the places
    bool isPlace = false;
    QString word;
    QString note;  ///< "11 tubs"
    bool on = false;
    Care care = Care::feed;
    Place place;

    friend bool operator==(const DueChoice&, const DueChoice&) = default;
};

/// The rows are the kinds of care that are due or held today, and the racks with something to do; also those
/// that were chosen and have nothing any more. They are made while `asking`.
class DueFilterModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(bool asking READ isAsking WRITE setAsking NOTIFY askingChanged FINAL)
    Q_PROPERTY(Which which READ which WRITE setWhich NOTIFY changed FINAL)
    Q_PROPERTY(
        bool quarantineApart READ quarantineApart WRITE setQuarantineApart NOTIFY changed FINAL)
    /// Whether anything is left out or stands elsewhere than usual.
    Q_PROPERTY(bool active READ isActive NOTIFY changed FINAL)
    /// "Only feeding, rack 2, late"; empty while nothing is left out.
    Q_PROPERTY(QString text READ text NOTIFY changed FINAL)

public:
    enum Role { KeyRole = Qt::UserRole + 1, WordRole, NoteRole, OnRole, PlaceRole, FirstRole };
    enum Which { All, Late, Held };
    Q_ENUM(Which)

    explicit DueFilterModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] bool isAsking() const { return isAsking_; }
    void setAsking(bool on);
    [[nodiscard]] Which which() const { return static_cast<Which>(filter_.which); }
    void setWhich(Which which);
    [[nodiscard]] bool quarantineApart() const { return filter_.quarantineApart; }
    void setQuarantineApart(bool on);
    [[nodiscard]] bool isActive() const { return filter_.isActive(); }
    [[nodiscard]] QString text() const;
    [[nodiscard]] const DueFilter& filter() const { return filter_; }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

public slots:
    /// Chooses a row or takes it back. Of the places one is chosen at most.
    void toggle(const QString& key);
    /// Everything is shown again.
    void clear();

signals:
    void deskChanged();
    void askingChanged();
    void changed();

private:
    void read();
    void change(const DueFilter& filter);
    [[nodiscard]] std::vector<DueChoice> careRows(const std::vector<Visit>& visits) const;
    [[nodiscard]] std::vector<DueChoice> placeRows(const std::vector<Visit>& visits) const;

    QPointer<Desk> desk_;
    bool isAsking_ = false;
    DueFilter filter_;
    std::vector<DueChoice> rows_;
};

}  // namespace burrow
