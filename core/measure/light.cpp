#include "measure/light.h"

#include <algorithm>
#include <cmath>

namespace burrow::measure {
namespace {

const std::array<double, 256>& linearTable() {
    static const auto table = [] {
        std::array<double, 256> values{};
        for (std::size_t i = 0; i < values.size(); ++i) {
            const double v = static_cast<double>(i) / 255;
            values[i] = v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
        }
        return values;
    }();
    return table;
}

struct Mean {
    std::array<double, 3> channels{};
    double spread = 0;  ///< standard deviation of the brightness, relative to it
};

/// Over the inner part of the patch, at places half a millimetre apart.
std::optional<Mean> meanOver(const pictures::Raster& photo, const Projection& projection,
                             const MatBox& box) {
    Mean mean;
    double squares = 0, sum = 0;
    int count = 0;
    constexpr double inner = 0.15;  // of each side that is left out
    constexpr double step = 0.5;
    for (double y = inner * box.height.value; y <= (1 - inner) * box.height.value; y += step) {
        for (double x = inner * box.width.value; x <= (1 - inner) * box.width.value; x += step) {
            const auto at = photoOf(projection, {box.x + Millimetres{x}, box.y + Millimetres{y}});
            if (!(at.x >= 0 && at.y >= 0 && at.x < photo.width() && at.y < photo.height())) {
                return std::nullopt;
            }
            const auto* pixel = photo.row(static_cast<int>(at.y)) + 3 * static_cast<int>(at.x);
            double all = 0;
            for (std::size_t i = 0; i < 3; ++i) {
                const double linear = linearTable()[pixel[i]];
                mean.channels[i] += linear;
                all += linear;
            }
            squares += all * all;
            sum += all;
            ++count;
        }
    }
    for (auto& channel : mean.channels) channel /= count;
    mean.spread = std::sqrt(std::max(0.0, squares / count - sum * sum / count / count)) /
                  std::max(1e-9, sum / count);
    return mean;
}

}  // namespace

double linearLight(std::uint8_t coded) { return linearTable()[coded]; }

std::uint8_t codedLight(double linear) {
    const double l = std::clamp(linear, 0.0, 1.0);
    const double v = l <= 0.0031308 ? 12.92 * l : 1.055 * std::pow(l, 1 / 2.4) - 0.055;
    return static_cast<std::uint8_t>(std::lround(255 * v));
}

Balance Balance::none() { return by({1, 1, 1}); }

Balance Balance::by(const std::array<double, 3>& gains) {
    Balance balance;
    balance.gains = gains;
    for (std::size_t channel = 0; channel < 3; ++channel) {
        for (std::size_t i = 0; i < 256; ++i) {
            balance.table[channel][i] = codedLight(gains[channel] * linearTable()[i]);
        }
    }
    return balance;
}

Result<Balance> balanceOf(const pictures::Raster& photo, const Survey& survey,
                          const MeasureRules& rules) {
    const auto refuse = [] { return fail(Trouble::badInput, {"measure.greyPatch"}); };
    if (!survey.mat) return refuse();
    const auto mean = meanOver(photo, survey.projection(), layoutOf(survey.mat->paper).grey);
    // A shadow's edge or something lying on it; light that merely falls off is well below.
    if (!mean || mean->spread > rules.greySpread) return refuse();
    std::array<double, 3> gains{};
    const double mostGain = rules.greyGain;
    for (std::size_t i = 0; i < 3; ++i) {
        gains[i] = linearLight(greyLevel) / std::max(1e-6, mean->channels[i]);
        if (gains[i] > mostGain || gains[i] < 1 / mostGain) return refuse();
    }
    return Balance::by(gains);
}

}  // namespace burrow::measure
