// Time zones: which civil day an instant belongs to for the keeper.
#pragma once

#include <string>
#include <string_view>

#include "base/civil.h"
#include "base/result.h"

namespace burrow {

/// A zone of the IANA database, by name. Cheap to copy; safe to use from any thread.
class Zone {
public:
    /// Fails with `notFound` when the device's time zone database has no zone of that name.
    static Result<Zone> named(std::string_view name);
    /// The device's own zone; UTC where the device has none set.
    static Zone ofDevice();
    static Zone utc();

    [[nodiscard]] const std::string& name() const { return name_; }
    [[nodiscard]] CivilDay dayOf(Instant instant) const;
    /// Seconds since local midnight, by the wall clock.
    [[nodiscard]] int secondOfDay(Instant instant) const;
    /// The instant of a local wall-clock time. A time skipped by a clock change is moved forward by
    /// the length of the gap; of a time that happens twice the first is taken (the "compatible"
    /// reading of RFC 5545 and of ECMAScript's Temporal).
    [[nodiscard]] Instant at(CivilDay day, int secondOfDay) const;
    /// Fills in what a written moment leaves open: noon for a bare date, this zone for a local time.
    [[nodiscard]] Instant resolve(const IsoMoment& moment) const;

private:
    Zone(std::string name, const void* entry) : name_(std::move(name)), entry_(entry) {}

    std::string name_;
    const void* entry_;  // the database's entry, which lives as long as the program; null for UTC
};

}  // namespace burrow
