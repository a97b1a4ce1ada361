#include "viewmodels/mathintmodel.h"

namespace burrow {

void MatHintModel::setDesk(Desk* desk) {
    desk_ = desk;
    emit givenChanged();
}

void MatHintModel::setScanner(Scanner* scanner) {
    if (scanner_ == scanner) return;
    stopLooking();
    scanner_ = scanner;
    if (scanner_) {
        connect(scanner_, &Scanner::matSeen, this, &MatHintModel::see);
        connect(scanner_, &Scanner::stateChanged, this, [this] {
            if (scanner_->state() != Scanner::State::Running) forget();
        });
        scanner_->setMatWanted(isActive_);
    }
    emit givenChanged();
}

void MatHintModel::setActive(bool active) {
    if (isActive_ == active) return;
    isActive_ = active;
    if (scanner_) scanner_->setMatWanted(active);
    if (!active) forget();
    emit givenChanged();
}

void MatHintModel::stopLooking() {
    if (!scanner_) return;
    scanner_->disconnect(this);
    scanner_->setMatWanted(false);
}

/// What was seen twice in a row is said: a sentence that changes with every frame cannot be read.
void MatHintModel::see(const MatSight& sight) {
    const bool isSteady = last_ && last_->says == sight.says && last_->corners == sight.corners;
    last_ = sight;
    if (!isSteady || shown_ == sight || !desk_) return;
    shown_ = sight;
    text_ = desk_->say(sight.says);
    emit changed();
}

void MatHintModel::forget() {
    last_.reset();
    if (!shown_) return;
    shown_.reset();
    text_.clear();
    emit changed();
}

QList<bool> MatHintModel::corners() const {
    QList<bool> list;
    for (std::size_t i = 0; i < 4; ++i) list.append(shown_ && shown_->corners.at(i));
    return list;
}

}  // namespace burrow
