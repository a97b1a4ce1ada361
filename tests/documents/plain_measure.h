// Text widths without fonts: 0.45 em for every character, 0.6 em in the code face. Enough for
// tests of layout that must give the same numbers everywhere.
#pragma once

#include "documents/fit.h"

namespace burrow::test {

class PlainMeasure final : public documents::TextMeasure {
public:
    [[nodiscard]] Millimetres width(std::string_view text,
                                    const documents::TextStyle& style) const override {
        double characters = 0;
        for (const char c : text) characters += (static_cast<unsigned char>(c) & 0xC0U) != 0x80;
        const double ems = style.face == documents::Face::code ? 0.6 : 0.45;
        return characters * ems * documents::toMillimetres(style.size);
    }
};

}  // namespace burrow::test
