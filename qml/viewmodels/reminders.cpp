#include "viewmodels/reminders.h"

#include <algorithm>

#include "viewmodels/filewords.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

constexpr int minutesADay = 24 * 60;
constexpr int step = 30;
constexpr int hourMs = 3'600'000;
const QString roundName = QStringLiteral("round");
const QString fromName = QStringLiteral("quietFrom");
const QString untilName = QStringLiteral("quietUntil");

QString clockText(int minute) {
    return QStringLiteral("%1:%2")
        .arg(minute / 60, 2, 10, QLatin1Char('0'))
        .arg(minute % 60, 2, 10, QLatin1Char('0'));
}

int moved(int minute, int steps) {
    return ((minute + steps * step) % minutesADay + minutesADay) % minutesADay;
}

int minuteIn(const Settings& settings, const QString& name, int usual) {
    bool isNumber = false;
    const int minute = settings.reminder(name, usual).toInt(&isNumber);
    return isNumber && minute >= 0 && minute < minutesADay ? minute : usual;
}

}  // namespace

Reminders::Reminders(Desk& desk, Settings& settings, ReminderRules rules, QObject* parent)
    : QObject(parent), desk_(desk), settings_(settings), rules_(std::move(rules)) {
    choice_ = rules_.usual;
    choice_.isOn = settings.reminder(QStringLiteral("on"), choice_.isOn).toBool();
    choice_.roundMinute = minuteIn(settings, roundName, choice_.roundMinute);
    choice_.quietFrom = minuteIn(settings, fromName, choice_.quietFrom);
    choice_.quietUntil = minuteIn(settings, untilName, choice_.quietUntil);
    alarm_.setSingleShot(true);
    alarm_.setTimerType(Qt::CoarseTimer);
    connect(&alarm_, &QTimer::timeout, this, &Reminders::look);
    connect(&desk_, &Desk::roomChanged, this, &Reminders::look);
}

void Reminders::setNotifier(Notifier* notifier) {
    notifier_ = notifier;
    if (notifier == nullptr) return;
    connect(notifier, &Notifier::shown, this, &Reminders::onShown);
    connect(notifier, &Notifier::failed, this, &Reminders::onFailed);
    connect(notifier, &Notifier::opened, this, &Reminders::onOpened);
    look();
}

// --- deciding ------------------------------------------------------------------------------------

/// A path may hold characters that are no good in a key.
QString Reminders::toldName() const {
    return QStringLiteral("told/") +
           QString::fromLatin1(QByteArray::fromStdString(desk_.bookPath().string()).toHex());
}

std::vector<Told> Reminders::told() const {
    auto told = toldFrom(settings_.reminder(toldName()).toString().toStdString());
    // What the device has not answered for yet is not told a second time meanwhile.
    const auto now = desk_.knowledge().clock.now();
    for (const auto& reminder : underWay_) told.push_back({now, reminder.keys});
    return told;
}

void Reminders::look() {
    const int serial = ++serial_;
    alarm_.stop();
    const auto room = desk_.room();
    if (!room || !room->isWhole() || desk_.isDemo() || !choice_.isOn) {
        take({}, serial);
        return;
    }
    errands_.run<std::vector<Reminder>>(
        this,
        [room, rules = rules_, choice = choice_, told = told(),
         now = desk_.knowledge().clock.now()] {
            return remindersFor(*room, rules, choice, told, now);
        },
        [this, serial](std::vector<Reminder> reminders) { take(std::move(reminders), serial); });
}

void Reminders::take(std::vector<Reminder> reminders, int serial) {
    if (serial != serial_) return;
    const auto now = desk_.knowledge().clock.now();
    waiting_.clear();
    isDecided_ = true;
    for (auto& reminder : reminders) {
        if (reminder.when <= now && notifier_ != nullptr) {
            give(reminder);
        } else {
            waiting_.push_back(std::move(reminder));
        }
    }
    sleepUntilNext();
    emit changed();
    emit decided();
}

