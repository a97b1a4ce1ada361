// The fonts of the documents. They are the application's own, so a sheet looks the same wherever it
// is made; whoever uses this has registered them before.
#pragma once

#include <QFont>

#include "documents/fit.h"

namespace burrow::print {

/// Text is drawn and measured at this many pixels to the em and then scaled, so that widths grow
/// exactly as sizes do.
inline constexpr int pixelsPerEm = 1000;

/// The font of a style at pixelsPerEm, without hinting and without ligatures: what is read off the
/// page by machine is what was written.
[[nodiscard]] QFont fontOf(const documents::TextStyle& style);

class QtTextMeasure final : public documents::TextMeasure {
public:
    [[nodiscard]] Millimetres width(std::string_view text,
                                    const documents::TextStyle& style) const override;
};

}  // namespace burrow::print
