#include "documents/flow.h"

namespace burrow::documents {
namespace {

using namespace literals;

/// More lines than any paragraph has.
constexpr std::size_t anyNumber = 1000;

/// The part of a line's pitch above its baseline.
constexpr double ascent = 0.78;

}  // namespace

Flow::Flow(Paper paper, const TextMeasure& measure) : paper_(paper), measure_(measure) {
    pages_.push_back(blankPage(paper));
    const bool isSmall = paper == Paper::a5;
    left_ = isSmall ? 8_mm : 15_mm;
    right_ = pages_.back().width - left_;
    first_ = isSmall ? 9_mm : 14_mm;
    bottom_ = pages_.back().height - (isSmall ? 16_mm : 20_mm);
    top_ = first_;
}

void Flow::turn() {
    pages_.push_back(blankPage(paper_));
    top_ = first_;
}

void Flow::keepTogether(Millimetres height) {
    if (top_ + height > bottom_ && top_ > first_) turn();
}

std::vector<Text> Flow::broken(const std::string& text, const TextStyle& style,
                               Millimetres indent) const {
    const Text whole{{left_ + indent, {}}, text, style, Align::left, width() - indent};
    return fitLines(measure_, whole, style.size, anyNumber, 2 * pitch(style));
}

Millimetres Flow::heightOf(const std::string& text, const TextStyle& style,
                           Millimetres indent) const {
    if (text.empty()) return {};
    return static_cast<double>(broken(text, style, indent).size()) * pitch(style);
}

Millimetres Flow::paragraph(const std::string& text, const TextStyle& style, Millimetres indent) {
    Millimetres first{};
    if (text.empty()) return first;
    bool isFirst = true;
    for (auto& line : broken(text, style, indent)) {
        keepTogether(pitch(style));
        line.baseline.y = top_ + ascent * pitch(style);
        if (isFirst) first = line.baseline.y;
        isFirst = false;
        page().add(std::move(line));
        skip(pitch(style));
    }
    return first;
}

void Flow::cell(const std::string& text, const TextStyle& style, Millimetres x, Millimetres room,
                Points least) {
    if (text.empty()) return;
    page().add(fitLine(measure_,
                       {{x, top_ + ascent * pitch(style)}, text, style, Align::left, room}, least));
}

}  // namespace burrow::documents
