#include "measure/flatten.h"

#include <algorithm>
#include <cmath>
#include <cstring>

#include "measure/two_threads.h"

namespace burrow::measure {
namespace {

using pictures::Raster;

/// Places are reckoned on a net of this many pixels and joined by straight lines; at any tilt that is
/// accepted they are off by less than a fiftieth of a pixel.
constexpr int mesh = 16;
constexpr int fraction = 16;  // bits

/// Four bytes of a pixel as four lanes of 16 bits, in the order 0, 2, 1, 3.
std::uint64_t lanesAt(const std::uint8_t* pixel) {
    std::uint32_t four = 0;
    std::memcpy(&four, pixel, sizeof four);
    return (four & 0x00FF00FFU) | (std::uint64_t{four & 0xFF00FF00U} << 24U);
}

struct Fixed {
    std::int64_t x = 0;
    std::int64_t y = 0;
};

/// One output row after the other, from a photo that is not touched.
class Sampler {
public:
    Sampler(const Raster& photo, const Projection& projection, const MatBox& region,
            double pixelsPerMm, const Balance& balance)
        : photo_(photo),
          projection_(projection),
          region_(region),
          perMm_(pixelsPerMm),
          table_(balance.table) {}

    /// Writes rows y to y + mesh of the result into `out`, as far as `rows` and `width` go.
    void band(int y, int rows, int width, std::uint8_t* out, std::size_t stride) const;

private:
    [[nodiscard]] Fixed at(int x, int y) const;
    [[nodiscard]] bool isWithin(const Fixed& place) const;
    void fast(Fixed from, Fixed step, int count, std::uint8_t* out) const;
    void careful(Fixed from, Fixed step, int count, std::uint8_t* out) const;

