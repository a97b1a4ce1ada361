#include "measure/symbol_patch.h"

#include <algorithm>
#include <cmath>

namespace burrow::measure {
namespace {

/// The share of a normal distribution about 0 that lies below x.
double below(double x, double deviation) {
    return 0.5 * std::erfc(-x / (deviation * std::sqrt(2.0)));
}

/// For each sample, how much of it comes from each module from `first` on.
struct Smear {
    int first = 0;
    std::vector<float> shares;
};

std::vector<Smear> smears(int modules, int perModule, double blur) {
    const int side = (modules + 2 * patchMargin) * perModule;
    const double reach = 3.5 * blur;
    std::vector<Smear> all(static_cast<std::size_t>(side));
    for (int i = 0; i < side; ++i) {
        const double place = (i + 0.5) / perModule;
        auto& smear = all[static_cast<std::size_t>(i)];
        smear.first = static_cast<int>(std::floor(place - reach));
        const int last = static_cast<int>(std::floor(place + reach));
        for (int module = smear.first; module <= last; ++module) {
            smear.shares.push_back(
                static_cast<float>(below(module + 1 - place, blur) - below(module - place, blur)));
        }
    }
    return all;
}

}  // namespace

float brightnessAt(const pictures::Raster& photo, ImagePoint point) {
    const double x = std::clamp(point.x - 0.5, 0.0, photo.width() - 1.001);
    const double y = std::clamp(point.y - 0.5, 0.0, photo.height() - 1.001);
    const int column = static_cast<int>(x);
    const int line = static_cast<int>(y);
    const auto right = static_cast<float>(x - column);
    const auto down = static_cast<float>(y - line);
    constexpr int green = 1;
    const auto* above = photo.row(line) + 3 * column + green;
    const auto* under = photo.row(std::min(line + 1, photo.height() - 1)) + 3 * column + green;
    const int next = column + 1 < photo.width() ? 3 : 0;
    const float top = above[0] + right * static_cast<float>(above[next] - above[0]);
    const float bottom = under[0] + right * static_cast<float>(under[next] - under[0]);
    return top + down * (bottom - top);
}

Patch sampled(const pictures::Raster& photo, const Homography& h, int modules, int perModule) {
    Patch patch(modules, perModule);
    const double step = 1.0 / perModule;
    for (int y = 0; y < patch.side(); ++y) {
        const double v = patch.place(y);
        double a = h[0] * patch.place(0) + h[1] * v + h[2];
        double b = h[3] * patch.place(0) + h[4] * v + h[5];
        double w = h[6] * patch.place(0) + h[7] * v + h[8];
        float* out = &patch.at(0, y);
        for (int x = 0; x < patch.side(); ++x) {
            const double shrink = 1 / w;
            out[x] = brightnessAt(photo, {a * shrink, b * shrink});
            a += h[0] * step;
            b += h[3] * step;
            w += h[6] * step;
        }
    }
    return patch;
}

Patch drawn(const tags::Symbol& symbol, int perModule, double blurX, double blurY) {
    const int modules = symbol.size();
    Patch patch(modules, perModule);
    const auto across = smears(modules, perModule, blurX);
    const auto along = smears(modules, perModule, blurY);
    const auto isDark = [&](int column, int row) {
        const int x = column - patchMargin;
        const int y = row - patchMargin;
        return x >= 0 && y >= 0 && x < modules && y < modules && symbol.isDark(x, y);
    };
    const auto side = static_cast<std::size_t>(patch.side());
    const int rows = modules + 2 * patchMargin;
    // Each row of modules smeared across, then these rows smeared into each other.
    std::vector<float> dark(static_cast<std::size_t>(rows) * side, 0.0F);
    for (int row = 0; row < rows; ++row) {
        for (std::size_t x = 0; x < side; ++x) {
            float sum = 0;
            for (std::size_t i = 0; i < across[x].shares.size(); ++i) {
                if (isDark(across[x].first + static_cast<int>(i), row)) sum += across[x].shares[i];
            }
            dark[static_cast<std::size_t>(row) * side + x] = sum;
        }
    }
    for (std::size_t y = 0; y < side; ++y) {
        for (std::size_t x = 0; x < side; ++x)
            patch.at(static_cast<int>(x), static_cast<int>(y)) = 1;
        for (std::size_t i = 0; i < along[y].shares.size(); ++i) {
            const int row = along[y].first + static_cast<int>(i);
            if (row < 0 || row >= rows) continue;
            const float* line = &dark[static_cast<std::size_t>(row) * side];
            const float share = along[y].shares[i];
            float* out = &patch.at(0, static_cast<int>(y));
            for (std::size_t x = 0; x < side; ++x) out[x] -= share * line[x];
        }
    }
    return patch;
}

double agreement(const Patch& a, const Patch& b) {
    double sumA = 0, sumB = 0, squaresA = 0, squaresB = 0, products = 0;
    for (int y = 0; y < a.side(); ++y) {
        for (int x = 0; x < a.side(); ++x) {
            const double p = a.at(x, y);
            const double q = b.at(x, y);
            sumA += p;
            sumB += q;
            squaresA += p * p;
            squaresB += q * q;
            products += p * q;
        }
    }
    const double count = static_cast<double>(a.side()) * a.side();
    const double spread = (squaresA - sumA * sumA / count) * (squaresB - sumB * sumB / count);
    return spread > 0 ? (products - sumA * sumB / count) / std::sqrt(spread) : 0;
}

}  // namespace burrow::measure
