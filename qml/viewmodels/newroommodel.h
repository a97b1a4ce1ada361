// A first room: what it is called, and its code on tags. Its book is started with both.
#pragma once

#include "viewmodels/bookcase.h"

namespace burrow {

class NewRoomModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(burrow::Bookcase* bookcase MEMBER bookcase_ NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(QString nameError READ nameError NOTIFY changed FINAL)
    Q_PROPERTY(QString codeError READ codeError NOTIFY changed FINAL)
    Q_PROPERTY(bool busy READ isBusy NOTIFY changed FINAL)
    /// Why the book could not be started, in words; empty for nothing.
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)

public:
    explicit NewRoomModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString nameError() const { return nameError_; }
    [[nodiscard]] QString codeError() const { return codeError_; }
    [[nodiscard]] bool isBusy() const { return busy_; }
    [[nodiscard]] QString trouble() const { return trouble_; }

public slots:
    /// A code to begin with.
    QString codeOf(const QString& name) const;
    /// Answered by started(), or by what is wrong.
    void start(const QString& name, const QString& code);

signals:
    void deskChanged();
    void changed();
    /// The room's book lies open.
    void started();

private:
    void follow();

    QPointer<Desk> desk_;
    Bookcase* bookcase_ = nullptr;
    QString nameError_;
    QString codeError_;
    QString trouble_;
    bool busy_ = false;
};

}  // namespace burrow
