// Which empty home for whom: the matching that leaves the fewest without one, and of all those the one
// that wastes the least volume.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "homes/space.h"

namespace burrow::homes {

/// Costs of giving column c to row r; pairs that were not set are forbidden.
class CostTable {
public:
    static constexpr std::int64_t forbidden = INT64_MAX;

    CostTable(std::size_t rows, std::size_t columns)
        : rows_(rows), columns_(columns), costs_(rows * columns, forbidden) {}

    [[nodiscard]] std::size_t rows() const { return rows_; }
    [[nodiscard]] std::size_t columns() const { return columns_; }
    /// From 0 to 10^12.
    void set(std::size_t row, std::size_t column, std::int64_t cost) {
        costs_[row * columns_ + column] = cost;
    }
    [[nodiscard]] std::int64_t at(std::size_t row, std::size_t column) const {
        return costs_[row * columns_ + column];
    }
    [[nodiscard]] const std::int64_t* row(std::size_t row) const {
        return costs_.data() + row * columns_;
    }

private:
    std::size_t rows_;
    std::size_t columns_;
    std::vector<std::int64_t> costs_;
};

/// The column of each row, or nothing, at the least cost in all, where leaving row r without a column
/// costs `without[r]`. Shortest augmenting paths with potentials (Kuhn 1955; Jonker & Volgenant 1987,
/// Computing 38:325-340), in whole numbers, so exact. O(rows^2 columns), memory rows x columns.
[[nodiscard]] std::vector<std::optional<std::size_t>> leastCost(
    const CostTable& costs, std::span<const std::int64_t> without);

/// Who needs a home.
struct Seeker {
    std::size_t who = 0;  ///< the caller's own number
    Dweller dweller;      ///< as large as the home must allow, so perhaps after its next moult
    int urgency = 0;      ///< 0 to 9: where there are too few homes the greater goes first
};

struct EmptyHome {
    Enclosure home;
    std::optional<Habit> madeFor;  ///< where it suits one habit only
};

struct Placement {
    std::size_t who = 0;
    std::optional<std::size_t> home;  ///< position among the empty homes
    Range<Millimetres> ground;        ///< how deep its ground may be made
    Litres spare;                     ///< volume beyond the smallest that would do
    Message why;
};

/// A home for as many as can be, the urgent first, never one that is too small, allows no right depth of
/// ground or is made for another habit; of all such ways the one with the least volume beyond need.
/// In the order of the seekers. O(seekers^2 homes): 1,000 of both take about a second at 2.6 GHz.
[[nodiscard]] std::vector<Placement> matchHomes(std::span<const Seeker> seekers,
                                                std::span<const EmptyHome> homes,
                                                const HomeRules& rules);

}  // namespace burrow::homes
