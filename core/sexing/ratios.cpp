#include "sexing/ratios.h"

#include <algorithm>

#include "base/text.h"

namespace burrow::sexing {
namespace {

constexpr std::array clarities{Clarity::barely, Clarity::partly, Clarity::fairly, Clarity::clearly,
                               Clarity::beyondDoubt};
constexpr std::array<std::string_view, 4> decisiveNames{"ultimate_moult", "hooks_or_bulbs",
                                                        "sperm_web", "sac"};

tl::unexpected<Error> damaged(std::string_view table, std::string_view row) {
    return fail(Trouble::badInput,
                {"sexing.rules", {{"table", std::string(table)}, {"row", std::string(row)}}});
}

/// "Brachypelma" of "Brachypelma hamorii".
std::string_view genusOf(std::string_view species) { return species.substr(0, species.find(' ')); }

}  // namespace

Result<SexingRules> SexingRules::fromJson(std::string_view file) {
    // No ratio is so large that it could not be outweighed, save those that settle it.
    const Range<double> up{1, 1000};
    const Range<double> down{0.001, 1};
    const Range<double> any{1e-6, 1e6};
    const Range<double> share{0, 1};
    const Range<double> length{0, 81};
    const std::vector<TableShape> shapes{
        {"moult",
         {{"from_mm", length, true},
          {"below_mm", length, true},
          {"clarity"},
          {"plate_ratio", up},
          {"none_ratio", down}}},
        {"underside", {{"female_ratio", up}, {"male_ratio", down}}},
        {"decisive", {{"ratio", any}}},
        {"colour", {{"for"}, {"female_ratio", up}, {"male_ratio", down}}},
        {"stops", {{"least", share}}},
        {"numbers", {{"value", share}}},
        {"lengths", {{"length_mm", length}}}};
    BURROW_TRY(const auto tables, Tables::fromJson(file, shapes));
    SexingRules rules;
    BURROW_DO(rules.readMoults(tables));
    BURROW_DO(rules.readSided(tables));
    BURROW_DO(rules.readNumbers(tables));
    return rules;
}

Done SexingRules::readMoults(const Tables& tables) {
    for (const auto& row : tables.rows("moult")) {
        const auto clarity = parseTerm<Clarity>(row.word("clarity"));
        const auto from = row.numberIfAny("from_mm");
        const auto below = row.numberIfAny("below_mm");
        const bool isBand = from && below && *from < *below;
        if (!clarity || (!isBand && (from || below))) return damaged("moult", row.id);
        std::optional<Range<Millimetres>> carapace;
        if (isBand) carapace = Range<Millimetres>{{*from}, {*below}};
        moults_.push_back({row.id, carapace, *clarity, row.number("plate_ratio"),
                           row.number("none_ratio"), row.source});
    }
    std::stable_sort(moults_.begin(), moults_.end(), [](const MoultRow& a, const MoultRow& b) {
        if (!a.carapace || !b.carapace) return a.carapace && !b.carapace;
        return a.carapace->least < b.carapace->least;
    });
    // Each clarity has one row for every length, from nothing to the longest, and one for none measured.
    for (const auto clarity : clarities) {
        double reached = 0;
        int unmeasured = 0;
        for (const auto& row : moults_) {
            if (row.clarity != clarity) continue;
            if (!row.carapace) {
                ++unmeasured;
                continue;
            }
            if (row.carapace->least.value != reached) return damaged("moult", row.id);
            reached = row.carapace->most.value;
        }
        if (reached < 80 || unmeasured != 1) return damaged("moult", name(clarity));
    }
    return {};
}

Done SexingRules::readSided(const Tables& tables) {
    for (const auto clarity : clarities) {
        const auto* row = tables.find("underside", name(clarity));
        if (row == nullptr) return damaged("underside", name(clarity));
        undersides_.push_back({row->id, row->id, row->number("female_ratio"),
                               row->number("male_ratio"), row->source});
    }
    bool hasAny = false;
    for (const auto& row : tables.rows("colour")) {
        colours_.push_back({row.id, row.word("for"), row.number("female_ratio"),
                            row.number("male_ratio"), row.source});
        hasAny = hasAny || row.word("for") == "*";
    }
    return hasAny ? Done() : Done(damaged("colour", "*"));
}

Done SexingRules::readNumbers(const Tables& tables) {
    for (std::size_t at = 0; at < decisiveNames.size(); ++at) {
        const auto* row = tables.find("decisive", decisiveNames.at(at));
        const bool isFemale = decisiveNames.at(at) == "sac";
        if (row == nullptr || isFemale != (row->number("ratio") > 1)) {
            return damaged("decisive", decisiveNames.at(at));
        }
        decisive_.at(at) = {row->number("ratio"), row->id, row->source};
    }
    double before = 0.5;
    for (const auto clarity : clarities) {
        const auto* row = tables.find("stops", name(clarity));
        if (row == nullptr || row->number("least") <= before) {
            return damaged("stops", name(clarity));
        }
        before = least_.at(static_cast<std::size_t>(clarity)) = row->number("least");
    }
    const auto* prior = tables.find("numbers", "prior");
    const auto* share = tables.find("numbers", "agreeing_share");
    if (prior == nullptr || share == nullptr) return damaged("numbers", "prior");
    prior_ = prior->number("value");
    agreeingShare_ = share->number("value");
    const auto* close = tables.find("numbers", "close_up_share");
    const auto* unmeasured = tables.find("lengths", "close_up_mm");
    if (close == nullptr || unmeasured == nullptr) return damaged("numbers", "close_up_share");
    closeUpShare_ = close->number("value");
    closeUpUnmeasured_ = Millimetres{unmeasured->number("length_mm")};
    if (!(closeUpShare_ > 0) || !(closeUpUnmeasured_.value > 0)) {
        return damaged("numbers", "close_up_share");
    }
    // A prior that is certain could never be learned from.
    return prior_ > 0 && prior_ < 1 ? Done() : Done(damaged("numbers", "prior"));
}

Ratio SexingRules::moult(Sex says, Clarity clarity, std::optional<Millimetres> carapace) const {
    const MoultRow* found = nullptr;
    for (const auto& row : moults_) {
        if (row.clarity != clarity || carapace.has_value() != row.carapace.has_value()) continue;
        // A length beyond the longest band is as good as that band.
        if (found == nullptr || !carapace || *carapace >= row.carapace->least) found = &row;
    }
    if (found == nullptr) return {};  // unreachable: fromJson() looks for every row
    return {says == Sex::female ? found->plate : found->none, found->id, found->source};
}

Ratio SexingRules::underside(Sex says, Clarity clarity) const {
    const auto& row = undersides_.at(static_cast<std::size_t>(clarity));
    return {says == Sex::female ? row.female : row.male, row.id, row.source};
}

Ratio SexingRules::colour(Sex says, std::string_view species) const {
    const SidedRow* found = nullptr;
    for (const std::string_view wanted : {species, genusOf(species), std::string_view("*")}) {
        const auto at = std::find_if(colours_.begin(), colours_.end(),
                                     [&](const SidedRow& row) { return row.about == wanted; });
        if (at == colours_.end()) continue;
        found = &*at;
        break;
    }
    if (found == nullptr) return {};  // unreachable: fromJson() looks for "*"
    return {says == Sex::female ? found->female : found->male, found->id, found->source};
}

Ratio SexingRules::decisive(Decisive what) const {
    return decisive_.at(static_cast<std::size_t>(what));
}

std::optional<Clarity> SexingRules::stop(double chance) const {
    std::optional<Clarity> reached;
    for (const auto clarity : clarities) {
        if (chance >= least(clarity)) reached = clarity;
    }
    return reached;
}

Millimetres SexingRules::closeUp(std::optional<Millimetres> carapace) const {
    return carapace && carapace->value > 0 ? closeUpShare_ * *carapace : closeUpUnmeasured_;
}

Millimetres SexingRules::largeCarapace() const {
    Millimetres largest;
    for (const auto& row : moults_) {
        if (row.carapace) largest = std::max(largest, row.carapace->least);
    }
    return largest;
}

}  // namespace burrow::sexing
