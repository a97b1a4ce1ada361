// A scanner that sees what a script holds in front of it.
#pragma once

#include <QImage>

#include "ports/scanner.h"

namespace burrow {

/// Runs as soon as it is started, unless it was told to fail, and sees a symbol at once. Signals come
/// before a call returns.
class FakeScanner final : public Scanner {
    Q_OBJECT

public:
    explicit FakeScanner(QObject* parent = nullptr) : Scanner(parent) {}

    // The script's side.
    /// What start() leads to from now on; a scanner that looks already goes there at once.
    void setOutcome(State outcome);
    void setTorch(bool available) { setTorchAvailable(available); }
    /// The picture in the viewfinder, which has to be a FrameView, and for photos. A mat in it is seen
    /// before this returns, where one is wanted.
    void showPicture(const QImage& picture);
    /// Holds a symbol in front of the camera: glimpsed, and sighted unless it was there already.
    /// Nothing happens while the scanner does not run.
    void showTag(const QByteArray& payload);
    void showTag(const QByteArray& payload, const QList<QPointF>& corners);
    /// Takes it away.
    void hideTag();
    [[nodiscard]] int starts() const { return starts_; }
    [[nodiscard]] int stops() const { return stops_; }
    /// Whether the torch burns.
    [[nodiscard]] bool torchBurns() const { return torchOn() && state() == State::Running; }

    // The app's side.
    [[nodiscard]] QImage latestPicture() const override;
    void start() override;
    void stop() override;

private:
    void applyTorch(bool) override {}
    void show(const QImage& picture);
    void lookForMat();

    State outcome_ = State::Running;
    QImage picture_;
    QByteArray tag_;
    int starts_ = 0;
    int stops_ = 0;
};

}  // namespace burrow
