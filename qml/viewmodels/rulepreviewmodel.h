// What a change of a rule would do to the coming four weeks, before it is made: who is concerned, and which
// days are others. It is worked out in the book's thread, a few animals at a time, so that neither the
// interface nor what is logged meanwhile waits for it.
#pragma once

#include "husbandry/preview.h"
#include "viewmodels/rows.h"
#include "viewmodels/rulechange.h"

namespace burrow {

struct RulePreviewRow {
    QString key;  ///< the subject
    QString tag;
    QString binomial;
    QString says;  ///< one line for each kind of care
    friend bool operator==(const RulePreviewRow&, const RulePreviewRow&) = default;
};

class RulePreviewModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY changed REQUIRED FINAL)
    /// Of the keeper's own value, "feed.factor@species:Grammostola pulchra".
    Q_PROPERTY(QString key READ key WRITE setKey NOTIFY changed REQUIRED FINAL)
    /// As typed; empty to take the own value back.
    Q_PROPERTY(QString value READ value WRITE setValue NOTIFY changed REQUIRED FINAL)
    /// What the rule says.
    Q_PROPERTY(QString says READ says NOTIFY changed FINAL)
    /// "7 to 9 days, from you, instead of 10 to 14 days, as shipped"
    Q_PROPERTY(QString change READ change NOTIFY changed FINAL)
    /// "Concerns 12 animals. For 5 of them the coming four weeks change"; while working how far it is.
    Q_PROPERTY(QString summary READ summary NOTIFY changed FINAL)
    /// [{name, value}]: how often each kind of care would be done for those concerned.
    Q_PROPERTY(QVariantList totals READ totals NOTIFY changed FINAL)
    Q_PROPERTY(bool working READ isWorking NOTIFY changed FINAL)
    Q_PROPERTY(bool busy READ isBusy NOTIFY changed FINAL)
    Q_PROPERTY(int count READ count NOTIFY changed FINAL)
    /// Why it can't be previewed or saved, in words.
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)

public:
    enum Role { SubjectRole = Qt::UserRole + 1, TagRole, BinomialRole, SaysRole };

    explicit RulePreviewModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString key() const { return key_; }
    void setKey(const QString& key);
    [[nodiscard]] QString value() const { return value_; }
    void setValue(const QString& value);
    [[nodiscard]] QString says() const;
    [[nodiscard]] QString change() const { return changeText_; }
    [[nodiscard]] QString summary() const;
    [[nodiscard]] QVariantList totals() const;
    [[nodiscard]] bool isWorking() const { return working_; }
    [[nodiscard]] bool isBusy() const { return busy_; }
    [[nodiscard]] int count() const { return static_cast<int>(rows_.size()); }
    [[nodiscard]] QString trouble() const { return trouble_; }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

public slots:
    void save();

signals:
    void changed();
    /// The change is on the device.
    void kept();

private:
    void start();
    void step();
    void take(const Preview& part, std::size_t from);
    [[nodiscard]] std::optional<RuleChange> wanted() const;
    [[nodiscard]] QString changeOf(const RuleChange& change) const;

    QPointer<Desk> desk_;
    QString key_;
    QString value_;
    std::shared_ptr<const Room> room_;  ///< that is looked at
    std::optional<Rules> after_;
    std::size_t at_ = 0;  ///< how many of the room have been looked at
    int serial_ = 0;      ///< what is answered for an earlier start is let go
    bool hasKey_ = false;
    bool hasValue_ = false;
    bool working_ = false;
    bool busy_ = false;
    Preview sum_;  ///< without lines
    QString changeText_;
    QString trouble_;
    std::vector<RulePreviewRow> rows_;
};

}  // namespace burrow
