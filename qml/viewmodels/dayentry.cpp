#include "viewmodels/dayentry.h"

#include <algorithm>

namespace burrow {
namespace {

/// That day of a month, or the month's last where it is shorter; kept within the calendar.
CivilDay dayInMonth(int monthsSinceYearZero, int day) {
    constexpr int firstMonth = 1 * 12;
    constexpr int lastMonth = 9999 * 12 + 11;
    const int month = std::clamp(monthsSinceYearZero, firstMonth, lastMonth);
    YearMonthDay date{month / 12, month % 12 + 1, day};
    while (!civilDay(date)) --date.day;
    return *civilDay(date);
}

CivilDay stepped(CivilDay from, DayEntry::Unit unit, int by) {
    const auto date = yearMonthDay(from);
    const int months = date.year * 12 + date.month - 1;
    switch (unit) {
        case DayEntry::Unit::Day: return from + by;
        case DayEntry::Unit::Month: return dayInMonth(months + by, date.day);
        case DayEntry::Unit::Year: break;
    }
    return dayInMonth(months + 12 * by, date.day);
}

}  // namespace

void DayEntry::prepare(const Words& words, CivilDay today) {
    words_ = &words;
    today_ = today;
    emit changed();
}

QString DayEntry::say(const Message& message) const {
    return words_ != nullptr ? QString::fromStdString(words_->say(message, today_)) : QString();
}

void DayEntry::setDay(std::optional<CivilDay> day) {
    if (day && latest_) day = std::min(*day, *latest_);
    day_ = day;
    typed_ = day ? QString::fromStdString(isoDate(*day)) : QString();
    error_.clear();
    emit changed();
}

void DayEntry::type(const QString& text) {
    const auto word = text.trimmed().toStdString();
    const auto day = parseIsoDate(word);
    const bool isFuture = day && latest_ && *day > *latest_;
    if (day && !isFuture) day_ = day;
    if (word.empty() && canBeUnknown_) day_.reset();
    typed_ = text;
    error_.clear();
    if (isFuture) error_ = say({"when.future"});
    if (!day && !(word.empty() && canBeUnknown_)) {
        error_ = say({"when.unreadable", {{"value", word}}});
    }
    emit changed();
}

void DayEntry::step(Unit unit, int by) { setDay(stepped(day_.value_or(today_), unit, by)); }

void DayEntry::clear() {
    if (canBeUnknown_) setDay(std::nullopt);
}

QString DayEntry::words() const {
    if (!day_) return say({"when.unknown"});
    // Seen from far away every day is named with its year.
    constexpr int farAway = 1000;
    return QString::fromStdString(words_->day(*day_, *day_ + farAway));
}

QString DayEntry::glance() const {
    if (!day_) return say({"when.unknown"});
    if (*day_ == today_) return say({"when.today"});
    if (*day_ + 1 == today_) return say({"when.yesterday"});
    constexpr int recent = 60;
    return today_ - *day_ < recent ? dayText() : words();
}

QString DayEntry::dayText() const {
    return day_ ? QString::fromStdString(words_->longDay(*day_)) : words();
}

QString DayEntry::monthText() const {
    return day_ ? QString::fromStdString(words_->month(*day_)) : words();
}

QString DayEntry::yearText() const {
    return day_ ? QString::number(yearMonthDay(*day_).year) : words();
}

bool DayEntry::canLater() const { return !latest_ || day_.value_or(today_) < *latest_; }

}  // namespace burrow
