#include "measure/mat.h"

#include <algorithm>

#include "base/text.h"
#include "tags/code.h"

namespace burrow::measure {
namespace {

constexpr std::string_view start = "BURROWBOOK-MAT:";
constexpr std::size_t nameLength = 4;

constexpr std::array<std::string_view, 2> paperNames{"A5", "A4"};
constexpr std::array<std::string_view, 4> cornerNames{"TL", "TR", "BR", "BL"};

/// A5, 148 by 210 mm: squares of 25 modules of 0.8 mm. Quiet zones of 3.2 mm stay free.
constexpr MatLayout a5{{148},
                       {210},
                       {20},
                       {{{{10}, {10}}, {{118}, {10}}, {{118}, {180}}, {{10}, {180}}}},
                       {{10}, {42}, {128}, {112}},
                       {{43}, {8}, {62}, {29}},
                       {{38}, {182}, {22}, {16}},
                       {{24}, {168}},
                       {{{{8}, {34}, {32}, {7}}, {{8}, {156}, {13}, {18}}}}};
/// A4, 210 by 297 mm: modules of 1 mm.
constexpr MatLayout a4{{210},
                       {297},
                       {25},
                       {{{{12}, {12}}, {{173}, {12}}, {{173}, {260}}, {{12}, {260}}}},
                       {{12}, {46}, {186}, {190}},
                       {{74}, {10}, {62}, {29}},
                       {{46}, {264}, {26}, {18}},
                       {{55}, {250}},
                       {{{{10}, {238}, {40}, {17}}, {{162}, {238}, {38}, {17}}}}};

template <std::size_t count>
std::optional<std::size_t> placeOf(const std::array<std::string_view, count>& names,
                                   std::string_view name) {
    const auto found = std::find(names.begin(), names.end(), name);
    if (found == names.end()) return std::nullopt;
    return static_cast<std::size_t>(found - names.begin());
}

}  // namespace

MatName drawMatName(Random& random) {
    // The beginning of a tag's code is as random as the rest of it.
    return tags::generateCode(random).substr(0, nameLength);
}

bool isMatName(std::string_view text) {
    return text.size() == nameLength &&
           text.find_first_not_of(tags::codeAlphabet) == std::string_view::npos;
}

std::string matPayload(const MatMark& mark) {
    std::string body(paperNames[static_cast<std::size_t>(mark.paper)]);
    body += cornerNames[static_cast<std::size_t>(mark.corner)];
    body += mark.name;
    const auto side = static_cast<int>(layoutOf(mark.paper).squareSide.value);
    return std::string(start) + body + tags::checkCharacter(body).value_or('*') + '/' +
           std::to_string(side);
}

std::optional<MatMark> parseMatPayload(std::string_view bytes) {
    constexpr std::size_t bodyLength = 2 + 2 + nameLength;
    if (!bytes.starts_with(start) || bytes.size() < start.size() + bodyLength + 1) {
        return std::nullopt;
    }
    const auto body = bytes.substr(start.size(), bodyLength);
    const auto paper = placeOf(paperNames, body.substr(0, 2));
    const auto corner = placeOf(cornerNames, body.substr(2, 2));
    const auto name = body.substr(4);
    if (!paper || !corner || !isMatName(name)) return std::nullopt;
    MatMark mark{static_cast<MatPaper>(*paper), static_cast<MatCorner>(*corner), MatName(name)};
    // One spelling only: so the check and the side are as they should be.
    if (matPayload(mark) != bytes) return std::nullopt;
    return mark;
}

MatBox MatLayout::square(MatCorner corner) const {
    const auto at = squares[static_cast<std::size_t>(corner)];
    return {at.x, at.y, squareSide, squareSide};
}

const MatLayout& layoutOf(MatPaper paper) { return paper == MatPaper::a5 ? a5 : a4; }

Result<PrintScale> PrintScale::fromBar(Millimetres measured, Millimetres deviation) {
    constexpr Millimetres least{80};
    constexpr Millimetres most{120};
    if (!(measured >= least && measured <= most)) {
        return fail(Trouble::badInput, {"measure.badBar", {{"mm", measured.value}}});
    }
    return PrintScale{measured / barLength, deviation / barLength};
}

}  // namespace burrow::measure
