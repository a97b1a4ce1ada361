#include "camera/luminance.h"

#include <QVideoFrameFormat>

#include "camera/frames.h"

namespace burrow {
namespace {

using Format = QVideoFrameFormat;

bool hasPlane(Format::PixelFormat format) {
    switch (format) {
        case Format::Format_YUV420P:
        case Format::Format_YUV422P:
        case Format::Format_YV12:
        case Format::Format_NV12:
        case Format::Format_NV21:
        case Format::Format_IMC1:
        case Format::Format_IMC2:
        case Format::Format_IMC3:
        case Format::Format_IMC4:
        case Format::Format_Y8: return true;
        default: return false;
    }
}

/// Where brightness is every second byte, the first of them; of samples of 16 bits the upper half.
std::optional<int> firstOfPairs(Format::PixelFormat format) {
    switch (format) {
        case Format::Format_YUYV: return 0;
        case Format::Format_UYVY:
        case Format::Format_Y16:
        case Format::Format_P010:
        case Format::Format_P016: return 1;
        default: return std::nullopt;
    }
}

}  // namespace

Luminance::Luminance(const QVideoFrame& frame) : frame_(frame) {
    const auto format = frame_.pixelFormat();
    const bool readable = hasPlane(format) || firstOfPairs(format) ||
                          Format::imageFormatFromPixelFormat(format) != QImage::Format_Invalid;
    if (!readable) {
        look(shownImage(frame_));
    } else if (frame_.map(QVideoFrame::ReadOnly)) {
        toShown_ = shownFromStored(frame_);
        readMapped();
    }
}

Luminance::~Luminance() {
    if (frame_.isMapped()) frame_.unmap();
}

void Luminance::readMapped() {
    const auto format = frame_.pixelFormat();
    if (hasPlane(format)) {
        view_ = {frame_.bits(0), frame_.width(), frame_.height(), frame_.bytesPerLine(0)};
    } else if (const auto first = firstOfPairs(format)) {
        pick(*first);
    } else {
        look(QImage(frame_.bits(0), frame_.width(), frame_.height(), frame_.bytesPerLine(0),
                    Format::imageFormatFromPixelFormat(format)));
    }
}

void Luminance::pick(int first) {
    const auto width = static_cast<std::size_t>(frame_.width());
    plane_.resize(width * static_cast<std::size_t>(frame_.height()));
    auto* to = plane_.data();
    for (int row = 0; row < frame_.height(); ++row) {
        const auto* from =
            frame_.bits(0) + static_cast<std::ptrdiff_t>(row) * frame_.bytesPerLine(0) + first;
        for (std::size_t column = 0; column < width; ++column) *to++ = from[2 * column];
    }
    view_ = {plane_.data(), frame_.width(), frame_.height(), frame_.width()};
}

void Luminance::look(const QImage& image) {
    image_ = image.convertToFormat(QImage::Format_Grayscale8);
    view_ = {image_.constBits(), image_.width(), image_.height(),
             static_cast<int>(image_.bytesPerLine())};
}

}  // namespace burrow
