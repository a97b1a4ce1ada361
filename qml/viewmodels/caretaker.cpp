#include "viewmodels/caretaker.h"

#include "room/chores.h"

namespace burrow {

Caretaker::Caretaker(Desk& desk, QObject* parent) : QObject(parent), desk_(desk) {
    connect(&desk_, &Desk::roomChanged, this, &Caretaker::look);
    look();
}

void Caretaker::look() {
    if (!desk_.room() || desk_.isDemo()) return;
    if (desk_.bookPath() == caredFor_ && desk_.today() == day_) return;
    caredFor_ = desk_.bookPath();
    day_ = desk_.today();
    errands_.run<Result<Chores>>(
        this,
        [path = caredFor_, &clock = desk_.knowledge().clock, zone = desk_.knowledge().zone] {
            return doChores(path, clock, zone);
        },
        [this](const Result<Chores>& done) {
            if (!done) qWarning("%s", qUtf8Printable(desk_.say(done.error().message)));
            emit rested();
        });
}

}  // namespace burrow
