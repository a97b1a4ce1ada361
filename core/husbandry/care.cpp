#include "husbandry/care.h"

#include "model/terms.h"

namespace burrow {
namespace {

constexpr std::array<std::string_view, allCare.size()> careNames{
    "leftovers", "look",    "feed",     "water",   "damp",      "moult_check",
    "headcount", "measure", "breeding", "rehouse", "quarantine"};
constexpr std::array<std::string_view, 4> stateNames{"due", "hold", "waiting", "none"};
constexpr std::array<std::string_view, 5> priorityNames{"none", "low", "usual", "high", "urgent"};
constexpr std::array<std::string_view, becauseCount> becauseNames{"none_left",
                                                                  "on_loan",
                                                                  "loan_over",
                                                                  "dead",
                                                                  "sold",
                                                                  "given",
                                                                  "hardening",
                                                                  "premoult",
                                                                  "likely_premoult",
                                                                  "egg_sac",
                                                                  "settling",
                                                                  "too_cold",
                                                                  "heat",
                                                                  "quarantined",
                                                                  "never",
                                                                  "last_done",
                                                                  "silent",
                                                                  "ate",
                                                                  "refused",
                                                                  "uneaten",
                                                                  "moulted",
                                                                  "prey_left_in",
                                                                  "false_premoult",
                                                                  "member_soft",
                                                                  "member_premoult",
                                                                  "leftovers",
                                                                  "nothing_left",
                                                                  "never_offered",
                                                                  "fangs",
                                                                  "moult_expected",
                                                                  "no_moult_known",
                                                                  "last_moult_over",
                                                                  "counted",
                                                                  "counted_fewer",
                                                                  "single",
                                                                  "several",
                                                                  "unmeasured",
                                                                  "grown_since",
                                                                  "measured",
                                                                  "outgrown",
                                                                  "outgrows_next",
                                                                  "fits",
                                                                  "home_unknown",
                                                                  "size_unknown",
                                                                  "sperm_web",
                                                                  "paired_once",
                                                                  "sac_expected",
                                                                  "no_sperm_web",
                                                                  "not_paired",
                                                                  "not_quarantined"};
static_assert(!becauseNames.back().empty() && !careNames.back().empty());

template <class Term, std::size_t count>
std::string_view nameIn(const std::array<std::string_view, count>& names, Term term) {
    return names.at(static_cast<std::size_t>(term));
}

}  // namespace

std::string_view name(Care care) { return nameIn(careNames, care); }
std::string_view name(State state) { return nameIn(stateNames, state); }
std::string_view name(Because because) { return nameIn(becauseNames, because); }
std::string_view name(Priority priority) { return nameIn(priorityNames, priority); }

std::optional<Care> parseCare(std::string_view text) {
    const auto wanted = normalTerm(text);
    for (const auto care : allCare) {
        if (name(care) == wanted) return care;
    }
    return std::nullopt;
}

}  // namespace burrow
