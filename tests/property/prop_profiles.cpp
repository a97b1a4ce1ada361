// Species profiles: those that are shipped, close names, and files from elsewhere.
#include <set>

#include "base/text.h"
#include "husbandry/profile_lines.h"
#include "husbandry/profile_share.h"
#include "support/profiles.h"

using namespace burrow;
using namespace burrow::test;

namespace {

std::vector<std::string> namesOf(const Profile& profile) {
    std::vector<std::string> names{profile.name};
    names.insert(names.end(), profile.otherNames.begin(), profile.otherNames.end());
    names.insert(names.end(), profile.tradeNames.begin(), profile.tradeNames.end());
    return names;
}

bool holds(const std::vector<std::string>& list, const std::string& text) {
    return std::ranges::find(list, text) != list.end();
}

/// Between which sizes the grown animals of an order lie: leg spans, or lengths of the body. From memory
/// of the smallest and largest in the trade; they catch a slip of the finger.
Range<double> sizesOf(Order order) {
    switch (order) {
        case Order::tarantula: return {40, 300};
        case Order::trueSpider: return {20, 160};
        case Order::scorpion: return {25, 200};
        case Order::whipSpider: return {60, 210};
        case Order::vinegaroon: return {40, 70};
    }
    return {};
}

void checkOne(Checks& check, const Profile& profile) {
    const auto& name = profile.name;
    const auto span = profile.adultSpan.value;
    const auto sizes = sizesOf(profile.order);
    check.that(span.least.value >= sizes.least && span.most.value <= sizes.most, name + " size");
    check.that(span.most / span.least <= 2.0, name + " differs less in size");
    const auto warmth = profile.warmth.value;
    check.that(warmth.least.value >= 18 && warmth.most.value <= 33, name + " warmth");
    check.that(warmth.most.value - warmth.least.value >= 3, name + " warmth is a range");
    for (const auto& each : namesOf(profile)) {
        check.that(shipped().find(each) == &profile, each + " finds " + name);
    }
    const bool isSpider = profile.order == Order::tarantula || profile.order == Order::trueSpider;
    check.that(isSpider || profile.hairs.value == Hairs::none, name + " has no urticating hairs");
    const bool hasNoGlands =
        profile.order == Order::whipSpider || profile.order == Order::vinegaroon;
    check.that((profile.venom.value == Venom::none) == hasNoGlands, name + " venom");
    const auto all = cautions(profile);
    const bool stings = std::ranges::find(all, Caution::sting) != all.end();
    check.that(stings == (profile.order == Order::scorpion), name + " sting");
    const bool isGrave = profile.venom.value == Venom::significant;
    check.that(!isGrave || profile.handling.starts_with("Never"), name + " is never handled");
    check.that(isGrave == lawNote(profile).has_value(), name + " law");
    check.that(isGrave == (!all.empty() && all.front() == Caution::strongVenom),
               name + " says its venom first");
    for (const auto& line : profileLines(profile)) {
        check.that(words().knows(line.name), std::string(line.name));
        const auto text = words().say(line.value, day("2026-05-08"));
        check.that(!text.empty() && text.front() != '[', name + ": " + text);
    }
}

bool whatIsShippedHolds() {
    Checks check;
    check.that(shipped().all().size() >= 85, "at least 85 species");
    std::map<Order, int> orders;
    std::map<std::pair<Region, Habit>, int> tarantulas;
    for (const auto& profile : shipped().all()) {
        ++orders[profile.order];
        if (profile.order == Order::tarantula) {
            ++tarantulas[{profile.region.value, profile.habit.value}];
        }
        checkOne(check, profile);
    }
    check.that(orders[Order::scorpion] >= 10 && orders[Order::trueSpider] >= 5 &&
                   orders[Order::whipSpider] >= 4 && orders[Order::vinegaroon] >= 1,
               "all orders are there");
    check.that(tarantulas.size() == 6, "tarantulas of all habits from both worlds");
    // Genera whose stings matter medically: Chippaux & Goyffon 2008, Acta Trop. 107:71-79.
    for (const char* genus : {"Androctonus", "Leiurus", "Hottentotta", "Parabuthus", "Tityus"}) {
        int seen = 0;
        for (const auto& profile : shipped().all()) {
            if (!profile.name.starts_with(std::string(genus) + " ")) continue;
            ++seen;
            check.that(profile.venom.value == Venom::significant, profile.name);
        }
        check.that(seen > 0, genus);
    }
    return check.ok();
}

/// The program carries them joined to one list.
bool oneListHolds() {
    Checks check;
    std::string list = "[";
    for (const auto& file : assetFiles("species")) list += (list.size() > 1 ? "," : "") + file;
    const auto joined = Profiles::fromJson(std::vector{list + "]"});
    check.that(joined.has_value() && std::ranges::equal(joined->all(), shipped().all()),
               "the same");
    const auto broken = Profiles::fromJson(std::vector{list + ", {}]"});
    check.that(!broken && broken.error().message.id == "profile.missing",
               "a broken one among them");
    return check.ok();
}

/// Each file bears the name of its species, so no two can be of the same.
bool filesBearTheirNames() {
    Checks check;
    const auto folder = std::filesystem::path(BURROW_ASSETS_DIR) / "species";
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        const auto profile = profileFromJson(slurp(entry.path()), 1);
        check.that(profile.has_value(), entry.path().string());
        if (!profile) continue;
        auto stem = lowerAscii(profile->name);
        std::ranges::replace(stem, ' ', '-');
        check.that(entry.path().stem() == stem, stem);
    }
    const auto readme = slurp(std::filesystem::path(BURROW_SOURCE_DIR) / "README.md");
    const auto said = "**" + std::to_string(shipped().all().size()) + " species**";
    check.that(readme.find(said) != std::string::npos, "README says " + said);
    return check.ok();
}

