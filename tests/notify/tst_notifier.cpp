// Notes on a real bus: what the service gets is what the Desktop Notifications Specification, version 1.2
// (freedesktop.org) asks for, and what it answers reaches the app.
#include <QSignalSpy>

#include "notify/dbus_notifier.h"
#include "notify/own_service.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const Note evening{"round", "Kiln Row: the round", "12 to feed, A & B <1> first",
                   "Show what is due", false};

/// A service, a notifier and a bus between them.
struct Desktop {
    explicit Desktop(const char* name)
        : served(bus.connection(QString(name) + "-service")),
          notifier(bus.connection(QString(name) + "-app")) {}

    OwnBus bus;
    OwnService service;
    QDBusConnection served;
    DBusNotifier notifier;
};

}  // namespace

class TestNotifier : public QObject {
    Q_OBJECT

private slots:
    void asTheSpecificationSays() {
        Desktop at("spec");
        QVERIFY2(at.bus.isThere(), "dbus-daemon does not start");
        QVERIFY(OwnBus::offer(at.served, at.service));
        QSignalSpy shown(&at.notifier, &Notifier::shown);
        at.notifier.show(evening);
        QTRY_COMPARE(shown.count(), 1);
        QCOMPARE(shown.first().first().toString(), QString("round"));
        const auto& note = at.service.notified.front();
        // Notify: app_name, replaces_id, app_icon, summary, body, actions, hints, expire_timeout.
        QCOMPARE(note.signature, QString("susssasa{sv}i"));
        QCOMPARE(note.replacesId, 0U);
        QCOMPARE(note.summary, evening.title);
        // Where bodies take markup, ours must not be taken for any.
        QCOMPARE(note.body, QString("12 to feed, A &amp; B &lt;1&gt; first"));
        QCOMPARE(note.actions, (QStringList{"default", "Show what is due"}));
        QCOMPARE(note.hints.value("urgency").typeId(), qMetaTypeId<uchar>());
        QCOMPARE(note.hints.value("urgency").value<uchar>(), uchar{1});
        QCOMPARE(note.hints.value("desktop-entry").toString(), QString("burrowbook"));
        QCOMPARE(note.timeout, -1);
    }

    void anotherOfItsKindTakesItsPlace() {
        Desktop at("again");
        QVERIFY(OwnBus::offer(at.served, at.service));
        QSignalSpy shown(&at.notifier, &Notifier::shown);
        at.notifier.show(evening);
        QTRY_COMPARE(shown.count(), 1);
        const auto first = at.service.lastId;
        at.notifier.show(evening);
        auto urgent = evening;
        urgent.tag = "leftovers";
        urgent.isUrgent = true;
        at.notifier.show(urgent);
        QTRY_COMPARE(shown.count(), 3);
        QCOMPARE(at.service.notified[1].replacesId, first);
        QCOMPARE(at.service.notified[2].replacesId, 0U);
        QCOMPARE(at.service.notified[2].hints.value("urgency").value<uchar>(), uchar{2});
        QCOMPARE(at.service.asked, 1);
    }

    void aTapComesBack() {
        Desktop at("tap");
        QVERIFY(OwnBus::offer(at.served, at.service));
        QSignalSpy shown(&at.notifier, &Notifier::shown);
        QSignalSpy opened(&at.notifier, &Notifier::opened);
        at.notifier.show(evening);
        QTRY_COMPARE(shown.count(), 1);
        emit at.service.ActionInvoked(at.service.lastId + 7, "default");  // another program's
        emit at.service.ActionInvoked(at.service.lastId, "later");
        emit at.service.ActionInvoked(at.service.lastId, "default");
        QTRY_COMPARE(opened.count(), 1);
        QCOMPARE(opened.first().first().toString(), QString("round"));
        at.notifier.withdraw("round");
        QTRY_COMPARE(at.service.closed, std::vector<uint>{at.service.lastId});
    }

    void whatWasClosedIsNotReplaced() {
        Desktop at("closed");
        QVERIFY(OwnBus::offer(at.served, at.service));
        QSignalSpy shown(&at.notifier, &Notifier::shown);
        at.notifier.show(evening);
        QTRY_COMPARE(shown.count(), 1);
        constexpr uint byUser = 2;
        emit at.service.NotificationClosed(at.service.lastId, byUser);
        // Signals and calls keep their order on one connection.
        QTest::qWait(50);
        at.notifier.show(evening);
        QTRY_COMPARE(shown.count(), 2);
        QCOMPARE(at.service.notified.back().replacesId, 0U);
        at.notifier.withdraw("unheard of");
        QVERIFY(at.service.closed.empty());
    }

    void aServiceThatCanDoLittle() {
        Desktop at("little");
        at.service.capabilities.clear();
        QVERIFY(OwnBus::offer(at.served, at.service));
        QSignalSpy shown(&at.notifier, &Notifier::shown);
        at.notifier.show(evening);
        QTRY_COMPARE(shown.count(), 1);
        const auto& note = at.service.notified.front();
        QCOMPARE(note.summary, QString("Kiln Row: the round: 12 to feed, A & B <1> first"));
        QVERIFY(note.body.isEmpty() && note.actions.isEmpty());
    }

    void nobodyOffersIt() {
        Desktop at("nobody");
        QSignalSpy shown(&at.notifier, &Notifier::shown);
        QSignalSpy failed(&at.notifier, &Notifier::failed);
        at.notifier.show(evening);
        QTRY_COMPARE(failed.count(), 1);
        QCOMPARE(failed.first()[1].toString(),
                 QString("org.freedesktop.DBus.Error.ServiceUnknown"));
        // Somebody comes.
        QVERIFY(OwnBus::offer(at.served, at.service));
        at.notifier.show(evening);
        QTRY_COMPARE(shown.count(), 1);
        at.service.refuses = true;
        at.notifier.show(evening);
        QTRY_COMPARE(failed.count(), 2);
        at.service.refuses = false;
        at.notifier.show(evening);
        QTRY_COMPARE(shown.count(), 2);
    }

    void noBusAtAll() {
        DBusNotifier notifier(
            QDBusConnection::connectToBus("unix:path=/nonexistent/bus", "no-bus"));
        QSignalSpy failed(&notifier, &Notifier::failed);
        notifier.show(evening);
        QCOMPARE(failed.count(), 0);  // not while still asking
        QTRY_COMPARE(failed.count(), 1);
        notifier.withdraw("round");
    }
};

QTEST_GUILESS_MAIN(TestNotifier)
#include "tst_notifier.moc"
