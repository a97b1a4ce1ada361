#include "stock/acceptance.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace burrow::stock {
namespace {

/// How much an animal tells of the next: factors of the prior's own, and how they are believed before.
struct Likeness {
    double factor;
    double weight;
};
constexpr std::array<Likeness, 5> likenesses{{{0.25, 1}, {0.5, 2}, {1, 3}, {2, 2}, {4, 1}}};

/// Beliefs below this are left out.
constexpr double negligible = 0.002;

/// Gauss-Hermite quadrature over a standard normal, five points (Abramowitz & Stegun 1964, table 25.10,
/// nodes times the root of 2, weights over the root of pi).
struct HermitePoint {
    double deviations;
    double weight;
};
constexpr std::array<HermitePoint, 5> hermite{{{-2.8569700138728056, 0.011257411327720688},
                                               {-1.3556261799742657, 0.22207592200561266},
                                               {0, 0.53333333333333333},
                                               {1.3556261799742657, 0.22207592200561266},
                                               {2.8569700138728056, 0.011257411327720688}}};

/// How many records reach how far. The chance of a record, each of its offers in its place, is a product
/// of (yes + i) for its acceptances, (no + i) for its refusals and 1 / (yes + no + i) for its offers, so
/// these three counts say all that the records do.
struct Tally {
    std::vector<double> accepted;  ///< records with more than i acceptances
    std::vector<double> refused;
    std::vector<double> offered;

    explicit Tally(std::span<const FeedingRecord> room) {
        for (const auto& record : room) {
            count(accepted, record.accepted);
            count(refused, record.offers - record.accepted);
            count(offered, record.offers);
        }
    }
    [[nodiscard]] double logLikelihood(double yes, double no) const {
        return sum(accepted, yes) + sum(refused, no) - sum(offered, yes + no);
    }

private:
    static void count(std::vector<double>& into, int reach) {
        const auto size = static_cast<std::size_t>(std::max(0, reach));
        if (into.size() < size) into.resize(size, 0);
        for (std::size_t i = 0; i < size; ++i) into[i] += 1;
    }
    static double sum(const std::vector<double>& counts, double from) {
        double total = 0;
        for (std::size_t i = 0; i < counts.size(); ++i) {
            total += counts[i] * std::log(from + static_cast<double>(i));
        }
        return total;
    }
};

double shareOf(double logOdds) { return 1 / (1 + std::exp(-logOdds)); }

/// Log posterior, up to a constant, of the room's log-odds at one likeness.
class Posterior {
public:
    Posterior(const AcceptancePrior& prior, double offers, const Tally& tally)
        : prior_(prior), offers_(offers), tally_(tally) {}

    [[nodiscard]] double operator()(double logOdds) const {
        const double share = shareOf(logOdds);
        const double off = (logOdds - centre()) / prior_.spread;
        return tally_.logLikelihood(offers_ * share, offers_ * (1 - share)) - off * off / 2;
    }
    [[nodiscard]] double centre() const { return std::log(prior_.share / (1 - prior_.share)); }

    /// By golden section.
    [[nodiscard]] double mode() const {
        constexpr double golden = 0.6180339887498949;
        double low = centre() - 6 * prior_.spread;
        double high = centre() + 6 * prior_.spread;
        double a = high - golden * (high - low);
        double b = low + golden * (high - low);
        double atA = (*this)(a);
        double atB = (*this)(b);
        while (high - low > 1e-4) {
            if (atA < atB) {
                low = a;
                a = b;
                atA = atB;
                b = low + golden * (high - low);
                atB = (*this)(b);
            } else {
                high = b;
                b = a;
                atB = atA;
                a = high - golden * (high - low);
                atA = (*this)(a);
            }
        }
        return (low + high) / 2;
    }
    [[nodiscard]] double deviationAt(double mode) const {
        constexpr double step = 0.05;
        const double bend =
            ((*this)(mode - step) - 2 * (*this)(mode) + (*this)(mode + step)) / (step * step);
        return bend < 0 ? std::min(1 / std::sqrt(-bend), prior_.spread) : prior_.spread;
    }

private:
    const AcceptancePrior& prior_;
    double offers_;
    const Tally& tally_;
};

}  // namespace

std::vector<Belief> learned(const AcceptancePrior& prior, std::span<const FeedingRecord> room) {
    const Tally tally(room);
    struct Fit {
        double offers, mode, deviation, evidence;
    };
    std::vector<Fit> fits;
    for (const auto& likeness : likenesses) {
        const double offers = prior.offers * likeness.factor;
        const Posterior posterior(prior, offers, tally);
        const double mode = posterior.mode();
        const double deviation = posterior.deviationAt(mode);
        fits.push_back({offers, mode, deviation,
                        std::log(likeness.weight) + posterior(mode) + std::log(deviation)});
    }
    const auto best = std::max_element(fits.begin(), fits.end(), [](const Fit& a, const Fit& b) {
        return a.evidence < b.evidence;
    });
    std::vector<Belief> beliefs;
    double total = 0;
    for (const auto& fit : fits) {
        const double weight = std::exp(fit.evidence - best->evidence);
        for (const auto& point : hermite) {
            const double part = point.weight;
            if (weight * part < negligible) continue;
            const double share = shareOf(fit.mode + point.deviations * fit.deviation);
            beliefs.push_back({weight * part, fit.offers * share, fit.offers * (1 - share)});
            total += weight * part;
        }
    }
    for (auto& belief : beliefs) belief.weight /= total;
    return beliefs;
}

double expectedShare(std::span<const Belief> beliefs, const FeedingRecord& record) {
    double share = 0;
    for (const auto& belief : beliefs) {
        share += belief.weight * (belief.yes + record.accepted) /
                 (belief.yes + belief.no + record.offers);
    }
    return share;
}

Counts usedUp(const Offers& offers, double yes, double no) {
    const auto accepted = betaBinomial(offers.count, yes, no);
    if (offers.chance >= 1 && offers.lostIfRefused <= 0) return accepted.times(offers.each);
    if (offers.lostIfRefused >= 1) {
        return binomial(offers.count, offers.chance).times(offers.each);
    }
    std::vector<std::pair<double, Counts>> cases;
    for (int k = 0; k <= offers.count; ++k) {
        const auto eaten = binomial(k, offers.chance);
        const auto lost = binomial(offers.count - k, offers.chance * offers.lostIfRefused);
        cases.emplace_back(accepted.chance(k), eaten.plus(lost));
    }
    return mixed(cases).times(offers.each);
}

double expectedUse(const Offers& offers, double share) {
    return offers.count * offers.each * offers.chance *
           (share + (1 - share) * offers.lostIfRefused);
}

}  // namespace burrow::stock
