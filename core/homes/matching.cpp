#include "homes/matching.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace burrow::homes {
namespace {

constexpr std::size_t nobody = SIZE_MAX;
constexpr std::int64_t far = INT64_MAX / 4;

/// Rows are placed one after another, each along the cheapest path that may move earlier ones on. Going
/// without is a column of its own for each row, which no other row can take; once a row goes without it
/// stays so, as no later path leads to it.
class Search {
public:
    Search(const CostTable& costs, std::span<const std::int64_t> without)
        : costs_(costs),
          without_(without),
          rowDual_(costs.rows(), 0),
          columnDual_(costs.columns(), 0),
          holder_(costs.columns(), nobody) {}

    void place(std::size_t row) {
        const auto columns = costs_.columns();
        distance_.assign(columns, far);
        from_.assign(columns, nobody);
        open_.resize(columns);
        std::iota(open_.begin(), open_.end(), 0);
        std::size_t at = row;       // the row from which edges are looked at
        std::size_t last = nobody;  // the column by which it was reached
        std::int64_t length = 0;
        std::int64_t shortest = far;    // of the paths that end with a row going without
        std::size_t leaves = nobody;    // that row
        std::size_t leavesBy = nobody;  // the column that it gives up
        path_.clear();
        while (true) {
            path_.push_back({at, last, length});
            const auto giveUp = length + without_[at] - rowDual_[at];
            if (giveUp < shortest) {
                shortest = giveUp;
                leaves = at;
                leavesBy = last;
            }
            const auto next = nearest(at, last, length);
            if (next == nobody || distance_[next] >= shortest) break;
            length = distance_[next];
            last = next;
            at = holder_[next];
            if (at == nobody) break;
        }
        const bool isFree = at == nobody;
        update(isFree ? length : shortest);
        if (isFree) {
            shift(row, last);
        } else if (leaves != row) {
            shift(row, leavesBy);
        }
    }

    [[nodiscard]] std::vector<std::optional<std::size_t>> columns() const {
        std::vector<std::optional<std::size_t>> of(costs_.rows());
        for (std::size_t column = 0; column < holder_.size(); ++column) {
            if (holder_[column] != nobody) of[holder_[column]] = column;
        }
        return of;
    }

private:
    struct Reached {
        std::size_t row;
        std::size_t by;
        std::int64_t length;
    };

    /// Looks at all edges of a row to columns that are not settled, and takes the nearest of these out
    /// of them.
    std::size_t nearest(std::size_t row, std::size_t by, std::int64_t length) {
        const auto* costs = costs_.row(row);
        const auto base = length - rowDual_[row];
        auto least = far;
        std::size_t at = nobody;
        for (std::size_t i = 0; i < open_.size(); ++i) {
            const auto column = open_[i];
            const auto cost = costs[column];
            if (cost != CostTable::forbidden) {
                const auto reach = base + cost - columnDual_[column];
                if (reach < distance_[column]) {
                    distance_[column] = reach;
                    from_[column] = by;
                }
            }
            if (distance_[column] < least) {
                least = distance_[column];
                at = i;
            }
        }
        if (at == nobody) return nobody;
        const auto column = open_[at];
        open_[at] = open_.back();
        open_.pop_back();
        return column;
    }

    /// Keeps every reduced cost at zero or more, and at zero along the path.
    void update(std::int64_t length) {
        for (const auto& reached : path_) {
            if (reached.length > length) continue;
            rowDual_[reached.row] += length - reached.length;
            if (reached.by != nobody) columnDual_[reached.by] -= length - reached.length;
        }
    }

    /// Every column on the path to `last` goes to the row before it, the first one to `row`.
    void shift(std::size_t row, std::size_t last) {
        for (std::size_t column = last; column != nobody;) {
            const auto before = from_[column];
            holder_[column] = before == nobody ? row : holder_[before];
            column = before;
        }
    }

    const CostTable& costs_;
    std::span<const std::int64_t> without_;
    std::vector<std::int64_t> rowDual_;
    std::vector<std::int64_t> columnDual_;
    std::vector<std::size_t> holder_;
    std::vector<std::int64_t> distance_;
    std::vector<std::size_t> from_;  ///< the column whose holder the path came through
    std::vector<std::size_t> open_;  ///< columns that are not settled
    std::vector<Reached> path_;
};

std::int64_t millilitres(Litres litres) { return std::llround(litres.value * 1000); }

/// What a home has beyond need, in millilitres; nothing where it does not do.
std::optional<std::int64_t> waste(const Seeker& seeker, const EmptyHome& home, std::int64_t least,
                                  const HomeRules& rules) {
    if (home.madeFor && *home.madeFor != seeker.dweller.habit) return std::nullopt;
    if (!groundFor(seeker.dweller, home.home, rules)) return std::nullopt;
    return std::max<std::int64_t>(0, millilitres(volume(home.home)) - least);
}

Message reasonFor(const Placement& placement, std::span<const EmptyHome> homes) {
    if (!placement.home) return {"homes.match.none"};
    return {"homes.match.home",
            {{"name", homes[*placement.home].home.name},
             {"spare", std::round(10 * placement.spare.value) / 10},
             {"least", std::round(placement.ground.least.value)},
             {"most", std::round(placement.ground.most.value)}}};
}

}  // namespace

std::vector<std::optional<std::size_t>> leastCost(const CostTable& costs,
                                                  std::span<const std::int64_t> without) {
    Search search(costs, without);
    for (std::size_t row = 0; row < costs.rows(); ++row) search.place(row);
    return search.columns();
}

std::vector<Placement> matchHomes(std::span<const Seeker> seekers, std::span<const EmptyHome> homes,
                                  const HomeRules& rules) {
    CostTable costs(seekers.size(), homes.size());
    std::int64_t total = 1;
    for (std::size_t row = 0; row < seekers.size(); ++row) {
        const auto least = millilitres(leastVolume(seekers[row].dweller, rules));
        std::int64_t greatest = 0;
        for (std::size_t column = 0; column < homes.size(); ++column) {
            const auto cost = waste(seekers[row], homes[column], least, rules);
            if (!cost) continue;
            costs.set(row, column, *cost);
            greatest = std::max(greatest, *cost);
        }
        total += greatest;
    }
    // Going without costs more than all waste together, and more so for the urgent.
    std::vector<std::int64_t> without;
    without.reserve(seekers.size());
    for (const auto& seeker : seekers) {
        without.push_back(total * (1 + std::clamp(seeker.urgency, 0, 9)));
    }
    const auto chosen = leastCost(costs, without);
    std::vector<Placement> placements;
    placements.reserve(seekers.size());
    for (std::size_t row = 0; row < seekers.size(); ++row) {
        Placement placement{seekers[row].who, chosen[row], {}, {}, {}};
        if (chosen[row]) {
            const auto& home = homes[*chosen[row]].home;
            placement.ground = *groundFor(seekers[row].dweller, home, rules);
            placement.spare = {static_cast<double>(costs.at(row, *chosen[row])) / 1000};
        }
        placement.why = reasonFor(placement, homes);
        placements.push_back(std::move(placement));
    }
    return placements;
}

}  // namespace burrow::homes
