#include "room/air_report.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/text.h"

namespace burrow {
namespace {

AirNow nowOf(const air::Sample& sample) {
    AirNow now{sample, {}, {}, {}};
    if (!sample.temperature || !sample.humidity) return now;
    now.dewPoint = air::dewPoint(*sample.temperature, *sample.humidity);
    now.absolute = air::absoluteHumidity(*sample.temperature, *sample.humidity);
    now.deficit = air::deficit(*sample.temperature, *sample.humidity);
    return now;
}

template <class Unit>
void widen(std::optional<Range<Unit>>& range, const std::optional<Unit>& value) {
    if (!value) return;
    if (!range) range = Range<Unit>{*value, *value};
    range->least = std::min(range->least, *value);
    range->most = std::max(range->most, *value);
}

/// Extremes of the readings; means and day-degrees of the lines between them.
std::vector<AirDay> daysOf(std::span<const air::Sample> samples, const Zone& zone,
                           const air::AirRules& rules) {
    std::map<CivilDay, AirDay> days;
    for (const auto& sample : samples) {
        auto& day = days[zone.dayOf(sample.at)];
        widen(day.warmth, sample.temperature);
        widen(day.humidity, sample.humidity);
    }
    for (const auto& warmth : air::warmthByDay(samples, {rules.base, std::nullopt}, zone, rules)) {
        auto& day = days[warmth.day];
        day.meanWarmth = warmth.mean;
        day.dayDegrees = warmth.dayDegrees;
    }
    std::vector<AirDay> list;
    list.reserve(days.size());
    for (auto& [day, line] : days) {
        line.day = day;
        list.push_back(line);
    }
    return list;
}

std::optional<double> valueOf(const air::Sample& sample, AirValue which) {
    if (which == AirValue::warmth) {
        return sample.temperature ? std::optional(sample.temperature->value) : std::nullopt;
    }
    return sample.humidity ? std::optional(sample.humidity->value) : std::nullopt;
}

void addWanted(AirReport& report, const Room& room, const air::AirRules& rules) {
    std::vector<Range<Celsius>> ranges;
    std::vector<Range<air::Percent>> humidities;
    for (const auto& resident : room.residents()) {
        const bool isThere = resident->subject().isKept() &&
                             resident->subject().standing == Standing::here &&
                             placeFit(report.place, resident->kept.place) > 0;
        if (!isThere) continue;
        ++report.standing;
        if (resident->profile == nullptr) continue;
        ranges.push_back(resident->profile->warmth.value);
        humidities.push_back(rules.humidityOf(resident->profile->damp.value));
    }
    report.wanted = air::sharedRange<Celsius>(ranges);
    report.isWantedApart = !ranges.empty() && !report.wanted;
    report.wantedHumidity = air::sharedRange<air::Percent>(humidities);
    report.isHumidityApart = !humidities.empty() && !report.wantedHumidity;
}

}  // namespace

AirReport airReport(const Room& room, std::string_view place, std::vector<air::Sample> samples,
                    const air::AirRules& rules) {
    AirReport report;
    report.place = place;
    report.base = rules.base;
    report.samples = std::move(samples);
    report.days = daysOf(report.samples, room.day().zone, rules);
    for (const auto& day : report.days) {
        if (!day.dayDegrees) continue;
        report.dayDegrees = report.dayDegrees.value_or(0) + *day.dayDegrees;
        ++report.warmDays;
    }
    if (!report.samples.empty()) report.now = nowOf(report.samples.back());
    addWanted(report, room, rules);
    report.alarms = air::alarms(report.samples, {report.wanted, report.wantedHumidity}, rules);
    return report;
}

std::vector<AirStretch> stretchesOf(std::span<const air::Sample> samples, AirValue which,
                                    Range<Instant> when, int count, const air::AirRules& rules) {
    std::vector<AirStretch> stretches;
    const std::int64_t longest = std::int64_t{rules.longestGapMinutes} * 60'000;
    const std::int64_t whole = std::max<std::int64_t>(1, when.most.ms - when.least.ms + 1);
    std::optional<Instant> last;
    int inside = 0;
    for (const auto& sample : samples) {
        const auto value = valueOf(sample, which);
        if (!value || sample.at < when.least || sample.at > when.most) continue;
        const auto place = static_cast<int>((sample.at.ms - when.least.ms) * count / whole);
        const bool isAfterGap = !last || sample.at.ms - last->ms > longest;
        last = sample.at;
        if (stretches.empty() || stretches.back().place != place) {
            stretches.push_back({place, {*value, *value}, *value, isAfterGap});
            inside = 1;
            continue;
        }
        auto& stretch = stretches.back();
        stretch.values.least = std::min(stretch.values.least, *value);
        stretch.values.most = std::max(stretch.values.most, *value);
        ++inside;
        stretch.mean += (*value - stretch.mean) / inside;
    }
    return stretches;
}

std::vector<std::string> placesOf(const Room& room) {
    std::vector<std::string> places;
    std::set<std::string> known;
    const auto add = [&](const Place& place) {
        std::string text(trimmed(place.text()));
        if (!text.empty() && known.insert(lowerAscii(text)).second) places.push_back(text);
    };
    for (const auto& resident : room.residents()) {
        if (!resident->subject().isKept()) continue;
        const auto& place = resident->kept.place;
        // A lone word stands for the room, the rack or the shelf of that name.
        for (const auto& word : {place.room, place.rack}) {
            if (!word.empty() && known.insert(lowerAscii(word)).second) places.push_back(word);
        }
        add(place.shelfOnly());
    }
    return places;
}

}  // namespace burrow
