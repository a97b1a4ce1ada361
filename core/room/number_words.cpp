#include "room/number_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "base/text.h"
#include "journal/book.h"

namespace burrow {
namespace {

/// The word for an id; the id itself where there is none, as for what a later version wrote.
std::string wordFor(std::string_view kind, std::string_view path, std::string_view id,
                    const Words& words) {
    const auto known = fmt::format("numbers.{}.{}", kind, path);
    return words.knows(known) ? words.say(known) : std::string(id);
}

std::string tableWord(std::string_view file, std::string_view table, const Words& words) {
    return wordFor("table", fmt::format("{}.{}", file, table), table, words);
}

/// The number's pattern with that in its hole; nothing where the words don't know the column.
std::optional<std::string> filled(const NumberKey& key, std::string value, const Words& words) {
    const auto id = fmt::format("numbers.column.{}.{}.{}", key.file, key.table, key.column);
    if (!words.knows(id)) return std::nullopt;
    return words.say(Message(id, {{"value", std::move(value)}}), CivilDay{});
}

}  // namespace

std::string numberText(double value) { return fmt::format("{}", value); }

std::string tableHeading(std::string_view file, std::string_view table, const Words& words) {
    return words.say(
        {"numbers.heading",
         {{"file", wordFor("file", file, file, words)}, {"table", tableWord(file, table, words)}}},
        CivilDay{});
}

std::string rowHeading(std::string_view row) {
    std::string text;
    for (const char c : row) {
        if (c == '.') text += ',';
        text += c == '.' || c == '_' ? ' ' : c;
    }
    if (!text.empty()) {
        text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
    }
    return text;
}

std::string columnName(const NumberKey& key, const Words& words) {
    const auto name = filled(key, {}, words);
    return name ? std::string(trimmed(*name)) : key.column;
}

std::string columnText(const NumberKey& key, double value, const Words& words) {
    const auto text = filled(key, numberText(value), words);
    return text ? *text : key.column + ' ' + numberText(value);
}

std::optional<NumberKey> numberOfSetting(std::string_view name) {
    if (!name.starts_with(setting::number)) return std::nullopt;
    return NumberKey::parse(name.substr(setting::number.size()));
}

std::string placeText(const NumberKey& key, const Words& words) {
    return words.say({"numbers.place",
                      {{"file", wordFor("file", key.file, key.file, words)},
                       {"table", tableWord(key.file, key.table, words)},
                       {"row", rowHeading(key.row)},
                       {"column", columnName(key, words)}}},
                     CivilDay{});
}

}  // namespace burrow
