#include "ports/scanner.h"

namespace burrow {

QString Scanner::trouble() const {
    switch (state_) {
        case State::NoCamera: return QStringLiteral("camera.none");
        case State::NotAllowed: return QStringLiteral("camera.notAllowed");
        case State::Broken: return QStringLiteral("camera.broken");
        case State::Idle:
        case State::Starting:
        case State::Running: break;
    }
    return {};
}

void Scanner::setTorchOn(bool on) {
    if (on == torchOn_ || (on && !torchAvailable_)) return;
    torchOn_ = on;
    applyTorch(on);
    emit torchOnChanged();
}

void Scanner::setMatWanted(bool wanted) {
    if (wanted == matWanted_) return;
    matWanted_ = wanted;
    emit matWantedChanged();
}

void Scanner::setViewfinder(QObject* viewfinder) {
    if (viewfinder_ == viewfinder) return;
    viewfinder_ = viewfinder;
    emit viewfinderChanged();
}

void Scanner::setState(State state) {
    if (state_ == state) return;
    state_ = state;
    emit stateChanged();
}

void Scanner::setTorchAvailable(bool available) {
    if (torchAvailable_ == available) return;
    torchAvailable_ = available;
    emit torchAvailableChanged();
}

}  // namespace burrow
