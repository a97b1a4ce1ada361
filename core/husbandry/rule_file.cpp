#include "husbandry/rule_file.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>

#include "base/text.h"
#include "husbandry/rule_table.h"

namespace burrow {
namespace {

using nlohmann::json;

constexpr std::size_t longestFeeder = 40;

tl::unexpected<Error> refuse(std::string messageId, std::string_view rule) {
    auto shown = std::string(rule.substr(0, 60));
    if (!isUtf8(shown)) shown = "?";
    return fail(Trouble::badInput, {std::move(messageId), {{"rule", shown}}});
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

Result<ShippedRule> ruleFromJson(const json& object) {
    if (!object.is_object()) return refuse("rules.unreadable", "");
    ShippedRule shipped;
    auto& rule = shipped.rule;
    rule.id = textField(object, "id");
    const auto index = ruleIndex(rule.id);
    if (!index) return refuse("rules.unknown", rule.id);
    shipped.at = *index;
    if (object.contains("for")) {
        const auto kind = RuleKind::fromJson(object["for"]);
        if (!kind) return refuse("rules.unknownKind", rule.id);
        shipped.kind = *kind;
        rule.origin = RuleOrigin::kind;
        rule.scope = kind->text();
    }
    const auto& family = *familyOf(rule.id);
    rule.unit = family.unit;
    rule.source = textField(object, "source");
    rule.says = textField(object, "says");
    const bool needsWords = shipped.kind.isForAll();
    if (rule.source.empty() || (needsWords && rule.says.empty())) {
        return refuse("rules.noSource", rule.id);
    }
    if (parseRuleUnit(textField(object, "unit")) != family.unit) {
        return refuse("rules.wrongUnit", rule.id);
    }
    const auto value = object.contains("value") ? valueFromJson(object["value"]) : std::nullopt;
    if (!value || !isPossible(*value, family)) return refuse("rules.impossible", rule.id);
    rule.value = *value;
    return shipped;
}

/// Sorted as promised, each rule once for each kind, none missing; a kind's rule says what the rule
/// for all says.
Done settle(std::vector<ShippedRule>& rules) {
    std::stable_sort(rules.begin(), rules.end(), [](const ShippedRule& a, const ShippedRule& b) {
        return std::pair(a.kind.weight(), a.at) < std::pair(b.kind.weight(), b.at);
    });
    for (std::size_t i = 0; i < rules.size(); ++i) {
        for (auto j = i + 1; j < rules.size() && rules[j].kind.weight() == rules[i].kind.weight() &&
                             rules[j].at == rules[i].at;
             ++j) {
            if (rules[j].kind == rules[i].kind) return refuse("rules.twice", rules[i].rule.id);
        }
    }
    const auto& ids = allRuleIds();
    for (std::size_t i = 0; i < ids.size(); ++i) {
        const bool isThere = i < rules.size() && rules[i].kind.isForAll() && rules[i].at == i;
        if (!isThere) return refuse("rules.missing", ids[i]);
    }
    for (auto i = ids.size(); i < rules.size(); ++i) {
        if (rules[i].rule.says.empty()) rules[i].rule.says = rules[rules[i].at].rule.says;
    }
    return {};
}

tl::unexpected<Error> refuseTyped(const std::string& rule, const std::string& text,
                                  const RuleFamily& family) {
    auto shown = text.substr(0, 40);
    if (!isUtf8(shown)) shown = "?";
    const auto limits = limitsOf(family.unit);
    return fail(
        Trouble::badInput,
        {family.shape == RuleShape::word ? "rules.notAFeeder" : "rules.notPossible",
         {{"rule", rule}, {"value", shown}, {"least", limits.least}, {"most", limits.most}}});
}

}  // namespace

Result<std::vector<ShippedRule>> shippedRules(std::span<const std::string> files) {
    std::vector<ShippedRule> rules;
    for (const auto& file : files) {
        const auto list = json::parse(file, nullptr, false);
        if (!list.is_array()) return refuse("rules.unreadable", "");
        for (const auto& object : list) {
            BURROW_TRY(auto rule, ruleFromJson(object));
            rules.push_back(std::move(rule));
        }
    }
    BURROW_DO(settle(rules));
    return rules;
}

Result<TypedRule> typedRule(const OwnRule& own) {
    const auto& [text, value] = own;
    const auto key = RuleKey::parse(text);
    if (!key) return refuse("rules.unknownScope", text);
    const auto index = ruleIndex(key->rule);
    if (!index) return refuse("rules.unknown", key->rule);
    const auto& family = *familyOf(key->rule);
    const auto read = valueFromText(value, family.shape);
    if (!read || !isPossible(*read, family)) return refuseTyped(key->rule, value, family);
    return TypedRule{*key, *index, *read};
}

}  // namespace burrow
