// The first of a large room, read before the rest: who they are, and that the order by bytes is the order of
// the walk.
#include <rapidcheck.h>

#include <fstream>

#include "base/natural_key.h"
#include "base/text.h"
#include "husbandry/walk_key.h"
#include "room/front.h"
#include "room/room.h"
#include "support/book.h"
#include "support/checks.h"
#include "support/planning.h"

using namespace burrow;
using namespace burrow::test;

namespace {

std::string anyWord() {
    return *rc::gen::container<std::string>(
        rc::gen::element('a', 'B', 'b', '0', '1', '2', '9', ' ', '-', '\xC3', '\xA4'));
}

int sign(int order) { return order < 0 ? -1 : static_cast<int>(order > 0); }

void keysAreInNaturalOrder() {
    const auto a = anyWord();
    const auto b = anyWord();
    std::string left;
    std::string right;
    addNaturalKey(left, a);
    addNaturalKey(right, b);
    RC_ASSERT(sign(left.compare(right)) == sign(compareNatural(a, b)));
}

void keysAreInWalkingOrder() {
    const auto any = [] {
        Record record;
        record.subject = anySubject({20'000});
        record.subject.number = anyWord();
        record.place = {anyWord(), anyWord(), anyWord(), anyWord()};
        return record;
    };
    const auto a = any();
    const auto b = any();
    const auto key = [](const Record& one) {
        return walkKey(one.subject.quarantined, one.place, one.subject.number, one.subject.id);
    };
    RC_ASSERT((key(a) < key(b)) == walksBefore(a.input(), b.input()));
}

/// What is packed comes back.
void packedIsUnpacked() {
    const auto made = anyPlanCase();
    Kept kept{made.record.subject, made.record.place, made.record.digest,
              perhaps(anyWord()),  made.home,         made.quarantinedSince};
    kept.subject.note = anyWord();
    kept.subject.mother = perhaps(SubjectId{Uuid::named("mother")});
    kept.subject.enclosure = perhaps(EnclosureId{Uuid::named("home")});
    const auto bytes = packed(kept);
    const auto back = unpacked(bytes);
    RC_ASSERT(back.subject == kept.subject && back.place == kept.place);
    RC_ASSERT(back.digest == kept.digest && back.tagCode == kept.tagCode);
    RC_ASSERT(back.home == kept.home && back.quarantinedSince == kept.quarantinedSince);
    const auto walk = walkPlace(bytes);
    RC_ASSERT(walk.place == kept.place && walk.number == kept.subject.number);
    RC_ASSERT(walk.id == kept.subject.id && walk.isQuarantined == kept.subject.quarantined);
}

SubjectId add(TestBook& room, int number, const std::string& shelf) {
    Subject subject;
    subject.number = std::to_string(number);
    subject.species = "Brachypelma hamorii";
    subject.place = Place::parse(shelf + " / " + subject.number);
    const SubjectId id{room.book.newId()};
    room.book.record(SetDraft{ThingType::subject, id.uuid, toFields(subject)}).value();
    return id;
}

bool fronts() {
    Checks checks;
    const Room::Reference reference{sharedProfiles(), sharedRules()};
    const auto today = PlanDay::at(fridayEvening, Zone::utc());
    TestBook room;
    for (int i = 0; i < 40; ++i) add(room, i, "B");
    auto whole = Room::load(room.book, reference, today).value();
    must(noteFront(room.book.path(), whole));
    checks.that(notedFront(room.book.path()).empty(), "a small room needs none");
    for (int i = 40; i < 520; ++i) add(room, i, "B");
    whole = Room::load(room.book, reference, today).value();
    checks.that(whole.isWhole() && whole.size() == 520, "everyone is there");
    must(noteFront(room.book.path(), whole));
    const auto first = notedFront(room.book.path());
    checks.that(first.size() == frontSize, "as many as a front holds");
    const auto front = Room::loadOnly(room.book, reference, today, first).value();
    checks.that(!front.isWhole() && front.size() == frontSize, "only they are there");
    bool isSame = true;
    for (std::size_t i = 0; i < frontSize; ++i) {
        const auto& a = *front.residents()[i];
        const auto& b = *whole.residents()[i];
        isSame = isSame && a.subject() == b.subject() && a.plan.answers == b.plan.answers;
    }
    checks.that(isSame, "the first of all, as they are");
    // Somebody new stands before them: they are shown when everyone is read, and noted then.
    const auto early = add(room, 900, "A");
    whole = Room::load(room.book, reference, today).value();
    must(noteFront(room.book.path(), whole));
    checks.that(notedFront(room.book.path()).front() == early, "noted anew");
    // Who is not in the book is passed over; what is no list is none.
    std::vector<SubjectId> strange{SubjectId{Uuid::named("nobody")}, early};
    checks.that(Room::loadOnly(room.book, reference, today, strange).value().size() == 1,
                "nobody else");
    std::ofstream(frontPath(room.book.path())) << "no list";
    checks.that(notedFront(room.book.path()).empty(), "damaged");
    std::ofstream(frontPath(room.book.path())) << std::string(1 << 20, 'x');
    checks.that(notedFront(room.book.path()).empty(), "too long");
    return checks.ok(9);
}

}  // namespace

int main() {
    bool ok = fronts();
    ok = rc::check("keys are in natural order", keysAreInNaturalOrder) && ok;
    ok = rc::check("keys are in walking order", keysAreInWalkingOrder) && ok;
    ok = rc::check("what is packed is unpacked", packedIsUnpacked) && ok;
    return ok ? 0 : 1;
}
