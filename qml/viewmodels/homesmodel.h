// The homes of the room: the moves in their order, who has outgrown its home or soon will, who waits, and
// what stands empty.
#pragma once

#include "room/homes_plan.h"
#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct HomesRow {
    QString key;
    QString heading;  ///< on the first row of each group
    QString count;    ///< beside it
    QString tag;      ///< of the animal; empty for an empty home
    QString binomial;
    QString title;
    QStringList lines;
    QStringList estimates;  ///< of what is only expected
    QStringList cautions;
    QString verb;     ///< of its button; empty where there is nothing to log
    QString subject;  ///< its page
    QString enclosure;
    bool isUrgent = false;

    friend bool operator==(const HomesRow&, const HomesRow&) = default;
};

class HomesModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(bool ready READ isReady NOTIFY changed FINAL)
    /// "3 animals to move, 1 for later. No spare tubs are needed."
    Q_PROPERTY(QString summary READ summary NOTIFY changed FINAL)
    /// "4 animals without a size ..."; empty where all can be judged.
    Q_PROPERTY(QString unjudged READ unjudged NOTIFY changed FINAL)
    Q_PROPERTY(int count READ count NOTIFY changed FINAL)

public:
    enum Role {
        HeadingRole = Qt::UserRole + 1,
        CountRole,
        TagRole,
        BinomialRole,
        TitleRole,
        LinesRole,
        EstimatesRole,
        CautionsRole,
        VerbRole,
        SubjectRole,
        EnclosureRole,
        UrgentRole
    };

    explicit HomesModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] bool isReady() const { return isReady_; }
    [[nodiscard]] QString summary() const;
    [[nodiscard]] QString unjudged() const;
    [[nodiscard]] int count() const { return countOf(rows_, {}); }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

public slots:
    /// Writes the move of a row down as made: a rehousing, or a move into a spare tub.
    void made(int row);

signals:
    void deskChanged();
    void changed();

private:
    void read();
    void show(HomesPlan plan);

    QPointer<Desk> desk_;
    HomesPlan plan_;
    std::vector<HomesRow> rows_;
    bool isReady_ = false;
};

}  // namespace burrow
