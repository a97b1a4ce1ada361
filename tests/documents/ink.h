// Which parts of a page get ink, for tests that things keep apart.
#pragma once

#include <algorithm>
#include <string>

#include "documents/fit.h"
#include "page_text.h"

namespace burrow::test {

inline bool overlap(const documents::Box& a, const documents::Box& b) {
    return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

/// Where a text may leave ink: ascenders and descenders taken generously. The code face is used for
/// figures and capitals, which have no descenders.
inline documents::Box inkOf(const documents::Text& text, Millimetres width) {
    auto left = text.baseline.x;
    if (text.align == documents::Align::centre) left = left - 0.5 * width;
    if (text.align == documents::Align::right) left = left - width;
    const auto size = documents::toMillimetres(text.style.size);
    const double below = text.style.face == documents::Face::code ? 0.02 : 0.23;
    return {left, text.baseline.y - 0.72 * size, width, (0.72 + below) * size};
}

inline documents::Box inkOf(const documents::Line& line) {
    const auto half = 0.5 * line.stroke.width;
    const auto left = std::min(line.from.x, line.to.x);
    const auto top = std::min(line.from.y, line.to.y);
    return {left - half, top - half, std::max(line.from.x, line.to.x) - left + 2 * half,
            std::max(line.from.y, line.to.y) - top + 2 * half};
}

/// Names a text that a line touches, two texts that touch, or one that comes nearer to the edge
/// than `margin`; empty where there are none.
inline std::string clashOn(const documents::Page& page, const documents::TextMeasure& measure,
                           Millimetres margin) {
    const documents::Box inside{margin, {}, page.width - 2 * margin, page.height - margin};
    const auto texts = commandsOf<documents::Text>(page);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const auto a = inkOf(texts[i], measure.width(texts[i].text, texts[i].style));
        const bool isInside = a.x >= inside.x && a.right() <= inside.right() && a.y >= inside.y &&
                              a.bottom() <= inside.bottom();
        if (!isInside) return texts[i].text + " leaves the page";
        for (const auto& line : commandsOf<documents::Line>(page)) {
            if (overlap(a, inkOf(line))) return texts[i].text + " touches a line";
        }
        for (std::size_t k = i + 1; k < texts.size(); ++k) {
            const auto b = inkOf(texts[k], measure.width(texts[k].text, texts[k].style));
            if (overlap(a, b)) return texts[i].text + " touches " + texts[k].text;
        }
    }
    return {};
}

}  // namespace burrow::test
