#include "base/text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <utility>

namespace burrow {
namespace {

bool isSpace(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }
bool isDigit(char c) { return c >= '0' && c <= '9'; }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
char upper(char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; }

/// Length of the sequence a UTF-8 lead byte announces and the smallest code point it may carry.
struct Lead {
    std::size_t length;
    std::uint32_t bits;
    std::uint32_t least;
};

std::optional<Lead> lead(std::uint8_t byte) {
    if (byte < 0x80) return Lead{1, byte, 0};
    if ((byte & 0xE0U) == 0xC0) return Lead{2, byte & 0x1FU, 0x80};
    if ((byte & 0xF0U) == 0xE0) return Lead{3, byte & 0x0FU, 0x800};
    if ((byte & 0xF8U) == 0xF0) return Lead{4, byte & 0x07U, 0x10000};
    return std::nullopt;
}

/// The run of digits at the front, without leading zeros, taken off `text`.
std::string_view takeRun(std::string_view& text) {
    std::size_t end = 0;
    while (end < text.size() && isDigit(text[end])) ++end;
    auto run = text.substr(0, end);
    text.remove_prefix(end);
    while (run.size() > 1 && run.front() == '0') run.remove_prefix(1);
    return run;
}

template <class Number>
std::optional<Number> parseWhole(std::string_view text) {
    Number value{};
    const auto* end = text.data() + text.size();
    const auto [stop, error] = std::from_chars(text.data(), end, value);
    if (error != std::errc{} || stop != end || text.empty()) return std::nullopt;
    return value;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && isSpace(text.front())) text.remove_prefix(1);
    while (!text.empty() && isSpace(text.back())) text.remove_suffix(1);
    return text;
}

std::string lowerAscii(std::string_view text) {
    std::string result(text);
    std::transform(result.begin(), result.end(), result.begin(), lower);
    return result;
}

std::string upperAscii(std::string_view text) {
    std::string result(text);
    std::transform(result.begin(), result.end(), result.begin(), upper);
    return result;
}

std::vector<std::string_view> split(std::string_view text, char separator) {
    std::vector<std::string_view> parts;
    while (true) {
        const auto at = text.find(separator);
        parts.push_back(text.substr(0, at));
        if (at == std::string_view::npos) return parts;
        text.remove_prefix(at + 1);
    }
}

bool isUtf8(std::string_view text) {
    std::size_t i = 0;
    while (i < text.size()) {
        const auto first = lead(static_cast<std::uint8_t>(text[i]));
        if (!first || i + first->length > text.size()) return false;
        auto point = first->bits;
        for (std::size_t k = 1; k < first->length; ++k) {
            const auto byte = static_cast<std::uint8_t>(text[i + k]);
            if ((byte & 0xC0U) != 0x80) return false;
            point = point << 6U | (byte & 0x3FU);
        }
        const bool surrogate = point >= 0xD800 && point <= 0xDFFF;
        if (point < first->least || point > 0x10FFFF || surrogate) return false;
        i += first->length;
    }
    return true;
}

std::string withoutSteering(std::string_view text) {
    constexpr std::array<std::uint32_t, 4> marks{0x061C, 0x200E, 0x200F, 0xFEFF};
    std::string result;
    result.reserve(text.size());
    for (std::size_t i = 0; i < text.size();) {
        const auto first = lead(static_cast<std::uint8_t>(text[i]));
        const auto length = std::min(first ? first->length : 1, text.size() - i);
        auto point = first ? first->bits : 0xFFFD;
        for (std::size_t k = 1; k < length; ++k) {
            point = point << 6U | (static_cast<std::uint8_t>(text[i + k]) & 0x3FU);
        }
        // A sequence that is cut off at the end is left to whoever shows it.
        if (first && length < first->length) point = 0xFFFD;
        const bool isControl = (point < 0x20 && point != '\n') || (point >= 0x7F && point < 0xA0);
        const bool turns = (point >= 0x202A && point <= 0x202E) ||
                           (point >= 0x2066 && point <= 0x2069) ||
                           std::find(marks.begin(), marks.end(), point) != marks.end();
        if (isControl || turns) {
            result += ' ';
        } else {
            result += text.substr(i, length);
        }
        i += length;
    }
    return result;
}

std::optional<double> parseNumber(std::string_view text) {
    const auto value = parseWhole<double>(text);
    return value && std::isfinite(*value) ? value : std::nullopt;
}

std::optional<long long> parseInteger(std::string_view text) { return parseWhole<long long>(text); }

int compareNatural(std::string_view a, std::string_view b) {
    const auto sign = [](auto x, auto y) { return x < y ? -1 : static_cast<int>(y < x); };
    const auto lower = [](char c) { return static_cast<unsigned char>(burrow::lower(c)); };
    while (!a.empty() && !b.empty()) {
        if (isDigit(a.front()) && isDigit(b.front())) {
            const auto left = takeRun(a);
            const auto right = takeRun(b);
            if (left.size() != right.size()) return sign(left.size(), right.size());
            if (left != right) return sign(left, right);
            continue;
        }
        if (lower(a.front()) != lower(b.front())) return sign(lower(a.front()), lower(b.front()));
        a.remove_prefix(1);
        b.remove_prefix(1);
    }
    return sign(a.size(), b.size());
}

std::size_t editDistance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> before;
    std::vector<std::size_t> last(b.size() + 1);
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        before = std::exchange(last, row);
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t replaced = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, replaced});
            const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
        }
    }
    return row[b.size()];
}

}  // namespace burrow
