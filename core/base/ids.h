// Identifiers. Everything in a book has a UUID that no other device will ever give to anything else.
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "base/clock.h"
#include "base/random.h"

namespace burrow {

/// A UUID as RFC 9562 writes it.
struct Uuid {
    std::array<std::uint8_t, 16> bytes{};

    friend constexpr auto operator<=>(const Uuid&, const Uuid&) = default;

    /// Lower case, "017f22e2-79b0-7cc3-98c4-dc0c0c07398f".
    [[nodiscard]] std::string text() const;
    /// Either case; nothing for anything that is not 8-4-4-4-12 hexadecimal digits.
    [[nodiscard]] static std::optional<Uuid> parse(std::string_view text);
    [[nodiscard]] static std::optional<Uuid> fromBytes(std::span<const std::uint8_t> bytes);
    /// Version 8 (RFC 9562, 5.8): the same name always gives the same identifier.
    [[nodiscard]] static Uuid named(std::string_view name);

    /// Version nibble: 7 for those made by UuidSource.
    [[nodiscard]] int version() const { return bytes[6] >> 4; }
    /// Milliseconds since 1970 as a version 7 UUID carries them.
    [[nodiscard]] Instant timestamp() const;
};

/// A UUID that says what it identifies.
template <class Thing>
struct Id {
    Uuid uuid;

    friend constexpr auto operator<=>(const Id&, const Id&) = default;
    [[nodiscard]] std::string text() const { return uuid.text(); }
};

using EntryId = Id<struct EntryTag>;
using DeviceId = Id<struct DeviceTag>;
using SubjectId = Id<struct SubjectTag>;
using EnclosureId = Id<struct EnclosureTag>;
using BookId = Id<struct BookTag>;

/// Makes version 7 UUIDs (RFC 9562, 5.7) that never step back, even when the clock does: within one
/// millisecond, or after the clock was set back, the 12 bits of rand_a count up (method 1 of 6.2).
/// Not safe to share between threads.
class UuidSource {
public:
    UuidSource(const Clock& clock, Random& random) : clock_(clock), random_(random) {}
    [[nodiscard]] Uuid next();

private:
    const Clock& clock_;
    Random& random_;
    std::int64_t lastMs_ = -1;
    unsigned counter_ = 0;
};

}  // namespace burrow
