// Commands about species: what is known of them, and profiles of the keeper's own.
#include <fmt/format.h>

#include <algorithm>
#include <memory>

#include "base/files.h"
#include "documents/cautions.h"
#include "husbandry/profile_lines.h"
#include "husbandry/profile_share.h"
#include "room/own_profiles.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

struct Typed {
    Path book;
    std::string species;
    std::vector<std::string> names;
    Path exportTo;
    Path importFrom;
    bool remove = false;
};

std::string joined(const std::vector<std::string>& names) {
    return fmt::format("{}", fmt::join(names, ", "));
}

bool isOwn(const Profile& profile) { return profile.origin == ProfileOrigin::keeper; }

json toJson(const Profile& profile, const Console& console) {
    auto value = json::parse(profileText(profile));
    value["origin"] = isOwn(profile) ? "you" : "shipped";
    value["kind"] = console.say(kindOf(profile));
    value["cautions"] = json::array();
    for (const auto caution : cautions(profile)) {
        value["cautions"].push_back(documents::cautionWord(caution, console.words()));
    }
    return value;
}

/// The profile found by any of its names, or trouble that names those that are like it.
Result<const Profile*> lookUp(const Profiles& profiles, const std::string& name) {
    if (const auto* found = profiles.find(name)) return found;
    constexpr std::size_t mostSuggested = 5;
    const auto close = profiles.suggest(name, mostSuggested);
    if (close.empty()) return fail(Trouble::notFound, {"profile.unknown", {{"name", name}}});
    return fail(Trouble::notFound,
                {"profile.unknownLike", {{"name", name}, {"species", joined(close)}}});
}

/// What a book knows, with what can't be read of it.
struct Known {
    RoomInfo info;
    std::shared_ptr<const Profiles> profiles;
};

Result<Known> knownIn(Book& book, const Setting& setting) {
    BURROW_TRY(auto info, roomInfo(book));
    auto profiles = withOwnProfiles(setting.reference.profiles, info);
    return Known{std::move(info), std::move(profiles)};
}

Result<std::vector<Profile>> choose(const Known& known, const std::vector<std::string>& names) {
    std::vector<Profile> profiles;
    if (names.empty()) {
        for (const auto& profile : known.profiles->all()) {
            if (isOwn(profile)) profiles.push_back(profile);
        }
        if (profiles.empty()) return fail(Trouble::notFound, Message{"profiles.noneOwn"});
        return profiles;
    }
    for (const auto& name : names) {
        BURROW_TRY(const auto* profile, lookUp(*known.profiles, name));
        const bool isThere = std::ranges::any_of(
            profiles, [&](const Profile& other) { return other.name == profile->name; });
        if (!isThere) profiles.push_back(*profile);
    }
    return profiles;
}

int exportProfiles(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    auto book = openToRead(typed.book, setting);
    if (!book) return console.trouble(book.error());
    const auto known = knownIn(*book, setting);
    if (!known) return console.trouble(known.error());
    const auto profiles = choose(*known, typed.names);
    if (!profiles) return console.trouble(profiles.error());
    std::error_code ignored;
    if (std::filesystem::equivalent(typed.exportTo, typed.book, ignored)) {
        return console.trouble(
            Message{"profiles.ontoBook", {{"file", typed.exportTo.filename().string()}}});
    }
    const auto text = sharedProfilesText(*profiles);
    if (const auto written = DeviceFiles().write(typed.exportTo, bytesOf(text)); !written) {
        return console.trouble(written.error());
    }
    const auto count = static_cast<std::int64_t>(profiles->size());
    console.line(
        console.say({"said.wroteProfiles", {{"count", count}, {"file", typed.exportTo.string()}}}));
    json names = json::array();
    for (const auto& profile : *profiles) names.push_back(profile.name);
    console.value({{"file", typed.exportTo.string()}, {"species", names}});
    return done;
}

Result<KeptProfiles> takeIn(const Setting& setting, const Typed& typed) {
    BURROW_TRY(const auto bytes, DeviceFiles().read(typed.importFrom, largestSharedProfiles));
    BURROW_TRY(const auto profiles, sharedProfiles(textOf(bytes)));
    BURROW_TRY(auto book, openToWrite(typed.book, setting));
    return keepProfiles(book, setting.reference.profiles, profiles);
}

int importProfiles(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    const auto kept = takeIn(setting, typed);
    if (!kept) return console.trouble(kept.error());
    const auto size = [](const auto& list) { return static_cast<std::int64_t>(list.size()); };
    console.line(
        console.say({"said.tookProfiles",
                     {{"count", size(kept->added) + size(kept->replaced) + size(kept->same)},
                      {"added", size(kept->added)},
                      {"replaced", size(kept->replaced)},
                      {"same", size(kept->same)}}}));
    console.value({{"added", kept->added}, {"replaced", kept->replaced}, {"same", kept->same}});
    return done;
}

