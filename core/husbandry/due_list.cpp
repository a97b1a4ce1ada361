#include "husbandry/due_list.h"

#include <algorithm>
#include <utility>

#include "base/natural_key.h"
#include "base/text.h"
#include "husbandry/walk_key.h"

namespace burrow {

bool walksBefore(const PlanInput& a, const PlanInput& b) {
    if (a.subject.quarantined != b.subject.quarantined) return b.subject.quarantined;
    if (const int order = compareWalk(a.place, b.place); order != 0) return order < 0;
    if (const int order = compareNatural(a.subject.number, b.subject.number); order != 0) {
        return order < 0;
    }
    return a.subject.id < b.subject.id;
}

std::string walkKey(bool isQuarantined, const Place& place, std::string_view number, SubjectId id) {
    std::string key(1, isQuarantined ? '\1' : '\0');
    for (const auto part : {&Place::room, &Place::rack, &Place::shelf, &Place::position}) {
        addNaturalKey(key, place.*part);
    }
    addNaturalKey(key, number);
    for (const auto byte : id.uuid.bytes) key += static_cast<char>(byte);
    return key;
}

std::vector<std::size_t> walkOrder(std::span<const PlanInput> inputs) {
    std::vector<std::pair<std::string, std::size_t>> keys;
    keys.reserve(inputs.size());
    for (std::size_t at = 0; at < inputs.size(); ++at) {
        const auto& subject = inputs[at].subject;
        keys.emplace_back(
            walkKey(subject.quarantined, inputs[at].place, subject.number, subject.id), at);
    }
    std::sort(keys.begin(), keys.end());
    std::vector<std::size_t> order;
    order.reserve(keys.size());
    for (const auto& [key, at] : keys) order.push_back(at);
    return order;
}

std::vector<DueLine> dueList(std::span<const PlanInput> inputs, const Rules& rules,
                             const PlanDay& day) {
    std::vector<DueLine> lines;
    for (const auto at : walkOrder(inputs)) {
        auto plan = planFor(inputs[at], rules, day);
        for (auto& answer : plan.answers) {
            if (isListed(answer)) lines.push_back({at, std::move(answer)});
        }
    }
    return lines;
}

}  // namespace burrow
