// Colour difference CIEDE2000 (CIE 142-2001), and CIELAB of sRGB, for judging a white balance.
#pragma once

#include <array>
#include <cmath>
#include <numbers>

#include "measure/light.h"

namespace burrow::test {

struct Lab {
    double l;
    double a;
    double b;
};

/// IEC 61966-2-1 to CIELAB under D65.
inline Lab labOf(const std::uint8_t* rgb) {
    const double r = measure::linearLight(rgb[0]), g = measure::linearLight(rgb[1]),
                 b = measure::linearLight(rgb[2]);
    const auto f = [](double t) {
        return t > 216.0 / 24389 ? std::cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    };
    const double x = f((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
    const double y = f(0.2126729 * r + 0.7151522 * g + 0.0721750 * b);
    const double z = f((0.0193339 * r + 0.1191920 * g + 0.9503041 * b) / 1.08883);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

/// As in Sharma, Wu and Dalal (2005), whose test pairs tst_mat_photo checks it against.
inline double ciede2000(const Lab& p, const Lab& q) {
    const double degree = std::numbers::pi / 180;
    const double mean = 0.5 * (std::hypot(p.a, p.b) + std::hypot(q.a, q.b));
    const auto seventh = [](double c) {
        return std::sqrt(std::pow(c, 7) / (std::pow(c, 7) + std::pow(25.0, 7)));
    };
    const double g = 0.5 * (1 - seventh(mean));
    const double a1 = (1 + g) * p.a, a2 = (1 + g) * q.a;
    const double c1 = std::hypot(a1, p.b), c2 = std::hypot(a2, q.b);
    const auto hue = [&](double a, double b) {
        if (a == 0 && b == 0) return 0.0;
        const double h = std::atan2(b, a) / degree;
        return h < 0 ? h + 360 : h;
    };
    const double h1 = hue(a1, p.b), h2 = hue(a2, q.b);
    double dh = c1 * c2 == 0 ? 0 : h2 - h1;
    if (dh > 180) dh -= 360;
    if (dh < -180) dh += 360;
    const double dl = q.l - p.l, dc = c2 - c1;
    const double dH = 2 * std::sqrt(c1 * c2) * std::sin(0.5 * dh * degree);
    const double l = 0.5 * (p.l + q.l), c = 0.5 * (c1 + c2);
    double h = h1 + h2;
    if (c1 * c2 != 0) {
        if (std::abs(h1 - h2) > 180) h += h < 360 ? 360 : -360;
        h *= 0.5;
    }
    const double t = 1 - 0.17 * std::cos((h - 30) * degree) + 0.24 * std::cos(2 * h * degree) +
                     0.32 * std::cos((3 * h + 6) * degree) - 0.20 * std::cos((4 * h - 63) * degree);
    const double sl = 1 + 0.015 * (l - 50) * (l - 50) / std::sqrt(20 + (l - 50) * (l - 50));
    const double sc = 1 + 0.045 * c, sh = 1 + 0.015 * c * t;
    const double turn = 30 * std::exp(-((h - 275) / 25) * ((h - 275) / 25));
    const double rt = -std::sin(2 * turn * degree) * 2 * seventh(c);
    const double x = dl / sl, y = dc / sc, z = dH / sh;
    return std::sqrt(x * x + y * y + z * z + rt * y * z);
}

}  // namespace burrow::test
