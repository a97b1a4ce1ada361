#include "cast.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "species.h"

namespace burrow::demo {
namespace {

struct Shelf {
    const char* name;
    Habit habit;
    bool anyHabit;
    double leastFraction;  ///< of the adult span, today
    double mostFraction;
};

// The room grows from here: of every twenty animals, so many stand on each shelf.
constexpr std::array shelves{
    Shelf{"A", Habit::terrestrial, false, 0.8, 1.0},
    Shelf{"B", Habit::arboreal, false, 0.75, 1.0},
    Shelf{"C, warm", Habit::terrestrial, true, 0.3, 0.75},
    Shelf{"D, nursery", Habit::terrestrial, true, 0.06, 0.25},
};

const Shelf& shelfFor(int index) {
    switch (index % 20) {
        case 0:
        case 1:
        case 2:
        case 3: return shelves[0];
        case 4:
        case 5:
        case 6: return shelves[1];
        case 7:
        case 8:
        case 9:
        case 10:
        case 11: return shelves[2];
        default: return shelves[3];
    }
}

/// Its size is decided when its life is known.
Enclosure homeFor(const Role& role, int position, const std::string& shelf, Book& book) {
    Enclosure home;
    home.id = EnclosureId{book.newId()};
    home.name = "E-" + role.subject.number;
    home.place.shelf = shelf;
    home.place.position = std::to_string(position);
    return home;
}

std::vector<const Profile*> candidates(const Profiles& profiles, const Shelf& shelf) {
    std::vector<const Profile*> fitting;
    for (const auto& profile : profiles.all()) {
        const bool fits =
            shelf.anyHabit || profile.habit.value == shelf.habit ||
            (shelf.habit == Habit::terrestrial && profile.habit.value != Habit::arboreal);
        if (fits && isKeptSpecies(profile.name)) fitting.push_back(&profile);
    }
    return fitting;
}

std::string sourceFor(Dice& dice) {
    if (dice.chance(0.35)) return fmt::format("Bred at Kiln Row, sac S-{:02}", dice.between(1, 12));
    return dice.chance(0.5) ? "Saltmarsh Invert Fair" : "Swap with another keeper";
}

CivilDay clampDay(CivilDay day, const Options& options) {
    return std::min(day, options.until - 20);
}

void giveAge(Role& role, double fraction, const Options& options, Dice& dice) {
    const int days = 365 * options.years;
    // Slings came lately; what is grown now came small and early.
    const double share = fraction < 0.3 ? dice.between(0.05, 0.22) : dice.between(0.45, 1.0);
    const auto arrived = clampDay(options.until - static_cast<int>(days * share), options);
    role.subject.acquired = arrived;
    role.subject.hatched = arrived - dice.between(60, fraction < 0.3 ? 150 : 700);
    role.subject.source = sourceFor(dice);
}

}  // namespace

double Dice::roll() {
    // splitmix64 (Steele, Lea & Flood, OOPSLA 2014).
    state_ += 0x9E3779B97F4A7C15U;
    auto z = state_;
    z = (z ^ z >> 30U) * 0xBF58476D1CE4E5B9U;
    z = (z ^ z >> 27U) * 0x94D049BB133111EBU;
    z ^= z >> 31U;
    return static_cast<double>(z >> 11U) * 0x1.0p-53;
}

int Dice::between(int least, int most) {
    return least + static_cast<int>(roll() * (most - least + 1));
}

double Dice::around(double middle, double spread) {
    return middle + (roll() + roll() + roll() - 1.5) / 1.5 * spread;
}

std::vector<Role> castFor(const Options& options, const Room::Reference& reference, Book& book,
                          Dice& dice) {
    std::vector<Role> cast;
    std::array<int, shelves.size() + 1> positions{};
    for (int i = 0; i < options.animals; ++i) {
        const auto& shelf = shelfFor(i);
        const auto shelfIndex = static_cast<std::size_t>(&shelf - shelves.data());
        const auto fitting = candidates(reference.profiles, shelf);
        Role role;
        role.profile = fitting[static_cast<std::size_t>(
            dice.between(0, static_cast<int>(fitting.size()) - 1))];
        role.subject.id = SubjectId{book.newId()};
        role.subject.number = fmt::format("{:03}", i + 1);
        role.subject.species = role.profile->name;
        const double now = dice.between(shelf.leastFraction, shelf.mostFraction);
        giveAge(role, now, options, dice);
        const auto adult = role.profile->adultSpan.value;
        const double fullSpan = dice.between(adult.least.value, adult.most.value);
        const int days = options.until - *role.subject.acquired;
        // Smaller at its arrival the longer it has been here; the life played from there decides.
        role.startSpan = {
            std::max(9.0, fullSpan * now * std::exp(-days / (now < 0.3 ? 200.0 : 700.0)))};
        if (now > 0.3) role.subject.sex = dice.chance(0.62) ? Sex::female : Sex::male;
        role.isUnruly = dice.chance(0.06);

        std::string place = shelf.name;
        auto* position = &positions[shelfIndex];
        if (i % 24 == 17) {  // lately arrived, apart from the rest
            role.subject.quarantined = true;
            role.subject.acquired = options.until - dice.between(12, 40);
            role.subject.hatched = std::min(*role.subject.hatched, *role.subject.acquired - 60);
            role.startSpan = {fullSpan * std::max(0.2, now)};
            place = "Q, quarantine";
            position = &positions.back();
        }
        if (i % 40 == 13) role.fate = Fate::dies;
        if (i % 30 == 22) role.fate = Fate::sold;
        role.fateDaysBeforeEnd = dice.between(15, 150);
        if (i % 60 == 8) {
            role.subject.sex = Sex::male;
            role.fate = Fate::onLoan;
            role.fateDaysBeforeEnd = dice.between(10, 30);
        }
        role.enclosure = homeFor(role, ++*position, place, book);
        role.subject.enclosure = role.enclosure.id;
        cast.push_back(std::move(role));
    }
    // The communal group, and a lot of young from a sac of our own.
    const auto makeSeveral = [&](std::size_t at, const char* species, Form form, int count,
                                 double span) {
        if (cast.size() <= at) return;
        const auto* profile = reference.profiles.find(species);
        if (profile == nullptr) return;
        auto& role = cast[at];
        role.profile = profile;
        role.subject.species = profile->name;
        role.subject.form = form;
        role.subject.sex = Sex::unknown;
        role.subject.headcount = count;
        role.startSpan = {span};
        role.fate = Fate::stays;
        role.subject.quarantined = false;
        if (form == Form::lot) role.subject.source = "Bred at Kiln Row, sac S-09";
    };
    makeSeveral(9, "Neoholothele incei", Form::group, 20, 14);
    makeSeveral(15, "Tliltocatl albopilosus", Form::lot, 60, 9);
    // Some of the young have parents on the shelf beside them.
    for (std::size_t i = 0; i < cast.size(); ++i) {
        for (std::size_t k = 0; k < i && cast[i].subject.source.starts_with("Bred"); ++k) {
            const auto& parent = cast[k].subject;
            const bool isOlder = parent.acquired < cast[i].subject.hatched;
            if (parent.species != cast[i].subject.species || !isOlder) continue;
            if (parent.sex == Sex::female) cast[i].subject.mother = parent.id;
            if (parent.sex == Sex::male) cast[i].subject.father = parent.id;
        }
    }
    return cast;
}

}  // namespace burrow::demo
