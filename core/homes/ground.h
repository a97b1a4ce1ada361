// What goes into a home: litres of substrate, the parts of its mix, pressed bricks, and what the whole
// weighs when wet, before anyone lifts it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "homes/space.h"

namespace burrow::homes {

/// One material of a mix.
struct GroundPart {
    std::string material;
    Litres loose;       ///< as it is poured
    Kilograms wet;      ///< its mass when damp
    int bricks = 0;     ///< pressed bricks that expand to it; 0 for what isn't sold pressed
    Litres expanded;    ///< what those bricks give
    Kilograms pressed;  ///< dry mass of those bricks
};

struct Ground {
    Litres volume;  ///< in the home, settled
    Litres loose;   ///< to be poured; more, as it is pressed down
    std::vector<GroundPart> parts;
    Kilograms wet;
    Message amount;
};

/// "burrow" for who digs, else by how damp it is kept: "dry", "moderate", "moist", "swamp".
[[nodiscard]] std::string_view mixFor(Habit habit, Damp damp);

/// The ground of a home at this depth. `isFirm`: pressed down, so that burrows hold. Volumes are length
/// times width times depth; parts are by volume, and that fine parts fill the gaps of coarse ones is
/// left out of account (it makes less, by a tenth or so). Fails with `badInput` for a mix that is not in
/// the table and for a home without sizes. O(parts).
[[nodiscard]] Result<Ground> groundOf(const Enclosure& home, Millimetres depth,
                                      std::string_view mix, bool isFirm, const HomeRules& rules);

/// Mass of an empty home from its inner sizes: floor, four walls and a lid of one thickness. Fails with
/// `badInput` for walls of a material that is not in the table.
[[nodiscard]] Result<Kilograms> emptyMass(const Enclosure& home, Millimetres thickness,
                                          std::string_view material, const HomeRules& rules);

}  // namespace burrow::homes
