#include "husbandry/rules.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <optional>

#include "base/text.h"
#include "husbandry/rule_table.h"

namespace burrow {
namespace {

using nlohmann::json;

constexpr std::size_t longestFeeder = 40;

tl::unexpected<Error> refuse(std::string messageId, std::string_view rule) {
    return fail(Trouble::badInput,
                {std::move(messageId), {{"rule", std::string(rule.substr(0, 60))}}});
}

bool isPossible(double number, RuleUnit unit) {
    const auto limits = limitsOf(unit);
    return number >= limits.least && number <= limits.most &&
           (!isWhole(unit) || number == std::floor(number));
}

/// Whether the value has the shape that the table asks for, and can be.
bool isPossible(const RuleValue& value, const RuleFamily& family) {
    switch (family.shape) {
        case RuleShape::number: {
            const auto* number = std::get_if<double>(&value);
            return number != nullptr && isPossible(*number, family.unit);
        }
        case RuleShape::range: {
            const auto* range = std::get_if<Range<double>>(&value);
            return range != nullptr && isPossible(range->least, family.unit) &&
                   isPossible(range->most, family.unit) && range->least <= range->most;
        }
        case RuleShape::word: {
            const auto* word = std::get_if<std::string>(&value);
            return word != nullptr && !word->empty() && word->size() <= longestFeeder &&
                   isUtf8(*word);
        }
    }
    return false;
}

std::optional<RuleValue> valueFromJson(const json& value) {
    if (value.is_number()) return value.get<double>();
    if (value.is_string()) return value.get<std::string>();
    if (value.is_array() && value.size() == 2 && value[0].is_number() && value[1].is_number()) {
        return Range<double>{value[0].get<double>(), value[1].get<double>()};
    }
    return std::nullopt;
}

/// "5-7", "5 to 7" or "6" for a range.
std::optional<RuleValue> rangeFromText(std::string_view text) {
    auto plain = lowerAscii(text);
    if (const auto at = plain.find("to"); at != std::string::npos) plain.replace(at, 2, "-");
    const auto parts = split(plain, '-');
    const auto least = parseNumber(trimmed(parts.front()));
    const auto most = parseNumber(trimmed(parts.back()));
    if (!least || !most || parts.size() > 2) return std::nullopt;
    return Range<double>{*least, *most};
}

std::optional<RuleValue> valueFromText(std::string_view text, RuleShape shape) {
    if (shape == RuleShape::range) return rangeFromText(text);
    if (shape == RuleShape::word) return std::string(trimmed(text));
    const auto number = parseNumber(trimmed(text));
    return number ? std::optional<RuleValue>(*number) : std::nullopt;
}

std::string textField(const json& object, const char* field) {
    const auto found = object.find(field);
    if (found == object.end() || !found->is_string()) return {};
    return std::string(trimmed(found->get_ref<const std::string&>()));
}

Result<Rule> ruleFromJson(const json& object) {
    if (!object.is_object()) return refuse("rules.unreadable", "");
    Rule rule;
    rule.id = textField(object, "id");
    const auto* family = familyOf(rule.id);
    if (family == nullptr) return refuse("rules.unknown", rule.id);
    rule.unit = family->unit;
    rule.source = textField(object, "source");
    rule.says = textField(object, "says");
    if (rule.source.empty() || rule.says.empty()) return refuse("rules.noSource", rule.id);
    if (parseRuleUnit(textField(object, "unit")) != family->unit) {
        return refuse("rules.wrongUnit", rule.id);
    }
    const auto value = object.contains("value") ? valueFromJson(object["value"]) : std::nullopt;
    if (!value || !isPossible(*value, *family)) return refuse("rules.impossible", rule.id);
    rule.value = *value;
    return rule;
}

tl::unexpected<Error> refuseOverride(const std::string& rule, const std::string& text,
                                     const RuleFamily& family) {
    auto shown = text.substr(0, 40);
    if (!isUtf8(shown)) shown = "?";
    const auto limits = limitsOf(family.unit);
    return fail(
        Trouble::badInput,
        {family.shape == RuleShape::word ? "rules.notAFeeder" : "rules.notPossible",
         {{"rule", rule}, {"value", shown}, {"least", limits.least}, {"most", limits.most}}});
}

Done checkComplete(const std::map<std::string, Rule, std::less<>>& rules) {
    for (const auto& family : ruleFamilies()) {
        std::vector<std::string> ids;
        if (family.members.empty()) ids.emplace_back(family.id);
        for (const auto member : family.members) {
            ids.push_back(std::string(family.id) + "." + std::string(member));
        }
        for (const auto& id : ids) {
            if (!rules.contains(id)) return refuse("rules.missing", id);
        }
    }
    return {};
}

}  // namespace

Result<Rules> Rules::fromJson(std::span<const std::string> files) {
    Rules rules;
    for (const auto& file : files) {
        const auto list = json::parse(file, nullptr, false);
        if (!list.is_array()) return refuse("rules.unreadable", "");
        for (const auto& object : list) {
            BURROW_TRY(auto rule, ruleFromJson(object));
            const auto id = rule.id;
            if (!rules.rules_.emplace(id, std::move(rule)).second) {
                return refuse("rules.twice", id);
            }
        }
    }
    BURROW_DO(checkComplete(rules.rules_));
    return rules;
}

Result<Rules> Rules::with(std::span<const std::pair<std::string, std::string>> overrides) const {
    Rules changed = *this;
    for (const auto& [id, text] : overrides) {
        const auto found = changed.rules_.find(id);
        if (found == changed.rules_.end()) return refuse("rules.unknown", id);
        const auto& family = *familyOf(id);
        const auto value = valueFromText(text, family.shape);
        if (!value || !isPossible(*value, family)) return refuseOverride(id, text, family);
        found->second.value = *value;
        found->second.origin = RuleOrigin::keeper;
    }
    return changed;
}

Range<int> Rules::dayRange(std::string_view id) const {
    const auto& range = std::get<Range<double>>(at(id).value);
    return {static_cast<int>(range.least), static_cast<int>(range.most)};
}

int Rules::days(std::string_view id) const {
    return static_cast<int>(std::get<double>(at(id).value));
}

int Rules::hours(std::string_view id) const { return days(id); }
int Rules::count(std::string_view id) const { return days(id); }

Millimetres Rules::length(std::string_view id) const { return {factor(id)}; }
double Rules::factor(std::string_view id) const { return std::get<double>(at(id).value); }

const std::string& Rules::prey(std::string_view id) const {
    return std::get<std::string>(at(id).value);
}

std::string valueText(const RuleValue& value) {
    if (const auto* range = std::get_if<Range<double>>(&value)) {
        return fmt::format("{:g}-{:g}", range->least, range->most);
    }
    if (const auto* number = std::get_if<double>(&value)) return fmt::format("{:g}", *number);
    return std::get<std::string>(value);
}

RuleOrigin Rules::origin(std::string_view id) const { return at(id).origin; }

const Rule* Rules::find(std::string_view id) const {
    const auto found = rules_.find(id);
    return found == rules_.end() ? nullptr : &found->second;
}

std::vector<const Rule*> Rules::all() const {
    std::vector<const Rule*> rules;
    rules.reserve(rules_.size());
    for (const auto& [id, rule] : rules_) rules.push_back(&rule);
    return rules;
}

const Rule& Rules::at(std::string_view id) const {
    const auto* rule = find(id);
    if (rule == nullptr) std::abort();
    return *rule;
}

}  // namespace burrow
