// Moults with photos that nobody has looked at for the sex yet, the oldest first.
#pragma once

#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct MoultToSex {
    QString key;  ///< of the moult's entry
    ResidentPtr resident;
    CivilDay day;
    int photos = 0;
    Sha256 picture;  ///< the first of them

    friend bool operator==(const MoultToSex& a, const MoultToSex& b) {
        return a.key == b.key && a.resident == b.resident && a.day == b.day &&
               a.photos == b.photos && a.picture == b.picture;
    }
};

class SexQueueModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)
    /// The book has been asked.
    Q_PROPERTY(bool ready READ isReady NOTIFY countChanged FINAL)
    /// "2 moults wait"
    Q_PROPERTY(QString summary READ summary NOTIFY countChanged FINAL)

public:
    enum Role {
        MoultRole = Qt::UserRole + 1,
        TagRole,
        BinomialRole,
        AboutRole,
        WhenRole,
        PhotosRole,
        ThumbnailRole
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
    void show(const std::vector<MoultPhoto>& photos);

    QPointer<Desk> desk_;
    std::vector<MoultToSex> rows_;
    bool isRead_ = false;
};

}  // namespace burrow
