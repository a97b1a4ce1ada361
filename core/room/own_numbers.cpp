#include "room/own_numbers.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <span>

#include "base/text.h"
#include "room/tables.h"

namespace burrow {
namespace {

/// Rows and tables stand in the order of the file.
using Json = nlohmann::ordered_json;
using Documents = std::map<std::string, Json, std::less<>>;

/// The limits of size bands only hold together with other rows; and frames of the running camera are
/// judged where no book is at hand.
bool isFixed(const NumberKey& key) {
    const bool isOfCamera = key.file == "measure" && key.row.starts_with("hint_");
    const bool isOfBands = key.column == "from_mm" || key.column == "below_mm" ||
                           (key.file == "prey" && key.table == "bands");
    return isOfCamera || isOfBands;
}

std::string settingOf(const NumberKey& key) { return std::string(setting::number) + key.text(); }

/// As the book holds it: the shortest text that reads back as the same number.
std::string textOf(double value) { return fmt::format("{}", value); }

struct OwnNumber {
    NumberKey key;
    double value = 0;
};

/// The settings that hold numbers.
std::vector<std::pair<std::string, std::string>> settingsOf(const RoomInfo& info) {
    std::vector<std::pair<std::string, std::string>> settings;
    for (auto at = info.others.lower_bound(std::string(setting::number));
         at != info.others.end() && at->first.starts_with(setting::number); ++at) {
        settings.emplace_back(*at);
    }
    return settings;
}

std::vector<OwnNumber> ownNumbers(const RoomInfo& info, std::vector<std::string>* passedOver) {
    std::vector<OwnNumber> own;
    for (const auto& [name, text] : settingsOf(info)) {
        const auto place = std::string_view(name).substr(setting::number.size());
        const auto key = NumberKey::parse(place);
        const auto value = parseNumber(text);
        if (key && value) {
            own.push_back({*key, *value});
        } else if (passedOver != nullptr) {
            passedOver->emplace_back(place);
        }
    }
    return own;
}

/// The row of that place; null where it has no such number.
Json* rowOf(Documents& documents, const NumberKey& key) {
    const auto document = documents.find(key.file);
    if (document == documents.end() || isFixed(key)) return nullptr;
    const auto table = document->second.find(key.table);
    if (table == document->second.end()) return nullptr;
    for (auto& row : *table) {
        if (row.at("id") != key.row) continue;
        const auto cell = row.find(key.column);
        return cell != row.end() && cell->is_number() ? &row : nullptr;
    }
    return nullptr;
}

Json* cellOf(Documents& documents, const NumberKey& key) {
    auto* row = rowOf(documents, key);
    return row == nullptr ? nullptr : &row->at(key.column);
}

/// Whoever is shown where a number comes from is told whose it is.
void putOwn(Json& row, const OwnNumber& own) {
    constexpr const char* mark = "your own; shipped: ";
    auto source = row.at("source").get<std::string>();
    if (!source.starts_with(mark)) row.at("source") = mark + source;
    row.at(own.key.column) = own.value;
}

TableTexts textsOf(const Documents& documents) {
    TableTexts texts;
    for (const auto& [file, document] : documents) texts[file] = document.dump();
    return texts;
}

/// The shipped texts as documents. They were read once already, so they are well-formed.
Documents documentsOf(const TableTexts& texts) {
    Documents documents;
    for (const auto& [file, text] : texts) documents[file] = Json::parse(text);
    return documents;
}

/// The documents with the keeper's own numbers as far as they can stand there, and what they make.
struct Settled {
    Documents documents;
    RoomTables tables;
};

Settled settle(Documents documents, const RoomTables& shipped, std::vector<OwnNumber> own,
               std::vector<std::string>* passedOver) {
    std::erase_if(own, [&](const OwnNumber& each) {
        const bool isUnknown = cellOf(documents, each.key) == nullptr;
        if (isUnknown && passedOver != nullptr) passedOver->push_back(each.key.text());
        return isUnknown;
    });
    Settled settled{documents, shipped};
    if (own.empty()) return settled;
    for (const auto& each : own) putOwn(*rowOf(settled.documents, each.key), each);
    if (auto all = RoomTables::fromJson(textsOf(settled.documents))) {
        settled.tables = *std::move(all);
        return settled;
    }
    // One at a time, so that only what can't be is passed over.
    settled.documents = std::move(documents);
    for (const auto& each : own) {
        auto& row = *rowOf(settled.documents, each.key);
        const Json before = row;
        putOwn(row, each);
        if (auto tables = RoomTables::fromJson(textsOf(settled.documents))) {
            settled.tables = *std::move(tables);
        } else {
            row = before;
            if (passedOver != nullptr) passedOver->push_back(each.key.text());
        }
    }
    return settled;
}

/// Why the numbers can't stand there, for whoever typed them: of several, the one that is named.
tl::unexpected<Error> refused(const Error& why, std::span<const NumberChange> changes) {
    const auto word = [&](const char* argument) {
        const auto* value = why.message.find(argument);
        const auto* text = value == nullptr ? nullptr : std::get_if<std::string>(value);
        return text == nullptr ? std::string() : *text;
    };
    const NumberChange* about = nullptr;
    for (const auto& change : changes) {
        if (!change.value) continue;
        const bool isNamed = change.key.row == word("row") && change.key.column == word("field");
        if (about == nullptr || isNamed) about = &change;
    }
    const auto typed = about == nullptr ? std::string() : textOf(*about->value);
    const auto* least = why.message.find("least");
    const auto* most = why.message.find("most");
    if (least == nullptr || most == nullptr) {
        return fail(Trouble::badInput, {"numbers.together", {{"value", typed}}});
    }
    const auto limit = [](const MessageValue& of) { return textOf(std::get<double>(of)); };
    return fail(
        Trouble::badInput,
        {"numbers.range", {{"value", typed}, {"least", limit(*least)}, {"most", limit(*most)}}});
}

}  // namespace

std::string NumberKey::text() const { return file + '/' + table + '/' + row + '/' + column; }

std::optional<NumberKey> NumberKey::parse(std::string_view text) {
    const auto parts = split(text, '/');
    if (parts.size() != 4) return std::nullopt;
    for (const auto part : parts) {
        if (part.empty()) return std::nullopt;
    }
    return NumberKey{std::string(parts[0]), std::string(parts[1]), std::string(parts[2]),
                     std::string(parts[3])};
}

bool haveSameNumbers(const RoomInfo& a, const RoomInfo& b) {
    return settingsOf(a) == settingsOf(b);
}

int NumberTable::ownNumbers() const {
    int count = 0;
    for (const auto& row : rows) {
        count +=
            static_cast<int>(std::count_if(row.numbers.begin(), row.numbers.end(),
                                           [](const TableNumber& number) { return number.isOwn; }));
    }
    return count;
}

Result<NumberTables> NumberTables::fromJson(TableTexts texts) {
    BURROW_TRY(auto shipped, RoomTables::fromJson(texts));
    return NumberTables(std::move(texts), std::make_shared<const RoomTables>(std::move(shipped)));
}

std::shared_ptr<const RoomTables> NumberTables::with(const RoomInfo& info,
                                                     std::vector<std::string>* passedOver) const {
    auto own = ownNumbers(info, passedOver);
    if (own.empty()) return shipped_;
    return std::make_shared<const RoomTables>(
        settle(documentsOf(texts_), *shipped_, std::move(own), passedOver).tables);
}

std::vector<NumberTable> NumberTables::list(const RoomInfo& info) const {
    const auto shipped = documentsOf(texts_);
    std::vector<std::string> passedOver;
    const auto own = ownNumbers(info, nullptr);
    auto settled = settle(shipped, *shipped_, own, &passedOver);
    const auto isOwn = [&](const NumberKey& key) {
        return std::any_of(own.begin(), own.end(),
                           [&](const OwnNumber& each) { return each.key == key; }) &&
               std::find(passedOver.begin(), passedOver.end(), key.text()) == passedOver.end();
    };
    std::vector<NumberTable> tables;
    for (const auto& [file, document] : shipped) {
        for (const auto& [name, items] : document.items()) {
            NumberTable table{file, name, {}};
            for (const auto& item : items) {
                NumberRow row{item.at("id"), item.at("source"), {}};
                for (const auto& [column, cell] : item.items()) {
                    if (!cell.is_number()) continue;
                    const NumberKey key{file, name, row.id, column};
                    const auto* holds = cellOf(settled.documents, key);
                    const double was = cell.get<double>();
                    row.numbers.push_back({key, holds == nullptr ? was : holds->get<double>(), was,
                                           isOwn(key), isFixed(key)});
                }
                if (!row.numbers.empty()) table.rows.push_back(std::move(row));
            }
            if (!table.rows.empty()) tables.push_back(std::move(table));
        }
    }
    return tables;
}

Result<FieldValues> NumberTables::fieldsOf(std::span<const NumberChange> changes,
                                           const RoomInfo& info) const {
    auto shipped = documentsOf(texts_);
    auto documents = settle(shipped, *shipped_, ownNumbers(info, nullptr), nullptr).documents;
    FieldValues fields;
    for (const auto& change : changes) {
        auto* cell = cellOf(documents, change.key);
        if (cell == nullptr) {
            const char* id = isFixed(change.key) ? "numbers.fixed" : "numbers.unknown";
            return fail(Trouble::notFound, {id, {{"key", change.key.text()}}});
        }
        const auto usual = cellOf(shipped, change.key)->get<double>();
        const double value = change.value.value_or(usual);
        *cell = value;
        const auto name = settingOf(change.key);
        const auto held = info.others.find(name);
        const bool isHeld = held != info.others.end();
        if (value == usual) {
            if (isHeld) fields[name] = nullptr;
        } else if (!isHeld || held->second != textOf(value)) {
            fields[name] = textOf(value);
        }
    }
    if (const auto tables = RoomTables::fromJson(textsOf(documents)); !tables) {
        return refused(tables.error(), changes);
    }
    return fields;
}

}  // namespace burrow
