#include "fake/fake_scanner.h"

#include <utility>

namespace burrow {
namespace {

QVideoFrame frameOf(const QImage& picture) {
    const auto pixels = picture.convertToFormat(QImage::Format_RGB32);
    QVideoFrame frame(QVideoFrameFormat(
        pixels.size(), QVideoFrameFormat::pixelFormatFromImageFormat(pixels.format())));
    if (!frame.map(QVideoFrame::WriteOnly)) return {};
    for (int row = 0; row < pixels.height(); ++row) {
        const auto* line = pixels.constScanLine(row);
        std::copy(line, line + 4 * static_cast<std::ptrdiff_t>(pixels.width()),
                  frame.bits(0) + static_cast<std::ptrdiff_t>(row) * frame.bytesPerLine(0));
    }
    frame.unmap();
    return frame;
}

}  // namespace

void FakeScanner::setOutcome(State outcome) {
    outcome_ = outcome;
    if (state() == State::Idle) return;
    if (outcome != State::Running) hideTag();
    setState(outcome);
}

void FakeScanner::showPicture(const QImage& picture) {
    picture_ = frameOf(picture);
    if (state() == State::Running) show(picture_);
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

QVideoFrame FakeScanner::latestFrame() const {
    return state() == State::Running ? picture_ : QVideoFrame();
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
