// What the planner is given: one subject with its state, and the day.
#pragma once

#include "base/zone.h"
#include "husbandry/rule_scope.h"
#include "model/digest.h"
#include "model/place.h"
#include "model/profile.h"
#include "model/subject.h"

namespace burrow {

/// The newest day's mean temperature that was logged where the subject stands.
struct LoggedWarmth {
    Celsius mean;
    CivilDay day;

    friend bool operator==(const LoggedWarmth&, const LoggedWarmth&) = default;
};

/// A subject as the planner sees it. Owns nothing: what it refers to must outlive it. All that is
/// not known may be left out: the answers then say so.
struct PlanInput {
    const Subject& subject;
    const Digest& digest;
    const Place& place;                             ///< its enclosure's, else its own
    const Profile* profile = nullptr;               ///< null for a species that is not known
    std::optional<HomeSize> home = {};              ///< of its enclosure
    std::optional<CivilDay> quarantinedSince = {};  ///< the day on which that was set
    std::optional<LoggedWarmth> warmth = {};

    /// Several under one tag: what is known of one member must not close the others in.
    [[nodiscard]] bool isSeveral() const { return subject.form != Form::animal; }
    /// Which of the keeper's own rules are meant for it.
    [[nodiscard]] RuleSubject ruleSubject() const {
        return {subject.id, subject.species, place, profile};
    }
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
