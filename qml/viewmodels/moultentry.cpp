#include "viewmodels/moultentry.h"

#include <algorithm>

#include "journal/past.h"
#include "journal/roster.h"

namespace burrow {
namespace {

FactDraft draftOf(const TakenPhoto& photo, SubjectId subject, const EntryId& moult,
                  std::optional<Instant> happenedAt) {
    FactDraft draft{subject, FactKind::photo, {}, happenedAt};
    draft.body.role = PhotoRole::moult;
    draft.body.picture = photo.kept.picture;
    draft.body.original = photo.kept.original;
    if (photo.isDried) draft.body.dried = true;
    draft.body.about = moult;
    return draft;
}

Result<std::optional<Fact>> moultOn(Book& book, SubjectId subject, CivilDay day) {
    BURROW_TRY(const auto facts, history(book, subject, wholeHistory));
    for (const auto& fact : facts) {
        if (fact.kind == FactKind::moulted && fact.day == day) return std::optional(fact);
    }
    return std::optional<Fact>();
}

/// The newer of two values, where there is one.
template <class Value>
void take(std::optional<Value>& into, const std::optional<Value>& newer) {
    if (newer) into = newer;
}

FactBody joined(FactBody body, const FactBody& newer) {
    take(body.carapace, newer.carapace);
    take(body.span, newer.span);
    take(body.method, newer.method);
    take(body.ultimate, newer.ultimate);
    return body;
}

}  // namespace

Result<MoultDrafts> moultDrafts(Book& book, const FoundMoult& found) {
    MoultDrafts made;
    auto happenedAt = found.happenedAt;
    std::optional<Fact> onRecord;
    if (found.mayBeOnRecord) {
        BURROW_TRY(onRecord, moultOn(book, found.subject, found.day));
    }
    if (onRecord) {
        made.wasOnRecord = true;
        made.moult = onRecord->id;
        happenedAt = onRecord->happenedAt;
        const auto body = joined(onRecord->body, found.body);
        if (body != onRecord->body) {
            BURROW_TRY(made.drafts, amending(book, *onRecord, body, onRecord->happenedAt));
        }
    } else {
        made.moult = EntryId{book.newId()};
        made.drafts.emplace_back(
            FactDraft{found.subject, FactKind::moulted, found.body, happenedAt, made.moult});
    }
    for (const auto& photo : found.photos) {
        made.drafts.emplace_back(draftOf(photo, found.subject, made.moult, happenedAt));
    }
    return made;
}

Result<std::size_t> writingsOf(Book& book, const EntryId& moult) {
    BURROW_TRY(const auto known, fact(book, moult));
    if (!known) return std::size_t{0};
    BURROW_TRY(const auto readings, readingsOf(book, moult));
    BURROW_TRY(const auto facts, history(book, known->subject, wholeHistory));
    const auto photos = std::count_if(facts.begin(), facts.end(), [&moult](const Fact& fact) {
        return fact.kind == FactKind::photo && fact.body.about == moult;
    });
    return readings.size() + static_cast<std::size_t>(photos);
}

Result<std::vector<Draft>> photoDrafts(Book& book, const EntryId& moult,
                                       const std::vector<TakenPhoto>& photos) {
    BURROW_TRY(const auto known, fact(book, moult));
    if (!known) return fail(Trouble::notFound, {"entry.missing"});
    std::vector<Draft> drafts;
    for (const auto& photo : photos) {
        drafts.emplace_back(draftOf(photo, known->subject, moult, known->happenedAt));
    }
    return drafts;
}

}  // namespace burrow
