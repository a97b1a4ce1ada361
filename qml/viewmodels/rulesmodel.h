// Every rule of thumb the planner goes by: its value for everyone, where it comes from, and the keeper's
// own values for a species, a place or one animal.
#pragma once

#include "viewmodels/answerwords.h"
#include "viewmodels/rows.h"

namespace burrow {

struct RuleRow {
    QString key;      ///< the rule's id
    QString heading;  ///< on the first row of each group
    QString says;
    QString value;  ///< "5 to 7 days"
    QString from;   ///< "as shipped"
    QString source;
    QString also;             ///< the keeper's values for others, one a line
    bool fromKeeper = false;  ///< any of them

    friend bool operator==(const RuleRow&, const RuleRow&) = default;
};

class RulesModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    /// "75 rules, 2 of them your own"
    Q_PROPERTY(QString summary READ summary NOTIFY summaryChanged FINAL)

public:
    enum Role {
        RuleRole = Qt::UserRole + 1,
        HeadingRole,
        SaysRole,
        ValueRole,
        FromRole,
        SourceRole,
        AlsoRole,
        OwnRole
    };

    explicit RulesModel(QObject* parent = nullptr) : RowsModel(parent) {}

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
    [[nodiscard]] QString alsoFor(const std::string& id, const std::vector<Rule>& own) const;

    QPointer<Desk> desk_;
    std::vector<RuleRow> rows_;
    int own_ = 0;  ///< values of the keeper's, of every scope
};

}  // namespace burrow
