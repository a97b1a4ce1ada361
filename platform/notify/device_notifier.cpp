#include "notify/device_notifier.h"

#ifdef BURROW_HAS_DBUS
#include "notify/dbus_notifier.h"
#endif

namespace burrow {
#ifndef BURROW_HAS_DBUS
namespace {

/// For devices whose notifications are not reached yet.
class NobodyNotifier final : public Notifier {
public:
    void show(const Note& note) override {
        QMetaObject::invokeMethod(
            this,
            [this, tag = note.tag] { emit failed(tag, QStringLiteral("not on this device")); },
            Qt::QueuedConnection);
    }
    void withdraw(const QString& tag) override { Q_UNUSED(tag) }
};

}  // namespace
#endif

std::unique_ptr<Notifier> deviceNotifier() {
#ifdef BURROW_HAS_DBUS
    return std::make_unique<DBusNotifier>(QDBusConnection::sessionBus());
#else
    return std::make_unique<NobodyNotifier>();
#endif
}

}  // namespace burrow
