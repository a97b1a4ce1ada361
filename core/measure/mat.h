// The mat on which moults are photographed: where everything stands on the sheet, and what the squares
// near its corners say. The sheet itself is drawn by documents/mat.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "base/random.h"
#include "base/result.h"
#include "measure/plane.h"
#include "measure/rules.h"

namespace burrow::measure {

enum class MatPaper { a5, a4 };
enum class MatCorner { topLeft, topRight, bottomRight, bottomLeft };
inline constexpr std::array matCorners{MatCorner::topLeft, MatCorner::topRight,
                                       MatCorner::bottomRight, MatCorner::bottomLeft};

/// Four characters of tags::codeAlphabet, drawn anew for each file that is printed: with them the
/// keeper's reading of the bar stays with the sheets it was taken from.
using MatName = std::string;
[[nodiscard]] MatName drawMatName(Random& random);
[[nodiscard]] bool isMatName(std::string_view text);

/// What a square says: "BURROWBOOK-MAT:A5TL7Q2MC/20", paper, corner, name, check character (ISO/IEC
/// 7064 MOD 37-2) and the printed side in millimetres.
struct MatMark {
    MatPaper paper = MatPaper::a5;
    MatCorner corner = MatCorner::topLeft;
    MatName name;

    friend bool operator==(const MatMark&, const MatMark&) = default;
};
[[nodiscard]] std::string matPayload(const MatMark& mark);
/// Nothing for what is no square of a mat, or one whose parts do not fit together.
[[nodiscard]] std::optional<MatMark> parseMatPayload(std::string_view bytes);

/// Where things stand on the sheet, as it is meant to be printed.
struct MatLayout {
    Millimetres width;
    Millimetres height;
    Millimetres squareSide;
    std::array<MatPoint, 4> squares;  ///< top left corner of each, by MatCorner
    MatBox moult;                     ///< the place for the moult
    MatBox tag;                       ///< the place for the animal's own tag
    MatBox grey;                      ///< the grey patch
    MatPoint ruler;                   ///< its zero; it runs to the right for `barLength`
    std::array<MatBox, 2> blank;      ///< where nothing is printed

    [[nodiscard]] MatBox square(MatCorner corner) const;
};
[[nodiscard]] const MatLayout& layoutOf(MatPaper paper);

/// The bar that the keeper measures once, which is the ruler too.
inline constexpr Millimetres barLength{100};
/// The value that the grey patch is printed with, as sRGB: 13.3 percent of the light comes back.
inline constexpr int greyLevel = 102;

/// By how much larger everything is than it was meant to be, 0.97 for a copy at 97 percent.
struct PrintScale {
    double factor = 1;
    double deviation = 0;  ///< standard deviation of it

    /// From the bar as measured with a ruler or caliper, and how exactly that was. Fails with `badInput`
    /// beyond 80 to 120 mm.
    static Result<PrintScale> fromBar(Millimetres measured, Millimetres deviation = Millimetres{
                                                                shippedRules().barDeviation});
};

}  // namespace burrow::measure
