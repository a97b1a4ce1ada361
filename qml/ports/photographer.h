// Takes a still picture of what the scanner's camera sees, as large as the device can.
//
// Lives in the thread of the interface and emits everything there.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QByteArray>
#include <QObject>
#include <QString>

namespace burrow {

class Photographer : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("The program makes the photographer.")
    Q_PROPERTY(bool busy READ busy NOTIFY busyChanged FINAL)

public:
    explicit Photographer(QObject* parent = nullptr) : QObject(parent) {}

    /// Between take() and its answer.
    [[nodiscard]] bool busy() const { return busy_; }

public slots:
    /// Answered by exactly one `taken` or `refused`; does nothing while busy.
    virtual void take() = 0;

signals:
    void busyChanged();
    /// As the camera packed it: it may be turned and say so, and bear a record of place and time.
    void taken(const QByteArray& jpeg);
    /// With the id of the sentence that says why: camera.noPicture.
    void refused(const QString& messageId);

protected:
    void setBusy(bool busy) {
        if (busy_ == busy) return;
        busy_ = busy;
        emit busyChanged();
    }

private:
    bool busy_ = false;
};

}  // namespace burrow
