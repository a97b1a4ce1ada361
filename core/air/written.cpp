#include "air/written.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace burrow::air {
namespace {

constexpr std::string_view degree = "\xC2\xB0";                // °
constexpr std::string_view degreeCelsius = "\xE2\x84\x83";     // one character for both
constexpr std::string_view degreeFahrenheit = "\xE2\x84\x89";  // likewise

bool isDigit(char c) { return c >= '0' && c <= '9'; }
bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || isDigit(c) || static_cast<unsigned char>(c) >= 0x80;
}

/// Reads from the front of a text.
class Cursor {
public:
    explicit Cursor(std::string_view text) : rest_(text) {}

    [[nodiscard]] bool isAtEnd() const { return rest_.empty(); }
    [[nodiscard]] char next() const { return rest_.empty() ? '\0' : rest_.front(); }
    bool take(char expected) {
        if (next() != expected) return false;
        rest_.remove_prefix(1);
        return true;
    }
    bool takeWord(std::string_view word) {
        if (lowerAscii(rest_.substr(0, word.size())) != word) return false;
        rest_.remove_prefix(word.size());
        return true;
    }
    void skipSpaces() {
        while (take(' ') || take('\t')) {
        }
    }
    /// A whole number of up to four digits, and how many it had.
    std::optional<std::pair<int, int>> number() {
        int value = 0;
        int digits = 0;
        while (isDigit(next()) && digits < 4) {
            value = value * 10 + (next() - '0');
            rest_.remove_prefix(1);
            ++digits;
        }
        if (digits == 0 || isDigit(next())) return std::nullopt;
        return std::pair(value, digits);
    }
    void skipDigits() {
        while (isDigit(next())) rest_.remove_prefix(1);
    }

private:
    std::string_view rest_;
};

bool readDate(Cursor& at, WrittenMoment& moment) {
    const auto a = at.number();
    const char separator = at.next();
    if (!a || (separator != '-' && separator != '/' && separator != '.')) return false;
    at.take(separator);
    const auto b = at.number();
    if (!b || !at.take(separator)) return false;
    const auto c = at.number();
    if (!c) return false;
    if (a->second == 4) {
        moment.year = a->first;
        moment.first = b->first;
        moment.second = c->first;
        return true;
    }
    if (a->second > 2 || b->second > 2 || (c->second != 2 && c->second != 4)) return false;
    moment.year = c->second == 2 ? 2000 + c->first : c->first;
    moment.isOpen = separator != '.';
    moment.first = moment.isOpen ? a->first : b->first;
    moment.second = moment.isOpen ? b->first : a->first;
    return true;
}

bool readClock(Cursor& at, WrittenMoment& moment) {
    const auto hour = at.number();
    if (!hour || !at.take(':')) return false;
    const auto minute = at.number();
    int second = 0;
    if (at.take(':')) {
        const auto seconds = at.number();
        if (!seconds) return false;
        second = seconds->first;
        if (at.take('.') || at.take(',')) at.skipDigits();
    }
    if (!minute || minute->first > 59 || second > 59) return false;
    at.skipSpaces();
    int hours = hour->first;
    const bool isAfternoon = at.takeWord("pm") || at.takeWord("p.m.");
    const bool isMorning = !isAfternoon && (at.takeWord("am") || at.takeWord("a.m."));
    if (isAfternoon || isMorning) {
        if (hours < 1 || hours > 12) return false;
        hours = hours % 12 + (isAfternoon ? 12 : 0);
    }
    if (hours > 23) return false;
    moment.secondOfDay = (hours * 60 + minute->first) * 60 + second;
    return true;
}

