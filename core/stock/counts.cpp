#include "stock/counts.h"

#include <algorithm>
#include <cmath>

namespace burrow::stock {
namespace {

/// What a sum may lose at either end.
constexpr double negligible = 1e-17;

}  // namespace

double Counts::chance(int number) const {
    if (number < least() || number > most()) return 0;
    return chances_[static_cast<std::size_t>(number - least_)];
}

double Counts::atMost(int number) const {
    double total = 0;
    for (int at = least(); at <= std::min(number, most()); ++at) total += chance(at);
    return number >= most() ? 1 : total;
}

double Counts::mean() const {
    double total = 0;
    for (int at = least(); at <= most(); ++at) total += at * chance(at);
    return total;
}

double Counts::variance() const {
    const double middle = mean();
    double total = 0;
    for (int at = least(); at <= most(); ++at) total += (at - middle) * (at - middle) * chance(at);
    return total;
}

int Counts::quantile(double share) const {
    // A sum of doubles may end a hair below the share that it stands for.
    constexpr double hair = 1e-12;
    double total = 0;
    for (int at = least(); at < most(); ++at) {
        total += chance(at);
        if (total >= share - hair) return at;
    }
    return most();
}

Range<int> Counts::middle(double share) const {
    const double tail = (1 - share) / 2;
    return {quantile(tail), quantile(1 - tail)};
}

Counts Counts::times(int each) const {
    if (each <= 0) return {};
    std::vector<double> spread((chances_.size() - 1) * static_cast<std::size_t>(each) + 1, 0);
    for (std::size_t i = 0; i < chances_.size(); ++i) {
        spread[i * static_cast<std::size_t>(each)] = chances_[i];
    }
    return {least_ * each, std::move(spread)};
}

Counts Counts::plus(const Counts& other) const {
    std::vector<double> both(chances_.size() + other.chances_.size() - 1, 0);
    for (std::size_t i = 0; i < chances_.size(); ++i) {
        const double chance = chances_[i];
        if (chance == 0) continue;
        for (std::size_t k = 0; k < other.chances_.size(); ++k) {
            both[i + k] += chance * other.chances_[k];
        }
    }
    Counts total(least_ + other.least_, std::move(both));
    total.trim();
    return total;
}

Counts Counts::repeated(int times) const {
    Counts total;
    Counts power = *this;
    for (int left = times; left > 0; left /= 2) {
        if (left % 2 == 1) total = total.plus(power);
        if (left > 1) power = power.plus(power);
    }
    return total;
}

void Counts::trim() {
    double tail = 0;
    std::size_t front = 0;
    while (front + 1 < chances_.size() && (tail += chances_[front]) < negligible) ++front;
    tail = 0;
    std::size_t end = chances_.size();
    while (end > front + 1 && (tail += chances_[end - 1]) < negligible) --end;
    chances_.resize(end);
    chances_.erase(chances_.begin(), chances_.begin() + static_cast<std::ptrdiff_t>(front));
    least_ += static_cast<int>(front);
}

Counts binomial(int tries, double chance) {
    if (chance <= 0 || tries <= 0) return {};
    if (chance >= 1) return {tries, {1}};
    std::vector<double> chances;
    double logarithm = tries * std::log1p(-chance);
    const double odds = std::log(chance) - std::log1p(-chance);
    for (int k = 0; k <= tries; ++k) {
        chances.push_back(std::exp(logarithm));
        logarithm += odds + std::log((tries - k) / (k + 1.0));
    }
    return {0, std::move(chances)};
}

Counts betaBinomial(int tries, double yes, double no) {
    if (tries <= 0) return {};
    double logarithm = 0;
    for (int i = 0; i < tries; ++i) logarithm += std::log((no + i) / (yes + no + i));
    std::vector<double> chances;
    for (int k = 0; k <= tries; ++k) {
        chances.push_back(std::exp(logarithm));
        if (k == tries) break;
        logarithm += std::log((tries - k) / (k + 1.0) * (yes + k) / (no + tries - k - 1));
    }
    return {0, std::move(chances)};
}

Counts poissonBinomial(std::span<const double> chances) {
    std::vector<Counts> tries;
    tries.reserve(chances.size());
    for (const double chance : chances)
        tries.emplace_back(0, std::vector<double>{1 - chance, chance});
    return sum(std::move(tries));
}

Counts sum(std::vector<Counts> counts) {
    if (counts.empty()) return {};
    while (counts.size() > 1) {
        std::size_t kept = 0;
        for (std::size_t i = 0; i < counts.size(); i += 2) {
            counts[kept++] =
                i + 1 < counts.size() ? counts[i].plus(counts[i + 1]) : std::move(counts[i]);
        }
        counts.resize(kept);
    }
    return counts.front();
}

Counts mixed(std::span<const std::pair<double, Counts>> counts) {
    if (counts.empty()) return {};
    int least = counts.front().second.least();
    int most = counts.front().second.most();
    for (const auto& [weight, part] : counts) {
        least = std::min(least, part.least());
        most = std::max(most, part.most());
    }
    std::vector<double> chances(static_cast<std::size_t>(most - least + 1), 0);
    for (const auto& [weight, part] : counts) {
        for (int at = part.least(); at <= part.most(); ++at) {
            chances[static_cast<std::size_t>(at - least)] += weight * part.chance(at);
        }
    }
    return {least, std::move(chances)};
}

}  // namespace burrow::stock
