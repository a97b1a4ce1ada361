// How much each kind of evidence says about the sex: likelihood ratios from a table of data, each with
// where it comes from. A ratio is the chance of seeing this in a female over the chance of seeing it in
// a male: above 1 speaks for a female, below 1 for a male.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/table.h"
#include "model/terms.h"

namespace burrow::sexing {

/// One row of the table that was asked.
struct Ratio {
    double value = 1;
    std::string row;  ///< "11_to_16.clearly"
    std::string source;
};

/// What settles the sex by itself.
enum class Decisive { ultimateMoult, hooksOrBulbs, spermWeb, sac };

/// By the carapace length of the moult, with what a plate and what none is worth.
struct MoultRow {
    std::string id;
    std::optional<Range<Millimetres>> carapace;  ///< from, below; nothing: not measured
    Clarity clarity = Clarity::partly;
    double plate = 1;  ///< over 1
    double none = 1;   ///< under 1
    std::string source;
};

/// The tables of assets/rules/tables/sexing.json.
class SexingRules {
public:
    /// Fails with `badInput` for a file that is no such tables, lacks a stop, a band or a clarity, has
    /// bands with gaps between them, or a ratio on the wrong side of 1.
    static Result<SexingRules> fromJson(std::string_view file);

    /// `says` is female (a plate was seen) or male (none was).
    [[nodiscard]] Ratio moult(Sex says, Clarity clarity, std::optional<Millimetres> carapace) const;
    [[nodiscard]] Ratio underside(Sex says, Clarity clarity) const;
    /// By the species, else its genus, else what holds for any.
    [[nodiscard]] Ratio colour(Sex says, std::string_view species) const;
    [[nodiscard]] Ratio decisive(Decisive what) const;

    /// P(female) of an animal of which nothing is known.
    [[nodiscard]] double prior() const { return prior_; }
    /// The part of its logarithm with which evidence counts that agrees with stronger evidence.
    [[nodiscard]] double agreeingShare() const { return agreeingShare_; }
    /// How sure a chance makes, of the likelier sex; nothing below the first stop.
    [[nodiscard]] std::optional<Clarity> stop(double chance) const;
    /// The least chance of a stop.
    [[nodiscard]] double least(Clarity stop) const {
        return least_.at(static_cast<std::size_t>(stop));
    }
    /// How wide the place between the front book lungs is with what is around it, for looking at it.
    [[nodiscard]] Millimetres closeUp(std::optional<Millimetres> carapace) const;
    /// The least carapace of the largest band.
    [[nodiscard]] Millimetres largeCarapace() const;

private:
    struct SidedRow {
        std::string id;
        std::string about;  ///< species or genus; "*" for any
        double female = 1;
        double male = 1;
        std::string source;
    };

    Done readMoults(const Tables& tables);
    Done readSided(const Tables& tables);
    Done readNumbers(const Tables& tables);

    std::vector<MoultRow> moults_;  ///< measured ones by size, then those without a size
    std::vector<SidedRow> undersides_;
    std::vector<SidedRow> colours_;
    std::array<Ratio, 4> decisive_;
    std::array<double, 5> least_{};
    double prior_ = 0.5;
    double agreeingShare_ = 1;
    double closeUpShare_ = 1;
    Millimetres closeUpUnmeasured_;
};

}  // namespace burrow::sexing
