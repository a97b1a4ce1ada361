// The chance that an animal is female, and how it comes about: Bayes' rule in logarithms of odds,
//   ln(P / (1 - P)) = ln(prior / (1 - prior)) + the sum of weight x ln(likelihood ratio)
// (for example D. V. Lindley, Understanding Uncertainty, Wiley 2006, chapter 6). What was seen counts as
// follows, whatever the order in which it came in:
// - Of several looks at one skin the clearest counts, whoever looked, and the others have no weight: they
//   see the same folds. Looks that are equally clear and say different things cancel: none counts.
// - Looks at different skins add up. Of those that say the same, the one that tells most counts in full
//   and each further one with a share of its logarithm (`agreeing_share` of the table): the same eyes may
//   misread the same animal again. The table is a rule of thumb, and so is the share.
// - Colours are one look, however often they were seen.
// - What settles the sex (hooks and bulbs, a sperm web, a sac) counts alone. Whatever says the opposite is
//   marked as corrected. Where both sexes are "settled", neither counts until the record is put right.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/message.h"
#include "sexing/evidence.h"

namespace burrow::sexing {

/// What became of a sighting in the sum.
enum class Part {
    counts,    ///< in full
    agrees,    ///< with the share of what agrees with something stronger
    sameSkin,  ///< a clearer look at the same skin counts
    cancels,   ///< an equally clear look at the same skin says the opposite
    cannotTell,
    tellsNothing,  ///< hooks and bulbs that are missing
    setAside,      ///< what settles it says the same
    corrected,     ///< what settles it says the opposite
    disputed       ///< it would settle it, if nothing else did for the other sex
};
[[nodiscard]] std::string_view name(Part part);

/// One line of the ledger.
struct Factor {
    Sighting seen;
    double ratio = 1;  ///< of the table, 1 where it has none
    std::string row;   ///< of the table; empty where it was not asked
    std::string source;
    Part part = Part::counts;
    double weight = 0;    ///< of its logarithm, 0 to 1
    double logOdds = 0;   ///< what it adds: weight x ln(ratio)
    double before = 0.5;  ///< P(female) before and after this line, down the ledger
    double after = 0.5;
    Message why;      ///< "A plate seen clearly in a moult of 24.1 mm"
    Message counted;  ///< what it counts for: "4 times likelier in a female"

    friend bool operator==(const Factor&, const Factor&) = default;
};

enum class ConflictKind {
    looks,     ///< looks that count say different things
    sameSkin,  ///< two looks at one skin do
    settled,   ///< both sexes are settled
    recorded   ///< the sex on record is not what the evidence says
};
[[nodiscard]] std::string_view name(ConflictKind kind);

struct Conflict {
    ConflictKind kind = ConflictKind::looks;
    std::vector<std::size_t> factors;  ///< places in the ledger
    Message why;

    friend bool operator==(const Conflict&, const Conflict&) = default;
};

/// What would settle it, and how far it would go.
enum class Settles { waitingMoult, clearMoult, grown, secondOpinion, record };
[[nodiscard]] std::string_view name(Settles what);

struct WouldSettle {
    Settles what = Settles::clearMoult;
    /// P(female) afterwards, for either answer.
    std::optional<double> ifFemale;
    std::optional<double> ifMale;
    std::optional<EntryId> moult;  ///< that waits to be looked at
    Message why;

    friend bool operator==(const WouldSettle&, const WouldSettle&) = default;
};

/// A moult with a photo at which nobody has looked.
struct WaitingMoult {
    EntryId moult;
    CivilDay day;
    std::optional<Millimetres> carapace;
};

struct Question {
    std::string species;
    Sex recorded = Sex::unknown;  ///< as the animal's record says
    std::span<const WaitingMoult> waiting = {};
    bool sizeTells = true;  ///< as in Sighting
};

struct Finding {
    double prior = 0.5;
    double female = 0.5;         ///< P(female)
    Sex verdict = Sex::unknown;  ///< the likelier one; unknown below the first stop
    std::optional<Clarity> stop;
    bool isDecisive = false;  ///< by what settles it, undisputed
    std::vector<Factor> ledger;
    std::vector<Conflict> conflicts;
    std::vector<WouldSettle> wouldSettle;  ///< empty where it is settled

    /// Clear enough to stop asking, and undisputed.
    [[nodiscard]] bool isSettled() const;
    friend bool operator==(const Finding&, const Finding&) = default;
};

/// Neither the order of the sightings nor one that is there twice makes a difference to the result but for
/// the order of the ledger's lines, which is that of the days.
[[nodiscard]] Finding judge(std::span<const Sighting> sightings, const SexingRules& rules,
                            const Question& question);

/// Bits that a clear look at a moult of that size is expected to tell (mutual information; Cover and
/// Thomas, Elements of Information Theory, 2.3): 0 where nothing is left to learn, at most 1.
[[nodiscard]] double expectedBits(double female, std::optional<Millimetres> carapace,
                                  const SexingRules& rules);

}  // namespace burrow::sexing
