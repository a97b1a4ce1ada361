// A moult of 044 long before the one that was just saved, for pages that hold the two against each other.
#pragma once

#include "journal/past.h"
#include "journal/roster.h"
#include "pages/stage.h"

namespace burrow::test {

/// A hundred days before, with the same photo. There must be a photo of a moult already.
inline void addAnEarlierMoult(Stage& stage) {
    Deed deed;
    deed.compose =
        [subject = stage.resident("044")->subject().id](Book& book) -> Result<std::vector<Draft>> {
        const Instant then{fridayEvening.ms - 100 * msPerDay};
        const EntryId moult{book.newId()};
        BURROW_TRY(const auto facts, history(book, subject, wholeHistory));
        for (const auto& fact : facts) {
            if (fact.kind != FactKind::photo || fact.body.role != PhotoRole::moult) continue;
            FactDraft photo{subject, FactKind::photo, fact.body, then};
            photo.body.about = moult;
            return std::vector<Draft>{FactDraft{subject, FactKind::moulted, {}, then, moult},
                                      photo};
        }
        return fail(Trouble::notFound, {"measuring.noPhoto"});
    };
    stage.desk->act(stage.desk.get(), std::move(deed));
    stage.settle();
}

}  // namespace burrow::test
