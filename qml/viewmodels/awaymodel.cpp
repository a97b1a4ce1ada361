#include "viewmodels/awaymodel.h"

#include <utility>

#include "husbandry/plain_forecast.h"
#include "room/tables.h"
#include "viewmodels/files.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

/// What is shown until a keeper says when: two weeks, beginning in a week.
constexpr int usuallyIn = 7;
constexpr int usualStay = 14;

}  // namespace

void AwayModel::read() {
    const auto today = desk_->today();
    if (!days_ || days_->from < today) {
        const auto from = today + usuallyIn;
        days_ = AwayDays{from, from + usualStay - 1};
        emit daysChanged();
    }
    desk_->ask<AwayPlan>(
        this,
        [room = desk_->room(), days = *days_, tables = desk_->tables()](Book&) {
            const PlainForecast forecast;
            return planAway(*room, days, tables->away, forecast);
        },
        [this, asked = ++askedPlan_](Result<AwayPlan> plan) {
            if (asked != askedPlan_ || !isReady()) return;
            if (!plan) return tell(plan.error());
            show(*std::move(plan));
        });
}

void AwayModel::show(AwayPlan plan) {
    plan_ = std::move(plan);
    std::vector<LineRow> rows;
    addVisits(rows, plan_->before, "awayPage.beforeOn");
    addVisits(rows, plan_->visits, "awayPage.sitterOn");
    addShut(rows);
    addWaits(rows);
    lines_.show(std::move(rows));
    emit planChanged();
    const auto sheet = sitterSheetFor(*plan_, *desk_->room(), desk_->knowledge().words);
    if (sheet.map.empty()) return showPages({});
    layOut([sheet, &words = desk_->knowledge().words](const documents::TextMeasure& measure) {
        return documents::sitterSheets(sheet, documents::Paper::a4, words, measure);
    });
}

void AwayModel::addVisits(std::vector<LineRow>& rows, std::span<const AwayVisit> visits,
                          const char* heading) const {
    const auto& words = desk_->knowledge().words;
    for (const auto& visit : visits) {
        bool isFirst = true;
        int number = 0;
        for (const auto& shelf : shelvesOf(visit.tasks, words, desk_->today())) {
            LineRow row;
            row.key = toQt(heading + isoDate(visit.day)) + QString::number(number++);
            row.name = shelfText(shelf.place, *desk_);
            QStringList lines;
            for (const auto& line : shelf.lines) lines.append(toQt(line));
            row.value = lines.join(QLatin1Char('\n'));
            row.estimated = true;
            if (std::exchange(isFirst, false)) {
                row.heading = desk_->say({heading, {{"day", words.longDay(visit.day)}}});
                row.note = desk_->say({"awayPage.things",
                                       {{"count", static_cast<std::int64_t>(visit.tasks.size())}}});
            }
            rows.push_back(std::move(row));
        }
    }
}

LineRow AwayModel::rowFor(const ResidentPtr& resident, const char* group) const {
    LineRow row;
    row.subject = toQt(resident->subject().id.text());
    row.key = QLatin1String(group) + row.subject;
    row.tag = toQt(resident->subject().number);
    row.name = speciesText(*resident);
    row.sub = placeText(resident->kept.place, *desk_);
    return row;
}

void AwayModel::addShut(std::vector<LineRow>& rows) const {
    bool isFirst = true;
    for (const auto& shut : plan_->shut) {
        auto row = rowFor(shut.resident, "shut");
        row.value = toQt(shutText(shut, desk_->knowledge().words, desk_->today()));
        row.estimated = shut.isEstimate();
        row.marked = true;
        if (std::exchange(isFirst, false)) {
            row.heading = desk_->say("away.stayShut");
            row.note = desk_->say(
                {"awayPage.homes", {{"count", static_cast<std::int64_t>(plan_->shut.size())}}});
        }
        rows.push_back(std::move(row));
    }
}

