// What is known of a species, every fact with where it comes from.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "base/civil.h"
#include "base/units.h"

namespace burrow {

/// A fact and its source: a citation, or "common practice, no source".
template <class T>
struct Sourced {
    T value{};
    std::string source;

    friend bool operator==(const Sourced&, const Sourced&) = default;
};

template <class Unit>
struct Range {
    Unit least{};
    Unit most{};

    friend bool operator==(const Range&, const Range&) = default;
};

enum class Order { tarantula, trueSpider, scorpion, whipSpider, vinegaroon };
/// `arboreal` is up on something: stems, bark, or the walls of a cave.
enum class Habit { terrestrial, arboreal, fossorial };
enum class Region { newWorld, oldWorld };
/// How damp the ground is kept.
enum class Damp { dry, moderate, moist, swamp };
enum class Temperament { calm, skittish, defensive };
/// `notable`: pain or cramps reported; `significant`: medically significant; `none`: has no glands.
enum class Venom { mild, notable, significant, none };
enum class Hairs { none, abdomen, palps };
enum class Groups { no, tolerated };
/// Whether moults go on when the animal is grown: for no one, for females only, for all.
enum class Moults { untilGrown, femalesGoOn, goOn };
/// `notChecked`: nobody has looked it up for this profile.
enum class Listing { notFound, citesAppendixII, notChecked };
/// Whose profile it is: shipped with the program, or the keeper's own.
enum class ProfileOrigin { assets, keeper };

struct Profile {
    std::string name;       ///< the valid binomial
    std::string authority;  ///< author and year, in brackets where the genus changed
    std::string authoritySource;
    std::vector<std::string> otherNames;  ///< old binomials and misspellings that must find it
    std::vector<std::string> tradeNames;
    Order order = Order::tarantula;
    Sourced<Region> region;
    Sourced<Habit> habit;
    Sourced<Range<Millimetres>> adultSpan;  ///< or body length: see isMeasuredByBody()
    Sourced<Damp> damp;
    Sourced<Range<Celsius>> warmth;
    Sourced<Temperament> temperament;
    Sourced<bool> fast;
    Sourced<Venom> venom;
    Sourced<Hairs> hairs;
    Sourced<Groups> groups;
    Sourced<Moults> moults;
    Sourced<Listing> listing;
    CivilDay listingAsOf;  ///< means nothing for Listing::notChecked
    std::string housing;   ///< one line for the care sheet
    std::string handling;
    ProfileOrigin origin = ProfileOrigin::assets;

    friend bool operator==(const Profile&, const Profile&) = default;
};

/// Scorpions from the front of the carapace to the sting, vinegaroons without the flagellum. All others
/// are measured across the legs; a whip spider across those that it walks on.
[[nodiscard]] bool isMeasuredByBody(Order order);

/// What must be said wherever the animal changes hands or homes.
/// `unknown`: nothing is known of the species, so all of it may be true.
enum class Caution { strongVenom, venom, sting, fast, hairs, spray, unknown };

/// In the order in which they are shown: the gravest first.
[[nodiscard]] std::vector<Caution> cautions(const Profile& profile);

}  // namespace burrow
