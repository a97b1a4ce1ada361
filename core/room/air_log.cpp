#include "room/air_log.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "air/packed.h"
#include "air/warmth.h"
#include "base/text.h"
#include "husbandry/rule_scope.h"
#include "journal/projector.h"

namespace burrow {
namespace {

constexpr std::size_t monthLength = 7;  // "2026-05"
constexpr std::size_t fileDigits = 16;
constexpr std::size_t hashDigits = 16;
/// How far back a day's mean is looked for.
constexpr int recentDays = 31;

/// By UTC, so that every device cuts the same readings into the same days.
std::string dayText(Instant at) { return isoDate(Zone::utc().dayOf(at)); }

Uuid listThing(const Book& book) { return Uuid::named("burrowbook air " + book.id().text()); }

Uuid monthThing(const Book& book, std::string_view place, std::string_view month) {
    return Uuid::named("burrowbook air " + book.id().text() + " " + std::string(month) + " " +
                       std::string(place));
}

/// The fields of a thing that count, as texts; of those named from one name to another.
Result<std::map<std::string, std::string>> textsOf(Book& book, const Uuid& thing,
                                                   const Range<std::string>& names) {
    BURROW_TRY(const auto all, fieldValues(book.connection(), thing, ThingType::book));
    std::map<std::string, std::string> texts;
    for (const auto& [name, values] : all) {
        if (name < names.least || name > names.most) continue;
        const auto heads = headsOf(values);
        if (heads.empty()) continue;
        const auto value = nlohmann::json::parse(heads.front()->value, nullptr, false);
        if (value.is_string()) texts[name] = value.get<std::string>();
    }
    return texts;
}

/// All readings of the days of a month between two, as the texts hold them.
Done addReadings(Book& book, std::string_view place, const std::string& month,
                 const Range<std::string>& days, std::vector<air::Sample>& samples) {
    // Behind the day stands a blank and a hash: "~" comes after both.
    BURROW_TRY(const auto texts,
               textsOf(book, monthThing(book, place, month), {days.least, days.most + "~"}));
    for (const auto& [name, value] : texts) {
        const auto blank = value.find(' ');
        if (blank == std::string::npos) continue;
        const auto read = air::unpacked(std::string_view(value).substr(blank + 1));
        if (read) samples.insert(samples.end(), read->begin(), read->end());
    }
    return {};
}

/// Of the months of a place that touch those days, not united.
Result<std::vector<air::Sample>> rawReadings(Book& book, const AirPlace& place,
                                             const Range<Instant>& when) {
    const Range<std::string> days{dayText(when.least), dayText(when.most)};
    std::vector<air::Sample> samples;
    for (const auto& month : place.months) {
        const bool isApart =
            month < days.least.substr(0, monthLength) || month > days.most.substr(0, monthLength);
        if (isApart) continue;
        BURROW_DO(addReadings(book, place.place, month, days, samples));
    }
    return samples;
}

bool comesBefore(const air::Sample& a, const air::Sample& b) {
    return std::tie(a.at, a.temperature, a.humidity) < std::tie(b.at, b.temperature, b.humidity);
}

Result<AirPlace> placeNamed(Book& book, std::string_view typed) {
    const auto name = trimmed(typed);
    if (name.empty()) return fail(Trouble::badInput, {"air.noPlace"});
    if (name.size() > longestScopeName || !isUtf8(name)) {
        return fail(Trouble::badInput, {"air.longPlace"});
    }
    BURROW_TRY(auto known, airPlaces(book));
    for (auto& place : known) {
        if (lowerAscii(place.place) == lowerAscii(name)) return std::move(place);
    }
    return AirPlace{withoutSteering(name), {}};
}

void addSet(std::vector<Draft>& drafts, const Uuid& thing, std::string field, std::string value) {
    drafts.emplace_back(
        SetDraft{ThingType::book, thing, {{std::move(field), nlohmann::json(std::move(value))}}});
}

void addDay(std::vector<Draft>& drafts, const Uuid& thing, std::span<const air::Sample> samples,
            const std::string& from) {
    for (const auto& text : air::packed(samples)) {
        auto value = from + " " + text;
        const auto hash = Sha256::of(value).hex().substr(0, hashDigits);
        addSet(drafts, thing, dayText(samples.front().at) + " " + hash, std::move(value));
    }
}

/// The first and the last moment of a day.
Range<Instant> momentsOf(Range<CivilDay> days, const Zone& zone) {
    return {zone.at(days.least, 0), Instant{zone.at(days.most + 1, 0).ms - 1}};
}

/// The mean of a day's readings; nothing where none has a temperature.
std::optional<Celsius> meanOf(std::span<const air::Sample> samples, CivilDay day,
                              const Zone& zone) {
    double sum = 0;
    int count = 0;
    for (const auto& sample : samples) {
        if (!sample.temperature || zone.dayOf(sample.at) != day) continue;
        sum += sample.temperature->value;
        ++count;
    }
    if (count == 0) return std::nullopt;
    return Celsius{sum / count};
}

std::optional<LoggedWarmth> newestOf(std::span<const air::Sample> samples, const PlanDay& day,
                                     const air::AirRules& rules) {
    const auto newest =
        std::find_if(samples.rbegin(), samples.rend(), [&](const air::Sample& sample) {
            return sample.temperature && day.zone.dayOf(sample.at) <= day.today;
        });
    if (newest == samples.rend()) return std::nullopt;
    const auto last = day.zone.dayOf(newest->at);
    const auto from = momentsOf({last, last}, day.zone).least;
    const auto first = std::find_if(samples.begin(), samples.end(),
                                    [&](const air::Sample& sample) { return sample.at >= from; });
    const std::span<const air::Sample> ofDay(first, newest.base());
    const auto covered = air::warmthByDay(ofDay, {}, day.zone, rules);
    if (!covered.empty() && covered.back().hours > 0) {
        return LoggedWarmth{covered.back().mean, last};
    }
    const auto mean = meanOf(ofDay, last, day.zone);
    return mean ? std::optional(LoggedWarmth{*mean, last}) : std::nullopt;
}

}  // namespace

Result<std::vector<AirPlace>> airPlaces(Book& book) {
    BURROW_TRY(const auto listed, textsOf(book, listThing(book), {"", "~"}));
    std::map<std::string, AirPlace> byName;
    for (const auto& [field, value] : listed) {
        if (field.size() < monthLength + 2 || field[monthLength] != ' ') continue;
        const auto name = field.substr(monthLength + 1);
        auto& place = byName[name];
        place.place = name;
        place.months.push_back(field.substr(0, monthLength));
    }
    std::vector<AirPlace> places;
    places.reserve(byName.size());
    for (auto& [name, place] : byName) places.push_back(std::move(place));
    std::stable_sort(places.begin(), places.end(), [](const AirPlace& a, const AirPlace& b) {
        return compareNatural(a.place, b.place) < 0;
    });
    return places;
}

Result<std::vector<air::Sample>> airOf(Book& book, const AirPlace& place, Range<Instant> when) {
    BURROW_TRY(auto samples, rawReadings(book, place, when));
    samples = air::united(std::move(samples));
    std::erase_if(samples, [&](const air::Sample& sample) {
        return sample.at < when.least || sample.at > when.most;
    });
    return samples;
}

Result<AirTaken> airDrafts(Book& book, std::string_view typed, std::span<const air::Sample> samples,
                           const std::optional<Sha256>& file) {
    BURROW_TRY(const auto place, placeNamed(book, typed));
    const auto fresh = air::united({samples.begin(), samples.end()});
    AirTaken taken;
    if (fresh.empty()) return taken;
    BURROW_TRY(auto known, rawReadings(book, place, {fresh.front().at, fresh.back().at}));
    std::sort(known.begin(), known.end(), comesBefore);
    std::vector<air::Sample> missing;
    std::set_difference(fresh.begin(), fresh.end(), known.begin(), known.end(),
                        std::back_inserter(missing), comesBefore);
    taken.added = static_cast<int>(missing.size());
    taken.known = static_cast<int>(fresh.size() - missing.size());
    const auto from = file ? file->hex().substr(0, fileDigits) : std::string("typed");
    std::set<std::string> months;
    for (std::size_t i = 0; i < missing.size();) {
        const auto day = dayText(missing[i].at);
        const auto first = i;
        while (i < missing.size() && dayText(missing[i].at) == day) ++i;
        const auto month = day.substr(0, monthLength);
        addDay(taken.drafts, monthThing(book, place.place, month),
               std::span(missing).subspan(first, i - first), from);
        // Said with every act: whoever takes one back must not hide what the others wrote.
        if (months.insert(month).second) {
            addSet(taken.drafts, listThing(book), month + " " + place.place, "air");
        }
    }
    return taken;
}

Result<std::vector<PlaceWarmth>> recentWarmth(Book& book, const PlanDay& day,
                                              const air::AirRules& rules) {
    std::vector<PlaceWarmth> warmths;
    BURROW_TRY(const auto places, airPlaces(book));
    for (const auto& place : places) {
        // Most have some of yesterday or today, and then a month need not be read.
        for (const int back : {1, recentDays}) {
            const auto when = momentsOf({day.today - back, day.today}, day.zone);
            BURROW_TRY(const auto samples, airOf(book, place, when));
            const auto newest = newestOf(samples, day, rules);
            if (!newest) continue;
            warmths.push_back({place.place, *newest});
            break;
        }
    }
    return warmths;
}

std::optional<LoggedWarmth> warmthAt(std::span<const PlaceWarmth> warmths, const Place& place) {
    const PlaceWarmth* best = nullptr;
    int closest = 0;
    for (const auto& each : warmths) {
        const int fit = placeFit(each.place, place);
        if (fit <= closest) continue;
        closest = fit;
        best = &each;
    }
    return best != nullptr ? std::optional(best->warmth) : std::nullopt;
}

std::optional<std::size_t> narrowest(std::span<const std::string> written, const Place& place) {
    std::optional<std::size_t> best;
    int closest = 0;
    for (std::size_t i = 0; i < written.size(); ++i) {
        const int fit = placeFit(written[i], place);
        if (fit <= closest) continue;
        closest = fit;
        best = i;
    }
    return best;
}

}  // namespace burrow
