#include "husbandry/rules.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <tuple>
#include <unordered_map>

#include "base/text.h"
#include "husbandry/rule_file.h"
#include "husbandry/rule_table.h"

namespace burrow {
namespace {

using Layer = std::map<std::size_t, Rule>;  // by ruleIndex

constexpr std::array<std::string_view, 6> originNames{"shipped", "kind",  "you",
                                                      "species", "place", "animal"};

/// How species are compared: in lower case, without what stands around them.
std::string speciesKey(std::string_view species) { return lowerAscii(trimmed(species)); }

}  // namespace

/// All values there are. Never changed once Rules are made from it.
struct Rules::Table {
    std::vector<ShippedRule> shipped;  ///< as shippedRules() sorts them
    Layer everyone;
    std::unordered_map<std::string, Layer> species;
    std::map<std::string, Layer> places;  ///< by the place as written
    std::map<SubjectId, Layer> animals;

    void add(TypedRule typed);
    [[nodiscard]] std::span<const ShippedRule> ofKinds() const {
        return std::span(shipped).subspan(allRuleIds().size());
    }
    /// Calls `take(index, rule)` for every value that concerns the subject, the most general first.
    template <class Take>
    void forEach(const RuleSubject& subject, Take take) const;

private:
    template <class Take>
    void forEachOfSpecies(const RuleSubject& subject, Take take) const;
    template <class Take>
    void forEachOfPlace(const Place& place, Take take) const;
};

void Rules::Table::add(TypedRule typed) {
    auto rule = shipped[typed.at].rule;
    rule.value = std::move(typed.value);
    rule.scope = typed.key.of;
    switch (typed.key.scope) {
        case RuleScope::everyone:
            rule.origin = RuleOrigin::keeper;
            everyone[typed.at] = std::move(rule);
            break;
        case RuleScope::species:
            rule.origin = RuleOrigin::species;
            species[speciesKey(typed.key.of)][typed.at] = std::move(rule);
            break;
        case RuleScope::place:
            rule.origin = RuleOrigin::place;
            places[typed.key.of][typed.at] = std::move(rule);
            break;
        case RuleScope::animal:
            rule.origin = RuleOrigin::animal;
            animals[SubjectId{Uuid::parse(typed.key.of).value_or(Uuid{})}][typed.at] =
                std::move(rule);
            break;
    }
}

/// Under any name of the species; of several the one it was recorded with comes last and holds.
template <class Take>
void Rules::Table::forEachOfSpecies(const RuleSubject& subject, Take take) const {
    if (species.empty()) return;
    std::vector<std::string> names;
    const auto add = [&](std::string_view name) {
        const auto key = speciesKey(name);
        std::erase(names, key);  // each name counts once, in its last place
        names.push_back(key);
    };
    if (const auto* profile = subject.profile; profile != nullptr) {
        for (const auto& trade : profile->tradeNames) add(trade);
        for (const auto& other : profile->otherNames) add(other);
        add(profile->name);
    }
    add(subject.species);
    for (const auto& name : names) {
        const auto found = species.find(name);
        if (found == species.end()) continue;
        for (const auto& [at, rule] : found->second) take(at, rule);
    }
}

template <class Take>
void Rules::Table::forEachOfPlace(const Place& place, Take take) const {
    std::vector<std::pair<int, const Layer*>> fitting;
    for (const auto& [written, layer] : places) {
        if (const int fit = placeFit(written, place); fit > 0) fitting.emplace_back(fit, &layer);
    }
    // Of two spellings that fit alike the later in the alphabet holds, on every device.
    std::stable_sort(fitting.begin(), fitting.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const auto& [fit, layer] : fitting) {
        for (const auto& [at, rule] : *layer) take(at, rule);
    }
}

template <class Take>
void Rules::Table::forEach(const RuleSubject& subject, Take take) const {
    for (const auto& kind : ofKinds()) {
        if (kind.kind.fits(subject.profile)) take(kind.at, kind.rule);
    }
    for (const auto& [at, rule] : everyone) take(at, rule);
    forEachOfSpecies(subject, take);
    forEachOfPlace(subject.place, take);
    if (const auto own = animals.find(subject.id); own != animals.end()) {
        for (const auto& [at, rule] : own->second) take(at, rule);
    }
}

std::string_view name(RuleOrigin origin) {
    return originNames.at(static_cast<std::size_t>(origin));
}

Result<Rules> Rules::fromJson(std::span<const std::string> files) {
    BURROW_TRY(auto shipped, shippedRules(files));
    Rules rules;
    auto table = std::make_shared<Table>();
    table->shipped = std::move(shipped);
    rules.table_ = std::move(table);
    rules.settle();
    return rules;
}

/// What holds for everyone.
void Rules::settle() {
    const auto count = allRuleIds().size();
    holding_.resize(count);
    for (std::size_t at = 0; at < count; ++at) holding_[at] = &table_->shipped[at].rule;
    for (const auto& [at, rule] : table_->everyone) holding_[at] = &rule;
}

Result<Rules> Rules::with(std::span<const OwnRule> own) const {
    auto table = std::make_shared<Table>(*table_);
    for (const auto& one : own) {
        BURROW_TRY(auto typed, typedRule(one));
        table->add(std::move(typed));
    }
    Rules changed;
    changed.table_ = std::move(table);
    changed.settle();
    return changed;
}

Rules Rules::withPossible(std::span<const OwnRule> own,
                          std::vector<std::string>* passedOver) const {
    auto table = std::make_shared<Table>(*table_);
    for (const auto& one : own) {
        if (auto typed = typedRule(one)) {
            table->add(*std::move(typed));
        } else if (passedOver != nullptr) {
            passedOver->push_back(one.first);
        }
    }
    Rules changed;
    changed.table_ = std::move(table);
    changed.settle();
    return changed;
}

Rules Rules::of(const RuleSubject& subject) const {
    Rules special;
    special.table_ = table_;
    special.trace_ = trace_;
    special.settle();
    table_->forEach(subject,
                    [&](std::size_t at, const Rule& rule) { special.holding_[at] = &rule; });
    return special;
}

std::vector<Rule> Rules::layers(std::string_view id, const RuleSubject& subject) const {
    const auto index = ruleIndex(id);
    if (!index) return {};
    std::vector<Rule> layers{table_->shipped[*index].rule};
    table_->forEach(subject, [&](std::size_t at, const Rule& rule) {
        if (at == *index) layers.push_back(rule);
    });
    std::reverse(layers.begin(), layers.end());
    return layers;
}

std::vector<Rule> Rules::ownRules() const {
    std::vector<Rule> own;
    for (const auto& [at, rule] : table_->everyone) own.push_back(rule);
    for (const auto& [name, layer] : table_->species) {
        for (const auto& [at, rule] : layer) own.push_back(rule);
    }
    for (const auto& [written, layer] : table_->places) {
        for (const auto& [at, rule] : layer) own.push_back(rule);
    }
    for (const auto& [id, layer] : table_->animals) {
        for (const auto& [at, rule] : layer) own.push_back(rule);
    }
    std::sort(own.begin(), own.end(), [](const Rule& a, const Rule& b) {
        return std::tie(a.id, a.origin, a.scope) < std::tie(b.id, b.origin, b.scope);
    });
    return own;
}

Rules Rules::tracedInto(RuleTrace& trace) const {
    auto traced = *this;
    traced.trace_ = &trace;
    return traced;
}

Range<int> Rules::dayRange(std::string_view id) const {
    const auto days = range(id);
    return {static_cast<int>(days.least), static_cast<int>(days.most)};
}

int Rules::days(std::string_view id) const { return static_cast<int>(factor(id)); }
int Rules::hours(std::string_view id) const { return days(id); }
int Rules::count(std::string_view id) const { return days(id); }

Millimetres Rules::length(std::string_view id) const { return {factor(id)}; }
Celsius Rules::warmth(std::string_view id) const { return {factor(id)}; }
double Rules::factor(std::string_view id) const { return std::get<double>(at(id).value); }

Range<double> Rules::range(std::string_view id) const {
    return std::get<Range<double>>(at(id).value);
}

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
    const auto index = ruleIndex(id);
    return index ? holding_[*index] : nullptr;
}

std::vector<const Rule*> Rules::all() const { return holding_; }

bool Rules::sameValues(const Rules& other) const {
    return std::equal(holding_.begin(), holding_.end(), other.holding_.begin(),
                      other.holding_.end(),
                      [](const Rule* a, const Rule* b) { return a == b || a->value == b->value; });
}

const Rule& Rules::at(std::string_view id) const {
    const auto index = ruleIndex(id);
    if (!index) std::abort();
    if (trace_ != nullptr) {
        auto& asked = trace_->asked;
        if (std::find(asked.begin(), asked.end(), *index) == asked.end()) asked.push_back(*index);
    }
    return *holding_[*index];
}

}  // namespace burrow
