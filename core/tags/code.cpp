#include "tags/code.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "base/text.h"

namespace burrow::tags {
namespace {

constexpr std::string_view prefix = "BURROWBOOK:";
constexpr std::string_view checkAlphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";
constexpr std::size_t shownCharacters = 60;
/// A symbol of ours has 23 bytes and a long web address some hundred.
constexpr std::size_t longestForeign = 2000;

bool isOurs(char c) { return codeAlphabet.find(c) != std::string_view::npos; }

/// The character at the front of well-formed UTF-8, taken off `text`.
std::string_view takeCharacter(std::string_view& text) {
    std::size_t size = 1;
    while (size < text.size() && (static_cast<unsigned char>(text[size]) & 0xC0U) == 0x80) ++size;
    const auto character = text.substr(0, size);
    text.remove_prefix(size);
    return character;
}

char32_t codePoint(std::string_view character) {
    static constexpr std::array<unsigned, 5> leadBits{0, 0x7F, 0x1F, 0x0F, 0x07};
    char32_t point = static_cast<unsigned char>(character[0]) & leadBits[character.size()];
    for (const char c : character.substr(1)) {
        point = point << 6U | (static_cast<unsigned char>(c) & 0x3FU);
    }
    return point;
}

struct CodeRange {
    char32_t first;
    char32_t last;
};

/// Controls, joiners, direction marks and what is reserved for private use (Unicode general
/// categories Cc, Cf, Zl, Zp, Co): they would show nothing, or turn the rest of a line around.
constexpr std::array shapeless{
    CodeRange{0x00, 0x1F},     CodeRange{0x7F, 0x9F},       CodeRange{0xAD, 0xAD},
    CodeRange{0x0600, 0x0605}, CodeRange{0x061C, 0x061C},   CodeRange{0x180E, 0x180E},
    CodeRange{0x200B, 0x200F}, CodeRange{0x2028, 0x202E},   CodeRange{0x2060, 0x206F},
    CodeRange{0xE000, 0xF8FF}, CodeRange{0xFE00, 0xFE0F},   CodeRange{0xFEFF, 0xFEFF},
    CodeRange{0xFFF0, 0xFFFF}, CodeRange{0xE0000, 0x10FFFF}};

bool hasShape(char32_t point) {
    for (const auto& range : shapeless) {
        if (point >= range.first && point <= range.last) return false;
    }
    return true;
}

/// Control characters that no text has: their presence means that the bytes are something else.
bool isBinary(std::string_view bytes) {
    for (const char c : bytes) {
        if (static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\r' && c != '\t')
            return true;
    }
    return !isUtf8(bytes);
}

std::string shown(std::string_view text) {
    std::string result;
    std::size_t count = 0;
    while (!text.empty() && count < shownCharacters) {
        auto character = takeCharacter(text);
        if (character == "\n" || character == "\t") character = " ";
        if (!hasShape(codePoint(character))) continue;
        result += character;
        ++count;
    }
    return result;
}

bool looksLikeWebAddress(std::string_view text) {
    const auto lower = lowerAscii(text.substr(0, 8));
    return lower.starts_with("http://") || lower.starts_with("https://") ||
           lower.starts_with("www.");
}

/// One to three digits without a leading zero.
std::optional<Millimetres> parseSide(std::string_view text) {
    if (text.empty() || text.size() > 3 || text.front() < '1' || text.front() > '9') return {};
    const auto value = parseInteger(text);
    if (!value) return {};
    return Millimetres{static_cast<double>(*value)};
}

TagReading parseOwn(std::string_view text) {
    const auto slash = text.find('/');
    if (slash != codeLength + 1) return DamagedTag{};
    const auto code = text.substr(0, codeLength);
    const auto side = parseSide(text.substr(slash + 1));
    if (!side || !isCode(code) || checkCharacter(code) != text[codeLength]) return DamagedTag{};
    return OwnTag{std::string(code), *side};
}

/// The typed character as a tag has it: a capital, and a digit in place of its look-alikes.
char likeOnTag(char typed) {
    const char upper = upperAscii({&typed, 1}).front();
    if (upper == 'O') return '0';
    return upper == 'I' || upper == 'L' ? '1' : upper;
}

}  // namespace

std::optional<char> checkCharacter(std::string_view text) {
    unsigned sum = 0;
    for (const char c : text) {
        const auto value = checkAlphabet.substr(0, 36).find(c);
        if (value == std::string_view::npos) return std::nullopt;
        sum = (sum + static_cast<unsigned>(value)) * 2 % 37;
    }
    return checkAlphabet[(38 - sum) % 37];
}

bool isCode(std::string_view text) {
    if (text.size() != codeLength) return false;
    for (const char c : text) {
        if (!isOurs(c)) return false;
    }
    return isOurs(*checkCharacter(text));
}

std::string generateCode(Random& random) {
    std::string code(codeLength, '0');
    do {
        std::array<std::uint8_t, codeLength> bytes;
        random.fill(bytes);
        for (std::size_t i = 0; i < codeLength; ++i) {
            code[i] = codeAlphabet[bytes[i] % codeAlphabet.size()];
        }
    } while (!isCode(code));
    return code;
}

std::string payload(std::string_view code, Millimetres side) {
    return fmt::format("{}{}{}/{}", prefix, code, checkCharacter(code).value_or('?'),
                       std::lround(side.value));
}

std::string displayCode(std::string_view code) {
    return fmt::format("{} {} {}", code.substr(0, 4), code.substr(4),
                       checkCharacter(code).value_or('?'));
}

TagReading parsePayload(std::string_view bytes) {
    if (bytes.starts_with(prefix)) return parseOwn(bytes.substr(prefix.size()));
    if (bytes.empty() || bytes.size() > longestForeign || isBinary(bytes))
        return UnreadableSymbol{};
    return ForeignSymbol{shown(bytes), looksLikeWebAddress(bytes)};
}

Result<std::string> parseTyped(std::string_view text) {
    std::string typed;
    const bool readable = isUtf8(text);
    while (!text.empty()) {
        const auto character = readable ? takeCharacter(text) : text.substr(0, 1);
        if (!readable) text.remove_prefix(1);
        if (character == " " || character == "-" || character == "\t") continue;
        const char like = likeOnTag(character.front());
        if (character.size() != 1 || !isOurs(like)) {
            const std::string named(readable ? character : "?");
            return fail(Trouble::badInput, {"tag.typed.character", {{"character", named}}});
        }
        typed += like;
    }
    if (typed.size() != codeLength && typed.size() != codeLength + 1) {
        const auto count = static_cast<std::int64_t>(typed.size());
        return fail(Trouble::badInput, {"tag.typed.length", {{"count", count}}});
    }
    const auto code = typed.substr(0, codeLength);
    const bool fits =
        isCode(code) && (typed.size() == codeLength || checkCharacter(code) == typed.back());
    if (!fits) return fail(Trouble::badInput, {"tag.typed.check", {{"code", typed}}});
    return code;
}

}  // namespace burrow::tags
