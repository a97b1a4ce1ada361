#include "fake/fake_scanner.h"

#include <utility>

#include "ports/frame_view.h"

namespace burrow {
void FakeScanner::setOutcome(State outcome) {
    outcome_ = outcome;
    if (state() == State::Idle) return;
    if (outcome != State::Running) hideTag();
    setState(outcome);
}

void FakeScanner::showPicture(const QImage& picture) {
    picture_ = picture;
    if (state() == State::Running) show(picture_);
    // As a camera would go on showing it: what is said of a mat has to be seen twice.
    for (int frame = 0; frame < 2; ++frame) lookForMat();
}

void FakeScanner::lookForMat() {
    if (state() != State::Running || picture_.isNull() || !matWanted()) return;
    const auto grey = picture_.convertToFormat(QImage::Format_Grayscale8);
    emit matSeen(matSightOf(
        {grey.constBits(), grey.width(), grey.height(), static_cast<int>(grey.bytesPerLine())}));
}

void FakeScanner::showTag(const QByteArray& payload) {
    showTag(payload, {{0.4, 0.4}, {0.6, 0.4}, {0.6, 0.6}, {0.4, 0.6}});
}

void FakeScanner::showTag(const QByteArray& payload, const QList<QPointF>& corners) {
    if (state() != State::Running) return;
    const bool known = std::exchange(tag_, payload) == payload;
    emit glimpsed(corners);
    if (!known) emit sighted(payload, corners);
}

void FakeScanner::hideTag() {
    if (!std::exchange(tag_, {}).isEmpty()) emit lost();
}

QImage FakeScanner::latestPicture() const {
    return state() == State::Running ? picture_ : QImage();
}

void FakeScanner::show(const QImage& picture) {
    auto* view = qobject_cast<FrameView*>(viewfinder());
    if (view == nullptr) return;
    view->show(
        {picture.isNull() ? QSizeF() : QSizeF(picture.size()), [picture] { return picture; }});
}

void FakeScanner::start() {
    ++starts_;
    setState(outcome_);
    if (state() == State::Running) show(picture_);
}

void FakeScanner::stop() {
    ++stops_;
    show({});
    setState(State::Idle);
    hideTag();
}

}  // namespace burrow
