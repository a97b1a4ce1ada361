// Follows the drawing commands of a page.
#pragma once

#include "documents/page.h"

class QPainter;

namespace burrow::print {

/// Draws the page with its top left corner at the painter's origin. The painter must be scaled to
/// millimetres; it is left as it was.
void paint(const documents::Page& page, QPainter& painter);

}  // namespace burrow::print
