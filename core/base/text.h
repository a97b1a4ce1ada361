// Small text helpers that must behave the same on every device, whatever its locale.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace burrow {

[[nodiscard]] std::string_view trimmed(std::string_view text);
/// Lower case for A to Z only; other letters are left alone.
[[nodiscard]] std::string lowerAscii(std::string_view text);
[[nodiscard]] std::string upperAscii(std::string_view text);
/// Splits at every separator; an empty text gives one empty part.
[[nodiscard]] std::vector<std::string_view> split(std::string_view text, char separator);
/// Whether the bytes are well-formed UTF-8 (no overlong forms, no surrogates, nothing past U+10FFFF).
[[nodiscard]] bool isUtf8(std::string_view text);
/// The same text without what would steer whoever shows it: control characters, and marks that turn the
/// direction of writing (Unicode Standard Annex 9, 2.1 to 2.6), become spaces. Line ends stay.
[[nodiscard]] std::string withoutSteering(std::string_view text);
/// A decimal number with a point, with nothing before or after it; nothing for inf and nan.
[[nodiscard]] std::optional<double> parseNumber(std::string_view text);
[[nodiscard]] std::optional<long long> parseInteger(std::string_view text);
/// "2" and "10" in that order, "A2" before "A10": compares runs of digits by value, the rest byte by
/// byte without case. Negative, zero or positive as for strcmp.
[[nodiscard]] int compareNatural(std::string_view a, std::string_view b);

/// Fewest insertions, deletions, replacements and swaps of neighbours between two texts, in bytes
/// (optimal string alignment; Damerau 1964).
[[nodiscard]] std::size_t editDistance(std::string_view a, std::string_view b);

}  // namespace burrow
