#include "husbandry/rule_kind.h"

#include <array>
#include <nlohmann/json.hpp>
#include <span>
#include <string_view>

namespace burrow {
namespace {

constexpr std::array<std::string_view, 4> orders{"tarantula", "true_spider", "scorpion",
                                                 "whip_spider"};
constexpr std::array<std::string_view, 3> habits{"terrestrial", "arboreal", "fossorial"};
constexpr std::array<std::string_view, 2> regions{"new_world", "old_world"};

template <class Term>
bool read(const nlohmann::json& value, std::span<const std::string_view> words,
          std::optional<Term>& into) {
    if (!value.is_string()) return false;
    const auto& text = value.get_ref<const std::string&>();
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i] == text) into = static_cast<Term>(i);
    }
    return into.has_value();
}

template <class Term>
void addTo(std::string& text, std::optional<Term> term, std::span<const std::string_view> words) {
    if (!term) return;
    if (!text.empty()) text += ' ';
    text += words[static_cast<std::size_t>(*term)];
}

}  // namespace

bool RuleKind::fits(const Profile* profile) const {
    if (isForAll()) return true;
    if (profile == nullptr) return false;
    return (!order || *order == profile->order) && (!habit || *habit == profile->habit.value) &&
           (!region || *region == profile->region.value);
}

int RuleKind::weight() const { return (order ? 4 : 0) + (habit ? 2 : 0) + (region ? 1 : 0); }

std::string RuleKind::text() const {
    std::string text;
    addTo(text, region, std::span(regions));
    addTo(text, habit, std::span(habits));
    addTo(text, order, std::span(orders));
    return text;
}

std::optional<RuleKind> RuleKind::fromJson(const nlohmann::json& object) {
    if (!object.is_object() || object.empty()) return std::nullopt;
    RuleKind kind;
    for (const auto& [key, value] : object.items()) {
        const bool isRead = key == "order"    ? read(value, std::span(orders), kind.order)
                            : key == "habit"  ? read(value, std::span(habits), kind.habit)
                            : key == "region" ? read(value, std::span(regions), kind.region)
                                              : false;
        if (!isRead) return std::nullopt;
    }
    return kind;
}

}  // namespace burrow
