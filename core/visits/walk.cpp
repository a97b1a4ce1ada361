#include "visits/walk.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <utility>

#include "base/text.h"

namespace burrow::visits {
namespace {

using Order = std::vector<std::size_t>;
using At = Order::iterator;

/// How two stops compare by room and rack, by shelf, and on the shelf.
class Compare {
public:
    Compare(std::span<const Stop> stops, std::span<const Place> racks) : stops_(stops) {
        std::map<std::pair<std::string, std::string>, std::size_t> ranks;
        for (const auto& rack : racks) ranks.try_emplace({rack.room, rack.rack}, ranks.size());
        for (const auto& stop : stops) {
            const auto found = ranks.find({stop.place.room, stop.place.rack});
            rank_.push_back(found == ranks.end() ? racks.size() : found->second);
        }
    }

    [[nodiscard]] int byRack(std::size_t a, std::size_t b) const {
        if (stops_[a].quarantined != stops_[b].quarantined) return stops_[b].quarantined ? -1 : 1;
        const bool isLost = stops_[a].place.isEmpty();
        if (isLost != stops_[b].place.isEmpty()) return isLost ? 1 : -1;
        if (rank_[a] != rank_[b]) return rank_[a] < rank_[b] ? -1 : 1;
        const int byRoom = compareNatural(stops_[a].place.room, stops_[b].place.room);
        return byRoom != 0 ? byRoom : compareNatural(stops_[a].place.rack, stops_[b].place.rack);
    }
    [[nodiscard]] int byShelf(std::size_t a, std::size_t b) const {
        return compareNatural(stops_[a].place.shelf, stops_[b].place.shelf);
    }
    [[nodiscard]] int onShelf(std::size_t a, std::size_t b) const {
        const int order = compareNatural(stops_[a].place.position, stops_[b].place.position);
        return order != 0 ? order : compareNatural(stops_[a].number, stops_[b].number);
    }
    [[nodiscard]] bool isLost(std::size_t a) const { return stops_[a].place.isEmpty(); }
    [[nodiscard]] bool isQuarantined(std::size_t a) const { return stops_[a].quarantined; }

private:
    std::span<const Stop> stops_;
    std::vector<std::size_t> rank_;
};

/// The end of the run that begins at `begin` and within which `differ` is zero.
template <class Differ>
At runEnd(At begin, At end, Differ differ) {
    return std::find_if(begin, end, [&](std::size_t i) { return differ(*begin, i) != 0; });
}

}  // namespace

std::vector<std::size_t> walk(std::span<const Stop> stops, std::span<const Place> racks) {
    const Compare compare(stops, racks);
    const auto byRack = [&](std::size_t a, std::size_t b) { return compare.byRack(a, b); };
    const auto byShelf = [&](std::size_t a, std::size_t b) { return compare.byShelf(a, b); };
    Order order(stops.size());
    std::iota(order.begin(), order.end(), 0);
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        for (const int step :
             {compare.byRack(a, b), compare.byShelf(a, b), compare.onShelf(a, b)}) {
            if (step != 0) return step < 0;
        }
        return a < b;
    });
    bool isUpward = false;  // this rack is walked from its last shelf
    bool wasQuarantined = false;
    for (auto rack = order.begin(); rack != order.end();) {
        const auto rackEnd = runEnd(rack, order.end(), byRack);
        if (compare.isQuarantined(*rack) && !wasQuarantined) {
            isUpward = false;
            wasQuarantined = true;
        }
        if (!compare.isLost(*rack)) {
            // Turning the whole rack round turns each of its shelves too.
            if (isUpward) std::reverse(rack, rackEnd);
            bool isLeftward = false;  // this shelf is walked from its far end
            for (auto shelf = rack; shelf != rackEnd;) {
                const auto shelfEnd = runEnd(shelf, rackEnd, byShelf);
                if (isLeftward != isUpward) std::reverse(shelf, shelfEnd);
                isLeftward = !isLeftward;
                shelf = shelfEnd;
            }
            isUpward = !isUpward;
        }
        rack = rackEnd;
    }
    return order;
}

}  // namespace burrow::visits
