// Profiles as text, one by one and several in a file.
#include <cmath>
#include <nlohmann/json.hpp>

#include "husbandry/profile_share.h"
#include "husbandry/profile_terms.h"

namespace burrow {
namespace {

// In the order in which the fields are written, so that files can be read and compared by people.
using Ordered = nlohmann::ordered_json;

template <class Value>
Ordered fact(Value value, const std::string& source) {
    Ordered object;
    object["value"] = std::move(value);
    object["source"] = source;
    return object;
}

template <class Term>
Ordered fact(const Sourced<Term>& sourced) {
    return fact(std::string(spelled(sourced.value)), sourced.source);
}

/// 130, not 130.0: as people write them.
Ordered number(double value) {
    const bool isWhole = value == std::floor(value);
    return isWhole ? Ordered(static_cast<std::int64_t>(value)) : Ordered(value);
}

template <class Unit>
Ordered range(const Sourced<Range<Unit>>& sourced) {
    auto pair = Ordered::array();
    pair.push_back(number(sourced.value.least.value));
    pair.push_back(number(sourced.value.most.value));
    return fact(std::move(pair), sourced.source);
}

Ordered toJson(const Profile& profile) {
    Ordered object;
    object["name"] = profile.name;
    object["authority"] = fact(profile.authority, profile.authoritySource);
    object["other_names"] = profile.otherNames;
    object["trade_names"] = profile.tradeNames;
    object["order"] = std::string(spelled(profile.order));
    object["region"] = fact(profile.region);
    object["habit"] = fact(profile.habit);
    object["adult_span_mm"] = range(profile.adultSpan);
    object["damp"] = fact(profile.damp);
    object["warmth_c"] = range(profile.warmth);
    object["temperament"] = fact(profile.temperament);
    object["fast"] = fact(profile.fast.value, profile.fast.source);
    object["venom"] = fact(profile.venom);
    object["hairs"] = fact(profile.hairs);
    object["groups"] = fact(profile.groups);
    object["moults"] = fact(profile.moults);
    object["listing"] = fact(profile.listing);
    if (profile.listing.value != Listing::notChecked) {
        object["listing"]["as_of"] = isoDate(profile.listingAsOf);
    }
    object["housing"] = profile.housing;
    object["handling"] = profile.handling;
    return object;
}

/// Never fails: bytes that are no UTF-8 become the replacement character.
std::string textOf(const Ordered& object, int indent) {
    return object.dump(indent, ' ', false, Ordered::error_handler_t::replace);
}

}  // namespace

std::string profileText(const Profile& profile) { return textOf(toJson(profile), -1); }

std::string sharedProfilesText(std::span<const Profile> profiles) {
    Ordered file;
    file["burrowbook"] = sharedProfilesKind;
    file["version"] = sharedProfilesVersion;
    file["profiles"] = Ordered::array();
    for (const auto& profile : profiles) file["profiles"].push_back(toJson(profile));
    return textOf(file, 4) + "\n";
}

}  // namespace burrow
