// The keeper's own feeders: what was counted, what was offered of it since, and what more of it costs.
//
// The book holds a count for each kind and size as a setting ("feeders.cricket.small" is
// "40, 6 mm, 2026-05-08, 5 offered"), and a price likewise ("price.cricket.small" is "4.50 for 100"). So
// they are undone, merged and asked about like every other value, and two phones that count different
// sizes do not meet.
#pragma once

#include <map>

#include "room/room.h"
#include "stock/shopping.h"

namespace burrow {

/// One count, under the size that they had on that day.
struct CountedFeeders {
    std::size_t band = 0;  ///< position in Feeders::bands()
    int count = 0;
    Millimetres length;
    CivilDay counted;
    /// How many of them the records of that day had already used up when they were counted.
    int offered = 0;

    friend bool operator==(const CountedFeeders&, const CountedFeeders&) = default;
};

[[nodiscard]] std::string countText(const CountedFeeders& counted);
/// Nothing for a text that is none. The band is the caller's.
[[nodiscard]] std::optional<CountedFeeders> readCount(std::string_view text);

/// "4.50 for 100"
[[nodiscard]] std::string priceText(const stock::Price& price);
/// As it is typed: "4.50 for 100", "4,50/100", or "0.05" for one. Nothing for a text that is no price, or
/// more than a million.
[[nodiscard]] std::optional<stock::Price> readPrice(std::string_view text);

struct Larder {
    std::vector<CountedFeeders> counts;   ///< by band
    std::vector<stock::Price> prices;     ///< by band
    std::vector<std::string> unreadable;  ///< names of settings that this version can't use
};
[[nodiscard]] Larder larderOf(const RoomInfo& info, const stock::Feeders& feeders);

/// Feeders as they should be today: the counts, less what was offered since and what died, grown.
struct StockLine {
    std::size_t band = 0;  ///< that they have grown into
    double count = 0;
    Millimetres length;               ///< on average
    CivilDay counted;                 ///< the oldest of the counts
    double used = 0;                  ///< since then, by the records
    std::vector<std::size_t> counts;  ///< bands under which they stand in the book
};

/// One line for each size that anything counted has grown into, also where none are left. What was offered
/// is read from the last offers of each resident (Digest::recentKept), so a count needs to be renewed from
/// time to time; of a refused offer the part counts that can't be offered again. An offer is taken from
/// those of its kind that came closest to its length on that day.
[[nodiscard]] std::vector<StockLine> stockToday(const Room& room, const stock::Feeders& feeders);
/// The same as what the shopping list asks for.
[[nodiscard]] std::vector<stock::Batch> batchesOf(std::span<const StockLine> lines, CivilDay today,
                                                  const stock::Feeders& feeders);

/// That there are so many of that size now: their line becomes one count of today. New ones are of the
/// middle of their size. Nothing (null) takes the line out.
[[nodiscard]] FieldValues countedFields(const Room& room, const stock::Feeders& feeders,
                                        std::size_t band, std::optional<int> count);
/// Bought ones added to what is there.
[[nodiscard]] FieldValues boughtFields(const Room& room, const stock::Feeders& feeders,
                                       std::size_t band, int count);
[[nodiscard]] FieldValues priceFields(const stock::Feeders& feeders, std::size_t band,
                                      const std::optional<stock::Price>& price);

/// "cricket.small", as files and the command line name a size.
[[nodiscard]] std::string bandKey(const stock::SizeBand& band);
[[nodiscard]] std::optional<std::size_t> bandNamed(std::string_view key,
                                                   const stock::Feeders& feeders);

}  // namespace burrow
