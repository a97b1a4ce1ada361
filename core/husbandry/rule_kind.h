// For which animals a shipped rule has a value of its own: by order, habit or region.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>

#include "model/profile.h"

namespace burrow {

struct RuleKind {
    std::optional<Order> order;
    std::optional<Habit> habit;
    std::optional<Region> region;

    [[nodiscard]] bool isForAll() const { return !order && !habit && !region; }
    /// An animal of unknown species is of no kind.
    [[nodiscard]] bool fits(const Profile* profile) const;
    /// Of several kinds that fit, the one with the greater weight holds: an order says more than a
    /// habit, a habit more than a region, two together more than one.
    [[nodiscard]] int weight() const;
    /// "scorpion", "old_world arboreal"
    [[nodiscard]] std::string text() const;
    /// From {"habit": "arboreal"}; nothing for an empty object, an unknown key or an unknown word.
    [[nodiscard]] static std::optional<RuleKind> fromJson(const nlohmann::json& object);

    friend bool operator==(const RuleKind&, const RuleKind&) = default;
};

}  // namespace burrow
