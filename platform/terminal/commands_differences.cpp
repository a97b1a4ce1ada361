// Differences of books that were united, settling them, and taking a merge back.
#include <fmt/format.h>

#include "exchange/bundle.h"
#include "journal/differences.h"
#include "journal/fields.h"
#include "journal/merge.h"
#include "journal/rows.h"
#include "room/number_words.h"
#include "room/own_profiles.h"
#include "terminal/describe.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;
using Kind = Difference::Kind;

std::string_view name(Kind kind) {
    switch (kind) {
        case Kind::field: return "field";
        case Kind::amendment: return "amendment";
        case Kind::confidentialPart: return "confidential";
        case Kind::number: return "number";
        case Kind::fork: return "fork";
    }
    return {};
}

/// "214 Brachypelma hamorii", "Enclosure E12": what a keeper calls it.
Result<std::string> nameOf(Book& book, const Difference& difference, const Console& console) {
    switch (difference.type) {
        case ThingType::book: return console.say(Message{"difference.room"});
        case ThingType::enclosure: {
            BURROW_TRY(const auto home, enclosure(book, EnclosureId{difference.thing}));
            return console.say({"difference.enclosure", {{"name", home ? home->name : ""}}});
        }
        case ThingType::tag: {
            BURROW_TRY(const auto code, tagCode(book, difference.thing));
            return console.say({"difference.tag", {{"name", code}}});
        }
        case ThingType::subject: break;
    }
    BURROW_TRY(const auto found, kept(book, SubjectId{difference.thing}));
    if (!found) return console.say(Message{"difference.someone"});
    return fmt::format("{} {}", found->subject.number, found->subject.species);
}

Result<std::string> heading(Book& book, const Difference& difference, const Console& console) {
    if (difference.kind == Kind::number) {
        const auto count = static_cast<std::int64_t>(difference.choices.size());
        return console.say({"difference.number", {{"count", count}, {"number", difference.name}}});
    }
    if (difference.kind == Kind::fork) {
        return console.say({"difference.fork", {{"count", difference.times}}});
    }
    BURROW_TRY(const auto name, nameOf(book, difference, console));
    if (const auto species = speciesOfSetting(difference.name);
        species && difference.kind == Kind::field) {
        return console.say({"difference.profile", {{"species", *species}}});
    }
    if (const auto number = numberOfSetting(difference.name);
        number && difference.kind == Kind::field) {
        return placeText(*number, console.words());
    }
    if (difference.kind == Kind::field) {
        return console.say({"difference.field", {{"name", name}, {"field", difference.name}}});
    }
    BURROW_TRY(const auto shown, fact(book, *difference.fact));
    const auto event = difference.factKind ? spec(*difference.factKind).name : "";
    return console.say(
        {difference.kind == Kind::amendment ? "difference.amendment" : "difference.confidential",
         {{"name", name},
          {"event", std::string(event)},
          {"day", shown ? shown->day : CivilDay{}}}});
}

/// A value as a person reads it: texts without quotes, a body as its fields.
std::string plain(const json& value, const Console& console) {
    if (value.is_null()) return console.say(Message{"difference.nothing"});
    if (value.is_string()) return value.get<std::string>();
    if (!value.is_object()) return value.dump();
    std::string text;
    for (const auto& [field, each] : value.items()) {
        if (!text.empty()) text += ' ';
        text += fmt::format("{}={}", field, plain(each, console));
    }
    return text;
}

/// What one version of a profile says where the others say something else.
std::string profileWording(const Difference& difference, const Choice& choice,
                           const Console& console) {
    if (!choice.value.is_string()) return plain(choice.value, console);
    std::vector<std::string> versions{choice.value.get<std::string>()};
    for (const auto& other : difference.choices) {
        if (other.value.is_string()) versions.push_back(other.value.get<std::string>());
    }
    std::string text;
    const auto lines = differingLines(versions);  // outlives the loop over a part of it
    for (const auto& line : lines.front()) {
        if (!text.empty()) text += "; ";
        text += console.words().say(line.name) + ": " + console.say(line.value);
        if (!line.source.empty()) text += " (" + line.source + ")";
    }
    return text.empty() ? console.say(Message{"difference.profileKept"}) : text;
}

Result<std::string> wording(Book& book, const Difference& difference, const Choice& choice,
                            const Console& console) {
    if (difference.kind == Kind::fork) return console.say(Message{"difference.seen"});
    if (difference.kind == Kind::number) {
        BURROW_TRY(const auto found, kept(book, *choice.subject));
        const auto species = found ? found->subject.species : std::string();
        return console.say({"difference.keepsNumber", {{"species", species}}});
    }
    if (difference.kind == Kind::field && speciesOfSetting(difference.name)) {
        return profileWording(difference, choice, console);
    }
    if (difference.kind == Kind::field && choice.value.is_null() &&
        numberOfSetting(difference.name)) {
        return console.say(Message{"ruleFrom.shipped"});  // which holds without one's own
    }
    auto text = plain(choice.value, console);
    if (choice.day) text += ", " + console.words().day(*choice.day, console.today());
    return text;
}

