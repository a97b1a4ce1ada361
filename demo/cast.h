// Who lives in the invented room, and on which shelf.
#pragma once

#include <vector>

#include "demo_room.h"

namespace burrow::demo {

/// Randomness of the demo: the same on every machine, which the standard library's distributions are
/// not.
class Dice {
public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}

    /// 0 to below 1.
    double roll();
    [[nodiscard]] bool chance(double probability) { return roll() < probability; }
    /// Both ends included.
    int between(int least, int most);
    double between(double least, double most) { return least + (most - least) * roll(); }
    /// About the middle more often than near the ends.
    double around(double middle, double spread);

private:
    std::uint64_t state_;
};

enum class Fate { stays, dies, sold, onLoan };

/// One subject before its life is played.
struct Role {
    Subject subject;
    const Profile* profile = nullptr;
    Enclosure enclosure;
    Millimetres startSpan;  ///< at its arrival
    Fate fate = Fate::stays;
    int fateDaysBeforeEnd = 0;
    bool isUnruly = false;  ///< refuses more often than others
};

/// The whole cast: adults by habit on shelves A and B, juveniles on the warm shelf C, slings in the
/// nursery D, some in quarantine, a communal group, a lot, a male on loan.
std::vector<Role> castFor(const Options& options, const Room::Reference& reference, Book& book,
                          Dice& dice);

}  // namespace burrow::demo