void Reminders::sleepUntilNext() {
    if (!desk_.room() || !choice_.isOn || notifier_ == nullptr) return;
    std::int64_t wait = hourMs;
    if (!waiting_.empty()) {
        const auto now = desk_.knowledge().clock.now();
        // One that is due already could not be given: it is tried again after a while.
        const auto left = waiting_.front().when.ms - now.ms;
        if (left > 0) wait = std::min<std::int64_t>(wait, left);
    }
    alarm_.start(static_cast<int>(wait));
}

// --- telling -------------------------------------------------------------------------------------

void Reminders::give(const Reminder& reminder) {
    underWay_.push_back(reminder);
    const auto today = desk_.today();
    const auto& words = desk_.knowledge().words;
    notifier_->show({QString::fromStdString(reminder.id), desk_.say(reminder.title),
                     QString::fromStdString(sentence(reminder, words, today)),
                     desk_.say("remind.open"), reminder.isUrgent});
}

void Reminders::onShown(const QString& tag) {
    const auto id = tag.toStdString();
    const auto given = std::find_if(underWay_.begin(), underWay_.end(),
                                    [&](const Reminder& one) { return one.id == id; });
    if (given == underWay_.end()) return;
    const auto now = desk_.knowledge().clock.now();
    auto told = toldFrom(settings_.reminder(toldName()).toString().toStdString());
    told.push_back({now, given->keys});
    underWay_.erase(given);
    const auto kept = remembered(std::move(told), rules_, now);
    settings_.setReminder(toldName(), QString::fromStdString(toldText(kept)));
    isNobodyThere_ = false;
    look();  // when the next one is
}

void Reminders::onFailed(const QString& tag, const QString& why) {
    if (!std::exchange(isNobodyThere_, true)) qInfo("no notifications: %s", qUtf8Printable(why));
    const auto id = tag.toStdString();
    std::erase_if(underWay_, [&](const Reminder& one) { return one.id == id; });
    emit changed();  // the alarm is set: it is tried again within the hour
}

void Reminders::onOpened(const QString& tag) {
    if (notifier_ != nullptr) notifier_->withdraw(tag);
    emit dueWanted();
}

// --- the settings --------------------------------------------------------------------------------

void Reminders::keepChoice() {
    settings_.setReminder(QStringLiteral("on"), choice_.isOn);
    settings_.setReminder(roundName, choice_.roundMinute);
    settings_.setReminder(fromName, choice_.quietFrom);
    settings_.setReminder(untilName, choice_.quietUntil);
    emit changed();
    look();
}

void Reminders::setOn(bool on) {
    if (choice_.isOn == on) return;
    choice_.isOn = on;
    keepChoice();
}

void Reminders::moveRound(int steps) {
    choice_.roundMinute = moved(choice_.roundMinute, steps);
    keepChoice();
}

void Reminders::moveQuietFrom(int steps) {
    choice_.quietFrom = moved(choice_.quietFrom, steps);
    keepChoice();
}

void Reminders::moveQuietUntil(int steps) {
    choice_.quietUntil = moved(choice_.quietUntil, steps);
    keepChoice();
}

QString Reminders::roundTime() const { return clockText(choice_.roundMinute); }
QString Reminders::quietFrom() const { return clockText(choice_.quietFrom); }
QString Reminders::quietUntil() const { return clockText(choice_.quietUntil); }

QString Reminders::state() const {
    if (!choice_.isOn) return desk_.say("remind.off");
    if (isNobodyThere_) return desk_.say("remind.nobody");
    if (desk_.isDemo()) return desk_.say("remind.demo");
    if (!desk_.room() || !isDecided_) return desk_.say("remind.waiting");
    if (waiting_.empty()) return desk_.say("remind.none");
    const auto when = waiting_.front().when;
    const auto day = desk_.knowledge().zone.dayOf(when);
    return desk_.say({day == desk_.today() ? "remind.nextToday" : "remind.next",
                      {{"day", day}, {"time", timeText(when, desk_)}}});
}

QString Reminders::nextTitle() const {
    return waiting_.empty() ? QString() : desk_.say(waiting_.front().title);
}

QString Reminders::nextText() const {
    if (waiting_.empty()) return {};
    return QString::fromStdString(
        sentence(waiting_.front(), desk_.knowledge().words, desk_.today()));
}

}  // namespace burrow