json toJson(const Difference& difference, const Choice& choice, std::size_t place) {
    json object{{"choice", place + 1}, {"value", choice.value}};
    if (difference.kind == Kind::number) {
        object["subject"] = choice.subject->text();
    } else if (difference.kind != Kind::fork) {
        object["counts"] = place == 0;
        object["entry"] = choice.entry.text();
        object["device"] = choice.device.text();
        object["recorded_at"] = isoInstant(choice.recordedAt);
        object["at"] = choice.happenedAt ? json(isoInstant(*choice.happenedAt)) : json();
    }
    return object;
}

json toJson(const Difference& difference) {
    json object{{"key", difference.key()}, {"kind", std::string(name(difference.kind))}};
    if (difference.kind == Kind::fork) {
        object["device"] = difference.device->text();
        object["times"] = difference.times;
    } else if (difference.kind == Kind::number) {
        object["number"] = difference.name;
    } else {
        object["type"] = std::string(name(difference.type));
        object["thing"] = difference.thing.text();
        if (difference.kind == Kind::field) object["field"] = difference.name;
        if (difference.fact) object["fact"] = difference.fact->text();
        if (difference.factKind) object["event"] = std::string(spec(*difference.factKind).name);
    }
    for (std::size_t i = 0; i < difference.choices.size(); ++i) {
        object["choices"].push_back(toJson(difference, difference.choices[i], i));
    }
    return object;
}

int listDifferences(const Setting& setting, const Path& path) {
    auto& console = setting.console;
    auto book = openToRead(path, setting);
    if (!book) return console.trouble(book.error());
    const auto all = differences(*book);
    if (!all) return console.trouble(all.error());
    json list = json::array();
    for (const auto& difference : *all) {
        const auto title = heading(*book, difference, console);
        if (!title) return console.trouble(title.error());
        auto object = toJson(difference);
        object["text"] = *title;
        console.line(fmt::format("{}  {}", difference.key(), *title));
        for (std::size_t i = 0; i < difference.choices.size(); ++i) {
            const auto text = wording(*book, difference, difference.choices[i], console);
            if (!text) return console.trouble(text.error());
            object["choices"][i]["text"] = *text;
            console.line(fmt::format("  {}  {}", i + 1, *text));
        }
        list.push_back(std::move(object));
    }
    const auto count = static_cast<std::int64_t>(all->size());
    console.line(console.say(count == 0 ? Message{"said.noDifferences"}
                                        : Message{"said.differences", {{"count", count}}}));
    console.value({{"differences", std::move(list)}});
    return done;
}

int settleOne(const Setting& setting, const Path& path, const std::string& key, int choice) {
    auto& console = setting.console;
    auto book = openToWrite(path, setting);
    if (!book) return console.trouble(book.error());
    const auto all = differences(*book);
    if (!all) return console.trouble(all.error());
    const auto found = std::find_if(all->begin(), all->end(),
                                    [&](const Difference& each) { return each.key() == key; });
    if (found == all->end()) return console.trouble(Message{"difference.gone"});
    if (choice < 1 || static_cast<std::size_t>(choice) > found->choices.size()) {
        return console.trouble(Message{"difference.noChoice", {{"choice", choice}}});
    }
    const auto settled = settle(*book, *found, static_cast<std::size_t>(choice) - 1);
    if (!settled) return console.trouble(settled.error());
    console.line(console.say(Message{"said.settled"}));
    console.value(
        {{"key", key}, {"choice", choice}, {"left", static_cast<std::int64_t>(all->size()) - 1}});
    return done;
}

int takeBack(const Setting& setting, const Path& path) {
    auto& console = setting.console;
    auto book = openToWrite(path, setting);
    if (!book) return console.trouble(book.error());
    DeviceFiles files;
    const auto taken = exchange::takeBackBundle(*book, files);
    if (!taken) return console.trouble(taken.error());
    const auto& arrival = taken->arrival;
    console.line(console.say(
        {"said.takenBack", {{"entries", arrival.entries}, {"source", arrival.source}}}));
    console.value({{"arrival", arrival.number},
                   {"source", arrival.source},
                   {"at", isoInstant(arrival.at)},
                   {"entries", arrival.entries}});
    return done;
}

struct Typed {
    Path book;
    std::string key;
    int choice = 1;
};

}  // namespace

void addDifferenceCommands(CLI::App& app, Command& chosen) {
    auto typed = std::make_shared<Typed>();
    auto& t = *typed;
    addCommand(app, t.book, chosen, "differences",
               "What two devices wrote differently, and what counts until it is settled.",
               "burrow differences kiln-row.book",
               [typed](const Setting& s) { return listDifferences(s, typed->book); });

    auto* settle = addCommand(
        app, t.book, chosen, "settle", "Settle a difference by one of its choices.",
        "burrow settle kiln-row.book 3fa91c07 2",
        [typed](const Setting& s) { return settleOne(s, typed->book, typed->key, typed->choice); });
    settle->add_option("DIFFERENCE", t.key, "as `burrow differences` names it")->required();
    settle->add_option("CHOICE", t.choice, "its number, from 1")->required();

    addCommand(app, t.book, chosen, "take-back",
               "Take back all that the newest merge brought, as if it had never come.",
               "burrow take-back kiln-row.book",
               [typed](const Setting& s) { return takeBack(s, typed->book); });
}

}  // namespace burrow::terminal
