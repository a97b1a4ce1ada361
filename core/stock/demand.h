// What will be asked for, by kind and size; not for use outside stock.
#pragma once

#include <map>
#include <span>
#include <vector>

#include "stock/shopping.h"

namespace burrow::stock {

/// What is believed of each prior, learned from all subjects that fall under it.
using Beliefs = std::map<const AcceptancePrior*, std::vector<Belief>>;
[[nodiscard]] Beliefs beliefsOf(std::span<const Need> needs, const Feeders& feeders);

/// The use of one size of one kind.
struct Demand {
    std::vector<double> byDay;  ///< expected, from today on
    Counts total;

    [[nodiscard]] double mean() const;
};

/// By position of the band.
[[nodiscard]] std::map<std::size_t, Demand> demands(std::span<const Need> needs,
                                                    const Beliefs& beliefs, const ShoppingAsk& ask,
                                                    const Feeders& feeders);

/// The use of all sizes and kinds together.
[[nodiscard]] Counts total(std::span<const Need> needs, const Beliefs& beliefs,
                           const ShoppingAsk& ask, const Feeders& feeders);

/// What the batches leave uncovered on each day when all of a band's expected use is scaled by its
/// factor.
using Scales = std::map<std::size_t, double>;
using Uncovered = std::map<std::size_t, std::vector<double>>;
[[nodiscard]] Uncovered uncovered(const std::map<std::size_t, Demand>& demands,
                                  std::span<const Batch> batches, const Scales& scales,
                                  const ShoppingAsk& ask, const Feeders& feeders);

}  // namespace burrow::stock
