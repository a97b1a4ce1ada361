// A scanner whose frames come from the test.
#pragma once

#include <QImage>
#include <optional>

#include "camera/frame_scanner.h"

namespace burrow::test {

/// A frame of its own each time: a sink passes over one that it shows already.
inline QVideoFrame greyFrame(const QImage& picture) {
    const auto grey = picture.convertToFormat(QImage::Format_Grayscale8);
    QVideoFrame frame(QVideoFrameFormat(grey.size(), QVideoFrameFormat::Format_Y8));
    if (!frame.map(QVideoFrame::WriteOnly)) return {};
    for (int row = 0; row < grey.height(); ++row) {
        const auto* line = grey.constScanLine(row);
        std::copy(line, line + grey.width(), frame.bits(0) + row * frame.bytesPerLine(0));
    }
    frame.unmap();
    return frame;
}

/// A frame of one shade, which stands for what it shows.
inline QVideoFrame plainFrame(int shade) {
    QImage image(64, 48, QImage::Format_Grayscale8);
    image.fill(shade);
    return greyFrame(image);
}

/// Reads a plain frame as a symbol that holds the letter of its shade; of shade 0 it finds none.
inline std::vector<tags::FoundSymbol> readShade(const tags::LumaView& picture) {
    const auto shade = static_cast<char>(picture.pixels[0]);
    if (shade == 0) return {};
    return {{std::string(1, shade), {{{16, 12}, {32, 12}, {32, 24}, {16, 24}}}}};
}

class PushScanner final : public FrameScanner {
public:
    explicit PushScanner(Decoder decoder = readShade) : FrameScanner(std::move(decoder)) {}

    void push(const QVideoFrame& frame) { sink().setVideoFrame(frame); }
    using FrameScanner::giveUp;
    using FrameScanner::run;
    using Scanner::setTorchAvailable;

    std::optional<State> refusal;  ///< what open() gives up with
    int opened = 0;
    int closed = 0;
    QList<bool> torch;  ///< as it was switched

private:
    void open() override {
        ++opened;
        if (refusal) giveUp(*refusal, run());
    }
    void close() override { ++closed; }
    void applyTorch(bool on) override { torch.append(on); }
};

}  // namespace burrow::test
