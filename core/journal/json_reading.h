// Reading bodies that may come from anywhere: what is not as expected reads as nothing, and never throws.
#pragma once

#include <cstdint>
#include <limits>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "base/civil.h"
#include "base/ids.h"

namespace burrow::reading {

/// Nothing where `object` is no object or has no such member.
[[nodiscard]] inline const nlohmann::json* member(const nlohmann::json& object,
                                                  std::string_view name) {
    if (!object.is_object()) return nullptr;
    const auto found = object.find(name);
    return found == object.end() ? nullptr : &*found;
}

/// Empty where it is no text.
[[nodiscard]] inline std::string text(const nlohmann::json& object, std::string_view name) {
    const auto* value = member(object, name);
    return value != nullptr && value->is_string() ? value->get<std::string>() : std::string();
}

[[nodiscard]] inline bool flag(const nlohmann::json& object, std::string_view name) {
    const auto* value = member(object, name);
    return value != nullptr && value->is_boolean() && value->get<bool>();
}

[[nodiscard]] inline std::optional<Uuid> uuid(const nlohmann::json& object, std::string_view name) {
    const auto* value = member(object, name);
    if (value == nullptr || !value->is_string()) return std::nullopt;
    return Uuid::parse(value->get_ref<const std::string&>());
}

[[nodiscard]] inline std::optional<std::int64_t> whole(const nlohmann::json& object,
                                                       std::string_view name) {
    const auto* value = member(object, name);
    if (value == nullptr || !value->is_number_integer()) return std::nullopt;
    constexpr auto most = static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max());
    if (value->is_number_unsigned() && value->get<std::uint64_t>() > most) return std::nullopt;
    return value->get<std::int64_t>();
}

/// Years 1 to 9999: what a calendar can show, and far from where sums of times overflow.
inline constexpr CivilDay firstDay{-719'162};
inline constexpr CivilDay lastDay{2'932'896};
[[nodiscard]] constexpr bool isDay(std::int64_t days) {
    return days >= firstDay.days && days <= lastDay.days;
}
[[nodiscard]] constexpr bool isInstant(std::int64_t ms) {
    constexpr std::int64_t msPerDay = 86'400'000;
    return ms >= firstDay.days * msPerDay && ms < (lastDay.days + 1) * msPerDay;
}

}  // namespace burrow::reading
