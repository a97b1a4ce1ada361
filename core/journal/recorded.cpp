#include "journal/recorded.h"

#include "journal/fields.h"

namespace burrow {

Result<std::optional<Subject>> recordedSubject(Book& book, SubjectId id) {
    BURROW_TRY(const auto fields,
               Projector(book.connection()).winners(id.uuid, ThingType::subject));
    if (fields.empty()) return std::optional<Subject>();
    return std::optional(subjectFrom(id, fields));
}

}  // namespace burrow
