// Feeder insects as data: what they weigh, in which sizes they are sold, how they grow and die in
// their tub, and how readily animals of a stage take them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "base/units.h"

namespace burrow::stock {

/// A size in which a kind is sold and asked for.
struct SizeBand {
    std::string kind;
    std::string name;  ///< "small"
    Millimetres least;
    Millimetres most;  ///< where the next one begins; how long the kind gets in the last
};

/// How a kind fares while it is kept.
struct Keeping {
    double growth = 0;          ///< mm a day
    double lossPerDay = 0;      ///< part of them that dies each day
    double lossPerRefusal = 0;  ///< part of the refused that can't be offered again
};

/// What is believed of animals of which nothing is recorded.
struct AcceptancePrior {
    std::string id;
    double share = 0.5;  ///< of offers that are accepted
    double offers = 1;   ///< how many offers of its own weigh as much as this belief
    double spread =
        0.5;  ///< how far a whole room may lie off, as a standard deviation of the log-odds
};

/// The tables of assets/rules/tables/prey.json. A kind they do not know is treated as "other".
class Feeders {
public:
    /// Fails with `badInput` for a file that is no such tables, or whose bands leave gaps.
    static Result<Feeders> fromJson(std::string_view file);

    [[nodiscard]] const std::vector<SizeBand>& bands() const { return bands_; }
    /// The position in `bands()` of the band that the length falls into; shorter than the first is the
    /// first, longer than the last is the last.
    [[nodiscard]] std::size_t band(std::string_view kind, Millimetres length) const;
    [[nodiscard]] bool isLastBand(std::size_t band) const;
    /// Live mass by m = a L^b, a and b of the kind.
    [[nodiscard]] Grams mass(std::string_view kind, Millimetres length) const;
    /// The length at which one weighs so much.
    [[nodiscard]] Millimetres length(std::string_view kind, Grams mass) const;
    [[nodiscard]] const Keeping& keeping(std::string_view kind) const;
    /// Of its species, else of its genus, else of its stage ("adult"); "juvenile" for a stage that is
    /// not there.
    [[nodiscard]] const AcceptancePrior& prior(std::string_view stage,
                                               std::string_view species) const;

private:
    struct Kind {
        std::string name;
        double milligramsAt10 = 0;
        double exponent = 3;
        Keeping keeping;
        std::size_t firstBand = 0;
        std::size_t lastBand = 0;
    };
    struct PriorRow {
        std::string stage;
        std::string taxon;  ///< a genus or a species; empty for all
        AcceptancePrior prior;
    };
    [[nodiscard]] const Kind& kind(std::string_view name) const;

    std::vector<Kind> kinds_;
    std::vector<SizeBand> bands_;
    std::vector<PriorRow> priors_;
};

/// So many of a kind and length.
struct Portion {
    std::string kind;
    Millimetres length;
    int count = 1;

    friend bool operator==(const Portion&, const Portion&) = default;
};

[[nodiscard]] Grams massOf(const Portion& portion, const Feeders& feeders);

/// The same meal in another kind: as many as come closest to its mass, none longer than `longest`;
/// shorter than that where one alone would weigh more than the meal.
[[nodiscard]] Portion insteadOf(const Portion& meal, const std::string& kind, Millimetres longest,
                                const Feeders& feeders);

}  // namespace burrow::stock
