// What was set of a subject, without what its facts make of it: the ground on which projections stand.
#pragma once

#include "journal/book.h"

namespace burrow {

/// The subject as its fields were set: a count from which nothing went yet, a standing that no death
/// and no loan changed. Nothing where no field of it was ever set.
Result<std::optional<Subject>> recordedSubject(Book& book, SubjectId id);

}  // namespace burrow
