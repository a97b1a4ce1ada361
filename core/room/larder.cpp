#include "room/larder.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

#include "base/text.h"
#include "husbandry/prey.h"
#include "words/words.h"

namespace burrow {
namespace {

using stock::Feeders;

constexpr int mostCounted = 1'000'000;

std::optional<double> numberIn(std::string_view text) {
    double number = 0;
    const auto trimmedText = trimmed(text);
    const auto* end = trimmedText.data() + trimmedText.size();
    const auto read = std::from_chars(trimmedText.data(), end, number);
    if (read.ec != std::errc() || read.ptr != end || !std::isfinite(number)) return std::nullopt;
    return number;
}

std::optional<int> wholeIn(std::string_view text) {
    const auto number = numberIn(text);
    if (!number || *number != std::floor(*number)) return std::nullopt;
    if (*number < 0 || *number > mostCounted) return std::nullopt;
    return static_cast<int>(*number);
}

/// The text before an ending; nothing where it ends otherwise.
std::optional<std::string_view> before(std::string_view text, std::string_view end) {
    text = trimmed(text);
    if (!text.ends_with(end)) return std::nullopt;
    return trimmed(text.substr(0, text.size() - end.size()));
}

Millimetres middleOf(const stock::SizeBand& band) { return 0.5 * (band.least + band.most); }

/// Something offered, by the kind that the tables know.
struct Offered {
    std::size_t kind = 0;  ///< any band of its kind
    CivilDay day;
    std::optional<Millimetres> length;
    double used = 0;
};

double usedOf(const Meal& meal, double lostIfRefused) {
    return meal.count * (meal.outcome == Outcome::refused ? lostIfRefused : 1);
}

std::vector<Offered> offersSince(const Room& room, const Feeders& feeders, CivilDay first) {
    std::vector<Offered> all;
    for (const auto& resident : room.residents()) {
        for (const auto& meal : resident->kept.digest.recentOffers) {
            if (meal.day < first || meal.day > room.day().today || meal.prey.empty()) continue;
            const auto term = feederTerm(meal.prey, room.rules());
            const double lost = feeders.keeping(term).lossPerRefusal;
            all.push_back({feeders.band(term, meal.preyLength.value_or(Millimetres{})), meal.day,
                           meal.preyLength, usedOf(meal, lost)});
        }
    }
    return all;
}

Millimetres lengthOn(const CountedFeeders& counted, CivilDay day, const Feeders& feeders) {
    const auto& kind = feeders.bands()[counted.band].kind;
    return stock::projected({kind, counted.length, counted.count, counted.counted}, day, feeders)
        .length;
}

/// The count that an offer was taken from; nothing where none of its kind was there.
std::optional<std::size_t> sourceOf(const Offered& offer, std::span<const CountedFeeders> counts,
                                    const Feeders& feeders) {
    std::optional<std::size_t> nearest;
    double least = 0;
    for (std::size_t i = 0; i < counts.size(); ++i) {
        const bool isKind =
            feeders.bands()[counts[i].band].kind == feeders.bands()[offer.kind].kind;
        if (!isKind || counts[i].counted > offer.day) continue;
        const double away =
            offer.length ? std::abs((lengthOn(counts[i], offer.day, feeders) - *offer.length).value)
                         : 0;
        if (nearest && away >= least) continue;
        nearest = i;
        least = away;
    }
    return nearest;
}

/// What became of each count.
struct Fate {
    double left = 0;
    double used = 0;       ///< since it was counted
    double usedFirst = 0;  ///< by all records of that day
};

std::vector<Fate> fatesOf(std::span<const CountedFeeders> counts, const Room& room,
                          const Feeders& feeders) {
    std::vector<Fate> fates(counts.size());
    if (counts.empty()) return fates;
    const auto today = room.day().today;
    const auto kept = [&](std::size_t i) {
        return 1 - feeders.keeping(feeders.bands()[counts[i].band].kind).lossPerDay;
    };
    const auto first =
        std::min_element(counts.begin(), counts.end(), [](const auto& a, const auto& b) {
            return a.counted < b.counted;
        })->counted;
    for (const auto& offer : offersSince(room, feeders, first)) {
        const auto source = sourceOf(offer, counts, feeders);
        if (!source) continue;
        auto& fate = fates[*source];
        if (offer.day == counts[*source].counted) {
            fate.usedFirst += offer.used;
        } else {
            fate.used += offer.used;
            fate.left -= offer.used * std::pow(kept(*source), today - offer.day);
        }
    }
    for (std::size_t i = 0; i < counts.size(); ++i) {
        const auto& counted = counts[i];
        const double usedLater = std::max(0.0, fates[i].usedFirst - counted.offered);
        fates[i].used += usedLater;
        fates[i].left +=
            (counted.count - usedLater) * std::pow(kept(i), std::max(0, today - counted.counted));
        fates[i].left = std::max(0.0, fates[i].left);
    }
    return fates;
}

std::string countSetting(std::size_t band, const Feeders& feeders) {
    return std::string(setting::feeders) + bandKey(feeders.bands()[band]);
}

}  // namespace

std::string bandKey(const stock::SizeBand& band) { return band.kind + "." + band.name; }

std::optional<std::size_t> bandNamed(std::string_view key, const Feeders& feeders) {
    for (std::size_t i = 0; i < feeders.bands().size(); ++i) {
        if (bandKey(feeders.bands()[i]) == key) return i;
    }
    return std::nullopt;
}

std::string countText(const CountedFeeders& counted) {
    auto text = fmt::format("{}, {} mm, {}", counted.count, plainNumber(counted.length.value),
                            isoDate(counted.counted));
    if (counted.offered > 0) text += fmt::format(", {} offered", counted.offered);
    return text;
}

std::optional<CountedFeeders> readCount(std::string_view text) {
    const auto parts = split(text, ',');
    if (parts.size() < 3 || parts.size() > 4) return std::nullopt;
    const auto count = wholeIn(parts[0]);
    const auto lengthText = before(parts[1], "mm");
    const auto length = numberIn(lengthText.value_or(std::string_view()));
    const auto day = parseIsoDate(trimmed(parts[2]));
    if (!count || !length || *length < 0.1 || *length > 200 || !day) return std::nullopt;
    CountedFeeders counted{0, *count, {*length}, *day, 0};
    if (parts.size() == 4) {
        const auto offeredText = before(parts[3], "offered");
        const auto offered = wholeIn(offeredText.value_or(std::string_view()));
        if (!offered) return std::nullopt;
        counted.offered = *offered;
    }
    return counted;
}

std::string priceText(const stock::Price& price) {
    return fmt::format("{}.{:02} for {}", price.cost.value / 100, price.cost.value % 100,
                       price.packOf);
}

std::optional<stock::Price> readPrice(std::string_view text) {
    std::string typed(trimmed(text));
    std::replace(typed.begin(), typed.end(), ',', '.');
    std::string_view cost = typed;
    std::string_view pack = "1";
    for (const std::string_view between : {" for ", "/"}) {
        const auto at = typed.find(between);
        if (at == std::string::npos) continue;
        cost = std::string_view(typed).substr(0, at);
        pack = std::string_view(typed).substr(at + between.size());
        break;
    }
    const auto money = numberIn(cost);
    const auto packOf = wholeIn(pack);
    if (!money || *money < 0 || *money > 1e6 || !packOf || *packOf < 1) return std::nullopt;
    return stock::Price{{}, {}, *packOf, {std::llround(*money * 100)}};
}

Larder larderOf(const RoomInfo& info, const Feeders& feeders) {
    Larder larder;
    for (std::size_t band = 0; band < feeders.bands().size(); ++band) {
        const auto& size = feeders.bands()[band];
        const auto key = bandKey(size);
        const auto counted = info.other(std::string(setting::feeders) + key);
        if (auto read = readCount(counted)) {
            read->band = band;
            larder.counts.push_back(*read);
        } else if (!counted.empty()) {
            larder.unreadable.push_back(std::string(setting::feeders) + key);
        }
        const auto cost = info.other(std::string(setting::price) + key);
        if (auto read = readPrice(cost)) {
            read->kind = size.kind;
            read->band = size.name;
            larder.prices.push_back(*std::move(read));
        } else if (!cost.empty()) {
            larder.unreadable.push_back(std::string(setting::price) + key);
        }
    }
    return larder;
}

std::vector<StockLine> stockToday(const Room& room, const Feeders& feeders) {
    const auto counts = larderOf(room.info(), feeders).counts;
    const auto fates = fatesOf(counts, room, feeders);
    std::map<std::size_t, StockLine> lines;
    for (std::size_t i = 0; i < counts.size(); ++i) {
        const auto length = lengthOn(counts[i], room.day().today, feeders);
        const auto band = feeders.band(feeders.bands()[counts[i].band].kind, length);
        auto [found, isNew] = lines.try_emplace(band);
        auto& line = found->second;
        if (isNew) line = {band, 0, length, counts[i].counted, 0, {}};
        const double together = line.count + fates[i].left;
        if (together > 0) {
            line.length = 1 / together * (line.count * line.length + fates[i].left * length);
        }
        line.count = together;
        line.counted = std::min(line.counted, counts[i].counted);
        line.used += fates[i].used;
        line.counts.push_back(counts[i].band);
    }
    std::vector<StockLine> all;
    for (auto& [band, line] : lines) all.push_back(std::move(line));
    return all;
}

std::vector<stock::Batch> batchesOf(std::span<const StockLine> lines, CivilDay today,
                                    const Feeders& feeders) {
    std::vector<stock::Batch> batches;
    for (const auto& line : lines) {
        const int count = static_cast<int>(std::lround(line.count));
        batches.push_back({feeders.bands()[line.band].kind, line.length, count, today});
    }
    return batches;
}

FieldValues countedFields(const Room& room, const Feeders& feeders, std::size_t band,
                          std::optional<int> count) {
    const auto today = room.day().today;
    FieldValues fields;
    CountedFeeders now{band, std::clamp(count.value_or(0), 0, mostCounted),
                       middleOf(feeders.bands()[band]), today, 0};
    for (const auto& line : stockToday(room, feeders)) {
        if (line.band != band) continue;
        now.length = line.length;
        for (const auto old : line.counts) fields[countSetting(old, feeders)] = nullptr;
    }
    if (!count) return fields;
    auto counts = larderOf(room.info(), feeders).counts;
    std::erase_if(counts, [&](const CountedFeeders& old) {
        return fields.contains(countSetting(old.band, feeders));
    });
    // What stands in the records of today is gone from the count already.
    counts.push_back(now);
    const auto fates = fatesOf(counts, room, feeders);
    now.offered = static_cast<int>(std::lround(fates.back().usedFirst));
    fields[countSetting(band, feeders)] = countText(now);
    return fields;
}

FieldValues boughtFields(const Room& room, const Feeders& feeders, std::size_t band, int count) {
    double there = 0;
    for (const auto& line : stockToday(room, feeders)) {
        if (line.band == band) there = line.count;
    }
    return countedFields(room, feeders, band, static_cast<int>(std::lround(there)) + count);
}

FieldValues priceFields(const Feeders& feeders, std::size_t band,
                        const std::optional<stock::Price>& price) {
    FieldValues fields;
    auto& value = fields[std::string(setting::price) + bandKey(feeders.bands()[band])];
    if (price) value = priceText(*price);
    return fields;
}

}  // namespace burrow
