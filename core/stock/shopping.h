// What to buy: prey that will be asked for in the days ahead, less what is there, with what dies and
// what outgrows its size meanwhile. Pure functions; the same input gives the same list.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/civil.h"
#include "base/message.h"
#include "stock/acceptance.h"
#include "stock/feeders.h"

namespace burrow::stock {

/// Hundredths of the keeper's own currency.
struct Cents {
    std::int64_t value = 0;

    friend constexpr auto operator<=>(Cents, Cents) = default;
    friend constexpr Cents operator+(Cents a, Cents b) { return {a.value + b.value}; }
};

/// Feeders in the keeper's tubs, as counted last.
struct Batch {
    std::string kind;
    Millimetres length;
    int count = 0;
    CivilDay counted;
};

/// What a batch is expected to be: a part of it has died, the rest has grown (straight on, up to the
/// longest of its kind).
struct Projected {
    double count = 0;
    Millimetres length;
};
[[nodiscard]] Projected projected(const Batch& batch, CivilDay day, const Feeders& feeders);

/// What one subject will be offered, as the planner sees it. A subject that will be offered several
/// kinds or sizes has several of these under the same number.
struct Need {
    std::size_t who = 0;
    std::string kind;
    Millimetres length;
    int each = 1;           ///< prey in one offer
    bool isKilled = false;  ///< killed prey and pieces are used up, eaten or not
    double chance = 1;      ///< that feeding is open when the day comes
    std::string stage;      ///< "adult", as the rules call it
    std::string species;
    FeedingRecord record;
    std::vector<CivilDay> days;
};

struct Price {
    std::string kind;
    std::string band;
    int packOf = 1;
    Cents cost;
};

struct ShoppingAsk {
    CivilDay today;
    int days = 14;       ///< today and the days after it
    double share = 0.8;  ///< of the interval; the list is long enough with (1 + share) / 2
};

/// What will be used of a kind and size.
struct Use {
    std::string kind;
    std::string band;
    double mean = 0;
    Range<int> interval;   ///< it lies within with at least `share`
    double fromStock = 0;  ///< of the mean, what the keeper's own batches are expected to cover
};

struct Purchase {
    CivilDay day;
    std::string kind;
    std::string band;
    int least = 0;   ///< enough at the low end of the interval
    int likely = 0;  ///< for the mean
    int enough = 0;  ///< at the high end: what to buy
    int lost = 0;    ///< of `enough`, those expected to die before their day
    int packs = 0;   ///< that hold `enough`; 0 where no price is known
    std::optional<Cents> cost;
    Message why;
};

struct ShoppingList {
    std::vector<Use> uses;            ///< by kind and size
    std::vector<Purchase> purchases;  ///< by day, then kind and size
    Cents cost;                       ///< of the purchases that have a price
    int unpriced = 0;
    Message summary;
};

/// For each kind and size: the number used is the sum of what each subject uses up (`usedUp`), so with
/// one offer each of one prey it is Poisson-binomial; what is believed of a stage is learned from the
/// records of all subjects of it first. Mean and central interval are of that sum. Its size is then
/// spread over the days like the expected use, once for the mean and once for each end of the interval,
/// and taken from the batches day by day, the longest first, as they die and grow. What is left is
/// bought: more than is used, as a part of it dies, and in several purchases where it would outgrow its
/// size. O(n log n + m s^2 + days (batches + bands)) for n needs, of which m differ, and the standard
/// deviation s of a sum.
[[nodiscard]] ShoppingList shoppingList(std::span<const Need> needs, std::span<const Batch> batches,
                                        std::span<const Price> prices, const ShoppingAsk& ask,
                                        const Feeders& feeders);

/// How many prey all these needs use up together in the days asked for, whatever their kind.
[[nodiscard]] Counts totalUse(std::span<const Need> needs, const ShoppingAsk& ask,
                              const Feeders& feeders);

}  // namespace burrow::stock
