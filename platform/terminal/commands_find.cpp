// Finding animals by number, name, tag, place, or words of a note.
#include <fmt/format.h>

#include <memory>

#include "room/own_profiles.h"
#include "room/search.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

struct Typed {
    Path book;
    std::vector<std::string> text;
    std::size_t limit = 50;
};

json toJson(const Found& found, const Kept& kept) {
    json marks = json::array();
    for (const auto& [from, to] : found.what.marks) marks.push_back({from, to});
    return {{"code", found.number},
            {"species", kept.subject.species},
            {"place", kept.place.text()},
            {"kept", kept.subject.isKept()},
            {"by", std::string(name(found.by))},
            {"text", found.what.text},
            {"marks", marks},
            {"entry", found.entry ? json(found.entry->text()) : json()},
            {"day", found.day ? json(isoDate(*found.day)) : json()}};
}

Result<Findings> findIn(Book& book, const Setting& setting, const Typed& typed) {
    BURROW_TRY(const auto info, roomInfo(book));
    const auto profiles = withOwnProfiles(setting.reference.profiles, info);
    return search(book, *profiles, fmt::format("{}", fmt::join(typed.text, " ")),
                  {typed.limit, placeWords(setting.console.words())});
}

int find(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    auto book = openToRead(typed.book, setting);
    if (!book) return console.trouble(book.error());
    const auto findings = findIn(*book, setting, typed);
    if (!findings) return console.trouble(findings.error());
    json list = json::array();
    for (const auto& found : findings->found) {
        const auto one = kept(*book, found.subject);
        if (!one) return console.trouble(one.error());
        if (!*one) continue;
        list.push_back(toJson(found, **one));
        console.line(fmt::format(
            "{:<6} {:<30} {}", found.number, (*one)->subject.species,
            console.say({"find.by." + std::string(name(found.by)), {{"what", found.what.text}}})));
    }
    const auto all = static_cast<std::int64_t>(findings->all);
    console.line(console.say({"find.count", {{"count", all}}}));
    if (findings->all > list.size()) {
        console.line(
            console.say({"find.first", {{"count", static_cast<std::int64_t>(list.size())}}}));
    }
    console.value({{"found", list}, {"all", all}});
    return done;
}

}  // namespace

void addFindCommand(CLI::App& app, Command& chosen) {
    auto typed = std::make_shared<Typed>();
    auto& t = *typed;
    auto* sub = addCommand(app, t.book, chosen, "find",
                           "Find animals by number, any name of the species, tag, place, or words "
                           "of a note.",
                           "burrow find kiln-row.book webbed dish\n"
                           "All words must fit; of the last one the start is enough.",
                           [typed](const Setting& s) { return find(s, *typed); });
    sub->add_option("TEXT", t.text, "what to look for")->required();
    sub->add_option("--limit", t.limit, "show at most so many")->check(CLI::Range(1, 10'000));
}

}  // namespace burrow::terminal
