#include "husbandry/profiles.h"

#include <algorithm>
#include <iterator>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>

#include "base/text.h"
#include "husbandry/profile_file.h"

namespace burrow {
namespace {

/// Lower case, single spaces, and a space after the dot of a genus cut short.
std::string normalName(std::string_view name) {
    std::string result;
    for (const char c : lowerAscii(trimmed(name))) {
        const bool isGap = c == ' ' || c == '\t' || c == '_';
        if (!isGap) {
            result += c;
        } else if (!result.empty() && result.back() != ' ') {
            result += ' ';
        }
        if (c == '.') result += ' ';
    }
    return std::string(trimmed(result));
}

struct ShortName {
    std::string_view genusStart;
    std::string_view epithet;
};

/// "b. hamorii", "b hamorii" and "poec. regalis"; nothing for a name with a whole genus.
std::optional<ShortName> shortName(std::string_view normal) {
    const auto gap = normal.find(' ');
    if (gap == std::string_view::npos) return std::nullopt;
    auto genus = normal.substr(0, gap);
    if (genus.size() > 1 && genus.back() != '.') return std::nullopt;
    if (genus.back() == '.') genus.remove_suffix(1);
    if (genus.empty()) return std::nullopt;
    return ShortName{genus, normal.substr(gap + 1)};
}

bool fits(const ShortName& wanted, std::string_view name) {
    const auto gap = name.find(' ');
    return gap != std::string_view::npos && name.substr(gap + 1) == wanted.epithet &&
           name.starts_with(wanted.genusStart);
}

}  // namespace

Result<Profiles> Profiles::fromJson(std::span<const std::string> files) {
    Profiles profiles;
    const auto add = [&](const nlohmann::json& object) -> Done {
        BURROW_TRY(auto profile, profileFromJson(object, profiles.profiles_.size() + 1));
        profiles.profiles_.push_back(std::move(profile));
        return {};
    };
    for (const auto& text : files) {
        const auto file = nlohmann::json::parse(text, nullptr, false);
        if (!file.is_array() || file.empty()) {
            BURROW_DO(add(file));
            continue;
        }
        for (const auto& object : file) BURROW_DO(add(object));
    }
    profiles.sort();
    std::vector<NameClash> clashes;
    profiles.index(ProfileOrigin::assets, clashes);
    if (!clashes.empty()) return fail(Trouble::badInput, clashes.front().message());
    return profiles;
}

Profiles Profiles::with(std::vector<Profile> own, std::vector<NameClash>* clashes) const {
    if (own.empty()) return *this;
    std::set<std::string> claimed;
    for (auto& profile : own) {
        profile.origin = ProfileOrigin::keeper;
        claimed.insert(normalName(profile.name));
        for (const auto& name : profile.otherNames) claimed.insert(normalName(name));
    }
    Profiles all;
    all.profiles_ = std::move(own);
    std::copy_if(
        profiles_.begin(), profiles_.end(), std::back_inserter(all.profiles_),
        [&](const Profile& shipped) { return !claimed.contains(normalName(shipped.name)); });
    all.sort();
    std::vector<NameClash> found;
    all.index(ProfileOrigin::keeper, found);
    all.index(ProfileOrigin::assets, found);
    if (clashes != nullptr) *clashes = std::move(found);
    return all;
}

void Profiles::sort() {
    std::sort(profiles_.begin(), profiles_.end(),
              [](const Profile& a, const Profile& b) { return a.name < b.name; });
}

void Profiles::index(ProfileOrigin origin, std::vector<NameClash>& clashes) {
    for (std::size_t at = 0; at < profiles_.size(); ++at) {
        if (profiles_[at].origin == origin) indexName(profiles_[at].name, at, clashes);
    }
    for (std::size_t at = 0; at < profiles_.size(); ++at) {
        const auto& profile = profiles_[at];
        if (profile.origin != origin) continue;
        for (const auto& name : profile.otherNames) indexName(name, at, clashes);
        for (const auto& name : profile.tradeNames) indexName(name, at, clashes);
    }
}

void Profiles::indexName(const std::string& name, std::size_t at, std::vector<NameClash>& clashes) {
    const auto [found, isNew] = byName_.emplace(normalName(name), at);
    if (isNew || found->second == at) return;
    const auto& holder = profiles_[found->second];
    const auto& other = profiles_[at];
    const bool isRevived = holder.origin == ProfileOrigin::keeper &&
                           other.origin == ProfileOrigin::assets &&
                           normalName(holder.name) == found->first;
    if (!isRevived) clashes.push_back({name, holder.name, other.name});
}

const Profile* Profiles::find(std::string_view name) const {
    const auto wanted = normalName(name);
    if (const auto found = byName_.find(wanted); found != byName_.end()) {
        return &profiles_[found->second];
    }
    const auto cut = shortName(wanted);
    if (!cut) return nullptr;
    const Profile* only = nullptr;
    for (const auto& [known, at] : byName_) {
        if (!fits(*cut, known) || only == &profiles_[at]) continue;
        if (only != nullptr) return nullptr;
        only = &profiles_[at];
    }
    return only;
}

std::vector<std::string> Profiles::suggest(std::string_view name, std::size_t most) const {
    const auto wanted = normalName(name);
    // A third of the letters wrong is a slip; more is another name.
    const auto limitFor = [](std::string_view text) {
        return std::max<std::size_t>(1, text.size() / 3);
    };
    const auto limit = limitFor(wanted);
    std::vector<std::size_t> closest(profiles_.size(), limit + 1);
    const auto cut = shortName(wanted);
    for (const auto& [known, at] : byName_) {
        closest[at] = std::min(closest[at], editDistance(wanted, known));
        // "B. hamorri", and "hamorri" alone: only what is written of the name can be compared.
        const auto epithet =
            std::string_view(known).substr(std::min(known.find(' ') + 1, known.size()));
        const bool isAlone = wanted.find(' ') == std::string::npos;
        if (isAlone) {
            const auto genus = std::string_view(known).substr(0, known.find(' '));
            closest[at] = std::min(closest[at], editDistance(wanted, genus));
        }
        const bool isCut = cut && known.starts_with(cut->genusStart);
        if (!isAlone && !isCut) continue;
        const auto part = isCut ? cut->epithet : std::string_view(wanted);
        const auto distance = editDistance(part, epithet);
        if (distance <= std::min(limit, limitFor(part)))
            closest[at] = std::min(closest[at], distance);
        // "P. met", as the trade writes: the start of an epithet is as good as a slip.
        constexpr std::size_t leastStart = 3;
        if (part.size() >= leastStart && epithet.starts_with(part))
            closest[at] = std::min<std::size_t>(closest[at], 1);
    }
    std::vector<std::size_t> order;
    for (std::size_t at = 0; at < profiles_.size(); ++at) {
        if (closest[at] <= limit) order.push_back(at);
    }
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return closest[a] < closest[b]; });
    std::vector<std::string> names;
    for (const auto at : order) {
        if (names.size() == most) break;
        names.push_back(profiles_[at].name);
    }
    return names;
}

Message listingNote(const Profile& profile) {
    if (profile.listing.value == Listing::notChecked) return Message{"listing.notChecked"};
    const bool listed = profile.listing.value == Listing::citesAppendixII;
    return {listed ? "listing.citesAppendixII" : "listing.notFound",
            {{"day", profile.listingAsOf}, {"source", profile.listing.source}}};
}

std::optional<Message> lawNote(const Profile& profile) {
    if (profile.venom.value != Venom::significant) return std::nullopt;
    return Message{"profile.law"};
}

}  // namespace burrow
