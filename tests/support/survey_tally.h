// What many measured photos come to, and the dice that they are taken with. No Qt.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>
#include <vector>

namespace burrow::test {

struct Range {
    double least;
    double most;
};

class Dice {
public:
    explicit Dice(std::uint32_t seed) : engine_(seed) {}
    double in(Range range) { return range.least + (range.most - range.least) * uniform_(engine_); }
    double normal(double deviation) {
        return std::normal_distribution<double>(0, deviation)(engine_);
    }

private:
    std::mt19937 engine_;
    std::uniform_real_distribution<double> uniform_{0, 1};
};

/// What is counted in a band. Lengths of one photo share its error, so photos are what counts: how far chance
/// moves the coverage is told by how much it differs between them.
struct Tally {
    int photos = 0;
    int refused = 0;
    int lengths = 0;
    int covered = 0;
    int farOff = 0;              ///< by more than three times half of their interval
    std::vector<double> shares;  ///< covered, of each photo's lengths
    std::vector<double> errors;  ///< of lengths of 15 mm between clicked points, in mm
    std::vector<double> exact;   ///< the same between the very points
    int planeCovered = 0;        ///< between the very points, by what the plane alone leaves open
    double widest = 0;           ///< half of an interval, relative to the length
    double planeShare = 0;       ///< of the variance, summed

    [[nodiscard]] double coverage() const { return static_cast<double>(covered) / lengths; }
    /// Three standard errors of the coverage: of the mean of the photos' shares, and not less than if every
    /// length had an error of its own.
    [[nodiscard]] double chance() const {
        const auto count = static_cast<double>(shares.size());
        double squares = 0;
        for (const double share : shares) squares += (share - coverage()) * (share - coverage());
        const double ofPhotos = count > 1 ? std::sqrt(squares / (count * (count - 1))) : 0;
        return 3 * std::max(ofPhotos, std::sqrt(0.95 * 0.05 / lengths));
    }
    void add(const Tally& other) {
        photos += other.photos;
        refused += other.refused;
        lengths += other.lengths;
        covered += other.covered;
        farOff += other.farOff;
        planeCovered += other.planeCovered;
        shares.insert(shares.end(), other.shares.begin(), other.shares.end());
        errors.insert(errors.end(), other.errors.begin(), other.errors.end());
        exact.insert(exact.end(), other.exact.begin(), other.exact.end());
        widest = std::max(widest, other.widest);
        planeShare += other.planeShare;
    }
    [[nodiscard]] static double percentile95(std::vector<double> errors) {
        std::sort(errors.begin(), errors.end());
        return errors.empty() ? 0 : errors[errors.size() * 95 / 100];
    }
};

}  // namespace burrow::test
