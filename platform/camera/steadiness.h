// When a symbol counts as pointed at. Without Qt's event loop, so that every case can be tried.
#pragma once

#include <QByteArray>
#include <optional>

namespace burrow {

/// Follows the symbol nearest the middle from one decoded frame to the next. A symbol is sighted when
/// it was nearest twice in a row, so that a camera in motion does not open the tag it only passes.
class Steadiness {
public:
    struct News {
        bool sighted = false;
        bool lost = false;

        friend bool operator==(const News&, const News&) = default;
    };

    /// `nearest` is what the symbol holds, or nothing where the frame shows none.
    [[nodiscard]] News next(const std::optional<QByteArray>& nearest);
    /// Whether a symbol was seen that is not lost yet.
    [[nodiscard]] bool holds() const { return holds_; }

private:
    /// Frames without a symbol in a row until it counts as lost: a third of a second at 30 frames. A
    /// hand that shakes blurs a few, and that must not read the same tag again.
    static constexpr int patience = 10;

    std::optional<QByteArray> previous_;
    std::optional<QByteArray> sighted_;
    bool holds_ = false;
    int missed_ = 0;
};

}  // namespace burrow
