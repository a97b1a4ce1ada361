// SHA-256 (FIPS 180-4), the name under which photos are kept.
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace burrow {

struct Sha256 {
    std::array<std::uint8_t, 32> bytes{};

    friend constexpr auto operator<=>(const Sha256&, const Sha256&) = default;

    [[nodiscard]] static Sha256 of(std::span<const std::uint8_t> data);
    [[nodiscard]] static Sha256 of(std::string_view data);
    /// 64 lower-case hexadecimal digits.
    [[nodiscard]] std::string hex() const;
    [[nodiscard]] static std::optional<Sha256> parse(std::string_view hex);
};

/// The same for what comes in pieces.
class Sha256Stream {
public:
    Sha256Stream();
    void add(std::span<const std::uint8_t> data);
    /// The digest of all that was added; the stream starts anew.
    [[nodiscard]] Sha256 finish();

private:
    alignas(8) std::array<std::uint8_t, 112> state_{};  // as large as nettle's
};

}  // namespace burrow
