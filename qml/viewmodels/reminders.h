// Reminds the keeper of what is due: chooses the moment, hands the note to the device, and knows what was
// told. What was chosen and what was told is kept on this device, not in the book.
#pragma once

#include <QTimer>
#include <QVariantList>
#include <optional>

#include "ports/errands.h"
#include "ports/notifier.h"
#include "room/reminders.h"
#include "viewmodels/desk.h"
#include "viewmodels/settings.h"

namespace burrow {

/// Lives as long as the app, in the thread of the interface; deciding is an errand. Wakes at the next
/// reminder's time, and at least every hour, because a device that sleeps stops its timers. Of the invented
/// room nothing is said.
class Reminders : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("The program makes it.")
    Q_PROPERTY(bool on READ isOn WRITE setOn NOTIFY changed FINAL)
    /// "18:30": when the round is said.
    Q_PROPERTY(QString roundTime READ roundTime NOTIFY changed FINAL)
    Q_PROPERTY(QString quietFrom READ quietFrom NOTIFY changed FINAL)
    Q_PROPERTY(QString quietUntil READ quietUntil NOTIFY changed FINAL)
    /// "Next: today at 18:30", "Off", or that nobody here shows any.
    Q_PROPERTY(QString state READ state NOTIFY changed FINAL)
    /// What the next one will say, in words; empty for none.
    Q_PROPERTY(QString nextTitle READ nextTitle NOTIFY changed FINAL)
    Q_PROPERTY(QString nextText READ nextText NOTIFY changed FINAL)

public:
    /// None of them is owned. Says nothing until look() is called or the room changes.
    Reminders(Desk& desk, Settings& settings, ReminderRules rules, QObject* parent = nullptr);

    /// Before that, nothing on the device shows notes. Not owned.
    void setNotifier(Notifier* notifier);

    [[nodiscard]] bool isOn() const { return choice_.isOn; }
    void setOn(bool on);
    [[nodiscard]] QString roundTime() const;
    [[nodiscard]] QString quietFrom() const;
    [[nodiscard]] QString quietUntil() const;
    [[nodiscard]] QString state() const;
    [[nodiscard]] QString nextTitle() const;
    [[nodiscard]] QString nextText() const;
    [[nodiscard]] const ReminderChoice& choice() const { return choice_; }
    [[nodiscard]] std::vector<Told> told() const;

public slots:
    /// Decides again; what is due to be said now is said.
    void look();
    // Half an hour earlier or later, round the clock.
    void moveRound(int steps);
    void moveQuietFrom(int steps);
    void moveQuietUntil(int steps);

signals:
    void changed();
    /// The keeper tapped a note: the list of what is due is wanted.
    void dueWanted();
    /// For tests: what was to be decided is decided.
    void decided();

private:
    void take(std::vector<Reminder> reminders, int serial);
    void give(const Reminder& reminder);
    void sleepUntilNext();
    void keepChoice();
    void onShown(const QString& tag);
    void onFailed(const QString& tag, const QString& why);
    void onOpened(const QString& tag);
    [[nodiscard]] QString toldName() const;

    Desk& desk_;
    Settings& settings_;
    const ReminderRules rules_;
    QPointer<Notifier> notifier_;
    ReminderChoice choice_;
    std::vector<Reminder> waiting_;   ///< to be said later, the first first
    std::vector<Reminder> underWay_;  ///< handed to the device, not answered yet
    bool isNobodyThere_ = false;
    bool isDecided_ = false;
    int serial_ = 0;  ///< of the last look: answers to earlier ones are out of date
    QTimer alarm_;
    Errands errands_;
};

}  // namespace burrow
