// Every rule of thumb the planner goes by: its value, where it comes from, and the keeper's own.
#pragma once

#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct RuleRow {
    QString key;      ///< the rule's id
    QString heading;  ///< on the first row of each group
    QString says;
    QString value;  ///< "5 to 7 days"
    QString source;
    bool fromKeeper = false;

    friend bool operator==(const RuleRow&, const RuleRow&) = default;
};

class RulesModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    /// "75 rules, 2 of them your own"
    Q_PROPERTY(QString summary READ summary NOTIFY summaryChanged FINAL)

    // The rule that is being changed.
    Q_PROPERTY(QString chosen READ chosen NOTIFY chosenChanged FINAL)
    Q_PROPERTY(QString says READ says NOTIFY chosenChanged FINAL)
    /// As it is typed: "5-7".
    Q_PROPERTY(QString typed READ typed NOTIFY chosenChanged FINAL)
    Q_PROPERTY(QString hint READ hint NOTIFY chosenChanged FINAL)
    /// "Shipped: 5 to 7 days. common practice, no source"
    Q_PROPERTY(QString shipped READ shipped NOTIFY chosenChanged FINAL)
    Q_PROPERTY(bool own READ isOwn NOTIFY chosenChanged FINAL)
    Q_PROPERTY(QString error READ error NOTIFY chosenChanged FINAL)

public:
    enum Role {
        RuleRole = Qt::UserRole + 1,
        HeadingRole,
        SaysRole,
        ValueRole,
        SourceRole,
        OwnRole
    };

    explicit RulesModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString summary() const;
    [[nodiscard]] QString chosen() const { return chosen_; }
    [[nodiscard]] QString says() const;
    [[nodiscard]] QString typed() const;
    [[nodiscard]] QString hint() const;
    [[nodiscard]] QString shipped() const;
    [[nodiscard]] bool isOwn() const;
    [[nodiscard]] QString error() const { return error_; }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

public slots:
    void choose(const QString& rule);
    /// Writes the keeper's own value for the chosen rule, or says why it can't be.
    void change(const QString& text);
    /// The chosen rule is as shipped again.
    void reset();
    void clearError();

signals:
    void deskChanged();
    void summaryChanged();
    void chosenChanged();
    /// The change is on the device.
    void kept();

private:
    void read();
    void write(const nlohmann::json& value, const char* said);
    [[nodiscard]] const Rule* chosenRule() const;
    [[nodiscard]] const Rule* shippedRule() const;
    [[nodiscard]] QString valueWords(const Rule& rule) const;

    QPointer<Desk> desk_;
    std::vector<RuleRow> rows_;
    QString chosen_;
    QString error_;
};

}  // namespace burrow