void AwayModel::addWaits(std::vector<LineRow>& rows) const {
    bool isFirst = true;
    for (const auto& wait : plan_->waits) {
        auto row = rowFor(wait.resident, "wait");
        row.key += toQt(std::string(name(wait.care)));
        row.value = toQt(waitText(wait, desk_->knowledge().words, desk_->today()));
        row.estimated = true;
        row.marked = wait.isLong;
        if (std::exchange(isFirst, false)) row.heading = desk_->say("away.waits");
        rows.push_back(std::move(row));
    }
}

QString AwayModel::fromText() const {
    return days_ && desk_ ? toQt(desk_->knowledge().words.longDay(days_->from)) : QString();
}

QString AwayModel::toText() const {
    return days_ && desk_ ? toQt(desk_->knowledge().words.longDay(days_->to)) : QString();
}

QString AwayModel::fromTyped() const { return days_ ? toQt(isoDate(days_->from)) : QString(); }
QString AwayModel::toTyped() const { return days_ ? toQt(isoDate(days_->to)) : QString(); }

bool AwayModel::canLeaveEarlier() const { return days_ && desk_ && days_->from > desk_->today(); }

QString AwayModel::lengthText() const {
    if (!days_ || !desk_) return {};
    return desk_->say({"awayPage.length", {{"days", std::int64_t{days_->to - days_->from + 1}}}});
}

QString AwayModel::summary() const {
    return desk_ && plan_ ? desk_->say(plan_->summary) : QString();
}

QString AwayModel::lastMealText() const {
    if (!desk_ || !plan_) return {};
    if (plan_->lastMeal < desk_->today()) return desk_->say("away.tooLateToFeed");
    return desk_->say(
        {"away.lastMeal", {{"day", desk_->knowledge().words.longDay(plan_->lastMeal)}}});
}

QString AwayModel::call() const {
    return isReady() ? toQt(desk_->room()->info().other(setting::sitterCall)) : QString();
}

bool AwayModel::lacksContact() const { return isReady() && desk_->room()->info().contact.empty(); }

void AwayModel::take(AwayDays days) {
    daysError_.clear();
    days_ = days;
    emit daysChanged();
    if (isReady()) read();
}

void AwayModel::stepFrom(int by) {
    if (!days_ || !desk_ || days_->from + by < desk_->today()) return;
    if (days_->from + by - desk_->today() > longestAway) return;
    take({days_->from + by, days_->to + by});
}

void AwayModel::stepTo(int by) {
    if (!days_ || days_->to + by < days_->from) return;
    if (days_->to + by - days_->from >= longestAway) return;
    take({days_->from, days_->to + by});
}

void AwayModel::typeDays(const QString& from, const QString& to) {
    if (!desk_) return;
    const auto first = parseIsoDate(from.trimmed().toStdString());
    const auto last = parseIsoDate(to.trimmed().toStdString());
    const auto refuse = [this](const Message& message) {
        daysError_ = desk_->say(message);
        emit daysChanged();
    };
    if (!first || !last) {
        return refuse({"day.unreadable", {{"value", (first ? to : from).trimmed().toStdString()}}});
    }
    const AwayDays days{*first, *last};
    if (const auto possible = checkAway(days, desk_->today()); !possible) {
        return refuse(possible.error().message);
    }
    take(days);
    emit daysKept();
}

void AwayModel::clearDaysError() {
    if (daysError_.isEmpty()) return;
    daysError_.clear();
    emit daysChanged();
}

void AwayModel::setCall(const QString& call) {
    if (!isReady() || call.trimmed() == this->call()) return;
    nlohmann::json line;
    if (const auto typed = call.trimmed(); !typed.isEmpty()) line = typed.toStdString();
    Deed deed;
    deed.said = {"did.sitterCall"};
    deed.compose = [line](Book& book) -> Result<std::vector<Draft>> {
        return std::vector<Draft>{
            SetDraft{ThingType::book, book.id().uuid, {{setting::sitterCall, line}}}};
    };
    desk_->act(this, std::move(deed));
}

std::string AwayModel::stem() const {
    const auto first = days_ ? isoDate(days_->from) : std::string();
    return fileStem(desk_->room()->info().name, "room") + "-sitter-" + first;
}

std::string AwayModel::title() const { return desk_->say("away.file").toStdString(); }

}  // namespace burrow
