// The whole room on one day: everyone in it with profile and plan, in the order of a walk along the
// shelves. A room is a snapshot: it is made from a book, holds no connection to it, and may be read
// from any thread. What one entry changes is replaced, the rest is shared with the snapshot before.
#pragma once

#include <memory>
#include <span>
#include <vector>

#include "husbandry/due_list.h"
#include "husbandry/profiles.h"
#include "journal/roster.h"
#include "room/air_log.h"

namespace burrow {

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

/// The tasks of one subject today: at least one line.
struct Visit {
    ResidentPtr resident;
    std::vector<Answer> answers;  ///< due or held, in the order of `Care`
};

class Room {
public:
    /// What does not change with the book. Must outlive every room made with it.
    struct Reference {
        const Profiles& profiles;  ///< as shipped, without the keeper's own
        const Rules& rules;        ///< as shipped, without the keeper's own
        /// How readings of the air are joined; where there is none, plans leave the air out.
        const air::AirRules* air = nullptr;
    };

    /// Reads everything. Rules the keeper changed to something impossible are passed over, and the
    /// shipped value holds.
    static Result<Room> load(Book& book, const Reference& reference, const PlanDay& day);
    /// The room after a transaction: reads again only whom it touched, and plans again only those and
    /// whom a changed rule concerns. The same as loading it.
    [[nodiscard]] Result<Room> after(Book& book, const Reference& reference,
                                     const ChangeSet& changes) const;

    [[nodiscard]] const RoomInfo& info() const { return info_; }
    [[nodiscard]] const PlanDay& day() const { return day_; }
    /// Those for everyone, and in them those for one species, place or animal (Rules::of).
    [[nodiscard]] const Rules& rules() const { return *rules_; }
    /// The species known here: those shipped, and the keeper's own.
    [[nodiscard]] const Profiles& profiles() const { return *profiles_; }
    [[nodiscard]] Rules rulesFor(const Resident& resident) const {
        return rules_->of(resident.input().ruleSubject());
    }
    /// The newest day's mean temperature of each place that has one.
    [[nodiscard]] std::span<const PlaceWarmth> warmths() const { return warmths_; }
    /// In walking order, those in quarantine last. Includes those who died or left.
    [[nodiscard]] std::span<const ResidentPtr> residents() const { return residents_; }
    [[nodiscard]] ResidentPtr find(SubjectId id) const;
    /// Everyone with something due or a feeding held back, in walking order.
    [[nodiscard]] std::vector<Visit> visits() const;

private:
    Room() = default;
    [[nodiscard]] ResidentPtr make(Kept kept) const;
    [[nodiscard]] Result<Room> withSettings(Book& book, const Reference& reference) const;
    Done readSettings(Book& book, const Reference& reference);
    void sort();
    [[nodiscard]] std::vector<SubjectId> touchedBy(const ChangeSet& changes) const;
    void remove(SubjectId id);
    void insert(ResidentPtr resident);

    RoomInfo info_;
    PlanDay day_{{}, Zone::utc()};
    std::shared_ptr<const Rules> rules_;
    std::shared_ptr<const Profiles> profiles_;
    std::vector<PlaceWarmth> warmths_;
    std::vector<ResidentPtr> residents_;
};

}  // namespace burrow
