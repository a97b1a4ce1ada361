#include "husbandry/due_list.h"

#include <algorithm>
#include <numeric>

#include "base/text.h"

namespace burrow {

bool walksBefore(const PlanInput& a, const PlanInput& b) {
    if (a.subject.quarantined != b.subject.quarantined) return b.subject.quarantined;
    if (const int order = compareWalk(a.place, b.place); order != 0) return order < 0;
    if (const int order = compareNatural(a.subject.number, b.subject.number); order != 0) {
        return order < 0;
    }
    return a.subject.id < b.subject.id;
}

std::vector<std::size_t> walkOrder(std::span<const PlanInput> inputs) {
    std::vector<std::size_t> order(inputs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(),
              [&](std::size_t a, std::size_t b) { return walksBefore(inputs[a], inputs[b]); });
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