    const Raster& photo_;
    const Projection& projection_;
    MatBox region_;
    double perMm_;
    const decltype(Balance::table)& table_;
};

/// The photo's place for the upper left corner of an output pixel, counted from the middle of the first
/// pixel.
Fixed Sampler::at(int x, int y) const {
    const MatPoint place{region_.x + Millimetres{x / perMm_}, region_.y + Millimetres{y / perMm_}};
    const auto seen = photoOf(projection_, place);
    const auto& h = projection_.toPicture;
    const bool isBehind = h[6] * place.x.value + h[7] * place.y.value + h[8] <= 0;
    // What lies behind the camera is far outside of the photo.
    const auto fixed = [isBehind](double value) {
        constexpr double far = 1e6;
        const double bounded =
            isBehind || !std::isfinite(value) ? far : std::clamp(value, -far, far);
        return static_cast<std::int64_t>(std::llround((bounded - 0.5) * (1 << fraction)));
    };
    return {fixed(seen.x), fixed(seen.y)};
}

bool Sampler::isWithin(const Fixed& place) const {
    constexpr std::int64_t one = std::int64_t{1} << fraction;
    return place.x >= one && place.y >= one && place.x < (photo_.width() - 2) * one &&
           place.y < (photo_.height() - 2) * one;
}

void Sampler::fast(Fixed from, Fixed step, int count, std::uint8_t* out) const {
    const auto* origin = photo_.row(0);
    const auto stride = static_cast<std::int64_t>(photo_.stride());
    // What is written might be anything of ours, for all the compiler knows.
    const auto* const red = table_[0].data();
    const auto* const green = table_[1].data();
    const auto* const blue = table_[2].data();
    for (int i = 0; i < count; ++i, out += 3) {
        const auto* pixel = origin + (from.y >> fraction) * stride + 3 * (from.x >> fraction);
        const auto right = static_cast<std::uint64_t>((from.x >> (fraction - 8)) & 0xFF);
        const auto down = static_cast<std::uint64_t>((from.y >> (fraction - 8)) & 0xFF);
        const std::uint64_t both = (right * down) >> 8U;
        // The four shares make up 256, so no lane runs over.
        constexpr std::uint64_t half = 0x0080008000800080U;
        const std::uint64_t sum =
            ((256 - right - down + both) * lanesAt(pixel) + (right - both) * lanesAt(pixel + 3) +
             (down - both) * lanesAt(pixel + stride) + both * lanesAt(pixel + stride + 3) + half) >>
            8U;
        out[0] = red[sum & 0xFFU];
        out[1] = green[(sum >> 32U) & 0xFFU];
        out[2] = blue[(sum >> 16U) & 0xFFU];
        from.x += step.x;
        from.y += step.y;
    }
}

void Sampler::careful(Fixed from, Fixed step, int count, std::uint8_t* out) const {
    for (int i = 0; i < count; ++i, out += 3) {
        const auto x = from.x >> fraction;
        const auto y = from.y >> fraction;
        if (x >= 0 && y >= 0 && x < photo_.width() - 1 && y < photo_.height() - 1) {
            fast(from, step, 1, out);
        } else if (x >= -1 && y >= -1 && x < photo_.width() && y < photo_.height()) {
            const auto* rim = photo_.row(std::clamp(static_cast<int>(y), 0, photo_.height() - 1)) +
                              3 * std::clamp(static_cast<int>(x), 0, photo_.width() - 1);
            for (std::size_t c = 0; c < 3; ++c) out[c] = table_[c][rim[c]];
        } else {
            std::fill_n(out, 3, std::uint8_t{255});
        }
        from.x += step.x;
        from.y += step.y;
    }
}

void Sampler::band(int y, int rows, int width, std::uint8_t* out, std::size_t stride) const {
    const auto between = [](const Fixed& a, const Fixed& b, int i) {
        return Fixed{a.x + (b.x - a.x) * i / mesh, a.y + (b.y - a.y) * i / mesh};
    };
    Fixed upperRight = at(0, y);
    Fixed lowerRight = at(0, y + mesh);
    for (int x = 0; x < width; x += mesh) {
        const auto upperLeft = upperRight;
        const auto lowerLeft = lowerRight;
        upperRight = at(x + mesh, y);
        lowerRight = at(x + mesh, y + mesh);
        const bool isInside = isWithin(upperLeft) && isWithin(lowerLeft) && isWithin(upperRight) &&
                              isWithin(lowerRight);
        const int count = std::min(mesh, width - x);
        for (int i = 0; i < rows; ++i) {
            const auto from = between(upperLeft, lowerLeft, i);
            const auto to = between(upperRight, lowerRight, i);
            const Fixed step{(to.x - from.x) / mesh, (to.y - from.y) / mesh};
            // From corners of pixels to their middles.
            const auto down = between(upperLeft, lowerLeft, i + 1);
            const Fixed middle{from.x + (step.x + down.x - from.x) / 2,
                               from.y + (step.y + down.y - from.y) / 2};
            auto* to3 =
                out + static_cast<std::size_t>(i) * stride + static_cast<std::size_t>(x) * 3;
            if (isInside) {
                fast(middle, step, count, to3);
            } else {
                careful(middle, step, count, to3);
            }
        }
    }
}

/// The mean of squares of n by n pixels of a band that was sampled n times as finely.
void shrinkRow(const std::uint8_t* fine, std::size_t stride, int n, int width, std::uint8_t* out) {
    const int count = n * n;
    for (int x = 0; x < width; ++x) {
        std::array<int, 3> sums{count / 2, count / 2, count / 2};
        for (int i = 0; i < n; ++i) {
            const auto* pixel =
                fine + static_cast<std::size_t>(i) * stride + static_cast<std::size_t>(x * n) * 3;
            for (int k = 0; k < n; ++k, pixel += 3) {
                for (std::size_t c = 0; c < 3; ++c) sums[c] += pixel[c];
            }
        }
        for (std::size_t c = 0; c < 3; ++c) *out++ = static_cast<std::uint8_t>(sums[c] / count);
    }
}

MatBox wholeOf(const Survey& survey) {
    if (survey.mat) {
        const auto& layout = layoutOf(survey.mat->paper);
        return {{0}, {0}, layout.width, layout.height};
    }
    constexpr Millimetres around{60};
    return {survey.middle.x - around, survey.middle.y - around, 2 * around, 2 * around};
}

/// Its sides in pixels, or nothing where it would be empty or too large.
struct Size {
    double width;
    double height;
};
std::optional<Size> sizeAt(const MatBox& region, double perMm, const Survey& survey) {
    const Size size{std::round(region.width.value * perMm),
                    std::round(region.height.value * perMm)};
    const double beside = 1.0 * survey.photoWidth * survey.photoHeight;
    const bool fits =
        size.width >= 1 && size.height >= 1 && size.width * size.height + beside <= mostPixelsHeld;
    return fits ? std::optional(size) : std::nullopt;
}

}  // namespace

double largestScale(const Survey& survey, const FlattenOptions& options) {
    const auto region = options.region.value_or(wholeOf(survey));
    const double area = region.width.value * region.height.value;
    const double left = mostPixelsHeld - 1.0 * survey.photoWidth * survey.photoHeight;
    if (!(area > 0) || left <= 0) return 0;
    double scale = std::floor(std::sqrt(left / area) / options.print.factor);
    // Rounding to whole pixels may ask for a little more.
    while (scale > 0 && !sizeAt(region, scale * options.print.factor, survey)) --scale;
    return scale;
}

Result<Raster> flatten(const Raster& photo, const Survey& survey, const FlattenOptions& options) {
    const auto region = options.region.value_or(wholeOf(survey));
    // A millimetre of the sheet as it was meant came out as `factor` of them.
    const double perMm = options.pixelsPerMm * options.print.factor;
    const auto size = sizeAt(region, perMm, survey);
    if (!size) {
        return fail(Trouble::badInput,
                    {"measure.badScale", {{"most", largestScale(survey, options)}}});
    }
    const auto [width, height] = *size;
    Raster result(static_cast<int>(width), static_cast<int>(height));
    const auto projection = survey.projection();
    const double finer = stretchAt(projection, region.centre()).most / perMm;
    // A little finer than the result does no harm, and costs four times as much to mend.
    constexpr double worthIt = 1.5;
    constexpr double mostFine = 16;
    const int n = finer > worthIt ? static_cast<int>(std::ceil(std::min(finer, mostFine))) : 1;
    const Sampler sampler(photo, projection, region, perMm * n, options.balance);
    // In bands of as many rows of the result as a net's mesh holds fine ones.
    const int rowsOfBand = std::max(1, mesh / n);
    const auto bands = static_cast<std::size_t>((result.height() + rowsOfBand - 1) / rowsOfBand);
    onTwoThreads(bands, [&](std::size_t band) {
        const int y = static_cast<int>(band) * rowsOfBand;
        const int rows = std::min(rowsOfBand, result.height() - y);
        if (n == 1) {
            sampler.band(y, rows, result.width(), result.row(y), result.stride());
        } else {
            const auto stride = result.stride() * static_cast<std::size_t>(n);
            std::vector<std::uint8_t> fine(stride * static_cast<std::size_t>(rows * n));
            sampler.band(y * n, rows * n, result.width() * n, fine.data(), stride);
            for (int i = 0; i < rows; ++i) {
                shrinkRow(fine.data() + stride * static_cast<std::size_t>(i * n), stride, n,
                          result.width(), result.row(y + i));
            }
        }
    });
    return result;
}

}  // namespace burrow::measure
