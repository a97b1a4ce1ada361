// Species profiles for tests: shipped ones, made-up ones, and checks that say aloud what does not hold.
#pragma once

#include <rapidcheck.h>

#include <cstdio>
#include <map>
#include <string>
#include <vector>

#include "support/husbandry.h"

namespace burrow::test {

inline const Profiles& shipped() {
    static const auto shared = shippedProfiles();
    return shared;
}

inline const Words& words() {
    static const auto shared = englishWords();
    return shared;
}

/// A check of its own, said aloud where it fails.
class Checks {
public:
    void that(bool holds, const std::string& what) {
        if (holds) return;
        std::printf("does not hold: %s\n", what.c_str());
        ok_ = false;
    }
    [[nodiscard]] bool ok() const { return ok_; }

private:
    bool ok_ = true;
};

/// A profile under names that nobody else has.
inline Profile newSpecies(const char* name = "Novagenus nova") {
    auto profile = *shipped().find("Brachypelma hamorii");
    profile.name = name;
    profile.otherNames.clear();
    profile.tradeNames.clear();
    return profile;
}

inline const Profile& anyShipped() {
    const auto all = shipped().all();
    return all[*rc::gen::inRange<std::size_t>(0, all.size())];
}

inline std::string anyText() {
    // Also letters beyond ASCII, quotes and what JSON escapes.
    static const std::vector<std::string> pieces{"a", "B", "é", "ß", "\"", "\\",
                                                 " ", "/", "7", "{", "}"};
    std::string text = "x";
    const int length = *rc::gen::inRange(0, 20);
    for (int i = 0; i < length; ++i) text += *rc::gen::elementOf(pieces);
    return text;
}

/// A profile that a keeper may make: another species' facts under a name of its own.
inline Profile anyOwn() {
    auto profile = anyShipped();
    static const std::vector<std::string> epithets{"nova", "altera", "tertia", "quarta", "quinta"};
    if (*rc::gen::arbitrary<bool>()) {
        profile.name = "Novagenus " + *rc::gen::elementOf(epithets);
        profile.otherNames.clear();
        profile.tradeNames = {profile.name + " of the trade"};
    }
    profile.housing = anyText();
    profile.authoritySource = anyText();
    profile.adultSpan.value = {{*rc::gen::inRange(20, 100) / 2.0},
                               {*rc::gen::inRange(100, 600) / 2.0}};
    profile.fast.value = *rc::gen::arbitrary<bool>();
    profile.origin = ProfileOrigin::keeper;
    return profile;
}

inline std::vector<Profile> severalOwn() {
    std::map<std::string, Profile> byName;
    const int count = *rc::gen::inRange(1, 6);
    for (int i = 0; i < count; ++i) {
        auto profile = anyOwn();
        byName.insert_or_assign(profile.name, profile);
    }
    std::vector<Profile> profiles;
    for (auto& [name, profile] : byName) profiles.push_back(profile);
    return profiles;
}

}  // namespace burrow::test
