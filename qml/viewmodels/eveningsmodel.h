// The evenings to come: whom to feed on which of the keeper's feeding days, in the order of the walk.
#pragma once

#include <QVariantList>

#include "room/evenings.h"
#include "viewmodels/desk.h"
#include "viewmodels/linesmodel.h"

namespace burrow {

class EveningsModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    /// Meals under their evening: tag, name (species), value (prey), sub (place). The last group holds those
    /// that no feeding day can take, with the reason as sub.
    Q_PROPERTY(burrow::LinesModel* lines READ lines CONSTANT FINAL)
    /// "3 visits feed everyone in time, and fewer can't."
    Q_PROPERTY(QString why READ why NOTIFY changed FINAL)
    /// "4 evenings in the next 14 days"
    Q_PROPERTY(QString summary READ summary NOTIFY changed FINAL)
    /// [{word, name, on}] from Monday.
    Q_PROPERTY(QVariantList weekdays READ weekdays NOTIFY daysChanged FINAL)
    /// "At most 25 in one evening", "No limit"
    Q_PROPERTY(QString mostText READ mostText NOTIFY daysChanged FINAL)
    Q_PROPERTY(bool limited READ isLimited NOTIFY daysChanged FINAL)
    /// "Tuesday and Friday, at most 25"
    Q_PROPERTY(QString daysText READ daysText NOTIFY daysChanged FINAL)
    /// The first answer has not come yet.
    Q_PROPERTY(bool waiting READ isWaiting NOTIFY changed FINAL)

public:
    explicit EveningsModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] LinesModel* lines() { return &lines_; }
    [[nodiscard]] QString why() const;
    [[nodiscard]] QString summary() const;
    [[nodiscard]] QVariantList weekdays() const;
    [[nodiscard]] QString mostText() const;
    [[nodiscard]] bool isLimited() const { return days_.most.has_value(); }
    [[nodiscard]] QString daysText() const;
    [[nodiscard]] bool isWaiting() const { return !plan_; }

public slots:
    /// Whether to feed on that day of the week, by its place in `weekdays`.
    void toggleDay(int day);
    /// So many more, or fewer, in one evening. Below `leastMost` there is no limit.
    void stepMost(int by);

signals:
    void deskChanged();
    void changed();
    void daysChanged();

private:
    void read();
    void show(EveningPlan plan);
    void write(const visits::FeedingDays& days);
    [[nodiscard]] LineRow rowOf(const EveningMeal& meal, CivilDay day) const;

    QPointer<Desk> desk_;
    LinesModel lines_;
    visits::FeedingDays days_;  ///< as they will be when what was tapped is on the device
    std::optional<EveningPlan> plan_;
    int underWay_ = 0;
    int asked_ = 0;
};

}  // namespace burrow
