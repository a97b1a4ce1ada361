// The numbers of the tables with their sources, and the keeper's own in their places.
#include <fmt/format.h>

#include <array>

#include "base/text.h"
#include "room/own_numbers.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

struct Typed {
    Path book;
    std::string place;                 ///< "sexing", "sexing/moult" or longer; empty: all of them
    std::optional<std::string> value;  ///< to be set; empty gives the shipped number back
};

Done write(Book& book, const Setting& setting, const Typed& typed) {
    const auto key = NumberKey::parse(typed.place);
    if (!key) return fail(Trouble::badInput, {"numbers.unknown", {{"key", typed.place}}});
    NumberChange change{*key, std::nullopt};
    if (!typed.value->empty()) {
        change.value = parseNumber(trimmed(*typed.value));
        if (!change.value) {
            return fail(Trouble::badInput, {"numbers.noNumber", {{"value", *typed.value}}});
        }
    }
    BURROW_TRY(const auto info, roomInfo(book));
    const std::array changes{change};
    BURROW_TRY(const auto fields, setting.reference.numbers.fieldsOf(changes, info));
    if (fields.empty()) return {};
    BURROW_TRY(const auto written, book.record(SetDraft{ThingType::book, book.id().uuid, fields}));
    static_cast<void>(written);
    return {};
}

int list(Book& book, const Setting& setting, const std::string& place) {
    auto& console = setting.console;
    const auto info = roomInfo(book);
    if (!info) return console.trouble(info.error());
    json value = json::array();
    for (const auto& table : setting.reference.numbers.list(*info)) {
        for (const auto& row : table.rows) {
            for (const auto& number : row.numbers) {
                const auto key = number.key.text();
                // "sexing/moult" is a part of "sexing/moult/7_to_11.clearly/plate_ratio", "sex" is none.
                const bool isMeant = place.empty() || key == place || key.starts_with(place + '/');
                if (!isMeant) continue;
                value.push_back({{"key", key},
                                 {"value", number.value},
                                 {"shipped", number.shipped},
                                 {"own", number.isOwn},
                                 {"fixed", number.isFixed},
                                 {"source", row.source}});
                console.line(fmt::format(
                    "{:<48} {:<8} {}", key, number.value,
                    number.isOwn ? console.say({"said.ownNumber",
                                                {{"shipped", fmt::format("{}", number.shipped)}}})
                                 : row.source));
            }
        }
    }
    if (value.empty()) {
        return console.trouble(Message{"numbers.unknown", {{"key", place}}});
    }
    console.value(value);
    return done;
}

int numbers(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    auto book = typed.value ? openToWrite(typed.book, setting) : openToRead(typed.book, setting);
    if (!book) return console.trouble(book.error());
    if (typed.value) {
        if (const auto written = write(*book, setting, typed); !written) {
            return console.trouble(written.error());
        }
    }
    return list(*book, setting, typed.place);
}

}  // namespace

void addNumbersCommand(CLI::App& app, Command& chosen) {
    auto typed = std::make_shared<Typed>();
    auto* command =
        addCommand(app, typed->book, chosen, "numbers",
                   "The numbers of the tables (prey, homes, air, sexing, measuring), and your own.",
                   "burrow numbers kiln-row.book sexing/moult/7_to_11.clearly/plate_ratio 10",
                   [typed](const Setting& setting) { return numbers(setting, *typed); });
    command->add_option("PLACE", typed->place, "a table, a row or one number of it");
    command->add_option("VALUE", typed->value, "your own number; \"\" gives the shipped one back");
}

}  // namespace burrow::terminal
