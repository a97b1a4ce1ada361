// A printed page as drawing commands, in millimetres from its top left corner. Nothing here knows a
// printer or a screen: whoever draws a page follows the commands in their order. Ink is black on
// white; there are no tints, so that a page survives a poor photocopy.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/units.h"
#include "tags/symbol.h"

namespace burrow::documents {

/// A type size: 1 pt is 1/72 inch.
using Points = Quantity<struct PointUnit>;

constexpr Millimetres toMillimetres(Points points) { return {points.value * 25.4 / 72}; }

namespace literals {
using burrow::literals::operator""_mm;
constexpr Points operator""_pt(long double v) { return {static_cast<double>(v)}; }
constexpr Points operator""_pt(unsigned long long v) { return {static_cast<double>(v)}; }
}  // namespace literals

struct Point {
    Millimetres x;
    Millimetres y;

    friend bool operator==(const Point&, const Point&) = default;
};

struct Box {
    Millimetres x;
    Millimetres y;
    Millimetres width;
    Millimetres height;

    [[nodiscard]] constexpr Millimetres right() const { return x + width; }
    [[nodiscard]] constexpr Millimetres bottom() const { return y + height; }
    friend bool operator==(const Box&, const Box&) = default;
};

/// Grey is 60 percent black: for cut lines and hairlines, which may vanish in a copy.
enum class Ink { black, grey, white };

/// Dashes are three widths of the line long and as far apart; dots are one width, three from one to
/// the next.
enum class Pattern { solid, dashed, dotted };

/// A drawn line, half of its width on either side of where it goes. Ends are flat.
struct Stroke {
    Millimetres width;
    Ink ink = Ink::black;
    Pattern pattern = Pattern::solid;

    friend bool operator==(const Stroke&, const Stroke&) = default;
};

struct Line {
    Point from;
    Point to;
    Stroke stroke;
};

struct Rectangle {
    Box box;
    Millimetres radius;  ///< of its corners
    std::optional<Ink> fill;
    std::optional<Stroke> outline;
};

struct Disc {
    Point centre;
    Millimetres radius;
    std::optional<Ink> fill;
    std::optional<Stroke> outline;
};

/// Lines rising to the right at 45 degrees, clipped to the box.
struct Hatch {
    Box box;
    Millimetres pitch;  ///< from line to line, across them
    Stroke stroke;
};

/// The three voices of the design: what is read, codes and measures, and binomials.
enum class Face { work, code, latin };
enum class Weight { regular, medium, semibold, bold };

struct TextStyle {
    Face face = Face::work;
    Weight weight = Weight::regular;
    Points size;
    Ink ink = Ink::black;

    friend bool operator==(const TextStyle&, const TextStyle&) = default;
};

/// On which side of its point a text stands.
enum class Align { left, centre, right };

/// One line of text. It has been fitted already: drawn as it stands it is no wider than `room`.
struct Text {
    Point baseline;
    std::string text;
    TextStyle style;
    Align align = Align::left;
    Millimetres room{};
};

/// A QR symbol without its quiet zone, which the page keeps free.
struct SymbolMark {
    Point corner;  ///< top left
    Millimetres side;
    tags::Symbol symbol;
};

/// A triangle with a stroke and a dot in it, standing in the middle of its box.
struct CautionSign {
    Box box;
    Ink ink = Ink::black;
};

using Command = std::variant<Line, Rectangle, Disc, Hatch, Text, SymbolMark, CautionSign>;

struct Page {
    Millimetres width;
    Millimetres height;
    std::vector<Command> commands;

    void add(Command command) { commands.push_back(std::move(command)); }
};

/// A4 and A5 by ISO 216, and the North American letter.
enum class Paper { a4, a5, letter };

[[nodiscard]] inline Page blankPage(Paper paper) {
    switch (paper) {
        case Paper::a4: return {{210}, {297}, {}};
        case Paper::a5: return {{148}, {210}, {}};
        case Paper::letter: break;
    }
    return {{215.9}, {279.4}, {}};
}

}  // namespace burrow::documents
