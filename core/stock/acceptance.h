// How likely an animal takes what it is offered: from its own record, from its stage, and from how the
// rest of the room eats.
#pragma once

#include <span>
#include <vector>

#include "stock/counts.h"
#include "stock/feeders.h"

namespace burrow::stock {

/// Of one animal: offers while feeding was open, and how many were accepted, whole or in part.
struct FeedingRecord {
    int offers = 0;
    int accepted = 0;

    friend auto operator<=>(const FeedingRecord&, const FeedingRecord&) = default;
};

/// Animals' own shares of accepted offers are spread as Beta(yes, no); `weight` is how much this is
/// believed beside others. Weights add up to 1.
struct Belief {
    double weight = 1;
    double yes = 1;
    double no = 1;
};

/// What the room's records make of the prior: a few Beta distributions that differ in mean and in how
/// alike animals are, so that what is not known of the whole room is not taken for known.
///
/// Log-odds of the mean are normal around the prior's with its spread; five degrees of likeness (a
/// quarter to four times the prior's `offers`) are weighed against each other. For each the posterior of
/// the mean is taken as normal at its mode (Laplace's method) and stood in for by the five points of
/// Gauss-Hermite quadrature. Beta-binomial likelihood of each record. O(offers in all records).
[[nodiscard]] std::vector<Belief> learned(const AcceptancePrior& prior,
                                          std::span<const FeedingRecord> room);

/// The share of offers that an animal with this record is expected to take, its record being part of
/// the room.
[[nodiscard]] double expectedShare(std::span<const Belief> beliefs, const FeedingRecord& record);

/// Like offers to one animal in the time ahead.
struct Offers {
    int count = 1;      ///< how many
    int each = 1;       ///< prey in each
    double chance = 1;  ///< that feeding is open when it comes to it
    double lostIfRefused =
        0;  ///< part of refused prey that can't be offered again; 1 for killed prey
};

/// How many prey these offers use up, if the animal's share is Beta(yes, no): those accepted are
/// Beta-binomial, and of the rest some are lost. Exact. O(count^3).
[[nodiscard]] Counts usedUp(const Offers& offers, double yes, double no);
/// The mean of the same for a known share.
[[nodiscard]] double expectedUse(const Offers& offers, double share);

}  // namespace burrow::stock
