// Where a tub stands: room, rack, shelf, position. Every part may be empty.
#pragma once

#include <string>
#include <string_view>

namespace burrow {

struct Place {
    std::string room;
    std::string rack;
    std::string shelf;
    std::string position;

    [[nodiscard]] bool isEmpty() const {
        return room.empty() && rack.empty() && shelf.empty() && position.empty();
    }
    /// The same place without the position: what a round walks along.
    [[nodiscard]] Place shelfOnly() const { return {room, rack, shelf, {}}; }
    /// "room / rack / shelf / position" from the first part that is set; reads back with parse().
    [[nodiscard]] std::string text() const;
    /// One part is a shelf, two are shelf and position, three rack to position, four room to
    /// position, separated by "/". More than four parts: the rest stays in the position.
    [[nodiscard]] static Place parse(std::string_view text);

    friend bool operator==(const Place&, const Place&) = default;
};

/// The order in which a keeper walks the room: numbers by value, so shelf 2 comes before shelf 10.
/// Negative, zero or positive.
[[nodiscard]] int compareWalk(const Place& a, const Place& b);

}  // namespace burrow
