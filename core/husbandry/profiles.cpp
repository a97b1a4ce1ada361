#include "husbandry/profiles.h"

#include <algorithm>
#include <optional>

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

/// Fewest insertions, deletions, replacements and swaps of neighbours between two texts (optimal
/// string alignment; Damerau 1964).
std::size_t editDistance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> before;
    std::vector<std::size_t> last(b.size() + 1);
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        before = std::exchange(last, row);
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t replaced = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, replaced});
            const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
        }
    }
    return row[b.size()];
}

}  // namespace

Result<Profiles> Profiles::fromJson(std::span<const std::string> files) {
    Profiles profiles;
    for (std::size_t i = 0; i < files.size(); ++i) {
        BURROW_TRY(auto profile, profileFromJson(files[i], i + 1));
        profiles.profiles_.push_back(std::move(profile));
    }
    std::sort(profiles.profiles_.begin(), profiles.profiles_.end(),
              [](const Profile& a, const Profile& b) { return a.name < b.name; });
    BURROW_DO(profiles.index());
    return profiles;
}

Done Profiles::index() {
    for (std::size_t at = 0; at < profiles_.size(); ++at) {
        const auto& profile = profiles_[at];
        BURROW_DO(indexName(profile.name, at));
        for (const auto& name : profile.otherNames) BURROW_DO(indexName(name, at));
        for (const auto& name : profile.tradeNames) BURROW_DO(indexName(name, at));
    }
    return {};
}

Done Profiles::indexName(const std::string& name, std::size_t at) {
    const auto [found, isNew] = byName_.emplace(normalName(name), at);
    if (isNew) return {};
    return fail(Trouble::badInput, {"profile.nameTwice",
                                    {{"name", name},
                                     {"species", profiles_[found->second].name},
                                     {"other", profiles_[at].name}}});
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
    const auto limit = std::max<std::size_t>(1, wanted.size() / 3);
    std::vector<std::size_t> closest(profiles_.size(), limit + 1);
    for (const auto& [known, at] : byName_) {
        closest[at] = std::min(closest[at], editDistance(wanted, known));
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
    const bool listed = profile.listing.value == Listing::citesAppendixII;
    return {listed ? "listing.citesAppendixII" : "listing.notFound",
            {{"day", profile.listingAsOf}, {"source", profile.listing.source}}};
}

}  // namespace burrow
