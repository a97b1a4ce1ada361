#include "viewmodels/newroommodel.h"

#include "viewmodels/roomnames.h"

namespace burrow {

void NewRoomModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::stateChanged, this, &NewRoomModel::follow);
    emit deskChanged();
}

QString NewRoomModel::codeOf(const QString& name) const { return codeFor(name); }

void NewRoomModel::start(const QString& name, const QString& code) {
    if (busy_) return;
    const auto room = name.trimmed();
    const auto roomCode = code.trimmed().toUpper();
    nameError_ = roomNameError(room, *desk_);
    codeError_ = roomCodeError(roomCode, *desk_);
    trouble_.clear();
    busy_ = nameError_.isEmpty() && codeError_.isEmpty();
    emit changed();
    if (busy_) bookcase_->startBook(room, roomCode);
}

void NewRoomModel::follow() {
    if (!busy_ || desk_->state() == Desk::State::Opening) return;
    busy_ = false;
    const bool isOpen = desk_->state() == Desk::State::Open;
    if (!isOpen) trouble_ = desk_->refusal();
    emit changed();
    if (isOpen) emit started();
}

}  // namespace burrow
