// How the terms of a profile are spelled in files.
#pragma once

#include <array>
#include <string_view>

#include "model/profile.h"

namespace burrow {

template <class Term>
struct Spelling {
    std::string_view text;
    Term term;
};

constexpr auto spellingsOf(Order) {
    return std::array{Spelling<Order>{"tarantula", Order::tarantula},
                      Spelling<Order>{"true_spider", Order::trueSpider},
                      Spelling<Order>{"scorpion", Order::scorpion},
                      Spelling<Order>{"whip_spider", Order::whipSpider},
                      Spelling<Order>{"vinegaroon", Order::vinegaroon}};
}
constexpr auto spellingsOf(Region) {
    return std::array{Spelling<Region>{"new_world", Region::newWorld},
                      Spelling<Region>{"old_world", Region::oldWorld}};
}
constexpr auto spellingsOf(Habit) {
    return std::array{Spelling<Habit>{"terrestrial", Habit::terrestrial},
                      Spelling<Habit>{"arboreal", Habit::arboreal},
                      Spelling<Habit>{"fossorial", Habit::fossorial}};
}
constexpr auto spellingsOf(Damp) {
    return std::array{Spelling<Damp>{"dry", Damp::dry}, Spelling<Damp>{"moderate", Damp::moderate},
                      Spelling<Damp>{"moist", Damp::moist}, Spelling<Damp>{"swamp", Damp::swamp}};
}
constexpr auto spellingsOf(Temperament) {
    return std::array{Spelling<Temperament>{"calm", Temperament::calm},
                      Spelling<Temperament>{"skittish", Temperament::skittish},
                      Spelling<Temperament>{"defensive", Temperament::defensive}};
}
constexpr auto spellingsOf(Venom) {
    return std::array{Spelling<Venom>{"none", Venom::none}, Spelling<Venom>{"mild", Venom::mild},
                      Spelling<Venom>{"notable", Venom::notable},
                      Spelling<Venom>{"significant", Venom::significant}};
}
constexpr auto spellingsOf(Hairs) {
    return std::array{Spelling<Hairs>{"none", Hairs::none},
                      Spelling<Hairs>{"abdomen", Hairs::abdomen},
                      Spelling<Hairs>{"palps", Hairs::palps}};
}
constexpr auto spellingsOf(Groups) {
    return std::array{Spelling<Groups>{"no", Groups::no},
                      Spelling<Groups>{"tolerated", Groups::tolerated}};
}
constexpr auto spellingsOf(Moults) {
    return std::array{Spelling<Moults>{"until_grown", Moults::untilGrown},
                      Spelling<Moults>{"females_go_on", Moults::femalesGoOn},
                      Spelling<Moults>{"go_on", Moults::goOn}};
}
constexpr auto spellingsOf(Listing) {
    return std::array{Spelling<Listing>{"not_found", Listing::notFound},
                      Spelling<Listing>{"cites_appendix_ii", Listing::citesAppendixII},
                      Spelling<Listing>{"not_checked", Listing::notChecked}};
}

/// Every term has a spelling.
template <class Term>
constexpr std::string_view spelled(Term term) {
    for (const auto& spelling : spellingsOf(Term{})) {
        if (spelling.term == term) return spelling.text;
    }
    return {};
}

}  // namespace burrow
