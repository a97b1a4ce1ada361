#include "stock/feeders.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "model/table.h"

namespace burrow::stock {
namespace {

constexpr std::string_view otherKind = "other";
constexpr std::string_view usualStage = "juvenile";

std::vector<TableShape> shapes() {
    const Range<double> length{0.1, 200};
    const Range<double> share{0, 1};
    return {{"mass", {{"mg_at_10_mm", {{0.1, 1000}}}, {"exponent", {{1, 4}}}}},
            {"bands", {{"kind"}, {"name"}, {"least_mm", length}, {"most_mm", length}}},
            {"keeping",
             {{"growth_mm_per_day", {{0, 10}}},
              {"lost_per_day", {{0, 0.5}}},
              {"lost_when_refused", share}}},
            {"acceptance",
             {{"stage"},
              {"taxon", std::nullopt, true},
              {"share", {{0.01, 0.99}}},
              {"offers", {{0.5, 100}}},
              {"spread", {{0.05, 2}}}}}};
}

tl::unexpected<Error> refuse(const std::string& row) {
    return fail(Trouble::badInput, {"stock.bands", {{"row", row}}});
}

}  // namespace

Result<Feeders> Feeders::fromJson(std::string_view file) {
    const auto wanted = shapes();
    BURROW_TRY(const auto tables, Tables::fromJson(file, wanted));
    Feeders feeders;
    for (const auto& row : tables.rows("mass")) {
        const auto* keeping = tables.find("keeping", row.id);
        if (keeping == nullptr) return refuse(row.id);
        Kind kind{row.id, row.number("mg_at_10_mm"), row.number("exponent"), {}, 0, 0};
        kind.keeping = {keeping->number("growth_mm_per_day"), keeping->number("lost_per_day"),
                        keeping->number("lost_when_refused")};
        kind.firstBand = feeders.bands_.size();
        for (const auto& band : tables.rows("bands")) {
            if (band.word("kind") != row.id) continue;
            SizeBand taken{
                row.id, band.word("name"), {band.number("least_mm")}, {band.number("most_mm")}};
            const bool isFirst = feeders.bands_.size() == kind.firstBand;
            const bool joins = isFirst || feeders.bands_.back().most == taken.least;
            if (!joins || taken.most <= taken.least) return refuse(band.id);
            feeders.bands_.push_back(std::move(taken));
        }
        if (feeders.bands_.size() == kind.firstBand) return refuse(row.id);
        kind.lastBand = feeders.bands_.size() - 1;
        feeders.kinds_.push_back(std::move(kind));
    }
    for (const auto& row : tables.rows("acceptance")) {
        feeders.priors_.push_back(
            {row.word("stage"),
             row.word("taxon"),
             {row.id, row.number("share"), row.number("offers"), row.number("spread")}});
    }
    const auto hasUsual = [](const PriorRow& row) {
        return row.stage == usualStage && row.taxon.empty();
    };
    if (std::none_of(feeders.priors_.begin(), feeders.priors_.end(), hasUsual)) {
        return refuse(std::string(usualStage));
    }
    if (feeders.kind(otherKind).name != otherKind) return refuse(std::string(otherKind));
    return feeders;
}

const Feeders::Kind& Feeders::kind(std::string_view name) const {
    for (const auto wanted : {name, otherKind}) {
        for (const auto& kind : kinds_) {
            if (kind.name == wanted) return kind;
        }
    }
    return kinds_.back();
}

std::size_t Feeders::band(std::string_view kindName, Millimetres length) const {
    const auto& of = kind(kindName);
    std::size_t found = of.firstBand;
    while (found < of.lastBand && length >= bands_[found].most) ++found;
    return found;
}

bool Feeders::isLastBand(std::size_t band) const {
    return kind(bands_[band].kind).lastBand == band;
}

Grams Feeders::mass(std::string_view kindName, Millimetres length) const {
    const auto& of = kind(kindName);
    return {of.milligramsAt10 / 1000 * std::pow(length.value / 10, of.exponent)};
}

Millimetres Feeders::length(std::string_view kindName, Grams mass) const {
    const auto& of = kind(kindName);
    return {10 * std::pow(mass.value * 1000 / of.milligramsAt10, 1 / of.exponent)};
}

const Keeping& Feeders::keeping(std::string_view kindName) const { return kind(kindName).keeping; }

const AcceptancePrior& Feeders::prior(std::string_view stage, std::string_view species) const {
    const auto genus = species.substr(0, species.find(' '));
    const auto find = [&](std::string_view ofStage, std::string_view taxon) {
        const auto fits = [&](const PriorRow& row) {
            return row.stage == ofStage && row.taxon == taxon;
        };
        const auto found = std::find_if(priors_.begin(), priors_.end(), fits);
        return found == priors_.end() ? nullptr : &found->prior;
    };
    for (const auto taxon : std::array<std::string_view, 3>{species, genus, ""}) {
        if (const auto* found = find(stage, taxon)) return *found;
    }
    return *find(usualStage, "");
}

Grams massOf(const Portion& portion, const Feeders& feeders) {
    return feeders.mass(portion.kind, portion.length) * portion.count;
}

Portion insteadOf(const Portion& meal, const std::string& kind, Millimetres longest,
                  const Feeders& feeders) {
    const auto wanted = massOf(meal, feeders);
    const auto length = std::min(longest, feeders.length(kind, wanted));
    const double each = wanted / feeders.mass(kind, length);
    return {kind, length, std::max(1, static_cast<int>(std::lround(each)))};
}

}  // namespace burrow::stock
