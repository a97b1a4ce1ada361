#include "base/zone.h"

#include <date/tz.h>

#include <chrono>
#include <stdexcept>

namespace burrow {
namespace {

const date::time_zone* find(std::string_view name) {
    // The library throws when the zone, or the whole database, is missing.
    try {
        return date::locate_zone(std::string(name));
    } catch (const std::exception&) {
        return nullptr;
    }
}

date::sys_time<std::chrono::milliseconds> sysTime(Instant instant) {
    return date::sys_time<std::chrono::milliseconds>{std::chrono::milliseconds{instant.ms}};
}

/// Wall-clock milliseconds since 1970-01-01T00:00 local.
std::int64_t localMilliseconds(const date::time_zone* zone, Instant instant) {
    if (zone == nullptr) return instant.ms;
    return zone->to_local(sysTime(instant)).time_since_epoch().count();
}

constexpr std::int64_t msPerDay = 86'400'000;

std::int64_t floorDivide(std::int64_t a, std::int64_t b) {
    return a >= 0 ? a / b : -((b - 1 - a) / b);
}

}  // namespace

Result<Zone> Zone::named(std::string_view name) {
    if (name == "UTC") return utc();
    const auto* entry = find(name);
    if (entry == nullptr) {
        return fail(Trouble::notFound, {"zone.unknown", {{"zone", std::string(name)}}});
    }
    return Zone(std::string(name), entry);
}

Zone Zone::ofDevice() {
    try {
        const auto* zone = date::current_zone();
        return {zone->name(), zone};
    } catch (const std::exception&) {
        return utc();
    }
}

Zone Zone::utc() { return {"UTC", nullptr}; }

CivilDay Zone::dayOf(Instant instant) const {
    const auto local = localMilliseconds(static_cast<const date::time_zone*>(entry_), instant);
    return {static_cast<std::int32_t>(floorDivide(local, msPerDay))};
}

int Zone::secondOfDay(Instant instant) const {
    const auto local = localMilliseconds(static_cast<const date::time_zone*>(entry_), instant);
    return static_cast<int>((local - floorDivide(local, msPerDay) * msPerDay) / 1000);
}

Instant Zone::at(CivilDay day, int secondOfDay) const {
    const std::int64_t seconds = std::int64_t{day.days} * 86'400 + secondOfDay;
    const auto* zone = static_cast<const date::time_zone*>(entry_);
    if (zone == nullptr) return {seconds * 1000};
    const date::local_seconds local{std::chrono::seconds{seconds}};
    const auto info = zone->get_info(local);
    // `first` is the offset before the change: right for the first of two readings, and for a
    // skipped time it moves the clock forward by the gap.
    return {(seconds - info.first.offset.count()) * 1000};
}

Instant Zone::resolve(const IsoMoment& moment) const {
    constexpr int noon = 12 * 3600;
    if (!moment.secondOfDay) return at(moment.day, noon);
    if (!moment.offsetMinutes) {
        return {at(moment.day, *moment.secondOfDay).ms + moment.millisecond};
    }
    const std::int64_t local = std::int64_t{moment.day.days} * 86'400 + *moment.secondOfDay;
    return {(local - std::int64_t{*moment.offsetMinutes} * 60) * 1000 + moment.millisecond};
}

}  // namespace burrow
