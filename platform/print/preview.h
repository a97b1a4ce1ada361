// A page as a picture, for looking at it before it is printed.
#pragma once

#include <QImage>

#include "documents/page.h"

namespace burrow::print {

/// The page on white paper. Null where so many dots do not fit into memory.
[[nodiscard]] QImage renderPreview(const documents::Page& page, double dotsPerInch);

}  // namespace burrow::print
