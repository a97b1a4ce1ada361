// Who is found by what the keeper types: asked of the book in its own thread, while typing goes on.
#pragma once

#include "room/search.h"
#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

struct FindRow {
    QString key;  ///< of the subject
    QString tag;
    QString binomial;
    QString verb;    ///< what it is: "Juvenile female."
    QString reason;  ///< by what it was found, or where it stands
    QString punch;
    QString entry;  ///< whose note it is; empty where it is none
    bool gone = false;

    friend bool operator==(const FindRow&, const FindRow&) = default;
};

/// Those found stay until the answer for what is typed now is there. One question is under way at a time: of
/// what was typed meanwhile only the last is asked. Those who died or left are found too.
class FindModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(QString query READ query WRITE setQuery NOTIFY queryChanged FINAL)
    /// Whether there is anything to look for.
    Q_PROPERTY(bool searching READ isSearching NOTIFY queryChanged FINAL)
    /// The rows are those for what is typed.
    Q_PROPERTY(bool answered READ isAnswered NOTIFY answered FINAL)
    Q_PROPERTY(int count READ count NOTIFY answered FINAL)
    /// "3 found", or that only the first of them are shown; what went wrong, where anything did.
    Q_PROPERTY(QString summary READ summary NOTIFY answered FINAL)

public:
    enum Role {
        SubjectRole = Qt::UserRole + 1,
        TagRole,
        BinomialRole,
        VerbRole,
        ReasonRole,
        PunchRole,
        EntryRole,
        GoneRole
    };

    explicit FindModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString query() const { return query_; }
    void setQuery(const QString& query);
    [[nodiscard]] bool isSearching() const { return !query_.trimmed().isEmpty(); }
    [[nodiscard]] bool isAnswered() const { return isSearching() && !isStale_ && !isAsking_; }
    [[nodiscard]] int count() const { return static_cast<int>(rows_.size()); }
    [[nodiscard]] QString summary() const { return summary_; }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

signals:
    void deskChanged();
    void queryChanged();
    void answered();

private:
    void look();
    void show(const Result<Findings>& findings);
    [[nodiscard]] FindRow rowFor(const Found& found, const Resident& resident) const;
    [[nodiscard]] QString reasonFor(const Found& found, const Resident& resident) const;

    QPointer<Desk> desk_;
    QString query_;
    QString summary_;
    bool isAsking_ = false;
    bool isStale_ = false;  ///< something else was typed or written since it was asked
    std::vector<FindRow> rows_;
};

}  // namespace burrow
