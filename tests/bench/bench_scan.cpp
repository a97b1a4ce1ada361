// What our path costs over the bare reader, for a tag in a 1080p frame: the ratio of the two should
// stay under 1.15. The frame is one of a camera, YUV 4:2:0 with noise.
#define ZX_USE_UTF8 1
#include <ZXing/ReadBarcode.h>
#include <benchmark/benchmark.h>

#include <QVideoFrame>
#include <cstdlib>
#include <random>

#include "camera/frame_reader.h"
#include "tags/code.h"

namespace {

using namespace burrow;

constexpr int width = 1920;
constexpr int height = 1080;

/// A tag of 8 pixels a module in the middle of grey noise.
QVideoFrame makeFrame() {
    QVideoFrame frame(QVideoFrameFormat({width, height}, QVideoFrameFormat::Format_YUV420P));
    if (!frame.map(QVideoFrame::WriteOnly)) std::abort();
    const auto symbol = tags::encode(tags::payload("7Q2MZX89", Millimetres{20})).value();
    constexpr int pixels = 8;
    const int side = (symbol.size() + 2 * tags::quietZone) * pixels;
    std::mt19937 engine(1);
    std::normal_distribution<double> noise(0, 6);
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            const int left = x - (width - side) / 2;
            const int top = y - (height - side) / 2;
            int grey = 110 + (x / 40 + y / 40) % 3 * 20;
            if (left >= 0 && top >= 0 && left < side && top < side) {
                const int column = left / pixels - tags::quietZone;
                const int row = top / pixels - tags::quietZone;
                const bool inside =
                    column >= 0 && row >= 0 && column < symbol.size() && row < symbol.size();
                grey = inside && symbol.isDark(column, row) ? 40 : 200;
            }
            frame.bits(0)[y * frame.bytesPerLine(0) + x] =
                static_cast<uchar>(std::clamp(grey + noise(engine), 0.0, 255.0));
        }
    }
    frame.unmap();
    return frame;
}

void scanOurs(benchmark::State& state) {
    const auto frame = makeFrame();
    const auto decoder = usualDecoder();
    for (auto _ : state) {
        const auto reading = read(frame, decoder);
        if (!reading) state.SkipWithError("nothing was read");
        benchmark::DoNotOptimize(reading);
    }
}

void scanBare(benchmark::State& state) {
    auto frame = makeFrame();
    if (!frame.map(QVideoFrame::ReadOnly)) std::abort();
    const auto hints = ZXing::DecodeHints()
                           .setFormats(ZXing::BarcodeFormat::QRCode)
                           .setTryHarder(true)
                           .setTryRotate(true)
                           .setTryDownscale(true);
    for (auto _ : state) {
        const auto found = ZXing::ReadBarcodes(
            {frame.bits(0), width, height, ZXing::ImageFormat::Lum, frame.bytesPerLine(0), 1},
            hints);
        if (found.empty()) state.SkipWithError("nothing was read");
        benchmark::DoNotOptimize(found.data());
    }
    frame.unmap();
}

BENCHMARK(scanOurs)->Unit(benchmark::kMillisecond);
BENCHMARK(scanBare)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
