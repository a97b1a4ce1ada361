// Another hand that writes in the fixture's book, as a second program does, and the desk told of
// it.
#pragma once

#include "viewmodels/desk_fixture.h"

namespace burrow::test {

class OtherHand {
public:
    explicit OtherHand(DeskFixture& at)
        : at_(at),
          random_(7),
          book_(Book::open(at.path, storage::Access::readWrite, {at.clock, random_, Zone::utc()})
                    .value()) {}

    [[nodiscard]] Book& book() { return book_; }

    /// Somebody who has no tag yet.
    SubjectId add(const char* number, const char* species, Form form = Form::animal,
                  int count = 1) {
        Subject subject;
        subject.number = number;
        subject.species = species;
        subject.form = form;
        subject.headcount = count;
        subject.place = Place::parse("B / 1");
        const SubjectId id{book_.newId()};
        record({SetDraft{ThingType::subject, id.uuid, toFields(subject)}});
        return id;
    }

    /// A moult so many days ago, with photos that are only names.
    EntryId moult(SubjectId subject, int daysAgo, int photos, FactBody body = {}) {
        const Instant at{fridayEvening.ms - daysAgo * msPerDay};
        const EntryId id{book_.newId()};
        std::vector<Draft> drafts{FactDraft{subject, FactKind::moulted, std::move(body), at, id}};
        for (int i = 0; i < photos; ++i) {
            FactDraft photo{subject, FactKind::photo, {}, at};
            photo.body.role = PhotoRole::moult;
            photo.body.picture = Sha256::of(id.text() + std::to_string(i));
            photo.body.about = id;
            drafts.emplace_back(std::move(photo));
        }
        record(drafts);
        return id;
    }

    void record(const std::vector<Draft>& drafts) {
        book_.record(drafts).value();
        at_.desk.refresh();
        at_.settle();
    }

private:
    DeskFixture& at_;
    SeededRandom random_;
    Book book_;
};

}  // namespace burrow::test
