// The code on a tag. Eight random characters name a tag for good: two books that meet never share
// one, and what the tag hangs on may change without a new print. Digits and capitals are used
// without I, L, O and U, so that nothing is misread and no word is spelt; 40 bits are drawn.
//
// A ninth character checks the eight by ISO/IEC 7064 MOD 37-2, which catches every wrong character
// and every swap of neighbours. Codes whose check character would be I, L, O, U or * are drawn
// again.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "base/random.h"
#include "base/result.h"
#include "base/units.h"

namespace burrow::tags {

/// The characters of a code, by value.
inline constexpr std::string_view codeAlphabet = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
inline constexpr std::size_t codeLength = 8;
/// Printed side of the square on every tag and sheet: 25 modules of 0.8 mm.
inline constexpr Millimetres printedSide{20};

/// ISO/IEC 7064 MOD 37-2 over digits and capitals: one of 0 to 9, A to Z and *. Nothing where the
/// text holds anything else.
[[nodiscard]] std::optional<char> checkCharacter(std::string_view text);

/// Whether these eight characters can stand on a tag.
[[nodiscard]] bool isCode(std::string_view text);
[[nodiscard]] std::string generateCode(Random& random);

/// What the square on a tag holds, "BURROWBOOK:7Q2MZX89K/20": the code, its check character and the
/// printed side of the square in whole millimetres, 1 to 999, which gives a photo its scale. The
/// code must be one that isCode accepts.
[[nodiscard]] std::string payload(std::string_view code, Millimetres side);
/// The code as people read and type it, with its check character: "7Q2M ZX89 K".
[[nodiscard]] std::string displayCode(std::string_view code);

/// A tag of this application, from any book.
struct OwnTag {
    std::string code;
    Millimetres side;  ///< of the printed square

    friend bool operator==(const OwnTag&, const OwnTag&) = default;
};
/// Says that it is a tag of ours, but its parts do not fit together: torn, retouched or forged.
struct DamagedTag {
    friend bool operator==(const DamagedTag&, const DamagedTag&) = default;
};
/// Somebody else's symbol.
struct ForeignSymbol {
    std::string shown;  ///< its first 60 characters, without those that have no shape
    bool webAddress = false;

    friend bool operator==(const ForeignSymbol&, const ForeignSymbol&) = default;
};
/// Not text, or more of it than anyone would want shown.
struct UnreadableSymbol {
    friend bool operator==(const UnreadableSymbol&, const UnreadableSymbol&) = default;
};
using TagReading = std::variant<OwnTag, DamagedTag, ForeignSymbol, UnreadableSymbol>;

/// What the bytes of a decoded symbol are. Any bytes are accepted.
[[nodiscard]] TagReading parsePayload(std::string_view bytes);

/// The code of a tag as typed by hand, with or without its check character, in either case; O is
/// read as 0, I and L as 1, and spaces and hyphens are left out. Fails with `badInput` and a
/// sentence that asks to type it again.
[[nodiscard]] Result<std::string> parseTyped(std::string_view text);

}  // namespace burrow::tags
