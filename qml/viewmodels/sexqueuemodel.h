// Animals whose sex is open and of whose moults there are photos (room/sex_case.h): those with a moult that
// nobody has looked at first, by what it promises to tell.
#pragma once

#include "room/sex_case.h"
#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct MoultToSex {
    QString key;  ///< of the moult's entry
    ResidentPtr resident;
    CivilDay day;
    std::optional<Millimetres> carapace;
    int photos = 0;
    int waiting = 0;  ///< of its moults at which nobody has looked
    Sha256 picture;   ///< the first of its photos

    friend bool operator==(const MoultToSex& a, const MoultToSex& b) {
        return a.key == b.key && a.resident == b.resident && a.day == b.day &&
               a.carapace == b.carapace && a.photos == b.photos && a.waiting == b.waiting &&
               a.picture == b.picture;
    }
};

class SexQueueModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)
    /// The book has been asked.
    Q_PROPERTY(bool ready READ isReady NOTIFY countChanged FINAL)
    /// "2 moults wait"; says also how many were looked at and are still open.
    Q_PROPERTY(QString summary READ summary NOTIFY countChanged FINAL)

public:
    enum Role {
        MoultRole = Qt::UserRole + 1,
        TagRole,
        BinomialRole,
        AboutRole,
        WhenRole,
        PhotosRole,
        ThumbnailRole,
        LookedRole,  ///< all its moults were looked at: for a second opinion
        DetailRole,  ///< when, what is known of it, and how many photos, as it is shown
        SpokenRole   ///< all of the row, for a screen reader
    };

    explicit SexQueueModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] int count() const { return static_cast<int>(rows_.size()); }
    [[nodiscard]] bool isReady() const { return isRead_; }
    [[nodiscard]] QString summary() const;
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
    void show(const std::vector<ToBeSexed>& rows);

    QPointer<Desk> desk_;
    std::vector<MoultToSex> rows_;
    bool isRead_ = false;
};

}  // namespace burrow
