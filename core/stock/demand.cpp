#include "stock/demand.h"

#include <algorithm>
#include <numeric>
#include <set>
#include <tuple>

namespace burrow::stock {
namespace {

/// The offers of a need that fall into the days asked for.
Offers offersOf(const Need& need, const ShoppingAsk& ask, const Feeders& feeders) {
    const auto falls = [&](CivilDay day) { return day >= ask.today && day < ask.today + ask.days; };
    Offers offers;
    offers.count = static_cast<int>(std::count_if(need.days.begin(), need.days.end(), falls));
    offers.each = need.each;
    offers.chance = std::clamp(need.chance, 0.0, 1.0);
    offers.lostIfRefused = need.isKilled ? 1 : feeders.keeping(need.kind).lossPerRefusal;
    return offers;
}

/// Needs that come to the same, which most do: counted instead of summed one by one.
using Alike = std::tuple<const AcceptancePrior*, FeedingRecord, int, int, double, double>;
using AlikeCounts = std::map<Alike, int>;

Alike alikeOf(const Need& need, const Offers& offers, const Feeders& feeders) {
    return {&feeders.prior(need.stage, need.species),
            need.record,
            offers.count,
            offers.each,
            offers.chance,
            offers.lostIfRefused};
}

Counts sumUnder(const Belief& belief, const std::vector<std::pair<Alike, int>>& needs) {
    std::vector<Counts> parts;
    parts.reserve(needs.size());
    for (const auto& [alike, times] : needs) {
        const auto& [prior, record, count, each, chance, lost] = alike;
        const auto one = usedUp({count, each, chance, lost}, belief.yes + record.accepted,
                                belief.no + record.offers - record.accepted);
        parts.push_back(one.repeated(times));
    }
    return sum(std::move(parts));
}

/// Subjects under one prior are alike in what is not known of their room; those of different priors
/// are independent.
Counts totalOf(const AlikeCounts& alike, const Beliefs& beliefs) {
    std::map<const AcceptancePrior*, std::vector<std::pair<Alike, int>>> byPrior;
    for (const auto& entry : alike) byPrior[std::get<0>(entry.first)].push_back(entry);
    std::vector<Counts> parts;
    for (const auto& [prior, needs] : byPrior) {
        std::vector<std::pair<double, Counts>> cases;
        for (const auto& belief : beliefs.at(prior)) {
            cases.emplace_back(belief.weight, sumUnder(belief, needs));
        }
        parts.push_back(mixed(cases));
    }
    return sum(std::move(parts));
}

/// A batch on its way through the days.
struct Stock {
    std::size_t kindBand;  ///< any band of its kind
    double count;
    Millimetres length;
    double kept;  ///< part that lives to the next day
    double growth;
};

std::vector<Stock> stockOf(std::span<const Batch> batches, CivilDay today, const Feeders& feeders) {
    std::vector<Stock> stock;
    for (const auto& batch : batches) {
        const auto now = projected(batch, today, feeders);
        const auto& keeping = feeders.keeping(batch.kind);
        stock.push_back({feeders.band(batch.kind, now.length), now.count, now.length,
                         1 - keeping.lossPerDay, keeping.growth});
    }
    // What will outgrow its size first is used first.
    std::stable_sort(stock.begin(), stock.end(),
                     [](const Stock& a, const Stock& b) { return a.length > b.length; });
    return stock;
}

}  // namespace

Beliefs beliefsOf(std::span<const Need> needs, const Feeders& feeders) {
    std::map<const AcceptancePrior*, std::vector<FeedingRecord>> records;
    std::set<std::pair<const AcceptancePrior*, std::size_t>> seen;
    for (const auto& need : needs) {
        const auto* prior = &feeders.prior(need.stage, need.species);
        if (seen.emplace(prior, need.who).second) records[prior].push_back(need.record);
    }
    Beliefs beliefs;
    for (const auto& [prior, room] : records) beliefs[prior] = learned(*prior, room);
    return beliefs;
}

double Demand::mean() const { return std::accumulate(byDay.begin(), byDay.end(), 0.0); }

std::map<std::size_t, Demand> demands(std::span<const Need> needs, const Beliefs& beliefs,
                                      const ShoppingAsk& ask, const Feeders& feeders) {
    const auto days = static_cast<std::size_t>(std::max(0, ask.days));
    std::map<std::size_t, Demand> all;
    std::map<std::size_t, AlikeCounts> alike;
    for (const auto& need : needs) {
        auto offers = offersOf(need, ask, feeders);
        if (offers.count == 0 || offers.each <= 0) continue;
        const auto band = feeders.band(need.kind, need.length);
        const auto key = alikeOf(need, offers, feeders);
        ++alike[band][key];
        auto& demand = all[band];
        demand.byDay.resize(days, 0);
        const auto share = expectedShare(beliefs.at(std::get<0>(key)), need.record);
        offers.count = 1;
        const double use = expectedUse(offers, share);
        for (const auto day : need.days) {
            if (day < ask.today || day >= ask.today + ask.days) continue;
            demand.byDay[static_cast<std::size_t>(day - ask.today)] += use;
        }
    }
    for (auto& [band, demand] : all) demand.total = totalOf(alike.at(band), beliefs);
    return all;
}

Counts total(std::span<const Need> needs, const Beliefs& beliefs, const ShoppingAsk& ask,
             const Feeders& feeders) {
    AlikeCounts alike;
    for (const auto& need : needs) {
        const auto offers = offersOf(need, ask, feeders);
        if (offers.count > 0 && offers.each > 0) ++alike[alikeOf(need, offers, feeders)];
    }
    return totalOf(alike, beliefs);
}

Uncovered uncovered(const std::map<std::size_t, Demand>& demands, std::span<const Batch> batches,
                    const Scales& scales, const ShoppingAsk& ask, const Feeders& feeders) {
    Uncovered left;
    for (const auto& [band, demand] : demands) {
        auto& days = left[band] = demand.byDay;
        for (auto& use : days) use *= scales.at(band);
    }
    auto stock = stockOf(batches, ask.today, feeders);
    for (std::size_t day = 0; day < static_cast<std::size_t>(std::max(0, ask.days)); ++day) {
        for (auto& batch : stock) {
            const auto& kind = feeders.bands()[batch.kindBand].kind;
            const auto found = left.find(feeders.band(kind, batch.length));
            if (found != left.end()) {
                const double taken = std::min(batch.count, found->second[day]);
                batch.count -= taken;
                found->second[day] -= taken;
            }
            batch.count *= batch.kept;
            batch.length = batch.length + Millimetres{batch.growth};
        }
    }
    return left;
}

}  // namespace burrow::stock
