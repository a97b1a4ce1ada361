#include "husbandry/rule_scope.h"

#include <array>

#include "base/text.h"

namespace burrow {
namespace {

constexpr std::array<std::string_view, 4> scopeNames{"everyone", "species", "place", "animal"};

bool isSame(std::string_view a, std::string_view b) {
    return lowerAscii(trimmed(a)) == lowerAscii(trimmed(b));
}

/// The narrowest part that has this name.
int fitOfWord(std::string_view word, const Place& place) {
    if (trimmed(word).empty()) return 0;
    if (isSame(word, place.shelf)) return 4;
    if (isSame(word, place.rack)) return 2;
    return isSame(word, place.room) ? 1 : 0;
}

}  // namespace

std::string_view name(RuleScope scope) { return scopeNames.at(static_cast<std::size_t>(scope)); }

std::string RuleKey::text() const {
    if (scope == RuleScope::everyone) return rule;
    return rule + "@" + std::string(name(scope)) + ":" + of;
}

std::optional<RuleKey> RuleKey::parse(std::string_view text) {
    RuleKey key;
    const auto at = text.find('@');
    key.rule = text.substr(0, at);
    if (at == std::string_view::npos) return key;
    const auto rest = text.substr(at + 1);
    const auto colon = rest.find(':');
    if (colon == std::string_view::npos) return std::nullopt;
    key.of = trimmed(rest.substr(colon + 1));
    if (key.of.empty() || key.of.size() > longestScopeName || !isUtf8(key.of)) return std::nullopt;
    for (const auto scope : {RuleScope::species, RuleScope::place, RuleScope::animal}) {
        if (rest.substr(0, colon) == name(scope)) key.scope = scope;
    }
    if (key.scope == RuleScope::everyone) return std::nullopt;
    if (key.scope == RuleScope::animal) {
        const auto id = Uuid::parse(key.of);
        if (!id) return std::nullopt;
        key.of = id->text();  // one spelling for one animal
    }
    return key;
}

int placeFit(std::string_view written, const Place& place) {
    if (written.find('/') == std::string_view::npos) return fitOfWord(written, place);
    const auto wanted = Place::parse(written);
    int fit = 0;
    const auto part = [&](const std::string& asked, const std::string& there, int weight) {
        if (fit < 0 || trimmed(asked).empty()) return;
        fit = isSame(asked, there) ? fit + weight : -1;
    };
    // A narrower part outweighs all wider ones together.
    part(wanted.room, place.room, 1);
    part(wanted.rack, place.rack, 2);
    part(wanted.shelf, place.shelf, 4);
    part(wanted.position, place.position, 8);
    return fit < 0 ? 0 : fit;
}

}  // namespace burrow
