#include "husbandry/profile_share.h"

#include <nlohmann/json.hpp>
#include <set>

namespace burrow {
namespace {

using nlohmann::json;

tl::unexpected<Error> refuse(const char* id) { return fail(Trouble::badInput, Message{id}); }

/// The list of a shared file; nothing where the text is none.
Result<const json*> listOf(const json& file) {
    const auto kind = file.find("burrowbook");
    if (kind == file.end() || !kind->is_string() ||
        kind->get_ref<const std::string&>() != sharedProfilesKind) {
        return refuse("profiles.unreadable");
    }
    const auto version = file.find("version");
    if (version == file.end() || !version->is_number_integer() || *version < 1) {
        return refuse("profiles.unreadable");
    }
    if (*version > sharedProfilesVersion) return refuse("profiles.later");
    const auto list = file.find("profiles");
    if (list == file.end() || !list->is_array()) return refuse("profiles.unreadable");
    return &*list;
}

}  // namespace

Result<std::vector<Profile>> sharedProfiles(std::string_view text) {
    if (text.size() > largestSharedProfiles) return refuse("profiles.tooLarge");
    const auto file = json::parse(text, nullptr, false);
    if (!file.is_object()) return refuse("profiles.unreadable");
    std::vector<Profile> profiles;
    if (file.contains("name")) {
        BURROW_TRY(auto one, profileFromJson(file, 1));
        profiles.push_back(std::move(one));
        return profiles;
    }
    BURROW_TRY(const auto* list, listOf(file));
    if (list->empty()) return refuse("profiles.none");
    if (list->size() > mostSharedProfiles) return refuse("profiles.tooLarge");
    std::set<std::string> names;
    for (const auto& object : *list) {
        BURROW_TRY(auto profile, profileFromJson(object, profiles.size() + 1));
        if (!names.insert(profile.name).second) {
            return fail(Trouble::badInput, {"profiles.twice", {{"species", profile.name}}});
        }
        profiles.push_back(std::move(profile));
    }
    return profiles;
}

}  // namespace burrow
