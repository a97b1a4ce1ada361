// The species this app knows, found by any name a keeper may type.
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "model/profile.h"

namespace burrow {

class Profiles {
public:
    /// One text per species file. Fails with `badInput`, and a message that names the file by its
    /// place in the list, the species and the field, when a fact is missing, has no source or can't
    /// be true, or when a name stands for two species.
    static Result<Profiles> fromJson(std::span<const std::string> files);

    /// By valid, old or trade name, in any case and spacing, and with the genus cut short
    /// ("B. hamorii", "Poec regalis.") where that fits one species. Nothing where none or several
    /// fit. Lives as long as this object.
    [[nodiscard]] const Profile* find(std::string_view name) const;
    /// Valid names of at most `most` species with a name like the one typed, the closest first; also
    /// where the genus was cut short or left out.
    [[nodiscard]] std::vector<std::string> suggest(std::string_view name, std::size_t most) const;
    /// In the order of their valid names.
    [[nodiscard]] std::span<const Profile> all() const { return profiles_; }

private:
    Done index();
    Done indexName(const std::string& name, std::size_t at);

    std::vector<Profile> profiles_;
    std::map<std::string, std::size_t, std::less<>> byName_;  // in lower case and single spaces
};

/// What is known of its trade listing, on which day, and that later meetings were not checked.
[[nodiscard]] Message listingNote(const Profile& profile);

}  // namespace burrow
