// The keeper is away: what to do before, what a sitter does, what stays shut and what waits, and the sheet for
// the sitter as it will be printed.
#pragma once

#include "room/away_sheet.h"
#include "viewmodels/linesmodel.h"
#include "viewmodels/sheetmodel.h"

namespace burrow {

class AwayModel : public burrow::SheetModel {
    Q_OBJECT
    QML_ELEMENT
    /// "Friday 15 May", first and last day away.
    Q_PROPERTY(QString fromText READ fromText NOTIFY daysChanged FINAL)
    Q_PROPERTY(QString toText READ toText NOTIFY daysChanged FINAL)
    /// As they are typed: "2026-05-15".
    Q_PROPERTY(QString fromTyped READ fromTyped NOTIFY daysChanged FINAL)
    Q_PROPERTY(QString toTyped READ toTyped NOTIFY daysChanged FINAL)
    Q_PROPERTY(bool canLeaveEarlier READ canLeaveEarlier NOTIFY daysChanged FINAL)
    Q_PROPERTY(bool canReturnEarlier READ canReturnEarlier NOTIFY daysChanged FINAL)
    Q_PROPERTY(QString daysError READ daysError NOTIFY daysChanged FINAL)
    /// "11 days away"
    Q_PROPERTY(QString lengthText READ lengthText NOTIFY daysChanged FINAL)
    /// Groups: before, each of the sitter's days, what stays shut, what waits.
    Q_PROPERTY(burrow::LinesModel* lines READ lines CONSTANT FINAL)
    Q_PROPERTY(QString summary READ summary NOTIFY planChanged FINAL)
    /// Until when to feed before, or that it is too late for it.
    Q_PROPERTY(QString lastMealText READ lastMealText NOTIFY planChanged FINAL)
    /// Whom the sitter calls besides the keeper.
    Q_PROPERTY(QString call READ call NOTIFY planChanged FINAL)
    /// There is no line yet that says how to reach the keeper.
    Q_PROPERTY(bool lacksContact READ lacksContact NOTIFY planChanged FINAL)

public:
    explicit AwayModel(QObject* parent = nullptr) : SheetModel(parent) {}

    [[nodiscard]] QString fromText() const;
    [[nodiscard]] QString toText() const;
    [[nodiscard]] QString fromTyped() const;
    [[nodiscard]] QString toTyped() const;
    [[nodiscard]] bool canLeaveEarlier() const;
    [[nodiscard]] bool canReturnEarlier() const { return days_ && days_->to > days_->from; }
    [[nodiscard]] QString daysError() const { return daysError_; }
    [[nodiscard]] QString lengthText() const;
    [[nodiscard]] LinesModel* lines() { return &lines_; }
    [[nodiscard]] QString summary() const;
    [[nodiscard]] QString lastMealText() const;
    [[nodiscard]] QString call() const;
    [[nodiscard]] bool lacksContact() const;

public slots:
    /// Moves the whole absence by so many days.
    void stepFrom(int by);
    /// Moves only its last day.
    void stepTo(int by);
    /// Both as typed; says why they can't be, else daysKept() answers.
    void typeDays(const QString& from, const QString& to);
    void clearDaysError();
    /// Writes whom the sitter calls besides the keeper.
    void setCall(const QString& call);

signals:
    void daysChanged();
    void planChanged();
    void daysKept();

protected:
    void read() override;
    [[nodiscard]] std::string stem() const override;
    [[nodiscard]] std::string title() const override;

private:
    void take(AwayDays days);
    void show(AwayPlan plan);
    void addVisits(std::vector<LineRow>& rows, std::span<const AwayVisit> visits,
                   const char* heading) const;
    void addShut(std::vector<LineRow>& rows) const;
    void addWaits(std::vector<LineRow>& rows) const;
    [[nodiscard]] LineRow rowFor(const ResidentPtr& resident, const char* group) const;

    std::optional<AwayDays> days_;
    std::optional<AwayPlan> plan_;
    QString daysError_;
    LinesModel lines_;
    int askedPlan_ = 0;
};

}  // namespace burrow