bool closeNamesHold() {
    Checks check;
    const auto first = [](const char* typed) {
        const auto names = shipped().suggest(typed, 5);
        return names.empty() ? std::string() : names.front();
    };
    check.that(first("Brachypelma hamorii") == "Brachypelma hamorii", "itself first");
    check.that(first("Brachypelma hamoori") == "Brachypelma hamorii", "a slip");
    check.that(first("grammostola pulcra") == "Grammostola pulchra", "a letter left out");
    check.that(first("G. pulcra") == "Grammostola pulchra", "a slip after a short genus");
    check.that(first("pulcra") == "Grammostola pulchra", "a slip in an epithet alone");
    check.that(first("P. met") == "Poecilotheria metallica", "an epithet cut short");
    check.that(first("OTB") == "Pterinochilus murinus", "a slip in an abbreviation");
    check.that(first("Androctonus austrlis") == "Androctonus australis", "a scorpion");
    for (const auto& name : shipped().suggest("Poecelotheria", 5)) {
        check.that(name.starts_with("Poecilotheria "), name + " for its genus");
    }
    check.that(shipped().suggest("Poecelotheria", 5).size() == 5, "a genus alone");
    check.that(shipped().suggest("goldfish", 5).empty(), "no fish");
    const auto finds = [](const char* typed) {
        const auto* found = shipped().find(typed);
        return found != nullptr ? found->name : std::string();
    };
    check.that(finds("Brachypelma hamori") == "Brachypelma hamorii", "a known misspelling");
    check.that(finds("G. pulchra") == "Grammostola pulchra", "a short genus");
    check.that(finds("obt") == "Pterinochilus murinus", "OBT");
    check.that(finds("gbb") == "Chromatopelma cyaneopubescens", "GBB");
    check.that(finds("Haplopelma schmidti") == "Cyriopagopus schmidti", "a former genus");
    check.that(finds("Selenocosmia huwena") == "Cyriopagopus schmidti", "a synonym");
    check.that(finds("Heterometrus swammerdami") == "Gigantometrus swammerdami",
               "a scorpion's old genus");
    check.that(finds("Avicularia diversipes") == "Ybyrapora diversipes", "a split genus");
    return check.ok();
}

/// As a file of shipped species says it.
Profile asShipped(Profile profile) {
    profile.origin = ProfileOrigin::assets;
    return profile;
}