/// "+02:00", "-0330", "+2"
std::optional<int> readOffset(Cursor& at) {
    const int sign = at.next() == '-' ? -1 : 1;
    if (!at.take('+') && !at.take('-')) return std::nullopt;
    const auto hours = at.number();
    if (!hours) return std::nullopt;
    int minutes =
        hours->second > 2 ? hours->first / 100 * 60 + hours->first % 100 : hours->first * 60;
    if (at.take(':')) {
        const auto more = at.number();
        if (!more) return std::nullopt;
        minutes += more->first;
    }
    if (minutes > 18 * 60) return std::nullopt;
    return sign * minutes;
}

// Columns of these are not what they seem.
constexpr std::array<std::string_view, 16> others{
    "dew",   "dewpoint", "point", "min",  "minimum", "max",   "maximum",  "heat",
    "index", "feels",    "wet",   "bulb", "vpd",     "alarm", "taupunkt", "absolute"};
constexpr std::array<std::string_view, 8> celsius{"c",
                                                  "\xC2\xB0"
                                                  "c",
                                                  "celsius",
                                                  "degc",
                                                  "deg",
                                                  "degrees",
                                                  "degree",
                                                  "\xC2\xB0"};
constexpr std::array<std::string_view, 4> fahrenheit{"f",
                                                     "\xC2\xB0"
                                                     "f",
                                                     "fahrenheit", "degf"};
constexpr std::array<std::string_view, 3> marks{"%", "utc", "gmt"};

template <class List>
bool isOneOf(const std::string& word, const List& list) {
    return std::find(list.begin(), list.end(), word) != list.end();
}

/// What names the column, without units.
std::vector<std::string> naming(const std::vector<std::string>& words) {
    std::vector<std::string> left;
    for (const auto& word : words) {
        const bool isUnit =
            isOneOf(word, celsius) || isOneOf(word, fahrenheit) || isOneOf(word, marks);
        if (!isUnit) left.push_back(word);
    }
    return left;
}

/// 2 for the very name, 1 for a name among other words, 0 for neither.
int likeness(const std::vector<std::string>& words, const std::string& name) {
    const auto wanted = headerWords(name);
    if (words == wanted) return 2;
    if (name.size() < 3) return 0;
    const auto found = std::search(words.begin(), words.end(), wanted.begin(), wanted.end());
    return found != words.end() ? 1 : 0;
}

using Header = std::vector<std::vector<std::string>>;

std::optional<std::size_t> findColumn(const Header& header, ColumnRole role,
                                      const AirRules& rules) {
    std::optional<std::size_t> best;
    int likest = 0;
    for (std::size_t i = 0; i < header.size(); ++i) {
        const auto isOther = [](const std::string& word) { return isOneOf(word, others); };
        if (std::any_of(header[i].begin(), header[i].end(), isOther)) continue;
        const auto words = naming(header[i]);
        for (const auto& name : rules.columns) {
            if (name.role != role) continue;
            const int like = likeness(words, name.words);
            if (like > likest) {
                likest = like;
                best = i;
            }
        }
        // A column headed by nothing but its unit.
        const bool isDegrees = std::any_of(
            header[i].begin(), header[i].end(),
            [](const auto& word) { return isOneOf(word, celsius) || isOneOf(word, fahrenheit); });
        if (words.empty() && isDegrees && role == ColumnRole::temperature && likest == 0) {
            likest = 1;
            best = i;
        }
    }
    return best;
}

/// "time (UTC)" and "time (GMT+2)".
std::optional<int> offsetOf(std::string_view cell) {
    const auto lower = lowerAscii(cell);
    for (const auto* zone : {"utc", "gmt"}) {
        const auto found = lower.find(zone);
        if (found == std::string::npos) continue;
        Cursor at(std::string_view(lower).substr(found + 3));
        at.skipSpaces();
        return readOffset(at).value_or(0);
    }
    return std::nullopt;
}

}  // namespace

std::optional<CivilDay> WrittenMoment::day(DateOrder order) const {
    const bool isDayFirst = isOpen && order == DateOrder::dayFirst;
    return isDayFirst ? civilDay({year, second, first}) : civilDay({year, first, second});
}

