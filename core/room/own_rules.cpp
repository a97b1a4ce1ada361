#include "room/own_rules.h"

#include <algorithm>

#include "base/text.h"

namespace burrow {
namespace {

RuleScope scopeOf(RuleOrigin origin) {
    switch (origin) {
        case RuleOrigin::species: return RuleScope::species;
        case RuleOrigin::place: return RuleScope::place;
        case RuleOrigin::animal: return RuleScope::animal;
        case RuleOrigin::assets:
        case RuleOrigin::kind:
        case RuleOrigin::keeper: break;
    }
    return RuleScope::everyone;
}

bool isSameKey(const std::string& written, const RuleKey& key) {
    const auto other = RuleKey::parse(written);
    return other && meansTheSame(*other, key);
}

}  // namespace

RuleKey keyOf(const Rule& own) { return {own.id, scopeOf(own.origin), own.scope}; }

bool meansTheSame(const RuleKey& a, const RuleKey& b) {
    return a.rule == b.rule && a.scope == b.scope &&
           lowerAscii(trimmed(a.of)) == lowerAscii(trimmed(b.of));
}

Rules rulesAfter(const RuleChange& change, const RoomInfo& info, const Rules& shipped) {
    auto own = info.rules;
    std::erase_if(own, [&](const OwnRule& rule) { return isSameKey(rule.first, change.key); });
    if (!change.isTakenBack()) own.emplace_back(change.key.text(), change.value);
    return shipped.withPossible(own);
}

FieldValues fieldsOf(const RuleChange& change, const RoomInfo& info) {
    FieldValues fields;
    for (const auto& [key, value] : info.rules) {
        if (isSameKey(key, change.key)) fields[std::string(setting::rule) + key] = nullptr;
    }
    if (!change.isTakenBack()) {
        fields[std::string(setting::rule) + change.key.text()] = change.value;
    }
    return fields;
}

}  // namespace burrow