bool filesHold() {
    bool ok = true;
    ok &= rc::check("what is written reads back the same", [] {
        const auto own = severalOwn();
        const auto again = sharedProfiles(sharedProfilesText(own)).value();
        RC_ASSERT(again.size() == own.size());
        for (std::size_t i = 0; i < own.size(); ++i) {
            RC_ASSERT(again[i] == asShipped(own[i]));
            RC_ASSERT(profileFromJson(profileText(own[i]), 1).value() == asShipped(own[i]));
        }
    });
    ok &= rc::check("a damaged file is refused whole, or still reads as good profiles", [] {
        auto text = sharedProfilesText(severalOwn());
        const int cuts = *rc::gen::inRange(1, 4);
        for (int i = 0; i < cuts; ++i) {
            const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
            const auto byte = static_cast<char>(*rc::gen::inRange(0, 256));
            switch (*rc::gen::inRange(0, 3)) {
                case 0: text[at] = byte; break;
                case 1: text.erase(at, *rc::gen::inRange<std::size_t>(1, 40)); break;
                default: text.insert(at, 1, byte); break;
            }
            if (text.empty()) text = "{";
        }
        const auto read = sharedProfiles(text);
        if (!read) {
            const auto said = words().say(read.error().message, day("2026-05-08"));
            RC_ASSERT(!said.empty() && said.front() != '[');
            return;
        }
        RC_ASSERT(sharedProfiles(sharedProfilesText(*read)).value() == *read);
    });
    ok &= rc::check("one slip in a valid name is answered with the species", [] {
        const auto& profile = anyShipped();
        auto typed = profile.name;
        const auto at = *rc::gen::inRange<std::size_t>(1, typed.size() - 1);
        switch (*rc::gen::inRange(0, 4)) {
            case 0: typed.erase(at, 1); break;
            case 1: typed.insert(at, 1, *rc::gen::inRange('a', 'z')); break;
            case 2: typed[at] = *rc::gen::inRange('a', 'z'); break;
            default: std::swap(typed[at], typed[at - 1]); break;
        }
        RC_ASSERT(holds(shipped().suggest(typed, 5), profile.name));
    });
    return ok;
}

bool hostileFilesAreRefused() {
    Checks check;
    const auto refused = [](const std::string& text) {
        const auto read = sharedProfiles(text);
        return read ? std::string("taken") : read.error().message.id;
    };
    const auto file = [](const std::string& version, const std::string& list) {
        return R"({"burrowbook": "species profiles", "version": )" + version + R"(, "profiles": )" +
               list + "}";
    };
    const auto good = profileText(newSpecies());
    check.that(sharedProfiles(good).value().size() == 1, "one by itself");
    check.that(sharedProfiles(file("1", "[" + good + "]")).value().size() == 1, "one in a list");
    check.that(refused("") == "profiles.unreadable", "nothing");
    check.that(refused("[]") == "profiles.unreadable", "a list");
    check.that(refused(file("0", "[]")) == "profiles.unreadable", "version 0");
    check.that(refused(file("2", "[]")) == "profiles.later", "a later version");
    check.that(refused(file("1", "[]")) == "profiles.none", "none");
    check.that(refused(file("1", "7")) == "profiles.unreadable", "no list");
    check.that(refused(file("1", "[" + good + "," + good + "]")) == "profiles.twice", "twice");
    check.that(refused(file("1", "[7]")) == "profile.unreadable", "no profile");
    std::string many = "[0";
    for (std::size_t i = 0; i < mostSharedProfiles; ++i) many += ",0";
    check.that(refused(file("1", many + "]")) == "profiles.tooLarge", "too many");
    check.that(refused(std::string(largestSharedProfiles + 1, ' ')) == "profiles.tooLarge",
               "large");
    constexpr std::size_t depth = 1'000'000;
    const auto deep = std::string(depth, '[') + std::string(depth, ']');
    check.that(refused(file("1", "[" + deep + "]")) == "profile.unreadable", "deep");
    check.that(refused(R"({"name": )" + deep + "}") == "profile.missing", "a deep name");
    auto steering = newSpecies();
    steering.housing = "low \x1B[2J";
    check.that(refused(profileText(steering)) == "profile.notOneLine", "steers the screen");
    steering.housing = "two\nlines";
    check.that(refused(profileText(steering)) == "profile.notOneLine", "two lines");
    steering.housing = "turned \xE2\x80\xAE round";
    check.that(refused(profileText(steering)) == "profile.notOneLine", "turns the writing");
    auto crowd = newSpecies();
    crowd.otherNames.assign(mostProfileNames + 1, "Novagenus altera");
    check.that(refused(profileText(crowd)) == "profile.tooMany", "many names");
    auto wordy = newSpecies();
    wordy.damp.source = std::string(longestProfileSource + 1, 'a');
    check.that(refused(profileText(wordy)) == "profile.tooLong", "a long source");
    return check.ok();
}

}  // namespace

int main() {
    bool ok = true;
    const std::pair<const char*, bool (*)()> all[]{{"what is shipped", whatIsShippedHolds},
                                                   {"names of files", filesBearTheirNames},
                                                   {"one list", oneListHolds},
                                                   {"close names", closeNamesHold},
                                                   {"files", filesHold},
                                                   {"hostile files", hostileFilesAreRefused}};
    for (const auto& [name, holds] : all) {
        const bool good = holds();
        std::printf("%s: %s\n", name, good ? "holds" : "DOES NOT HOLD");
        ok &= good;
    }
    return ok ? 0 : 1;
}
