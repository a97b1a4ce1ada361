// How bright a frame is: the one plane that a decoder needs.
#pragma once

#include <QImage>
#include <QTransform>
#include <QVideoFrame>
#include <cstdint>
#include <vector>

#include "tags/symbol.h"

namespace burrow {

/// Keeps a frame readable for as long as it lives. Where the frame stores brightness in a plane of its
/// own nothing is copied. Use it in one thread; others may read the same frame meanwhile.
class Luminance {
public:
    explicit Luminance(const QVideoFrame& frame);
    ~Luminance();
    Luminance(const Luminance&) = delete;
    Luminance& operator=(const Luminance&) = delete;

    /// Without pixels where the frame cannot be read.
    [[nodiscard]] tags::LumaView view() const { return view_; }
    /// From (0, 0) to (1, 1) in the view to the same in the frame as it is shown.
    [[nodiscard]] QTransform toShown() const { return toShown_; }

private:
    void readMapped();
    void pick(int first);
    void look(const QImage& image);

    QVideoFrame frame_;
    QImage image_;
    std::vector<std::uint8_t> plane_;
    tags::LumaView view_;
    QTransform toShown_;
};

}  // namespace burrow
