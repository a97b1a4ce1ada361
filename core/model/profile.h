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
};

template <class Unit>
struct Range {
    Unit least{};
    Unit most{};

    friend bool operator==(const Range&, const Range&) = default;
};

enum class Order { tarantula, trueSpider, scorpion, whipSpider };
enum class Habit { terrestrial, arboreal, fossorial };
enum class Region { newWorld, oldWorld };
/// How damp the ground is kept.
enum class Damp { dry, moderate, moist, swamp };
enum class Temperament { calm, skittish, defensive };
/// `notable`: pain or cramps reported; `significant`: medically significant.
enum class Venom { mild, notable, significant };
enum class Hairs { none, abdomen, palps };
enum class Groups { no, tolerated };
enum class Listing { notFound, citesAppendixII };

struct Profile {
    std::string name;       ///< the valid binomial
    std::string authority;  ///< author and year, in brackets where the genus changed
    std::string authoritySource;
    std::vector<std::string> otherNames;  ///< old binomials and misspellings that must find it
    std::vector<std::string> tradeNames;
    Order order = Order::tarantula;
    Sourced<Region> region;
    Sourced<Habit> habit;
    Sourced<Range<Millimetres>> adultSpan;  ///< leg span, or body length for scorpions
    Sourced<Damp> damp;
    Sourced<Range<Celsius>> warmth;
    Sourced<Temperament> temperament;
    Sourced<bool> fast;
    Sourced<Venom> venom;
    Sourced<Hairs> hairs;
    Sourced<Groups> groups;
    Sourced<Listing> listing;
    CivilDay listingAsOf;
    std::string housing;  ///< one line for the care sheet
    std::string handling;
};

/// What must be said wherever the animal changes hands or homes.
/// `unknown`: nothing is known of the species, so all of it may be true.
enum class Caution { strongVenom, venom, sting, fast, hairs, unknown };

/// In the order in which they are shown: the gravest first.
[[nodiscard]] std::vector<Caution> cautions(const Profile& profile);

}  // namespace burrow
