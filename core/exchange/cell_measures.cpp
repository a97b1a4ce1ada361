#include "exchange/cell_measures.h"

#include <array>
#include <cmath>

#include "base/text.h"

namespace burrow::exchange {
namespace {

bool isDigit(char c) { return c >= '0' && c <= '9'; }

void skipBlanks(std::string_view& text) { text = trimmed(text); }

bool take(std::string_view& text, std::string_view start) {
    if (!text.starts_with(start)) return false;
    text.remove_prefix(start.size());
    return true;
}

/// Signs and words that say "about".
void skipAbout(std::string_view& text) {
    for (const auto* about : {"~", "\xE2\x89\x88", "ca.", "ca ", "approx.", "approx ", "about "}) {
        if (take(text, about)) return skipBlanks(text);
    }
}

/// A decimal number with a point or a comma. A comma with three digits after it may part thousands.
std::optional<double> takeDecimal(std::string_view& text) {
    std::size_t end = 0;
    while (end < text.size() && isDigit(text[end])) ++end;
    if (end == 0 && !text.starts_with('.')) return std::nullopt;
    std::string number(text.substr(0, end));
    if (end < text.size() && (text[end] == '.' || text[end] == ',')) {
        std::size_t after = end + 1;
        while (after < text.size() && isDigit(text[after])) ++after;
        const auto digits = after - end - 1;
        if (digits == 0 || (text[end] == ',' && digits == 3)) return std::nullopt;
        number += '.';
        number += text.substr(end + 1, digits);
        end = after;
    }
    const auto value = parseNumber(number);
    if (value) text.remove_prefix(end);
    return value;
}

/// "1/2" or a character for it.
std::optional<double> takeFraction(std::string_view& text) {
    struct Sign {
        std::string_view text;
        double value;
    };
    constexpr std::array signs{Sign{"\xC2\xBD", 0.5},       Sign{"\xC2\xBC", 0.25},
                               Sign{"\xC2\xBE", 0.75},      Sign{"\xE2\x85\x9B", 0.125},
                               Sign{"\xE2\x85\x9C", 0.375}, Sign{"\xE2\x85\x9D", 0.625},
                               Sign{"\xE2\x85\x9E", 0.875}};
    for (const auto& sign : signs) {
        if (take(text, sign.text)) return sign.value;
    }
    if (text.size() < 3 || !isDigit(text[0]) || text[1] != '/' || !isDigit(text[2])) {
        return std::nullopt;
    }
    const int above = text[0] - '0';
    text.remove_prefix(2);
    int below = 0;
    while (!text.empty() && isDigit(text.front()) && below < 100) {
        below = below * 10 + (text.front() - '0');
        text.remove_prefix(1);
    }
    if (below == 0 || above >= below) return std::nullopt;
    return static_cast<double>(above) / below;
}

/// A whole or decimal number, and a fraction after it or alone.
std::optional<double> takeNumber(std::string_view& text) {
    auto rest = text;
    const auto alone = takeFraction(rest);
    if (alone) {
        text = rest;
        return alone;
    }
    const auto whole = takeDecimal(text);
    if (!whole) return std::nullopt;
    rest = text;
    take(rest, "-");
    skipBlanks(rest);
    const auto part = takeFraction(rest);
    if (!part || std::floor(*whole) != *whole) return whole;
    text = rest;
    return *whole + *part;
}

std::optional<LengthUnit> unitFor(std::string_view word) {
    struct Name {
        std::string_view text;
        LengthUnit unit;
    };
    constexpr std::array names{
        Name{"mm", LengthUnit::mm},
        Name{"millimetre", LengthUnit::mm},
        Name{"millimetres", LengthUnit::mm},
        Name{"millimeter", LengthUnit::mm},
        Name{"millimeters", LengthUnit::mm},
        Name{"cm", LengthUnit::cm},
        Name{"centimetre", LengthUnit::cm},
        Name{"centimetres", LengthUnit::cm},
        Name{"centimeter", LengthUnit::cm},
        Name{"centimeters", LengthUnit::cm},
        Name{"in", LengthUnit::inch},
        Name{"in.", LengthUnit::inch},
        Name{"inch", LengthUnit::inch},
        Name{"inches", LengthUnit::inch},
        Name{"\"", LengthUnit::inch},
        Name{"''", LengthUnit::inch},
        Name{"\xE2\x80\xB3", LengthUnit::inch},   // double prime
        Name{"\xE2\x80\x9D", LengthUnit::inch}};  // what word processors make of "
    const auto wanted = lowerAscii(word);
    for (const auto& name : names) {
        if (name.text == wanted) return name.unit;
    }
    return std::nullopt;
}

}  // namespace

Millimetres WrittenLength::in(LengthUnit assumed) const {
    switch (unit.value_or(assumed)) {
        case LengthUnit::mm: return {value};
        case LengthUnit::cm: return {value * 10};
        case LengthUnit::inch: return {value * millimetresPerInch};
    }
    return {value};
}

std::optional<WrittenLength> readLength(std::string_view cell) {
    auto text = trimmed(cell);
    skipAbout(text);
    const auto number = takeNumber(text);
    if (!number) return std::nullopt;
    skipBlanks(text);
    if (text.empty()) return WrittenLength{*number, std::nullopt};
    const auto unit = unitFor(text);
    return unit ? std::optional(WrittenLength{*number, unit}) : std::nullopt;
}

std::optional<Grams> readMass(std::string_view cell) {
    auto text = trimmed(cell);
    skipAbout(text);
    const auto number = takeDecimal(text);
    const auto unit = lowerAscii(trimmed(text));
    if (!number || (!unit.empty() && unit != "g" && unit != "gram" && unit != "grams")) {
        return std::nullopt;
    }
    return Grams{*number};
}

std::optional<int> readCount(std::string_view cell) {
    auto text = trimmed(cell);
    skipAbout(text);
    std::size_t end = 0;
    while (end < text.size() && isDigit(text[end])) ++end;
    if (end == 0 || end > 6) return std::nullopt;
    const auto rest = trimmed(text.substr(end));
    // "20 slings" is a count; "20.5", "20-30" and "20x" are not.
    const bool isWord = !rest.empty() && text[end] == ' ' && !isDigit(rest.front()) &&
                        rest.find_first_of("0123456789-+/,.") == std::string_view::npos;
    if (!rest.empty() && !isWord) return std::nullopt;
    return static_cast<int>(*parseInteger(text.substr(0, end)));
}

std::optional<LengthUnit> unitNamed(std::string_view column) {
    std::optional<LengthUnit> found;
    std::string word;
    const auto end = [&] {
        // "Size in cm": a unit that means nothing else counts before "in".
        const auto unit = unitFor(word);
        const bool isWeak = word == "in";
        if (unit && (!found || !isWeak)) found = unit;
        word.clear();
    };
    for (const char c : lowerAscii(column)) {
        const bool isLetter = c >= 'a' && c <= 'z';
        if (isLetter) {
            word += c;
        } else {
            end();
            if (c == '"') found = LengthUnit::inch;
        }
    }
    end();
    return found;
}

}  // namespace burrow::exchange
