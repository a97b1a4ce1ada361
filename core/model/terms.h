// The trade's own words, as the values a record may take. Each has one spelling in files ("left_in")
// and any number of accepted ones where people type.
#pragma once

#include <optional>
#include <string_view>

namespace burrow {

/// What one tag stands for.
enum class Form { animal, group, lot };

enum class Sex { unknown, female, male };

/// Where a subject stands with the keeper. Only `here` and `onLoan` are still on the books.
enum class Standing { here, onLoan, dead, sold, given };

/// What became of prey that was offered.
enum class Outcome { ate, part, refused, leftIn };

/// How a size was taken; decides which of two values is the better evidence.
enum class Method { eye, ruler, photo };

/// What a photo shows.
enum class PhotoRole { animal, moult, enclosure };

/// How clearly something was seen, in the five stops of every scale of certainty.
enum class Clarity { barely, partly, fairly, clearly, beyondDoubt };

/// What was looked at for the sex: the inside of a moult, the animal's own underside, the hooks and
/// palpal bulbs of a grown male, or its colours.
enum class Look { moult, underside, mature, colour };

/// Sets what can be read, in files and on the command line.
template <class Term>
[[nodiscard]] std::string_view name(Term term);

/// Accepts the file spelling and the usual variants, in any case and with spaces, hyphens or
/// underscores: "left in", "Left-In". For sex also "f", "m", "u", "0.1.0" and "1.0.0" (the trade's
/// male.female.unknown notation).
template <class Term>
[[nodiscard]] std::optional<Term> parseTerm(std::string_view text);

/// "Left-In " as "left_in": how all typed terms, event names and column headers are compared.
[[nodiscard]] std::string normalTerm(std::string_view text);

}  // namespace burrow
