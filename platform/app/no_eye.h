// Stands where the camera library cannot be loaded: everything else works, and tags can be typed.
#pragma once

#include "ports/photographer.h"
#include "ports/scanner.h"

namespace burrow {

class NoScanner final : public Scanner {
    Q_OBJECT

public:
    [[nodiscard]] QImage latestPicture() const override { return {}; }
    void start() override { setState(State::Broken); }
    void stop() override { setState(State::Idle); }

private:
    void applyTorch(bool) override {}
};

class NoPhotographer final : public Photographer {
    Q_OBJECT

public:
    void take() override { emit refused(QStringLiteral("camera.noPicture")); }
};

}  // namespace burrow
