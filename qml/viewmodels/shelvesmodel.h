// Everyone in the room, by shelf in the order of a walk; or those of one shelf.
#pragma once

#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct ShelvesRow {
    QString key;  ///< of the subject
    QString tag;
    QString binomial;
    QString verb;    ///< what it is: "Juvenile female."
    QString reason;  ///< its size and where on the shelf
    QString punch;
    QString shelf;        ///< of the heading: what ShelfModel takes
    QString heading;      ///< the name of its shelf, on the first row of each shelf
    QString headingNote;  ///< "12 tubs"
    bool gone = false;

    friend bool operator==(const ShelvesRow&, const ShelvesRow&) = default;
};

class ShelvesModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    /// Only those on this shelf, as a row names it, while `oneShelf`.
    Q_PROPERTY(QString shelf READ shelf WRITE setShelf NOTIFY filterChanged FINAL)
    Q_PROPERTY(bool oneShelf READ isOneShelf WRITE setOneShelf NOTIFY filterChanged FINAL)
    /// Also those who died or left.
    Q_PROPERTY(bool withGone READ withGone WRITE setWithGone NOTIFY filterChanged FINAL)
    Q_PROPERTY(int count READ count NOTIFY summaryChanged FINAL)
    /// Nobody was ever written down here.
    Q_PROPERTY(bool blank READ isBlank NOTIFY summaryChanged FINAL)
    /// "113 kept, 2 of them on loan"
    Q_PROPERTY(QString summary READ summary NOTIFY summaryChanged FINAL)
    /// "12 tubs": how many rows.
    Q_PROPERTY(QString tubs READ tubs NOTIFY summaryChanged FINAL)

public:
    enum Role {
        SubjectRole = Qt::UserRole + 1,
        TagRole,
        BinomialRole,
        VerbRole,
        ReasonRole,
        PunchRole,
        ShelfRole,
        HeadingRole,
        HeadingNoteRole,
        GoneRole
    };

    explicit ShelvesModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString shelf() const { return shelf_; }
    void setShelf(const QString& shelf);
    [[nodiscard]] bool isOneShelf() const { return isOneShelf_; }
    void setOneShelf(bool on);
    [[nodiscard]] bool withGone() const { return withGone_; }
    void setWithGone(bool on);
    [[nodiscard]] int count() const { return static_cast<int>(rows_.size()); }
    [[nodiscard]] bool isBlank() const { return everyone_.empty(); }
    [[nodiscard]] QString summary() const;
    [[nodiscard]] QString tubs() const;
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

signals:
    void deskChanged();
    void filterChanged();
    void summaryChanged();

private:
    /// A resident as it is shown; made anew only when the resident is another.
    struct Known {
        ResidentPtr resident;
        ShelvesRow row;
    };

    void read();
    void filter();
    void addHeadings(std::vector<ShelvesRow>& rows) const;
    [[nodiscard]] Known know(const ResidentPtr& resident) const;

    QPointer<Desk> desk_;
    QString shelf_;
    bool isOneShelf_ = false;
    bool withGone_ = false;
    std::vector<Known> everyone_;
    std::vector<ShelvesRow> rows_;
};

}  // namespace burrow
