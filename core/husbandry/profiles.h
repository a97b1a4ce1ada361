// The species this app knows, found by any name a keeper may type.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "model/profile.h"

namespace burrow {

/// A name that two species have.
struct NameClash {
    std::string name;
    std::string holder;  ///< the species that it finds
    std::string other;   ///< the one that it does not

    [[nodiscard]] Message message() const {
        return {"profile.nameTwice", {{"name", name}, {"species", holder}, {"other", other}}};
    }
};

class Profiles {
public:
    /// Each text is a species file, or a list of them. Fails with `badInput`, and a message that names the profile by its
    /// place among all of them, the species and the field, when a fact is missing, has no source or can't
    /// be true, or when a name stands for two species.
    static Result<Profiles> fromJson(std::span<const std::string> files);

    /// These with the keeper's own, no two of which have the same valid name. An own profile takes the
    /// place of each shipped one whose valid name is its valid name or one of its old ones, and an old or
    /// trade name of a shipped one may be the valid name of an own one (the keeper may see a species in
    /// what was made a synonym). Any other name of two species finds one of them (an own one before a
    /// shipped one, the first by name of two own ones) and is added to `clashes`, where that is given.
    [[nodiscard]] Profiles with(std::vector<Profile> own,
                                std::vector<NameClash>* clashes = nullptr) const;

    /// By valid, old or trade name, in any case and spacing, and with the genus cut short
    /// ("B. hamorii", "Poec regalis.") where that fits one species. Nothing where none or several
    /// fit. Lives as long as this object.
    [[nodiscard]] const Profile* find(std::string_view name) const;
    /// Valid names of at most `most` species with a name like the one typed, the closest first; also
    /// where the genus was cut short or left out, and of a genus alone.
    [[nodiscard]] std::vector<std::string> suggest(std::string_view name, std::size_t most) const;
    /// In the order of their valid names.
    [[nodiscard]] std::span<const Profile> all() const { return profiles_; }

private:
    void sort();
    /// Adds the names of the profiles of one origin: valid ones first, so that each finds its own.
    void index(ProfileOrigin origin, std::vector<NameClash>& clashes);
    void indexName(const std::string& name, std::size_t at, std::vector<NameClash>& clashes);

    std::vector<Profile> profiles_;
    std::map<std::string, std::size_t, std::less<>> byName_;  // in lower case and single spaces
};

/// What is known of its trade listing, on which day, and that later meetings were not checked.
[[nodiscard]] Message listingNote(const Profile& profile);
/// That a licence may be needed, for species whose venom is medically significant.
[[nodiscard]] std::optional<Message> lawNote(const Profile& profile);

}  // namespace burrow
