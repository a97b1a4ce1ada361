#include "measure/screen.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <vector>

namespace burrow::measure {
namespace {

using Complex = std::complex<double>;

struct Square {
    int side;
    std::vector<double> values;

    [[nodiscard]] double& at(int x, int y) {
        return values[static_cast<std::size_t>(y) * static_cast<std::size_t>(side) +
                      static_cast<std::size_t>(x)];
    }
};

/// Without its plane of best fit, which over a square grid comes from plain sums, and windowed.
Square prepared(const pictures::Raster& photo, int left, int top, int side) {
    Square square{side, std::vector<double>(static_cast<std::size_t>(side * side))};
    const double middle = 0.5 * (side - 1);
    double sum = 0, byX = 0, byY = 0, spread = 0;
    for (int y = 0; y < side; ++y) {
        const auto* pixel = photo.row(top + y) + 3 * left + 1;
        for (int x = 0; x < side; ++x, pixel += 3) {
            square.at(x, y) = *pixel;
            sum += *pixel;
            byX += (x - middle) * *pixel;
            byY += (y - middle) * *pixel;
            spread += (x - middle) * (x - middle);
        }
    }
    const double mean = sum / (side * side);
    const auto window = [side](int i) {
        return 0.5 - 0.5 * std::cos(2 * std::numbers::pi * (i + 0.5) / side);
    };
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            const double slope = (byX * (x - middle) + byY * (y - middle)) / spread;
            square.at(x, y) = (square.at(x, y) - mean - slope) * window(x) * window(y);
        }
    }
    return square;
}

/// Powers by frequency: across from 0 to half of the side, along over all of it.
std::vector<double> powersOf(Square& square) {
    const int side = square.side;
    const int half = side / 2;
    std::vector<Complex> turn;
    for (int i = 0; i < side; ++i)
        turn.push_back(std::polar(1.0, -2 * std::numbers::pi * i / side));
    const auto at = [&](int frequency, int place) {
        return turn[static_cast<std::size_t>(frequency * place % side)];
    };
    std::vector<Complex> across(static_cast<std::size_t>(side * (half + 1)));
    for (int y = 0; y < side; ++y) {
        for (int u = 0; u <= half; ++u) {
            Complex sum = 0;
            for (int x = 0; x < side; ++x) sum += square.at(x, y) * at(u, x);
            across[static_cast<std::size_t>(y * (half + 1) + u)] = sum;
        }
    }
    std::vector<double> powers;
    for (int v = 0; v < side; ++v) {
        for (int u = 0; u <= half; ++u) {
            Complex sum = 0;
            for (int y = 0; y < side; ++y) {
                sum += across[static_cast<std::size_t>(y * (half + 1) + u)] * at(v, y);
            }
            powers.push_back(std::norm(sum));
        }
    }
    return powers;
}

/// Along one axis JPEG's blocks of eight pixels make waves of their own.
bool isOfBlocks(int u, int v, int side) {
    const int step = side / 8;
    const auto near = [step](int frequency) {
        const int rest = frequency % step;
        return rest <= 1 || rest == step - 1;
    };
    return (v <= 1 && near(u)) || (u <= 1 && near(v));
}

}  // namespace

Wave strongestWave(const pictures::Raster& photo, ImagePoint centre, int side) {
    const int left = static_cast<int>(centre.x) - side / 2;
    const int top = static_cast<int>(centre.y) - side / 2;
    if (left < 0 || top < 0 || left + side > photo.width() || top + side > photo.height()) {
        return {};
    }
    auto square = prepared(photo, left, top, side);
    const auto powers = powersOf(square);
    const int half = side / 2;
    std::vector<double> counted;
    double most = 0;
    for (int v = 0; v < side; ++v) {
        for (int u = 0; u <= half; ++u) {
            const int along = std::min(v, side - v);
            constexpr int longest = 4;
            if (u * u + along * along < longest * longest || isOfBlocks(u, along, side)) continue;
            counted.push_back(powers[static_cast<std::size_t>(v * (half + 1) + u)]);
            most = std::max(most, counted.back());
        }
    }
    const auto middle = counted.begin() + static_cast<std::ptrdiff_t>(counted.size() / 2);
    std::nth_element(counted.begin(), middle, counted.end());
    // Hann's window lets a quarter of the square's sum through; a wave has half of it at either sign.
    const double share = 0.125 * side * side;
    return {std::sqrt(most) / share, most / std::max(1e-9, *middle)};
}

bool showsScreen(const pictures::Raster& photo, const Survey& survey, const MeasureRules& rules) {
    if (!survey.mat) return false;
    const auto projection = survey.projection();
    int waves = 0;
    for (const auto& box : layoutOf(survey.mat->paper).blank) {
        const auto stretch = stretchAt(projection, box.centre());
        const double room = 0.9 * stretch.least * std::min(box.width.value, box.height.value);
        constexpr int large = 64, small = 32;
        if (room < small) continue;
        const auto wave =
            strongestWave(photo, photoOf(projection, box.centre()), room >= large ? large : small);
        // Noise and JPEG stay below either by more than a half.
        if (wave.amplitude > rules.screenAmplitude && wave.clarity > rules.screenClarity) ++waves;
    }
    return waves == static_cast<int>(layoutOf(survey.mat->paper).blank.size());
}

}  // namespace burrow::measure
