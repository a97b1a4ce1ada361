// Notifications on a Linux desktop or phone: the interface org.freedesktop.Notifications of the Desktop
// Notifications Specification, version 1.2 (freedesktop.org), on the session bus.
#pragma once

#include <QDBusConnection>
#include <QHash>
#include <QStringList>
#include <optional>

#include "ports/notifier.h"

namespace burrow {

/// Asks the service for what it can do once, before the first note. Where there is no bus, or nobody who
/// offers the service, each note fails and nothing else happens: the next is tried again.
class DBusNotifier final : public Notifier {
    Q_OBJECT

public:
    explicit DBusNotifier(QDBusConnection bus, QObject* parent = nullptr);

    void show(const Note& note) override;
    void withdraw(const QString& tag) override;

private slots:
    void onActionInvoked(uint id, const QString& action);
    void onNotificationClosed(uint id, uint reason);

private:
    void listen();
    void send(const Note& note);
    [[nodiscard]] QVariantList argumentsFor(const Note& note) const;
    [[nodiscard]] bool can(const char* capability) const;
    [[nodiscard]] QString tagOf(uint id) const;

    QDBusConnection bus_;
    bool listens_ = false;
    std::optional<QStringList> capabilities_;
    QHash<QString, uint> ids_;  ///< of those on the screen, by tag
};

}  // namespace burrow
