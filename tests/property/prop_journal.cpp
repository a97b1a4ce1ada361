// The book under random acts: what is kept step by step equals what a rebuild gives, and undo leaves
// no trace in what is shown.
#include <rapidcheck.h>

#include "journal/check.h"
#include "support/book.h"

using namespace burrow;
using namespace burrow::test;

namespace {

FactBody anyBody(FactKind kind) {
    FactBody body;
    const auto millimetres = [] { return Millimetres{*rc::gen::inRange(10, 900) / 10.0}; };
    switch (kind) {
        case FactKind::offered:
            body.outcome =
                *rc::gen::element(Outcome::ate, Outcome::part, Outcome::refused, Outcome::leftIn);
            if (*rc::gen::arbitrary<bool>()) body.prey = "cricket";
            if (*rc::gen::arbitrary<bool>()) body.preyLength = millimetres();
            break;
        case FactKind::moulted:
            if (*rc::gen::arbitrary<bool>()) body.span = millimetres();
            body.ultimate = *rc::gen::element(std::optional<bool>(), std::optional<bool>(true));
            break;
        case FactKind::measured: body.carapace = millimetres() * 0.5; break;
        case FactKind::seen: body.count = *rc::gen::inRange(0, 20); break;
        case FactKind::died: body.count = *rc::gen::inRange(1, 3); break;
        case FactKind::sexed: body.sex = *rc::gen::element(Sex::female, Sex::male); break;
        case FactKind::note: body.text = "webbed over the dish"; break;
        default: break;
    }
    return body;
}

FactKind anyKind() {
    return *rc::gen::element(FactKind::offered, FactKind::offered, FactKind::offered,
                             FactKind::leftoversOut, FactKind::watered, FactKind::dampened,
                             FactKind::premoultSign, FactKind::moulted, FactKind::measured,
                             FactKind::fangsBlack, FactKind::seen, FactKind::note, FactKind::sexed,
                             FactKind::died, FactKind::lent, FactKind::returned);
}

/// Does one random thing to the book, as a keeper would: log, correct, take back, rename.
void doSomething(TestBook& room, const std::vector<SubjectId>& subjects) {
    const auto subject = *rc::gen::elementOf(subjects);
    room.clock.set({room.clock.now().ms + *rc::gen::inRange(0, 300) * 60'000});
    const auto history = burrow::history(room.book, subject, 50).value();
    switch (*rc::gen::inRange(0, 10)) {
        case 0:
            if (!history.empty()) {
                const Fact fact = *rc::gen::elementOf(history);
                room.book.record(RetractDraft{fact.id}).value();
            }
            break;
        case 1:
            if (!history.empty()) {
                const auto fact = *rc::gen::elementOf(history);
                AmendDraft amend{fact.id, anyBody(fact.kind), std::nullopt};
                if (*rc::gen::arbitrary<bool>()) {
                    amend.happenedAt =
                        Instant{fact.happenedAt.ms - *rc::gen::inRange(0, 9) * msPerDay};
                }
                room.book.record(amend).value();
            }
            break;
        case 2:
            // With a fact on record there is an act to undo that is not the animal's own first one.
            if (!history.empty()) room.book.undo().value();
            break;
        case 3:
            room.book
                .record(SetDraft{ThingType::subject,
                                 subject.uuid,
                                 {{"species", *rc::gen::element<std::string>("A a", "B b")},
                                  {"count", *rc::gen::inRange(1, 9)}}})
                .value();
            break;
        default: {
            const auto kind = anyKind();
            std::optional<Instant> at;
            if (*rc::gen::inRange(0, 4) == 0) {  // logged late
                at = Instant{room.clock.now().ms - *rc::gen::inRange(1, 40) * msPerDay};
            }
            room.log(subject, kind, anyBody(kind), at);
        }
    }
}

}  // namespace

int main() {
    bool ok = true;
    ok &= rc::check("step by step equals rebuilt", [] {
        TestBook room(*rc::gen::arbitrary<std::uint64_t>());
        const std::vector<SubjectId> subjects{
            room.add("001", "Grammostola pulchra"),
            room.add("002", "Neoholothele incei", Form::group, 9)};
        const int steps = *rc::gen::inRange(1, 60);
        for (int i = 0; i < steps; ++i) doSomething(room, subjects);
        const auto report = check(room.book).value();
        RC_LOG() << (report.findings.empty() ? std::string() : report.findings.front().id);
        RC_ASSERT(report.isSound());
        for (const auto subject : subjects) {
            const auto facts = factsOf(room.book.connection(), subject).value();
            RC_ASSERT(room.kept(subject).digest == digestOf(facts));
        }
    });
    ok &= rc::check("undo brings back what was shown before", [] {
        TestBook room(*rc::gen::arbitrary<std::uint64_t>());
        const auto subject = room.add("001", "Grammostola pulchra");
        const int steps = *rc::gen::inRange(1, 20);
        for (int i = 0; i < steps; ++i) doSomething(room, {subject});
        const auto before = room.kept(subject);
        const auto kind = anyKind();
        room.clock.set({room.clock.now().ms + 1000});
        room.log(subject, kind, anyBody(kind));
        room.book.undo().value();
        const auto after = room.kept(subject);
        RC_ASSERT(after.digest == before.digest);
        RC_ASSERT(after.subject == before.subject);
    });
    return ok ? 0 : 1;
}
