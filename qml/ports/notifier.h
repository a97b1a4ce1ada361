// Shows notifications of the device, where it can.
//
// Lives in the thread of the interface; nothing here waits for the device.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QString>

namespace burrow {

/// Plain text throughout.
struct Note {
    QString tag;  ///< which one it is: another with the same tag takes its place
    QString title;
    QString text;
    QString openText;       ///< what tapping it does
    bool isUrgent = false;  ///< may be shown where others are not
};

class Notifier : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("The program makes the notifier.")

public:
    explicit Notifier(QObject* parent = nullptr) : QObject(parent) {}

    /// Answered by shown() or failed(), later.
    virtual void show(const Note& note) = 0;
    /// Takes it away again, where it is still there.
    virtual void withdraw(const QString& tag) = 0;

signals:
    void shown(const QString& tag);
    /// Nobody on this device shows it; another time somebody may. `why` is for the log, not for people.
    void failed(const QString& tag, const QString& why);
    /// The keeper tapped it.
    void opened(const QString& tag);
};

}  // namespace burrow
