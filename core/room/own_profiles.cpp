#include "room/own_profiles.h"

#include <algorithm>
#include <set>

#include "husbandry/profile_file.h"

namespace burrow {
namespace {

std::string settingOf(const std::string& species) {
    return std::string(setting::profile) + species;
}

/// The text of the profile of a species that the book holds, or nothing.
const std::string* textIn(const RoomInfo& info, const std::string& species) {
    const auto found = std::ranges::find(
        info.profiles, species, [](const auto& own) -> const auto& { return own.first; });
    return found == info.profiles.end() ? nullptr : &found->second;
}

/// Those of the book that stay beside the new ones.
std::vector<Profile> staying(const RoomInfo& info, std::span<const Profile> profiles,
                             const std::string& insteadOf) {
    auto own = ownProfiles(info).profiles;
    std::erase_if(own, [&](const Profile& old) {
        return old.name == insteadOf ||
               std::ranges::any_of(profiles, [&](const Profile& p) { return p.name == old.name; });
    });
    return own;
}

/// Whether a name stands for one of the new profiles and for another species too.
Done checkNames(const Profiles& shipped, std::vector<Profile> own,
                std::span<const Profile> profiles) {
    own.insert(own.end(), profiles.begin(), profiles.end());
    if (own.size() > mostOwnProfiles) {
        return fail(Trouble::badInput,
                    {"profiles.tooMany", {{"most", std::int64_t{mostOwnProfiles}}}});
    }
    std::vector<NameClash> clashes;
    static_cast<void>(shipped.with(std::move(own), &clashes));
    std::set<std::string> names;
    for (const auto& profile : profiles) names.insert(profile.name);
    for (const auto& clash : clashes) {
        if (names.contains(clash.holder) || names.contains(clash.other)) {
            return fail(Trouble::badInput, clash.message());
        }
    }
    return {};
}

}  // namespace

OwnProfiles ownProfiles(const RoomInfo& info) {
    OwnProfiles own;
    for (const auto& [species, text] : info.profiles) {
        auto profile = profileFromJson(text, 1);
        if (!profile || profile->name != species) {
            own.unreadable.push_back(species);
            continue;
        }
        profile->origin = ProfileOrigin::keeper;
        own.profiles.push_back(*std::move(profile));
    }
    return own;
}

std::shared_ptr<const Profiles> withOwnProfiles(const Profiles& shipped, const RoomInfo& info) {
    if (info.profiles.empty()) return {std::shared_ptr<const Profiles>(), &shipped};
    return std::make_shared<const Profiles>(shipped.with(ownProfiles(info).profiles));
}

Result<KeptProfiles> keepProfiles(Book& book, const Profiles& shipped,
                                  std::span<const Profile> profiles, const std::string& insteadOf) {
    BURROW_TRY(const auto info, roomInfo(book));
    KeptProfiles kept;
    FieldValues fields;
    for (std::size_t i = 0; i < profiles.size(); ++i) {
        const auto& name = profiles[i].name;
        auto text = profileText(profiles[i]);
        // What a form made must be as good as what a file holds.
        BURROW_TRY(const auto checked, profileFromJson(text, i + 1));
        const auto* old = textIn(info, name);
        const bool isSame = old != nullptr && *old == text;
        (isSame ? kept.same : old != nullptr ? kept.replaced : kept.added).push_back(checked.name);
        if (!isSame) fields[settingOf(name)] = std::move(text);
    }
    BURROW_DO(checkNames(shipped, staying(info, profiles, insteadOf), profiles));
    const bool isRenamed = !insteadOf.empty() && textIn(info, insteadOf) != nullptr &&
                           std::ranges::none_of(profiles, [&](const Profile& profile) {
                               return profile.name == insteadOf;
                           });
    if (isRenamed) fields[settingOf(insteadOf)] = nullptr;
    if (fields.empty()) return kept;
    std::vector<Draft> drafts;
    for (auto& [field, value] : fields) {
        // One entry each, so that none grows larger than other devices take.
        drafts.emplace_back(SetDraft{ThingType::book, book.id().uuid, {{field, std::move(value)}}});
    }
    BURROW_TRY(kept.changes, book.record(drafts));
    return kept;
}

Result<ChangeSet> dropProfile(Book& book, const std::string& species) {
    BURROW_TRY(const auto info, roomInfo(book));
    if (textIn(info, species) == nullptr) {
        return fail(Trouble::notFound, {"profile.notOwn", {{"species", species}}});
    }
    return book.record(SetDraft{ThingType::book, book.id().uuid, {{settingOf(species), nullptr}}});
}

std::optional<std::string> speciesOfSetting(std::string_view name) {
    if (!name.starts_with(setting::profile)) return std::nullopt;
    return std::string(name.substr(setting::profile.size()));
}

std::vector<std::vector<ProfileLine>> differingLines(std::span<const std::string> versions) {
    std::vector<std::vector<ProfileLine>> all;
    for (const auto& text : versions) {
        const auto profile = profileFromJson(text, 1);
        all.push_back(profile ? profileLines(*profile) : std::vector<ProfileLine>());
    }
    auto differing = all;
    for (auto& lines : differing) {
        std::erase_if(lines, [&](const ProfileLine& line) {
            return std::ranges::all_of(all, [&](const std::vector<ProfileLine>& other) {
                return other.empty() || std::ranges::find(other, line) != other.end();
            });
        });
    }
    return differing;
}

}  // namespace burrow
