// One subject in a room: whole, and as the few bytes that a room of thousands holds of it.
#pragma once

#include <cstdint>
#include <memory>
#include <mutex>
#include <optional>

#include "base/files.h"
#include "husbandry/planner.h"
#include "husbandry/profiles.h"
#include "journal/kept_codec.h"
#include "room/air_log.h"

namespace burrow {

struct RoomTables;

/// One subject with all that is known of it today. Never changed once made.
struct Resident {
    Kept kept;
    const Profile* profile = nullptr;          ///< one of `profiles`
    std::shared_ptr<const Profiles> profiles;  ///< those of its room, which may be gone
    std::optional<LoggedWarmth> warmth;        ///< where it stands
    Plan plan;

    [[nodiscard]] const Subject& subject() const { return kept.subject; }
    [[nodiscard]] PlanInput input() const {
        return {kept.subject, kept.digest,           kept.place, profile,
                kept.home,    kept.quarantinedSince, warmth};
    }
};

using ResidentPtr = std::shared_ptr<const Resident>;

/// What everyone in a room is planned with.
struct PlanBasis {
    std::shared_ptr<const Rules> rules;
    std::shared_ptr<const Profiles> profiles;
    /// The trade's numbers with the keeper's own; none where the room was made without.
    std::shared_ptr<const RoomTables> tables;
    PlanDay day{{}, Zone::utc()};
    /// The newest day's mean temperature of each place that has one.
    std::vector<PlaceWarmth> warmths;
};

/// What lists and sums need of a plan, in a few bytes: verdicts without their words.
struct Glance {
    SubjectId subject;
    Form form = Form::animal;
    Standing standing = Standing::here;
    bool isQuarantined = false;
    bool isSeenToday = false;  ///< something was written about it today: a round has been there
    Priority priority = Priority::none;  ///< the greatest of what is due
    std::optional<CivilDay> opens;       ///< the soonest window among what waits

    [[nodiscard]] bool isKept() const {
        return standing == Standing::here || standing == Standing::onLoan;
    }
    [[nodiscard]] bool isDue(Care care) const { return (due_ & bit(care)) != 0; }
    [[nodiscard]] bool isDueAtAll() const { return due_ != 0; }
    /// Whether a day's list shows it (planner.h).
    [[nodiscard]] bool isListed() const { return due_ != 0 || isHeld_; }
    /// Whether a round has anything to do there.
    [[nodiscard]] bool isOfRound() const;
    /// What it is listed for first: see mainAnswer().
    [[nodiscard]] std::optional<Care> main() const;
    /// Whether that is a feeding that is held back.
    [[nodiscard]] bool isHeld() const { return main() == Care::feed && isHeld_; }
    [[nodiscard]] bool isFeedHeld() const { return isHeld_; }

    static Glance of(const PlanInput& input, const Outlook& outlook, CivilDay today);
    friend bool operator==(const Glance&, const Glance&) = default;

private:
    static std::uint16_t bit(Care care) {
        return static_cast<std::uint16_t>(1U << static_cast<unsigned>(care));
    }
    std::uint16_t due_ = 0;  // a bit for each Care
    bool isHeld_ = false;    // the feeding
};

/// A subject as a room holds it. What was unpacked once stays until the last room that holds it is gone.
/// Safe to ask from any thread.
class Stub {
public:
    Stub(const Kept& kept, const Profile* profile, std::shared_ptr<const PlanBasis> basis);

    [[nodiscard]] const Glance& glance() const { return glance_; }
    [[nodiscard]] SubjectId id() const { return glance_.subject; }
    [[nodiscard]] const ResidentPtr& resident() const;
    /// The record without the plan, whether it was unpacked or not.
    [[nodiscard]] Kept kept() const { return unpacked(packed_); }
    [[nodiscard]] WalkPlace walk() const { return walkPlace(packed_); }
    [[nodiscard]] const std::shared_ptr<const PlanBasis>& basis() const { return basis_; }

private:
    Glance glance_;
    Bytes packed_;
    std::shared_ptr<const PlanBasis> basis_;
    mutable std::once_flag once_;
    mutable ResidentPtr made_;
};

using StubPtr = std::shared_ptr<const Stub>;

}  // namespace burrow
