// What the planner is given: one subject with its state, and the day.
#pragma once

#include "base/zone.h"
#include "model/digest.h"
#include "model/place.h"
#include "model/profile.h"
#include "model/subject.h"

namespace burrow {

/// A subject as the planner sees it. Owns nothing: what it refers to must outlive it.
struct PlanInput {
    const Subject& subject;
    const Digest& digest;
    const Place& place;                ///< its enclosure's, else its own
    const Profile* profile = nullptr;  ///< null for a species that is not known

    /// Several under one tag: what is known of one member must not close the others in.
    [[nodiscard]] bool isSeveral() const { return subject.form != Form::animal; }
};

/// The keeper's civil day, and the zone that tells which day an instant fell on.
struct PlanDay {
    CivilDay today;
    Zone zone;

    [[nodiscard]] static PlanDay at(Instant now, Zone zone) {
        const auto today = zone.dayOf(now);
        return {today, std::move(zone)};
    }
};

}  // namespace burrow
