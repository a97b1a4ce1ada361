// Today's visits in the order of the shelves: what is due, what is held back, and why.
#pragma once

#include "viewmodels/desk.h"
#include "viewmodels/duefilter.h"
#include "viewmodels/rows.h"
#include "viewmodels/wording.h"

namespace burrow {

/// One visit. What is shown of it is made when a view asks: of a thousand rows a screen shows ten.
struct DueRow {
    QString key;  ///< of the subject
    StubPtr stub;
    /// What a filter leaves of its answers; nothing where there is no filter.
    std::optional<std::vector<Answer>> only;
    QString heading;      ///< its shelf, on the first row of each shelf
    QString headingNote;  ///< "2 to feed"

    [[nodiscard]] Visit visit() const;

    friend bool operator==(const DueRow& a, const DueRow& b) {
        return a.key == b.key && a.stub == b.stub && a.only == b.only && a.heading == b.heading &&
               a.headingNote == b.headingNote;
    }
};

class DueModel : public burrow::RowsModel {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    /// What of it is shown; all, where there is none. Not owned.
    Q_PROPERTY(
        burrow::DueFilterModel* filter READ filter WRITE setFilter NOTIFY filterChanged FINAL)
    Q_PROPERTY(int count READ count NOTIFY summaryChanged FINAL)
    /// "Friday 8 May. 11 to feed, 1 to look at, 4 on hold"
    Q_PROPERTY(QString summary READ summary NOTIFY summaryChanged FINAL)
    /// "Nothing due until Sunday", or that nothing fits the filter; only while nothing is shown.
    Q_PROPERTY(QString nothing READ nothing NOTIFY summaryChanged FINAL)

public:
    enum Role {
        SubjectRole = Qt::UserRole + 1,
        TagRole,
        BinomialRole,
        HeadingRole,
        HeadingNoteRole,
        PunchRole,
        VerbRole,
        ReasonRole,
        HeldRole,
        LookRole,
        CanFeedRole,
        MarksRole,
        FeedingsRole,
        NowDayRole,
        LineTextRole
    };

    explicit DueModel(QObject* parent = nullptr) : RowsModel(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] DueFilterModel* filter() const { return filter_; }
    void setFilter(DueFilterModel* filter);
    [[nodiscard]] int count() const { return static_cast<int>(rows_.size()); }
    [[nodiscard]] QString summary() const { return summary_; }
    [[nodiscard]] QString nothing() const { return nothing_; }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return countOf(rows_, parent);
    }
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

public slots:
    /// Logs that the suggested prey was taken: what a swipe does.
    void logUsual(const QString& subject);

signals:
    void deskChanged();
    void filterChanged();
    void summaryChanged();

private:
    void read();
    [[nodiscard]] std::vector<DueRow> listed() const;
    [[nodiscard]] std::vector<DueRow> narrowedRows() const;
    void addHeadings(std::vector<DueRow>& rows) const;
    void summarise(const std::vector<DueRow>& rows);
    [[nodiscard]] bool isNarrowed() const { return filter_ && filter_->isActive(); }

    QPointer<Desk> desk_;
    QPointer<DueFilterModel> filter_;
    std::vector<DueRow> rows_;
    QString summary_;
    QString nothing_;
};

}  // namespace burrow
