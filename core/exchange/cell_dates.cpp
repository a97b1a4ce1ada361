#include "exchange/cell_dates.h"

#include <fmt/format.h>

#include <array>
#include <charconv>

#include "base/text.h"

namespace burrow::exchange {
namespace {

/// The parts of a date or a time: runs of digits and runs of letters, with what stands between them left out.
struct Part {
    std::string_view text;
    bool isNumber = false;
    char before = ' ';  ///< the sign in front of it
};

bool isDigit(char c) { return c >= '0' && c <= '9'; }
bool isLetter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

std::vector<Part> partsOf(std::string_view text) {
    std::vector<Part> parts;
    for (std::size_t i = 0; i < text.size();) {
        const char c = text[i];
        if (!isDigit(c) && !isLetter(c)) {
            ++i;
            continue;
        }
        std::size_t end = i;
        while (end < text.size() && (isDigit(c) ? isDigit(text[end]) : isLetter(text[end]))) ++end;
        parts.push_back({text.substr(i, end - i), isDigit(c), i == 0 ? ' ' : text[i - 1]});
        i = end;
    }
    return parts;
}

/// Whether nothing stands in it but digits, letters and what dates are parted with.
bool isDateLike(std::string_view text) {
    if (text.empty() || text.size() > 40) return false;
    for (const char c : text) {
        if (!isDigit(c) && !isLetter(c) && std::string_view(" .,/-:").find(c) == std::string::npos)
            return false;
    }
    return true;
}

int numberOf(std::string_view digits) {
    int value = 0;
    std::from_chars(digits.data(), digits.data() + std::min<std::size_t>(digits.size(), 9), value);
    return value;
}

std::optional<int> yearOf(std::string_view digits) {
    if (digits.size() == 4) return numberOf(digits);
    if (digits.size() != 2) return std::nullopt;
    const int two = numberOf(digits);
    return two >= 69 ? 1900 + two : 2000 + two;
}

/// 1 to 12 for an English name of a month, whole or cut to three letters or more.
std::optional<int> monthNamed(std::string_view word) {
    constexpr std::array<std::string_view, 12> months{
        "january", "february", "march",     "april",   "may",      "june",
        "july",    "august",   "september", "october", "november", "december"};
    if (word.size() < 3) return std::nullopt;
    const auto wanted = lowerAscii(word);
    for (std::size_t i = 0; i < months.size(); ++i) {
        if (months[i].starts_with(wanted)) return static_cast<int>(i) + 1;
    }
    return std::nullopt;
}

/// "8th" is 8.
bool isOrdinal(std::string_view word) {
    const auto lower = lowerAscii(word);
    return lower == "st" || lower == "nd" || lower == "rd" || lower == "th";
}

/// 8 May 2026 and May 8, 2026.
std::optional<CivilDay> namedDate(std::vector<Part> parts) {
    std::erase_if(parts, [](const Part& part) { return !part.isNumber && isOrdinal(part.text); });
    if (parts.size() != 3 || !parts[2].isNumber) return std::nullopt;
    const auto year = yearOf(parts[2].text);
    const bool isMonthFirst = !parts[0].isNumber && parts[1].isNumber;
    const bool isDayFirst = parts[0].isNumber && !parts[1].isNumber;
    if (!year || (!isMonthFirst && !isDayFirst)) return std::nullopt;
    const auto month = monthNamed(parts[isMonthFirst ? 0 : 1].text);
    if (!month) return std::nullopt;
    return civilDay({*year, *month, numberOf(parts[isMonthFirst ? 1 : 0].text)});
}

WrittenDate certainly(CivilDay day) { return {day, std::nullopt, {}}; }

std::optional<WrittenDate> dateOf(std::string_view text) {
    const auto parts = partsOf(text);
    if (parts.size() == 1 && parts[0].isNumber && text.size() == 8) {  // ISO 8601, basic format
        const auto day = civilDay({numberOf(text.substr(0, 4)), numberOf(text.substr(4, 2)),
                                   numberOf(text.substr(6, 2))});
        return day ? std::optional(certainly(*day)) : std::nullopt;
    }
    if (const auto day = namedDate(parts)) return certainly(*day);
    if (parts.size() != 3) return std::nullopt;
    for (const auto& part : parts) {
        if (!part.isNumber || part.text.size() > 4) return std::nullopt;
    }
    // The same sign between all of them: 1-2.5 is no date.
    if (parts[1].before != parts[2].before || parts[1].before == ' ') return std::nullopt;
    if (parts[0].text.size() == 4) {
        const auto day =
            civilDay({numberOf(parts[0].text), numberOf(parts[1].text), numberOf(parts[2].text)});
        return day ? std::optional(certainly(*day)) : std::nullopt;
    }
    const auto year = yearOf(parts[2].text);
    if (!year || parts[0].text.size() > 2 || parts[1].text.size() > 2) return std::nullopt;
    const LooseDate loose{numberOf(parts[0].text), numberOf(parts[1].text), *year};
    if (!loose.in(DateOrder::dayFirst) && !loose.in(DateOrder::monthFirst)) return std::nullopt;
    return WrittenDate{std::nullopt, loose, {}};
}

/// Where the time of day begins: the blank or the T before the last run of "21:14".
std::size_t timeAt(std::string_view text) {
    const auto colon = text.find(':');
    if (colon == std::string_view::npos) return std::string_view::npos;
    return text.find_last_of(" T", colon);
}

}  // namespace

std::optional<CivilDay> LooseDate::in(DateOrder order) const {
    switch (order) {
        case DateOrder::iso: return std::nullopt;
        case DateOrder::dayFirst: return civilDay({year, second, first});
        case DateOrder::monthFirst: return civilDay({year, first, second});
    }
    return std::nullopt;
}

std::optional<std::string> readTime(std::string_view cell) {
    const auto parts = partsOf(trimmed(cell));
    std::size_t numbers = 0;
    while (numbers < parts.size() && parts[numbers].isNumber) ++numbers;
    if (numbers < 2 || numbers > 3 || parts.size() > numbers + 1) return std::nullopt;
    if (parts[1].before != ':' || (numbers == 3 && parts[2].before != ':')) return std::nullopt;
    int hour = numberOf(parts[0].text);
    const int minute = numberOf(parts[1].text);
    const int second = numbers == 3 ? numberOf(parts[2].text) : 0;
    if (parts.size() > numbers) {
        const auto half = lowerAscii(parts[numbers].text);
        if ((half != "am" && half != "pm") || hour < 1 || hour > 12) return std::nullopt;
        hour = hour % 12 + (half == "pm" ? 12 : 0);
    }
    if (hour > 23 || minute > 59 || second > 59) return std::nullopt;
    return fmt::format("T{:02}:{:02}:{:02}", hour, minute, second);
}

std::optional<WrittenDate> readDate(std::string_view cell) {
    const auto text = trimmed(cell);
    if (const auto moment = parseIsoMoment(text)) {
        auto date = certainly(moment->day);
        date.time = text.substr(isoDate(moment->day).size());
        if (!date.time.empty()) date.time.front() = 'T';
        return date;
    }
    if (!isDateLike(text)) return std::nullopt;
    const auto at = timeAt(text);
    auto date = dateOf(trimmed(text.substr(0, at)));
    if (!date || at == std::string_view::npos) return date;
    const auto time = readTime(text.substr(at + 1));
    if (!time) return std::nullopt;
    date->time = *time;
    return date;
}

void DateEvidence::add(std::string_view cell) {
    const auto date = readDate(cell);
    if (!date) {
        ++unread;
    } else if (date->certain) {
        ++certain;
    } else if (date->loose->first == date->loose->second) {
        ++same;
    } else if (!date->loose->in(DateOrder::monthFirst)) {
        ++onlyDayFirst;
    } else if (!date->loose->in(DateOrder::dayFirst)) {
        ++onlyMonthFirst;
    } else {
        ++either;
    }
}

std::optional<DateOrder> DateEvidence::order() const {
    if (onlyDayFirst > 0 && onlyMonthFirst > 0) return std::nullopt;
    if (onlyDayFirst > 0) return DateOrder::dayFirst;
    if (onlyMonthFirst > 0) return DateOrder::monthFirst;
    if (either > 0) return std::nullopt;
    return same > 0 ? DateOrder::dayFirst : DateOrder::iso;
}

}  // namespace burrow::exchange
