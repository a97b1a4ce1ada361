#include "words/words.h"

#include <fmt/format.h>

#include <cstdlib>
#include <nlohmann/json.hpp>

#include "base/text.h"

namespace burrow {
namespace {

/// Deep enough for a term inside a term; a catalogue that refers to itself stops here.
constexpr int deepest = 4;

/// English has two classes. A language with others adds its rule here and its forms in its file.
std::size_t pluralClass(double number) { return number == 1 ? 0 : 1; }

std::vector<std::string> takeList(std::unordered_map<std::string, std::string>& patterns,
                                  const std::string& id) {
    std::vector<std::string> list;
    for (const auto part : split(patterns[id], '|')) list.emplace_back(part);
    return list;
}

double numberOf(const MessageValue& value) {
    if (const auto* whole = std::get_if<std::int64_t>(&value)) return static_cast<double>(*whole);
    if (const auto* real = std::get_if<double>(&value)) return *real;
    return 0;
}

}  // namespace

std::string plainNumber(double value) {
    auto text = fmt::format("{:.2f}", value);
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

Result<Words> Words::fromJson(std::span<const std::string> files) {
    Words words;
    for (const auto& file : files) {
        const auto parsed = nlohmann::json::parse(file, nullptr, false);
        if (!parsed.is_object()) return fail(Trouble::badInput, {"words.unreadable"});
        for (const auto& [id, pattern] : parsed.items()) {
            if (!pattern.is_string() || words.patterns_.contains(id)) {
                return fail(Trouble::badInput, {"words.unreadable"});
            }
            words.patterns_[id] = pattern.get<std::string>();
        }
    }
    words.weekdays_ = takeList(words.patterns_, "calendar.weekdays");
    words.months_ = takeList(words.patterns_, "calendar.months");
    words.shortMonths_ = takeList(words.patterns_, "calendar.shortMonths");
    if (words.weekdays_.size() != 7 || words.months_.size() != 12 ||
        words.shortMonths_.size() != 12) {
        return fail(Trouble::badInput, {"words.unreadable"});
    }
    return words;
}

std::string Words::say(const Message& message, CivilDay today) const {
    const auto found = patterns_.find(message.id);
    if (found == patterns_.end()) return "[" + message.id + "]";
    return fill(found->second, message, today, 0);
}

std::string Words::say(std::string_view id) const { return say(Message(std::string(id)), {}); }

std::string Words::day(CivilDay day, CivilDay today) const {
    const int away = day - today;
    if (away > 0 && away < 7) return weekdays_[static_cast<std::size_t>(weekday(day))];
    const auto date = yearMonthDay(day);
    auto text = fmt::format("{} {}", date.day, months_[static_cast<std::size_t>(date.month - 1)]);
    if (std::abs(away) > 300 || (date.year != yearMonthDay(today).year && std::abs(away) > 150)) {
        text += fmt::format(" {}", date.year);
    }
    return text;
}

std::string Words::longDay(CivilDay day) const {
    return fmt::format("{} {}", weekdays_[static_cast<std::size_t>(weekday(day))],
                       this->day(day, day));
}

std::string Words::month(CivilDay day) const {
    const auto date = yearMonthDay(day);
    return fmt::format("{} {}", shortMonths_[static_cast<std::size_t>(date.month - 1)], date.year);
}

bool Words::knows(std::string_view id) const { return patterns_.contains(std::string(id)); }

std::vector<std::string> Words::ids() const {
    std::vector<std::string> all;
    all.reserve(patterns_.size());
    for (const auto& [id, pattern] : patterns_) all.push_back(id);
    return all;
}

std::string Words::fill(std::string_view pattern, const Message& message, CivilDay today,
                        int depth) const {
    std::string text;
    while (!pattern.empty()) {
        const auto open = pattern.find('{');
        text += pattern.substr(0, open);
        if (open == std::string_view::npos) break;
        pattern.remove_prefix(open + 1);
        const auto close = pattern.find('}');
        if (close == std::string_view::npos) break;
        text += hole(pattern.substr(0, close), message, today, depth);
        pattern.remove_prefix(close + 1);
    }
    return text;
}

std::string Words::hole(std::string_view hole, const Message& message, CivilDay today,
                        int depth) const {
    const bool isTerm = hole.starts_with('@');
    if (isTerm) hole.remove_prefix(1);
    const auto colon = hole.find(':');
    const auto name = hole.substr(0, colon);
    const auto* value = message.find(name);
    if (value == nullptr) return fmt::format("[{}]", name);
    if (isTerm) {
        auto shown = show(*value, today);
        const auto found = patterns_.find(fmt::format("{}.{}", name, shown));
        if (found == patterns_.end() || depth == deepest) return shown;
        return fill(found->second, message, today, depth + 1);
    }
    if (colon == std::string_view::npos) return show(*value, today);
    const auto forms = split(hole.substr(colon + 1), '|');
    const auto number = numberOf(*value);
    std::string form(forms[std::min(pluralClass(number), forms.size() - 1)]);
    if (const auto at = form.find('#'); at != std::string::npos) {
        form.replace(at, 1, plainNumber(number));
    }
    return form;
}

std::string Words::show(const MessageValue& value, CivilDay today) const {
    if (const auto* text = std::get_if<std::string>(&value)) return withoutSteering(*text);
    if (const auto* date = std::get_if<CivilDay>(&value)) return day(*date, today);
    return plainNumber(numberOf(value));
}

}  // namespace burrow
