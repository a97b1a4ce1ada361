// Reading everyone in the book one after the other: a large book is never held whole.
#pragma once

#include <functional>

#include "journal/roster.h"

namespace burrow {

/// As roster(); `each` may keep a copy of what it is given, and must not write to the book.
Done forEachKept(Book& book, const std::function<void(const Kept&)>& each);

}  // namespace burrow
