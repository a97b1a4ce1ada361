#include "base/ids.h"

#include <algorithm>

#include "base/hash.h"

namespace burrow {
namespace {

constexpr std::string_view hexDigits = "0123456789abcdef";

std::optional<std::uint8_t> hexValue(char c) {
    if (c >= '0' && c <= '9') return static_cast<std::uint8_t>(c - '0');
    if (c >= 'a' && c <= 'f') return static_cast<std::uint8_t>(c - 'a' + 10);
    if (c >= 'A' && c <= 'F') return static_cast<std::uint8_t>(c - 'A' + 10);
    return std::nullopt;
}

bool dashBefore(std::size_t byte) { return byte == 4 || byte == 6 || byte == 8 || byte == 10; }

void stamp(Uuid& uuid, unsigned version) {
    uuid.bytes[6] = static_cast<std::uint8_t>((uuid.bytes[6] & 0x0FU) | (version << 4U));
    uuid.bytes[8] = static_cast<std::uint8_t>((uuid.bytes[8] & 0x3FU) | 0x80U);
}

}  // namespace

std::string Uuid::text() const {
    std::string text(36, '-');
    std::size_t at = 0;
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        if (dashBefore(i)) ++at;
        text[at++] = hexDigits[bytes[i] >> 4U];
        text[at++] = hexDigits[bytes[i] & 0x0FU];
    }
    return text;
}

std::optional<Uuid> Uuid::parse(std::string_view text) {
    if (text.size() != 36) return std::nullopt;
    Uuid uuid;
    std::size_t at = 0;
    for (std::size_t i = 0; i < uuid.bytes.size(); ++i) {
        if (dashBefore(i) && text[at++] != '-') return std::nullopt;
        const auto high = hexValue(text[at]);
        const auto low = hexValue(text[at + 1]);
        if (!high || !low) return std::nullopt;
        uuid.bytes[i] = static_cast<std::uint8_t>(*high << 4U | *low);
        at += 2;
    }
    return uuid;
}

std::optional<Uuid> Uuid::fromBytes(std::span<const std::uint8_t> bytes) {
    Uuid uuid;
    if (bytes.size() != uuid.bytes.size()) return std::nullopt;
    std::copy(bytes.begin(), bytes.end(), uuid.bytes.begin());
    return uuid;
}

Uuid Uuid::named(std::string_view name) {
    const auto digest = Sha256::of(name);
    Uuid uuid;
    std::copy_n(digest.bytes.begin(), uuid.bytes.size(), uuid.bytes.begin());
    stamp(uuid, 8);
    return uuid;
}

Instant Uuid::timestamp() const {
    std::int64_t ms = 0;
    for (std::size_t i = 0; i < 6; ++i) ms = ms << 8 | bytes[i];
    return {ms};
}

Uuid UuidSource::next() {
    Uuid uuid;
    random_.fill(uuid.bytes);
    const auto now = clock_.now().ms;
    if (now > lastMs_) {
        lastMs_ = now;
        // The top bit starts clear so that there is room to count within the millisecond.
        counter_ = (static_cast<unsigned>(uuid.bytes[6]) << 8U | uuid.bytes[7]) & 0x7FFU;
    } else if (++counter_ > 0xFFFU) {
        ++lastMs_;
        counter_ = 0;
    }
    for (std::size_t i = 0; i < 6; ++i) {
        uuid.bytes[i] = static_cast<std::uint8_t>(lastMs_ >> (8 * (5 - i)) & 0xFF);
    }
    uuid.bytes[6] = static_cast<std::uint8_t>(counter_ >> 8U);
    uuid.bytes[7] = static_cast<std::uint8_t>(counter_ & 0xFFU);
    stamp(uuid, 7);
    return uuid;
}

}  // namespace burrow