std::optional<WrittenMoment> readMoment(std::string_view text) {
    Cursor at(trimmed(text));
    WrittenMoment moment;
    if (!readDate(at, moment)) return std::nullopt;
    at.take(',');
    if (!at.take('T')) at.skipSpaces();
    if (at.isAtEnd()) return moment;
    if (!readClock(at, moment)) return std::nullopt;
    at.skipSpaces();
    if (at.isAtEnd()) return moment;
    if (at.takeWord("z") || at.takeWord("utc")) {
        moment.offsetMinutes = 0;
    } else {
        moment.offsetMinutes = readOffset(at);
        if (!moment.offsetMinutes) return std::nullopt;
    }
    return at.isAtEnd() ? std::optional(moment) : std::nullopt;
}

Reading readValue(std::string_view text, double& value) {
    auto plain = lowerAscii(trimmed(text));
    for (const auto unit :
         {degreeCelsius, degreeFahrenheit, std::string_view("c"), std::string_view("f"), degree,
          std::string_view("%rh"), std::string_view("%")}) {
        if (plain.size() > unit.size() && plain.ends_with(unit)) {
            plain = std::string(trimmed(plain.substr(0, plain.size() - unit.size())));
        }
    }
    if (plain.empty() || plain == "-" || plain == "--" || plain == "---" || plain == "nan" ||
        plain == "n/a" || plain == "null") {
        return Reading::none;
    }
    const auto comma = plain.find(',');
    if (comma != std::string::npos && plain.find('.') == std::string::npos) plain[comma] = '.';
    if (plain.front() == '+') plain.erase(0, 1);
    const auto number = parseNumber(plain);
    if (!number) return Reading::unreadable;
    value = *number;
    return Reading::number;
}

std::vector<std::string> headerWords(std::string_view cell) {
    auto lower = lowerAscii(cell);
    for (const auto& [one, both] : {std::pair(degreeCelsius,
                                              "\xC2\xB0"
                                              "c"),
                                    std::pair(degreeFahrenheit,
                                              "\xC2\xB0"
                                              "f")}) {
        const auto found = lower.find(one);
        if (found != std::string::npos) lower.replace(found, one.size(), both);
    }
    std::vector<std::string> words;
    std::string word;
    const auto end = [&] {
        if (!word.empty()) words.push_back(std::move(word));
        word.clear();
    };
    for (std::size_t i = 0; i < lower.size(); ++i) {
        const bool isDegree = std::string_view(lower).substr(i).starts_with(degree);
        if (isDegree || lower[i] == '%' || !isLetter(lower[i])) end();
        if (lower[i] == '%') {
            words.emplace_back("%");
        } else if (isDegree) {
            word = degree;
            ++i;
        } else if (isLetter(lower[i])) {
            word += lower[i];
        }
    }
    end();
    return words;
}

Columns findColumns(std::span<const std::string> header, const AirRules& rules) {
    Header words;
    words.reserve(header.size());
    for (const auto& cell : header) words.push_back(headerWords(cell));
    Columns columns;
    columns.temperature = findColumn(words, ColumnRole::temperature, rules);
    columns.humidity = findColumn(words, ColumnRole::humidity, rules);
    columns.moment = findColumn(words, ColumnRole::moment, rules);
    if (!columns.moment) {
        const auto date = findColumn(words, ColumnRole::date, rules);
        const auto clock = findColumn(words, ColumnRole::clock, rules);
        columns.moment = date ? date : clock;
        if (date && clock && date != clock) columns.clock = clock;
    }
    if (columns.temperature) {
        const auto& of = words[*columns.temperature];
        columns.isFahrenheit = std::any_of(of.begin(), of.end(), [](const std::string& word) {
            return isOneOf(word, fahrenheit);
        });
    }
    for (const auto& column : {columns.moment, columns.clock}) {
        if (column && !columns.offsetMinutes) columns.offsetMinutes = offsetOf(header[*column]);
    }
    return columns;
}

}  // namespace burrow::air
