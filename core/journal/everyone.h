// Reading many in one go: everyone, one after the other, so that a large book is never held whole; or a few.
#pragma once

#include <functional>
#include <span>
#include <vector>

#include "journal/roster.h"

namespace burrow {

/// As roster(); `each` must not write to the book.
Done forEachKept(Book& book, const std::function<void(Kept)>& each);

/// Those named, as far as they are in the book, all from one moment: the book is locked once for all of them.
Result<std::vector<Kept>> kept(Book& book, std::span<const SubjectId> those);

}  // namespace burrow
