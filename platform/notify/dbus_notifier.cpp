#include "notify/dbus_notifier.h"

#include <QCoreApplication>
#include <QDBusMessage>
#include <QDBusPendingCallWatcher>
#include <QDBusPendingReply>

namespace burrow {
namespace {

const QString service = QStringLiteral("org.freedesktop.Notifications");
const QString path = QStringLiteral("/org/freedesktop/Notifications");
const QString interface = QStringLiteral("org.freedesktop.Notifications");
/// What a click on the note itself is called (specification, "Actions").
const QString defaultAction = QStringLiteral("default");
/// "The server decides when it goes" (specification, Notify, expire_timeout).
constexpr int serverDecides = -1;
/// Levels of the hint "urgency" (specification, "Urgency Levels").
constexpr uchar urgencyNormal = 1;
constexpr uchar urgencyCritical = 2;

QDBusMessage call(const char* method) {
    return QDBusMessage::createMethodCall(service, path, interface, QString::fromLatin1(method));
}

}  // namespace

DBusNotifier::DBusNotifier(QDBusConnection bus, QObject* parent)
    : Notifier(parent), bus_(std::move(bus)) {}

void DBusNotifier::listen() {
    if (std::exchange(listens_, true)) return;
    bus_.connect(service, path, interface, QStringLiteral("ActionInvoked"), this,
                 SLOT(onActionInvoked(uint, QString)));
    bus_.connect(service, path, interface, QStringLiteral("NotificationClosed"), this,
                 SLOT(onNotificationClosed(uint, uint)));
}

bool DBusNotifier::can(const char* capability) const {
    return capabilities_ && capabilities_->contains(QLatin1String(capability));
}

void DBusNotifier::show(const Note& note) {
    if (!bus_.isConnected()) {
        // Answered later here too, so that nobody is called back while still asking.
        const auto why = bus_.lastError().message();
        QMetaObject::invokeMethod(
            this, [this, tag = note.tag, why] { emit failed(tag, why); }, Qt::QueuedConnection);
        return;
    }
    listen();
    if (capabilities_) return send(note);
    auto* watcher = new QDBusPendingCallWatcher(bus_.asyncCall(call("GetCapabilities")), this);
    connect(watcher, &QDBusPendingCallWatcher::finished, this, [this, note, watcher] {
        watcher->deleteLater();
        const QDBusPendingReply<QStringList> reply = *watcher;
        if (reply.isError()) {
            emit failed(note.tag, reply.error().name());
            return;
        }
        capabilities_ = reply.value();
        send(note);
    });
}

QVariantList DBusNotifier::argumentsFor(const Note& note) const {
    // A body is text with a few tags where the service says so: then ours must not look like any.
    const auto body = can("body-markup") ? note.text.toHtmlEscaped() : note.text;
    const auto title = can("body") ? note.title : note.title + QStringLiteral(": ") + note.text;
    QStringList actions;
    if (can("actions")) actions = {defaultAction, note.openText};
    const QVariantMap hints{
        {QStringLiteral("urgency"),
         QVariant::fromValue(note.isUrgent ? urgencyCritical : urgencyNormal)},
        {QStringLiteral("desktop-entry"), QStringLiteral("burrowbook")},
    };
    return {QCoreApplication::applicationName(),
            ids_.value(note.tag, 0),
            QStringLiteral("burrowbook"),
            title,
            can("body") ? body : QString(),
            actions,
            hints,
            serverDecides};
}

void DBusNotifier::send(const Note& note) {
    auto message = call("Notify");
    message.setArguments(argumentsFor(note));
    auto* watcher = new QDBusPendingCallWatcher(bus_.asyncCall(message), this);
    connect(watcher, &QDBusPendingCallWatcher::finished, this, [this, tag = note.tag, watcher] {
        watcher->deleteLater();
        const QDBusPendingReply<uint> reply = *watcher;
        if (reply.isError()) {
            // Whoever offers the service next may be able to do other things.
            capabilities_.reset();
            emit failed(tag, reply.error().name());
            return;
        }
        ids_.insert(tag, reply.value());
        emit shown(tag);
    });
}

void DBusNotifier::withdraw(const QString& tag) {
    const auto id = ids_.take(tag);
    if (id == 0 || !bus_.isConnected()) return;
    auto message = call("CloseNotification");
    message.setArguments({id});
    bus_.asyncCall(message);
}

QString DBusNotifier::tagOf(uint id) const { return ids_.key(id); }

void DBusNotifier::onActionInvoked(uint id, const QString& action) {
    // Signals go to everyone on the bus: most are about other programs' notes.
    const auto tag = tagOf(id);
    if (!tag.isEmpty() && action == defaultAction) emit opened(tag);
}

void DBusNotifier::onNotificationClosed(uint id, uint reason) {
    Q_UNUSED(reason)
    if (const auto tag = tagOf(id); !tag.isEmpty()) ids_.remove(tag);
}

}  // namespace burrow
