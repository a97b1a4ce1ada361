#include "fake/fake_photographer.h"

namespace burrow {

void FakePhotographer::take() {
    if (busy()) return;
    ++asked_;
    setBusy(true);
    QMetaObject::invokeMethod(this, &FakePhotographer::answer, Qt::QueuedConnection);
}

void FakePhotographer::answer() {
    setBusy(false);
    if (prepared_.isEmpty()) {
        emit refused(QStringLiteral("camera.noPicture"));
    } else {
        emit taken(prepared_.takeFirst());
    }
}

}  // namespace burrow
