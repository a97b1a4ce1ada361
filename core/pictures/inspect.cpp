#include "pictures/inspect.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

namespace burrow::pictures {
namespace {

using Span = std::span<const std::uint8_t>;

constexpr std::array<std::uint8_t, 8> pngSignature{0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};

tl::unexpected<Error> refuse(const char* id) { return fail(Trouble::badInput, {id}); }

bool startsWith(Span bytes, Span start) {
    return bytes.size() >= start.size() && std::equal(start.begin(), start.end(), bytes.begin());
}

int big16(Span bytes, std::size_t at) { return bytes[at] << 8 | bytes[at + 1]; }
std::uint32_t big32(Span bytes, std::size_t at) {
    return static_cast<std::uint32_t>(big16(bytes, at)) << 16U |
           static_cast<std::uint32_t>(big16(bytes, at + 2));
}

/// The first directory of a TIFF structure, which is what an EXIF segment holds, and the one with the
/// camera's settings that it names.
class Tiff {
public:
    explicit Tiff(Span bytes) : bytes_(bytes), isLittle_(!bytes.empty() && bytes[0] == 'I') {}

    void readInto(PictureInfo& info) const {
        if (bytes_.size() < 8 || read16(2) != 42) return;
        std::optional<std::size_t> settings;
        forEachEntry(read32(4), [&](int tag, std::size_t value) {
            if (tag == 0x0112 && read16(value) >= 1 && read16(value) <= 8) {
                info.orientation = read16(value);
            }
            if (tag == 0x8825) info.hasLocation = true;
            if (tag == 0x8769) settings = read32(value);
        });
        if (!settings) return;
        forEachEntry(*settings, [&](int tag, std::size_t value) {
            // 0 stands for unknown; no lens of a phone or camera is beyond these.
            constexpr int shortest = 5, longest = 2000;
            const int focal = read16(value);
            if (tag == 0xA405 && focal >= shortest && focal <= longest) info.focal35 = focal;
        });
    }

private:
    /// Calls with the tag of each entry and where its value stands, as far as they lie in the segment.
    template <class Use>
    void forEachEntry(std::size_t directory, const Use& use) const {
        if (directory > bytes_.size() - 2) return;
        const auto count = read16(directory);
        for (std::size_t i = 0; i < count; ++i) {
            const auto at = directory + 2 + i * 12;
            if (at + 12 > bytes_.size()) return;
            use(read16(at), at + 8);
        }
    }
    [[nodiscard]] std::uint16_t read16(std::size_t at) const {
        const auto low = bytes_[isLittle_ ? at : at + 1];
        const auto high = bytes_[isLittle_ ? at + 1 : at];
        return static_cast<std::uint16_t>(high << 8U | low);
    }
    [[nodiscard]] std::size_t read32(std::size_t at) const {
        const std::uint32_t first = read16(at);
        const std::uint32_t second = read16(at + 2);
        return isLittle_ ? second << 16U | first : first << 16U | second;
    }
    Span bytes_;
    bool isLittle_;
};

bool isFrameHeader(int marker) {
    // SOF0 to SOF15 without DHT (C4), JPG (C8) and DAC (CC).
    return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
}

/// The position after the entropy-coded data that starts at `at`: that of the next marker.
std::optional<std::size_t> afterScan(Span bytes, std::size_t at) {
    for (; at + 1 < bytes.size(); ++at) {
        const bool isStuffed = bytes[at + 1] == 0 || bytes[at + 1] == 0xFF;
        const bool isRestart = bytes[at + 1] >= 0xD0 && bytes[at + 1] <= 0xD7;
        if (bytes[at] == 0xFF && !isStuffed && !isRestart) return at;
    }
    return std::nullopt;
}

Result<PictureInfo> inspectJpeg(Span bytes) {
    PictureInfo info;
    info.format = Format::jpeg;
    std::size_t at = 2;
    bool hasScan = false;
    while (at + 4 <= bytes.size() || (at + 2 <= bytes.size() && bytes[at + 1] == 0xD9)) {
        if (bytes[at] != 0xFF) return refuse("picture.damaged");
        const int marker = bytes[at + 1];
        if (marker == 0xFF) {  // fill byte
            ++at;
            continue;
        }
        if (marker == 0xD9) {
            return hasScan && info.width > 0 ? Result<PictureInfo>(info)
                                             : Result<PictureInfo>(refuse("picture.damaged"));
        }
        const auto length = static_cast<std::size_t>(big16(bytes, at + 2));
        if (length < 2 || at + 2 + length > bytes.size()) return refuse("picture.cut");
        const auto segment = bytes.subspan(at + 4, length - 2);
        if (isFrameHeader(marker) && segment.size() >= 5) {
            info.height = big16(segment, 1);
            info.width = big16(segment, 3);
        }
        constexpr std::array<std::uint8_t, 6> exif{'E', 'x', 'i', 'f', 0, 0};
        if (marker == 0xE1 && startsWith(segment, exif)) Tiff(segment.subspan(6)).readInto(info);
        at += 2 + length;
        if (marker == 0xDA) {
            const auto next = afterScan(bytes, at);
            if (!next) return refuse("picture.cut");
            hasScan = true;
            at = *next;
        }
    }
    return refuse("picture.cut");
}

Result<PictureInfo> inspectPng(Span bytes) {
    PictureInfo info;
    info.format = Format::png;
    std::size_t at = pngSignature.size();
    while (at + 12 <= bytes.size()) {
        const auto length = static_cast<std::size_t>(big32(bytes, at));
        const auto type = big32(bytes, at + 4);
        if (length > bytes.size() - at - 12) return refuse("picture.cut");
        constexpr std::uint32_t ihdr = 0x49484452;
        constexpr std::uint32_t iend = 0x49454E44;
        constexpr std::uint32_t exif = 0x65584966;
        if (type == ihdr && length >= 8) {
            const auto width = big32(bytes, at + 8);
            const auto height = big32(bytes, at + 12);
            if (width > 0x7FFFFFFF || height > 0x7FFFFFFF) return refuse("picture.damaged");
            info.width = static_cast<int>(width);
            info.height = static_cast<int>(height);
        }
        if (type == exif) Tiff(bytes.subspan(at + 8, length)).readInto(info);
        if (type == iend) {
            return info.width > 0 && info.height > 0
                       ? Result<PictureInfo>(info)
                       : Result<PictureInfo>(refuse("picture.damaged"));
        }
        at += 12 + length;
    }
    return refuse("picture.cut");
}

/// ISO/IEC 14496-12: a box "ftyp" with a brand, a version, and the brands that the file is compatible with.
/// One of them is one of ISO/IEC 23008-12's (HEIF), with HEVC inside, as phones write.
bool isHeic(Span bytes) {
    constexpr std::array<std::uint8_t, 4> type{'f', 't', 'y', 'p'};
    if (bytes.size() < 12 || !startsWith(bytes.subspan(4), type)) return false;
    constexpr std::array<std::string_view, 10> brands{"heic", "heix", "heim", "heis", "hevc",
                                                      "hevx", "hevm", "hevs", "mif1", "msf1"};
    const auto isBrand = [&](std::size_t at) {
        const std::string_view brand(reinterpret_cast<const char*>(bytes.data()) + at, 4);
        return std::find(brands.begin(), brands.end(), brand) != brands.end();
    };
    if (isBrand(8)) return true;
    const auto end = std::min<std::size_t>(big32(bytes, 0), bytes.size());
    for (std::size_t at = 16; at + 4 <= end; at += 4) {
        if (isBrand(at)) return true;
    }
    return false;
}

}  // namespace

Result<PictureInfo> inspect(Span bytes, const Limits& limits) {
    if (bytes.size() > limits.bytes) {
        return fail(Trouble::badInput,
                    {"picture.tooManyBytes",
                     {{"limit_mb", static_cast<std::int64_t>(limits.bytes / 1'000'000)}}});
    }
    constexpr std::array<std::uint8_t, 3> jpegStart{0xFF, 0xD8, 0xFF};
    auto info = startsWith(bytes, jpegStart)      ? inspectJpeg(bytes)
                : startsWith(bytes, pngSignature) ? inspectPng(bytes)
                : isHeic(bytes)                   ? Result<PictureInfo>(refuse("picture.heic"))
                                                  : Result<PictureInfo>(refuse("picture.none"));
    if (info && info->pixels() > limits.pixels) {
        return fail(Trouble::badInput, {"picture.tooManyPixels",
                                        {{"megapixels", info->pixels() / 1'000'000},
                                         {"limit", limits.pixels / 1'000'000}}});
    }
    if (info && info->pixels() == 0) return refuse("picture.damaged");
    return info;
}

}  // namespace burrow::pictures
