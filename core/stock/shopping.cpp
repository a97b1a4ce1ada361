#include "stock/shopping.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "stock/demand.h"

namespace burrow::stock {
namespace {

/// Rounded up, but not for a hair that arithmetic left over.
int roundedUp(double number) { return static_cast<int>(std::ceil(number - 1e-6)); }

/// How long newly bought ones, of the middle of their size, stay within it; at least a day.
int daysInBand(std::size_t band, const Feeders& feeders) {
    const auto& size = feeders.bands()[band];
    const double growth = feeders.keeping(size.kind).growth;
    if (growth <= 0 || feeders.isLastBand(band)) return std::numeric_limits<int>::max();
    return std::max(1, static_cast<int>((size.most - size.least).value / 2 / growth));
}

/// What is needed at the low end, at the mean, and at the high end of the interval.
struct Levels {
    Uncovered least;
    Uncovered mean;
    Uncovered most;
};

Levels levelsOf(const std::map<std::size_t, Demand>& all, std::span<const Batch> batches,
                const ShoppingAsk& ask, const Feeders& feeders) {
    Scales least;
    Scales mean;
    Scales most;
    for (const auto& [band, demand] : all) {
        const auto interval = demand.total.middle(ask.share);
        const double usual = demand.mean();
        mean[band] = 1;
        least[band] = usual > 0 ? interval.least / usual : 0;
        most[band] = usual > 0 ? interval.most / usual : 0;
    }
    return {uncovered(all, batches, least, ask, feeders),
            uncovered(all, batches, mean, ask, feeders),
            uncovered(all, batches, most, ask, feeders)};
}

/// To have so many on their days, bought on day `from`: more, as a part dies before.
double boughtFor(const std::vector<double>& uses, std::size_t from, std::size_t to, double kept) {
    double bought = 0;
    for (std::size_t day = from; day < to; ++day) {
        bought += uses[day] / std::pow(kept, static_cast<double>(day - from));
    }
    return bought;
}

Message reasonFor(const Purchase& purchase, CivilDay today) {
    const bool isNow = purchase.day == today;
    return {isNow ? "stock.buy.now" : "stock.buy.later",
            {{"likely", std::int64_t{purchase.likely}},
             {"enough", std::int64_t{purchase.enough}},
             {"lost", std::int64_t{purchase.lost}},
             {"band", purchase.band},
             {"prey", purchase.kind},
             {"count", std::int64_t{purchase.enough}},
             {"day", purchase.day}}};
}

void setPrice(Purchase& purchase, std::span<const Price> prices) {
    for (const auto& price : prices) {
        if (price.kind != purchase.kind || price.band != purchase.band || price.packOf < 1)
            continue;
        purchase.packs = (purchase.enough + price.packOf - 1) / price.packOf;
        purchase.cost = Cents{purchase.packs * price.cost.value};
        return;
    }
}

void buy(ShoppingList& list, std::size_t band, const Levels& levels, std::span<const Price> prices,
         const ShoppingAsk& ask, const Feeders& feeders) {
    const auto& size = feeders.bands()[band];
    const auto& most = levels.most.at(band);
    const double kept = 1 - feeders.keeping(size.kind).lossPerDay;
    const auto keeps = static_cast<std::size_t>(daysInBand(band, feeders));
    std::size_t from = 0;
    bool isFirst = true;
    while (from < most.size()) {
        // The first purchase is today; a later one on the first day that needs it.
        if (!isFirst) {
            while (from < most.size() && most[from] <= 1e-9) ++from;
            if (from == most.size()) break;
        }
        isFirst = false;
        const auto to = most.size() - from > keeps ? from + keeps : most.size();
        Purchase purchase{ask.today + static_cast<int>(from), size.kind, size.name};
        double used = 0;
        for (std::size_t day = from; day < to; ++day) used += most[day];
        const double enough = boughtFor(most, from, to, kept);
        purchase.enough = roundedUp(enough);
        purchase.lost = static_cast<int>(std::lround(enough - used));
        purchase.likely = roundedUp(boughtFor(levels.mean.at(band), from, to, kept));
        purchase.least = roundedUp(boughtFor(levels.least.at(band), from, to, kept));
        from = to;
        if (purchase.enough == 0) continue;
        setPrice(purchase, prices);
        purchase.why = reasonFor(purchase, ask.today);
        list.purchases.push_back(std::move(purchase));
    }
}

Message summaryOf(const ShoppingList& list, const ShoppingAsk& ask) {
    const std::int64_t days{ask.days};
    if (list.uses.empty()) return {"stock.summary.nobody", {{"days", days}}};
    if (list.purchases.empty()) return {"stock.summary.enough", {{"days", days}}};
    const auto count = static_cast<std::int64_t>(list.purchases.size());
    const double sure = std::round(50 * (1 + ask.share));
    return {"stock.summary.buy", {{"days", days}, {"count", count}, {"sure", sure}}};
}

}  // namespace

Counts totalUse(std::span<const Need> needs, const ShoppingAsk& ask, const Feeders& feeders) {
    return total(needs, beliefsOf(needs, feeders), ask, feeders);
}

Projected projected(const Batch& batch, CivilDay day, const Feeders& feeders) {
    const auto& keeping = feeders.keeping(batch.kind);
    const int days = std::max(0, day - batch.counted);
    const auto& longest = feeders.bands()[feeders.band(batch.kind, {1e6})].most;
    const auto grown = batch.length + Millimetres{keeping.growth * days};
    return {batch.count * std::pow(1 - keeping.lossPerDay, days),
            std::max(batch.length, std::min(grown, longest))};
}

ShoppingList shoppingList(std::span<const Need> needs, std::span<const Batch> batches,
                          std::span<const Price> prices, const ShoppingAsk& ask,
                          const Feeders& feeders) {
    const auto all = demands(needs, beliefsOf(needs, feeders), ask, feeders);
    const auto levels = levelsOf(all, batches, ask, feeders);
    ShoppingList list;
    for (const auto& [band, demand] : all) {
        const auto& size = feeders.bands()[band];
        double bought = 0;
        for (const double use : levels.mean.at(band)) bought += use;
        list.uses.push_back({size.kind, size.name, demand.mean(), demand.total.middle(ask.share),
                             demand.mean() - bought});
        buy(list, band, levels, prices, ask, feeders);
    }
    std::stable_sort(list.purchases.begin(), list.purchases.end(),
                     [](const Purchase& a, const Purchase& b) { return a.day < b.day; });
    for (const auto& purchase : list.purchases) {
        if (purchase.cost) {
            list.cost = list.cost + *purchase.cost;
        } else {
            ++list.unpriced;
        }
    }
    list.summary = summaryOf(list, ask);
    return list;
}

}  // namespace burrow::stock
