// How likely each whole number of prey is. Exact sums of independent counts, without the normal or
// Poisson approximations (which are off by tenths where acceptance is high).
#pragma once

#include <span>
#include <utility>
#include <vector>

#include "model/profile.h"

namespace burrow::stock {

/// A probability for each of the whole numbers from `least()` to `most()`.
class Counts {
public:
    /// Certainly none.
    Counts() : chances_{1} {}
    /// `chances[i]` is that of `least + i`; they add up to 1.
    Counts(int least, std::vector<double> chances) : least_(least), chances_(std::move(chances)) {}

    [[nodiscard]] int least() const { return least_; }
    [[nodiscard]] int most() const { return least_ + static_cast<int>(chances_.size()) - 1; }
    [[nodiscard]] double chance(int number) const;
    /// P(X <= number)
    [[nodiscard]] double atMost(int number) const;
    [[nodiscard]] double mean() const;
    [[nodiscard]] double variance() const;
    /// The least number with P(X <= number) >= `share`.
    [[nodiscard]] int quantile(double share) const;
    /// The central interval: quantiles of what `share` leaves at either side. Numbers being whole, it
    /// holds at least that share (conservative), and a little more where a step straddles its end.
    [[nodiscard]] Range<int> middle(double share) const;
    /// Each of them so many times: one for all prey of a meal.
    [[nodiscard]] Counts times(int each) const;
    /// Of this and another independent one.
    [[nodiscard]] Counts plus(const Counts& other) const;
    /// Of so many independent ones like this. O(log n) sums.
    [[nodiscard]] Counts repeated(int times) const;

private:
    void trim();

    int least_ = 0;
    std::vector<double> chances_;
};

/// Of n tries with one chance.
[[nodiscard]] Counts binomial(int tries, double chance);
/// Of n tries whose common chance is itself Beta(yes, no) distributed (Pólya-Eggenberger; Skellam 1948,
/// J. R. Stat. Soc. B 10:257-261).
[[nodiscard]] Counts betaBinomial(int tries, double yes, double no);
/// Of one try each, with these chances: the Poisson-binomial distribution, by convolution.
[[nodiscard]] Counts poissonBinomial(std::span<const double> chances);
/// The sum of independent ones, halved again and again so that long sums stay short; tails below 1e-17
/// on each side of a partial sum are dropped, 1e-12 in all for 20,000 of them. About O(n + s^2) for a
/// standard deviation s of the whole.
[[nodiscard]] Counts sum(std::vector<Counts> counts);
/// One of them, with these weights, which add up to 1.
[[nodiscard]] Counts mixed(std::span<const std::pair<double, Counts>> counts);

}  // namespace burrow::stock
