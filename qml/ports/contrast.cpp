#include "ports/contrast.h"

#include <algorithm>
#include <array>

namespace burrow {
namespace {

using Levels = std::array<std::uint8_t, 256>;

/// The level below which so many pixels lie.
int levelAt(const std::array<qint64, 256>& histogram, qint64 below) {
    qint64 seen = 0;
    for (int level = 0; level < 256; ++level) {
        seen += histogram.at(static_cast<std::size_t>(level));
        if (seen > below) return level;
    }
    return 255;
}

Levels stretched(int darkest, int lightest) {
    Levels levels{};
    for (int level = 0; level < 256; ++level) {
        const int spread = (level - darkest) * 255 / (lightest - darkest);
        levels.at(static_cast<std::size_t>(level)) =
            static_cast<std::uint8_t>(std::clamp(spread, 0, 255));
    }
    return levels;
}

}  // namespace

QImage withContrast(const QImage& picture) {
    auto result = picture.convertToFormat(QImage::Format_RGB32);
    std::array<qint64, 256> histogram{};
    for (int y = 0; y < result.height(); ++y) {
        const auto* line = reinterpret_cast<const QRgb*>(result.constScanLine(y));
        for (int x = 0; x < result.width(); ++x) {
            const int grey =
                (299 * qRed(line[x]) + 587 * qGreen(line[x]) + 114 * qBlue(line[x])) / 1000;
            ++histogram.at(static_cast<std::size_t>(grey));
        }
    }
    const qint64 pixels = qint64{result.width()} * result.height();
    const int darkest = levelAt(histogram, pixels / 100);
    const int lightest = levelAt(histogram, pixels - 1 - pixels / 100);
    if (lightest <= darkest) return result;
    const auto levels = stretched(darkest, lightest);
    for (int y = 0; y < result.height(); ++y) {
        auto* line = reinterpret_cast<QRgb*>(result.scanLine(y));
        for (int x = 0; x < result.width(); ++x) {
            const auto at = [&](int level) { return levels.at(static_cast<std::size_t>(level)); };
            line[x] = qRgb(at(qRed(line[x])), at(qGreen(line[x])), at(qBlue(line[x])));
        }
    }
    return result;
}

}  // namespace burrow
