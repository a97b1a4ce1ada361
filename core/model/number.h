// Numbers on tags as keepers type them: with or without the room's code in front ("KR-087", "087"), and
// with other zeros in front ("87").
#pragma once

#include <cstdint>
#include <iterator>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

namespace burrow {

/// How close a number is to the typed one, the closest first.
enum class NumberFit : std::uint8_t {
    whole,        ///< just as typed
    wholeNoCase,  ///< as typed with the room's code, but for capitals
    withoutCode,  ///< as typed behind the room's code
    bare,         ///< but for zeros in front, capitals and the room's code
    none
};

class TypedNumber {
public:
    TypedNumber(std::string_view typed, std::string_view roomCode);

    [[nodiscard]] NumberFit fit(std::string_view number) const;
    /// Whether the number starts like the typed one, with or without the zeros in front.
    [[nodiscard]] bool starts(std::string_view number) const;

private:
    std::string whole_;   ///< as typed
    std::string behind_;  ///< without the room's code
    std::string bare_;    ///< and without zeros in front, in small letters
    bool hasCode_ = false;
};

/// Of all `things`, those with the number that fits best; none where none fits. Two phones may both have
/// given it. `numberOf` gives the number of a thing.
template <class Things, class NumberOf>
[[nodiscard]] auto numbered(const Things& things, const TypedNumber& typed, NumberOf numberOf) {
    std::vector<std::decay_t<decltype(*std::begin(things))>> found;
    auto best = NumberFit::none;
    for (const auto& thing : things) {
        const auto fit = typed.fit(numberOf(thing));
        if (fit == NumberFit::none || fit > best) continue;
        if (fit < best) found.clear();
        best = fit;
        found.push_back(thing);
    }
    return found;
}

}  // namespace burrow
