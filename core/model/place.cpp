#include "model/place.h"

#include <array>
#include <vector>

#include "base/text.h"

namespace burrow {

std::string Place::text() const {
    const std::array<const std::string*, 4> parts{&room, &rack, &shelf, &position};
    std::size_t first = 0;
    // A lone part reads as a shelf, so a place that has only a position still names its empty shelf.
    // What looks like more parts belongs to the position, which needs all others before it.
    const bool isCut = position.find('/') != std::string::npos;
    while (!isCut && first < 2 && parts[first]->empty()) ++first;
    std::size_t last = position.empty() && first == 2 ? 2 : 3;
    if (isEmpty()) return {};
    std::string text;
    for (std::size_t i = first; i <= last; ++i) {
        if (i > first) text += " / ";
        text += *parts[i];
    }
    return text;
}

Place Place::parse(std::string_view text) {
    std::vector<std::string> parts;
    for (const auto part : split(text, '/')) {
        if (parts.size() < 4) {
            parts.emplace_back(trimmed(part));
        } else {
            parts.back() += "/" + std::string(trimmed(part));
        }
    }
    switch (parts.size()) {
        case 1: return {{}, {}, parts[0], {}};
        case 2: return {{}, {}, parts[0], parts[1]};
        case 3: return {{}, parts[0], parts[1], parts[2]};
        default: return {parts[0], parts[1], parts[2], parts[3]};
    }
}

int compareWalk(const Place& a, const Place& b) {
    for (const auto part : {&Place::room, &Place::rack, &Place::shelf, &Place::position}) {
        if (const int order = compareNatural(a.*part, b.*part); order != 0) return order;
    }
    return 0;
}

}  // namespace burrow
