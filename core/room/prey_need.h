// What prey the room will use in the days ahead and what to buy: the plan run forward, the records, and the
// keeper's own stock, put together for the room `stock`.
#pragma once

#include "husbandry/forecast.h"
#include "room/larder.h"

namespace burrow {

/// What everyone will be offered, one need for each kind, size and number that a subject is offered on the
/// way; `who` is the position among the room's residents. The record of a subject is its last offers
/// (Digest::recentKept). That feeding is open when the day comes: an estimate, less the chance that it has
/// just moulted then and is still hard to feed; premoult shows as refusals, which the records hold.
[[nodiscard]] std::vector<stock::Need> preyNeeds(const Room& room, int days,
                                                 const Forecast& forecasts);

struct PreyOutlook {
    int days = 0;
    int meals = 0;  ///< that will be offered, if all goes as planned
    int eaters = 0;
    std::vector<StockLine> stock;
    stock::ShoppingList list;
    double mean = 0;      ///< prey of all kinds together
    Range<int> interval;  ///< it lies within in at least 80 of 100 cases
};

/// From today on. An estimate in all its parts. About a fifth of a millisecond for each subject and week;
/// call it in a thread that may wait.
[[nodiscard]] PreyOutlook preyOutlook(const Room& room, const stock::Feeders& feeders, int days,
                                      const Forecast& forecasts);

/// The share of cases that its intervals hold: 80 of 100.
inline constexpr double outlookShare = 0.8;

}  // namespace burrow
