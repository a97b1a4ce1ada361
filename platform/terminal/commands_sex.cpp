// The evidence for an animal's sex, whose moults wait to be judged, and sizes over its moults.
#include <fmt/format.h>

#include <cmath>
#include <memory>

#include "room/own_profiles.h"
#include "room/sex_case.h"
#include "room/sex_words.h"
#include "room/sizes.h"
#include "room/tables.h"
#include "terminal/describe_sex.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

struct Typed {
    Path book;
    std::string tag;
};

/// A book to read, with the species known in it.
struct Known {
    Book book;
    std::shared_ptr<const Profiles> profiles;
    std::shared_ptr<const RoomTables> tables;
};

Result<Known> known(const Setting& setting, const Path& path) {
    BURROW_TRY(auto book, openToRead(path, setting));
    BURROW_TRY(const auto info, roomInfo(book));
    auto profiles = withOwnProfiles(setting.reference.profiles, info);
    auto tables = setting.reference.numbers.with(info);
    return Known{std::move(book), std::move(profiles), std::move(tables)};
}

Result<SexCase> caseOf(Known& at, const std::string& tag) {
    BURROW_TRY(const auto subject, findSubject(at.book, tag));
    BURROW_TRY(auto found, sexCase(at.book, subject, at.tables->sexing, *at.profiles));
    if (!found) return fail(Trouble::notFound, Message{"subject.missing"});
    return *std::move(found);
}

void print(const SexCase& at, const Console& console) {
    const auto& finding = at.finding;
    const auto& subject = at.kept.subject;
    const auto stop =
        finding.stop ? ", " + console.words().say("clarity." + std::string(name(*finding.stop)))
                     : std::string();
    console.line(fmt::format("{}  {}. {}{}. {}", subject.number, subject.species,
                             console.say(verdictMessage(finding)), stop,
                             console.say(chanceMessage(finding.female))));
    if (finding.ledger.empty()) console.line(console.say({"sexing.noEvidence"}));
    for (const auto& line : finding.ledger) {
        const auto judge =
            line.seen.judge.empty()
                ? std::string()
                : " (" + console.say({"sexing.byJudge", {{"judge", line.seen.judge}}}) + ")";
        console.line(fmt::format("  {}  {}{}", console.words().day(line.seen.day, console.today()),
                                 console.say(line.why), judge));
        console.line("      " + console.say(line.counted));
    }
    for (const auto& conflict : finding.conflicts) console.line("! " + console.say(conflict.why));
    for (const auto& what : finding.wouldSettle) {
        console.line("? " + console.say(what.why));
        if (what.ifFemale && what.ifMale) console.line("      " + console.say(rangeMessage(what)));
    }
    if (!finding.ledger.empty()) console.line(console.say({"sexing.ruleOfThumb"}));
}

int list(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    auto at = known(setting, typed.book);
    if (!at) return console.trouble(at.error());
    const auto rows = toBeSexed(at->book, at->tables->sexing, *at->profiles);
    if (!rows) return console.trouble(rows.error());
    json value = json::array();
    for (const auto& row : *rows) {
        const auto who = kept(at->book, row.subject);
        if (!who) return console.trouble(who.error());
        if (!*who) continue;
        const auto& subject = (*who)->subject;
        value.push_back(toJson(row, subject));
        console.line(fmt::format("{:<6} {}. {}{}", subject.number, subject.species,
                                 console.say({"sexing.title", {{"day", row.moult.day}}}),
                                 row.waiting == 0
                                     ? " (" + console.words().say("sexing.lookedOpen") + ")"
                                     : std::string()));
    }
    if (rows->empty()) console.line(console.say({"sexing.noneWaits"}));
    console.value(value);
    return done;
}

int sex(const Setting& setting, const Typed& typed) {
    if (typed.tag.empty()) return list(setting, typed);
    auto& console = setting.console;
    auto at = known(setting, typed.book);
    if (!at) return console.trouble(at.error());
    const auto found = caseOf(*at, typed.tag);
    if (!found) return console.trouble(found.error());
    print(*found, console);
    console.value(toJson(*found, console));
    return done;
}

void print(const std::vector<growth::Measured>& values, growth::Measure measure,
           const Console& console) {
    for (const auto& value : values) {
        console.line(
            fmt::format("  {:<9} {:<12} {:.1f} mm{}", growth::name(measure),
                        console.words().day(value.day, console.today()), value.size.value,
                        value.factor ? fmt::format("  x {:.2f}", *value.factor) : std::string()));
    }
}

int sizes(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    auto at = known(setting, typed.book);
    if (!at) return console.trouble(at.error());
    const auto subject = findSubject(at->book, typed.tag);
    if (!subject) return console.trouble(subject.error());
    const auto found = sizesOf(at->book, *subject, *at->profiles);
    if (!found) return console.trouble(found.error());
    if (!*found) {
        return console.trouble(Message{"subject.missing"});
    }
    const auto& all = **found;
    print(all.carapaces, growth::Measure::carapace, console);
    print(all.spans, growth::Measure::span, console);
    if (!all.says.id.empty()) console.line(console.say(all.says));
    if (all.estimate && all.estimate->isBeyond) console.line(console.say({"growth.beyond"}));
    console.value(toJson(all, console));
    return done;
}

}  // namespace

void addSexCommands(CLI::App& app, Command& chosen) {
    auto typed = std::make_shared<Typed>();
    auto* sexCommand = addCommand(
        app, typed->book, chosen, "sex",
        "The chance that an animal is female, and all evidence; without a TAG, whose moults wait.",
        "burrow sex kiln-row.book 214 --json",
        [typed](const Setting& s) { return sex(s, *typed); });
    sexCommand->add_option("TAG", typed->tag, "its number, or the code of its tag (all who wait)");
    auto* sizesCommand = addCommand(
        app, typed->book, chosen, "sizes",
        "Carapace and leg span over an animal's moults, and the span by its species.",
        "burrow sizes kiln-row.book 214", [typed](const Setting& s) { return sizes(s, *typed); });
    sizesCommand->add_option("TAG", typed->tag, "its number, or the code of its tag")->required();
    addOpinionCommands(app, chosen);
}

}  // namespace burrow::terminal