int listProfiles(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    auto book = openToRead(typed.book, setting);
    if (!book) return console.trouble(book.error());
    const auto known = knownIn(*book, setting);
    if (!known) return console.trouble(known.error());
    std::vector<const Profile*> shown;
    for (const auto& profile : known->profiles->all()) shown.push_back(&profile);
    if (!typed.names.empty()) {
        shown.clear();
        for (const auto& name : typed.names) {
            const auto found = lookUp(*known->profiles, name);
            if (!found) return console.trouble(found.error());
            shown.push_back(*found);
        }
    }
    json list = json::array();
    for (const auto* profile : shown) {
        list.push_back(toJson(*profile, console));
        console.line(fmt::format(
            "{:<30} {:<26} {}{}", profile->name, console.say(kindOf(*profile)),
            joined(profile->tradeNames),
            isOwn(*profile) ? " [" + console.words().say("profile.origin.you") + "]" : ""));
    }
    for (const auto& species : ownProfiles(known->info).unreadable) {
        console.line(console.say({"profile.gone", {{"species", species}}}));
    }
    console.value(list);
    return done;
}

int carryOut(const Setting& setting, const Typed& typed) {
    if (!typed.exportTo.empty()) return exportProfiles(setting, typed);
    if (!typed.importFrom.empty()) return importProfiles(setting, typed);
    return listProfiles(setting, typed);
}

int removeProfile(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    auto book = openToWrite(typed.book, setting);
    if (!book) return console.trouble(book.error());
    const auto known = knownIn(*book, setting);
    if (!known) return console.trouble(known.error());
    // By any of its names; one that can't be read is only known by the valid one.
    const auto* found = known->profiles->find(typed.species);
    const auto species = found != nullptr ? found->name : typed.species;
    const auto dropped = dropProfile(*book, species);
    if (!dropped) return console.trouble(dropped.error());
    const auto* shipped = setting.reference.profiles.find(species);
    console.line(console.say({"said.droppedProfile", {{"species", species}}}));
    if (shipped != nullptr) {
        console.line(console.say({"said.shippedAgain", {{"species", shipped->name}}}));
    }
    console.value(
        {{"removed", species}, {"shipped", shipped != nullptr ? json(shipped->name) : json()}});
    return done;
}

int showProfile(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    auto book = openToRead(typed.book, setting);
    if (!book) return console.trouble(book.error());
    const auto known = knownIn(*book, setting);
    if (!known) return console.trouble(known.error());
    const auto found = lookUp(*known->profiles, typed.species);
    if (!found) return console.trouble(found.error());
    const auto& profile = **found;
    const auto& words = console.words();
    console.line(
        fmt::format("{}  {} [{}]", profile.name, console.say(kindOf(profile)),
                    words.say(isOwn(profile) ? "profile.origin.you" : "profile.origin.shipped")));
    for (const auto caution : cautions(profile)) {
        console.line(fmt::format("! {} {}", documents::cautionHeading(caution, words),
                                 documents::cautionAdvice(caution, words)));
    }
    for (const auto& line : profileLines(profile)) {
        console.line(fmt::format("{:<14} {}{}", words.say(line.name), console.say(line.value),
                                 line.source.empty() ? "" : "  (" + line.source + ")"));
    }
    console.value(toJson(profile, console));
    return done;
}

}  // namespace

void addProfileCommands(CLI::App& app, Command& chosen) {
    auto typed = std::make_shared<Typed>();
    auto& t = *typed;
    auto* list =
        addCommand(app, t.book, chosen, "profiles",
                   "The species known here. Own profiles out to a file, and in from one.",
                   "burrow profiles kiln-row.book \"Grammostola rosea\" --export rosea.json\n"
                   "A file written like this can be changed, and taken in as your own.",
                   [typed](const Setting& s) { return carryOut(s, *typed); });
    list->add_option("SPECIES", t.names, "only these, by any name (all; to a file: your own)");
    auto* out = list->add_option("--export", t.exportTo, "write them to this file, as JSON");
    list->add_option("--import", t.importFrom, "take the profiles of this file in as your own")
        ->excludes(out);

    auto* one = addCommand(
        app, t.book, chosen, "profile", "What is known of a species, each fact with its source.",
        "burrow profile kiln-row.book \"G. pulchra\"", [typed](const Setting& s) {
            return typed->remove ? removeProfile(s, *typed) : showProfile(s, *typed);
        });
    one->add_option("SPECIES", t.species, "valid, old or trade name")->required();
    one->add_flag("--remove", t.remove, "take your own profile out; a shipped one counts again");
}

}  // namespace burrow::terminal
