#include "room/due_filter.h"

#include <algorithm>

#include "base/text.h"

namespace burrow {
namespace {

bool isWanted(const Answer& answer, const DueFilter& filter, CivilDay today) {
    if (!filter.care.empty() && !filter.care.contains(answer.care)) return false;
    switch (filter.which) {
        case DueFilter::Which::late: return isLate(answer, today);
        case DueFilter::Which::held: return answer.state == State::hold;
        case DueFilter::Which::all: break;
    }
    return true;
}

bool isThere(const Place& place, const std::optional<Place>& where) {
    return !where || rackOf(place) == *where;
}

bool walksBeforeAnyhow(const Visit& a, const Visit& b) {
    if (const int order = compareWalk(a.resident->kept.place, b.resident->kept.place); order != 0) {
        return order < 0;
    }
    return compareNatural(a.resident->subject().number, b.resident->subject().number) < 0;
}

}  // namespace

bool isLate(const Answer& answer, CivilDay today) {
    return answer.state == State::due && answer.window && answer.window->late < today;
}

Place rackOf(const Place& place) { return {place.room, place.rack, {}, {}}; }

std::vector<Visit> narrowed(std::vector<Visit> visits, const DueFilter& filter, CivilDay today) {
    for (auto& visit : visits) {
        std::erase_if(visit.answers,
                      [&](const Answer& answer) { return !isWanted(answer, filter, today); });
    }
    std::erase_if(visits, [&](const Visit& visit) {
        return visit.answers.empty() || !isThere(visit.resident->kept.place, filter.where);
    });
    if (!filter.quarantineApart) {
        std::stable_sort(visits.begin(), visits.end(), walksBeforeAnyhow);
    }
    return visits;
}

}  // namespace burrow
