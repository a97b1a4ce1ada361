// A small notification service as the Desktop Notifications Specification, version 1.2 (freedesktop.org),
// describes it, and a bus of its own to offer it on.
#pragma once

#include <QDBusConnection>
#include <QDBusContext>
#include <QDBusMessage>
#include <QProcess>
#include <QVariantMap>
#include <QtTest>

namespace burrow::test {

/// What one call of Notify said, in the order of its arguments.
struct Notified {
    QString signature;  ///< of the whole call, as it came over the bus
    QString appName;
    uint replacesId = 0;
    QString icon;
    QString summary;
    QString body;
    QStringList actions;
    QVariantMap hints;
    int timeout = 0;
};

class OwnService : public QObject, protected QDBusContext {
    Q_OBJECT
    Q_CLASSINFO("D-Bus Interface", "org.freedesktop.Notifications")

public:
    QStringList capabilities{"body", "actions", "body-markup"};
    bool refuses = false;
    std::vector<Notified> notified;
    std::vector<uint> closed;
    int asked = 0;
    uint lastId = 0;

public slots:
    QStringList GetCapabilities() {
        ++asked;
        return capabilities;
    }
    uint Notify(const QString& appName, uint replacesId, const QString& icon,
                const QString& summary, const QString& body, const QStringList& actions,
                const QVariantMap& hints, int timeout) {
        if (refuses) {
            sendErrorReply(QDBusError::LimitsExceeded, "too many notes");
            return 0;
        }
        notified.push_back({message().signature(), appName, replacesId, icon, summary, body,
                            actions, hints, timeout});
        lastId = replacesId != 0 ? replacesId : lastId + 1;
        return lastId;
    }
    void CloseNotification(uint id) {
        closed.push_back(id);
        constexpr uint byCall = 3;
        emit NotificationClosed(id, byCall);
    }

signals:
    void NotificationClosed(uint id, uint reason);
    void ActionInvoked(uint id, const QString& action);
};

/// A session bus that nobody else is on.
class OwnBus {
public:
    OwnBus() {
        daemon_.start("dbus-daemon", {"--session", "--nofork", "--nopidfile", "--print-address=1"});
        if (!daemon_.waitForStarted() || !daemon_.waitForReadyRead()) return;
        address_ = QString::fromUtf8(daemon_.readLine()).trimmed();
    }
    ~OwnBus() {
        for (const auto& name : names_) QDBusConnection::disconnectFromBus(name);
        daemon_.terminate();
        daemon_.waitForFinished();
    }
    OwnBus(const OwnBus&) = delete;
    OwnBus& operator=(const OwnBus&) = delete;

    [[nodiscard]] bool isThere() const { return !address_.isEmpty(); }
    QDBusConnection connection(const QString& name) {
        names_.append(name);
        return QDBusConnection::connectToBus(address_, name);
    }
    static bool offer(QDBusConnection connection, OwnService& service) {
        return connection.registerObject(
                   "/org/freedesktop/Notifications", &service,
                   QDBusConnection::ExportAllSlots | QDBusConnection::ExportAllSignals) &&
               connection.registerService("org.freedesktop.Notifications");
    }

private:
    QProcess daemon_;
    QString address_;
    QStringList names_;
};

}  // namespace burrow::test
