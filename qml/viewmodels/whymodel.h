// Why, and why not: how every kind of care stands for one subject, and what that was worked out from.
#pragma once

#include <set>

#include "viewmodels/answerwords.h"
#include "viewmodels/rows.h"

namespace burrow {

struct WhyRow {
    QString key;    ///< the kind of care as the core spells it
    QString name;   ///< "Feeding"
    QString state;  ///< "Held"
    QString punch;
    QString reason;
    bool isDue = false;
    bool isHeld = false;
    bool isOpen = false;
    // Only while it is open:
    QString amount;
    QString window;
    QVariantList working;  ///< sentences
    QVariantList rules;    ///< [{rule, says, value, from, source, own}]

    friend bool operator==(const WhyRow&, const WhyRow&) = default;
};

class WhyModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(QString subject READ subject WRITE setSubject NOTIFY changed REQUIRED FINAL)
    /// The kind that is open from the start; may be empty.
    Q_PROPERTY(QString care READ care WRITE setCare NOTIFY changed FINAL)
    Q_PROPERTY(bool missing READ isMissing NOTIFY changed FINAL)
    Q_PROPERTY(QString tag READ tag NOTIFY changed FINAL)
    Q_PROPERTY(QString binomial READ binomial NOTIFY changed FINAL)
    Q_PROPERTY(QString about READ about NOTIFY changed FINAL)
    /// "Juvenile: 62 mm of about 140 mm when grown"; empty for one that is gone.
    Q_PROPERTY(QString stage READ stage NOTIFY changed FINAL)

public:
    enum Role {
        CareRole = Qt::UserRole + 1,
        NameRole,
        StateRole,
        PunchRole,
        ReasonRole,
        DueRole,
        HeldRole,
        OpenRole,
        AmountRole,
        WindowRole,
        WorkingRole,
        RulesRole
    };

    explicit WhyModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString subject() const { return subject_; }
    void setSubject(const QString& subject);
    [[nodiscard]] QString care() const { return care_; }
    void setCare(const QString& care);
    [[nodiscard]] bool isMissing() const { return desk_ && desk_->room() && !resident_; }
    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString binomial() const;
    [[nodiscard]] QString about() const;
    [[nodiscard]] QString stage() const;
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

public slots:
    /// Opens the working of a kind of care, or closes it.
    void toggle(const QString& care);

signals:
    void deskChanged();
    void changed();

private:
    void read();
    [[nodiscard]] WhyRow rowFor(Care care) const;
    void addWorking(WhyRow& row, Care care) const;

    QPointer<Desk> desk_;
    QString subject_;
    QString care_;
    ResidentPtr resident_;
    std::set<QString> open_;
    std::vector<WhyRow> rows_;
};

}  // namespace burrow
