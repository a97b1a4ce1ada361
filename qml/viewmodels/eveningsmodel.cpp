#include "viewmodels/eveningsmodel.h"

#include <algorithm>

#include "husbandry/plain_forecast.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

constexpr int daysAhead = 14;
constexpr int leastMost = 5;
constexpr int mostStep = 5;
constexpr std::size_t weekLength = 7;

/// The page's week begins on Monday, the core's on Sunday.
std::size_t coreDay(std::size_t shown) { return (shown + 1) % weekLength; }

/// A day of that name, for its word.
QString weekdayWord(std::size_t day, const char* family, const Desk& desk) {
    return desk.say(Message(std::string(family) + std::to_string(day)));
}

}  // namespace

void EveningsModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &EveningsModel::read);
    read();
    emit deskChanged();
}

void EveningsModel::read() {
    if (!desk_ || !desk_->room()) return;
    // What is under way counts until it is there.
    if (underWay_ == 0) days_ = feedingDaysOf(desk_->room()->info());
    emit daysChanged();
    desk_->ask<EveningPlan>(
        this,
        [room = desk_->room(), days = days_](Book&) {
            const PlainForecast forecast;
            return planEvenings(*room, days, daysAhead, forecast);
        },
        [this, asked = ++asked_](Result<EveningPlan> plan) {
            if (asked != asked_ || !plan) return;
            show(*std::move(plan));
        });
}

LineRow EveningsModel::rowOf(const EveningMeal& meal, CivilDay day) const {
    const auto& subject = meal.resident->subject();
    LineRow row;
    row.key = toQt(isoDate(day) + subject.id.text());
    row.tag = toQt(subject.number);
    row.name = speciesText(*meal.resident);
    row.value = desk_->say(meal.prey.amount());
    row.sub = placeText(meal.resident->kept.place, *desk_);
    row.subject = toQt(subject.id.text());
    row.estimated = day != desk_->today();
    return row;
}

void EveningsModel::show(EveningPlan plan) {
    plan_ = std::move(plan);
    std::vector<LineRow> rows;
    for (const auto& evening : plan_->evenings) {
        bool isFirst = true;
        for (const auto& meal : evening.meals) {
            auto row = rowOf(meal, evening.day);
            if (std::exchange(isFirst, false)) {
                row.heading = toQt(desk_->knowledge().words.longDay(evening.day));
                row.note =
                    desk_->say({"eveningsPage.meals",
                                {{"count", static_cast<std::int64_t>(evening.meals.size())}}});
            }
            rows.push_back(std::move(row));
        }
    }
    bool isFirst = true;
    for (const auto& each : plan_->apart) {
        auto row = rowOf(each.meal, each.day);
        row.key += QStringLiteral(" apart");
        row.sub = desk_->say(each.why);
        row.marked = true;
        if (std::exchange(isFirst, false)) row.heading = desk_->say("eveningsPage.apart");
        rows.push_back(std::move(row));
    }
    lines_.show(std::move(rows));
    emit changed();
}

QString EveningsModel::why() const { return desk_ && plan_ ? desk_->say(plan_->why) : QString(); }

QString EveningsModel::summary() const {
    if (!desk_ || !plan_) return {};
    return desk_->say({"eveningsPage.summary",
                       {{"count", static_cast<std::int64_t>(plan_->evenings.size())},
                        {"days", std::int64_t{daysAhead}}}});
}

QVariantList EveningsModel::weekdays() const {
    QVariantList list;
    if (!desk_) return list;
    for (std::size_t shown = 0; shown < weekLength; ++shown) {
        const auto day = coreDay(shown);
        list.append(
            QVariantMap{{QStringLiteral("word"), weekdayWord(day, "eveningsPage.short.", *desk_)},
                        {QStringLiteral("name"), weekdayWord(day, "eveningsPage.day.", *desk_)},
                        {QStringLiteral("on"), days_.weekdays[day]}});
    }
    return list;
}

QString EveningsModel::mostText() const {
    if (!desk_) return {};
    if (!days_.most) return desk_->say("eveningsPage.noLimit");
    return desk_->say({"eveningsPage.most", {{"count", std::int64_t{*days_.most}}}});
}

QString EveningsModel::daysText() const {
    if (!desk_) return {};
    QStringList names;
    for (std::size_t shown = 0; shown < weekLength; ++shown) {
        const auto day = coreDay(shown);
        if (days_.weekdays[day]) {
            names.append(weekdayWord(day, "eveningsPage.short.", *desk_));
        }
    }
    const auto text = names.size() == static_cast<qsizetype>(weekLength)
                          ? desk_->say("eveningsPage.everyDay")
                          : names.join(QStringLiteral(", "));
    return desk_->say({"eveningsPage.daysText",
                       {{"days", text.toStdString()}, {"most", mostText().toStdString()}}});
}

void EveningsModel::toggleDay(int day) {
    if (!desk_ || day < 0 || day >= static_cast<int>(weekLength)) return;
    auto days = days_;
    auto& on = days.weekdays[coreDay(static_cast<std::size_t>(day))];
    // Without any day nobody would be fed: the last one stays.
    const auto count = std::count(days.weekdays.begin(), days.weekdays.end(), true);
    if (on && count == 1) return;
    on = !on;
    write(days);
}

void EveningsModel::stepMost(int by) {
    if (!desk_) return;
    auto days = days_;
    const int next = days.most.value_or(0) + by * mostStep;
    days.most = next < leastMost ? std::nullopt : std::optional(std::min(next, mostInEvening));
    if (days.most != days_.most) write(days);
}

void EveningsModel::write(const visits::FeedingDays& days) {
    days_ = days;
    ++underWay_;
    emit daysChanged();
    Deed deed;
    deed.said = {"did.evenings"};
    deed.compose = [fields = eveningFields(days)](Book& book) -> Result<std::vector<Draft>> {
        return std::vector<Draft>{SetDraft{ThingType::book, book.id().uuid, fields}};
    };
    desk_->act(this, std::move(deed), [this](const Result<ChangeSet>&) {
        --underWay_;
        read();
    });
}

}  // namespace burrow
