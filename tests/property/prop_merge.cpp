// Books of five devices that exchange entries in any order, any number of times, in parts, with wild
// clocks: whoever has the same entries shows the same, byte by byte.
#include <rapidcheck.h>

#include <algorithm>
#include <cstdlib>
#include <memory>
#include <string>

#include "journal/check.h"
#include "journal/differences.h"
#include "journal/dump.h"
#include "journal/merge.h"
#include "journal/version_vector.h"
#include "support/book.h"
#include "support/joined.h"

using namespace burrow;
using namespace burrow::test;

namespace {

constexpr int devices = 5;

/// From 0 to below `end`, alike from the first case to the last.
int below(int end) { return *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, end)); }

FactBody anyBody(FactKind kind) {
    FactBody body;
    switch (kind) {
        case FactKind::offered:
            body.outcome = *rc::gen::element(Outcome::ate, Outcome::refused, Outcome::leftIn);
            if (below(2) == 1) body.prey = "cricket";
            break;
        case FactKind::sold:
            body.party = *rc::gen::element<std::string>("Marl Hollow", "Fenwick Reach");
            if (below(2) == 1) body.price = "40";
            break;
        case FactKind::note:
            body.text = *rc::gen::element<std::string>("webbed over", "dug in", "out at night");
            if (below(2) == 1) body.confidential = true;
            break;
        case FactKind::sexed: body.sex = *rc::gen::element(Sex::female, Sex::male); break;
        case FactKind::moved:
            body.place = *rc::gen::element(Place::parse("A / 1"), Place::parse("B / 2"));
            break;
        case FactKind::moulted: body.ultimate = below(2) == 1; break;
        default: break;
    }
    return body;
}

template <class Each>
const Each& oneOf(const std::vector<Each>& all) {
    return all[static_cast<std::size_t>(below(static_cast<int>(all.size())))];
}

void addAnimal(Book& book) {
    book.record(SetDraft{ThingType::subject,
                         book.newId(),
                         {{"number", *rc::gen::element<std::string>("001", "002", "003")},
                          {"species", "Grammostola pulchra"}}})
        .value();
}

void logSomething(Book& book, SubjectId subject) {
    const auto kind =
        *rc::gen::element(FactKind::offered, FactKind::note, FactKind::sold, FactKind::sexed,
                          FactKind::moved, FactKind::moulted, FactKind::watered);
    std::optional<Instant> at;
    if (below(4) == 0) {
        at = Instant{fridayEvening.ms - (1 + below(39)) * msPerDay};
    }
    book.record(FactDraft{subject, kind, anyBody(kind), at}).value();
}

void amendSomething(Book& book, SubjectId subject) {
    const auto facts = history(book, subject, 20).value();
    if (facts.empty()) return;
    const auto fact = oneOf(facts);
    AmendDraft amend{fact.id, anyBody(fact.kind), std::nullopt};
    if (below(2) == 1) amend.happenedAt = Instant{fact.happenedAt.ms - 3'600'000};
    if (checkComplete(amend.body, fact.kind)) book.record(amend).value();
}

void settleSomething(Book& book) {
    const auto open = differences(book).value();
    if (open.empty()) return;
    const auto& one = oneOf(open);
    const auto choice = below(static_cast<int>(one.choices.size()));
    settle(book, one, static_cast<std::size_t>(choice)).value();
}

/// Any entry, whoever wrote it and whatever it is.
void retractSomething(Book& book) {
    const auto all = entriesAfter(book.connection(), 0, 100'000).value();
    book.record(RetractDraft{oneOf(all).second.id}).value();
}

void setSomething(Book& book, SubjectId subject) {
    book.record(SetDraft{ThingType::subject,
                         subject.uuid,
                         {{*rc::gen::element<std::string>("note", "number", "count"),
                           *rc::gen::element<nlohmann::json>("x", "y", 2, nullptr)}}})
        .value();
}

/// Writes something on one device, as its keeper would.
void write(Device& device) {
    device.clock.set({device.clock.now().ms + below(600) * 1000});
    auto& book = device.book();
    const auto everyone = roster(book).value();
    if (everyone.empty()) return addAnimal(book);
    const auto subject = oneOf(everyone).subject.id;
    switch (below(20)) {
        case 0: return addAnimal(book);
        case 1:
        case 2:
        case 3: return setSomething(book, subject);
        case 4: return retractSomething(book);
        case 5:
        case 6:
        case 7: return amendSomething(book, subject);
        case 8: return static_cast<void>(book.undo());
        case 9: return settleSomething(book);
        case 10:
            // As a newer version might write it.
            merged(book, {foreign(device, "levitated", subject.uuid, {{"mm", 3}})});
            return;
        case 11:
        case 12: return device.hasBackUp() ? device.restore() : device.backUp();
        case 13:
            // A clock that somebody set.
            return device.clock.set(
                {fridayEvening.ms +
                 *rc::gen::element<std::int64_t>(-40, -1, 0, 2, 400, 26'000) * msPerDay});
        default: return logSomething(book, subject);
    }
}

/// Some of what one device has goes to another one, in any order and some of it twice.
void exchange(Device& from, Device& to) {
    std::vector<Entry> entries;
    Selection selection;
    selection.withConfidential = below(3) > 0;
    const bool onlyLacking = below(2) == 1;
    const auto vector =
        onlyLacking ? versionVector(to.book().connection()).value() : VersionVector{};
    must(forEachEntryLacking(from.book().connection(), vector, selection,
                             [&](const StoredEntry& entry) -> Done {
                                 entries.push_back(entry.toEntry());
                                 return {};
                             }));
    const auto drop = *rc::gen::element(0, 0, 50);
    std::erase_if(entries, [&](const Entry&) { return drop > 0 && below(100) < drop; });
    shuffle(entries, *rc::gen::arbitrary<std::uint64_t>());
    auto merge = Merge::begin(to.book(), {"some.burrow", from.book().device()}).value();
    for (const auto& entry : entries) must(merge.add(entry));
    for (std::size_t i = 0; i < entries.size(); i += 3) must(merge.add(entries[i]));
    merge.commit().value();
    RC_ASSERT(isRebuiltTheSame(to.book()));
    // The newest arrival can go again, and what is left is as if it had never come.
    if (below(8) == 0 && takeBackArrival(to.book())) {
        RC_ASSERT(isRebuiltTheSame(to.book()));
    }
}

/// The first one gets what all others have, and they get it from there; each only what it lacks.
void bringAllTogether(std::vector<std::unique_ptr<Device>>& room) {
    for (std::size_t i = 1; i < room.size(); ++i) sendAll(*room[i], *room.front());
    for (std::size_t i = 1; i < room.size(); ++i) sendAll(*room.front(), *room[i]);
}

/// What the histories were like, for whoever reads the output.
void classify(Book& book) {
    const auto has = [&](const char* sql) { return book.connection().integer(sql).value() > 0; };
    RC_CLASSIFY(has("SELECT count(*) FROM difference WHERE kind = 0"), "fields differ");
    RC_CLASSIFY(has("SELECT count(*) FROM difference WHERE kind = 1"), "amendments differ");
    RC_CLASSIFY(has("SELECT count(*) FROM difference WHERE kind = 2"), "confidential parts differ");
    RC_CLASSIFY(has("SELECT count(*) FROM fork"), "a device forked");
    RC_CLASSIFY(has("SELECT count(*) FROM entry WHERE kind = 'levitated'"), "unknown kinds");
    RC_CLASSIFY(has("SELECT count(*) FROM entry WHERE hlc >> 16 > 4000000000000"), "a wild clock");
}

void anyHistory() {
    auto room = roomOf(devices, *rc::gen::arbitrary<std::uint64_t>());
    for (int i = 0; i < 2; ++i) addAnimal(room.front()->book());
    bringAllTogether(room);
    const int steps = 5 + below(45);
    for (int i = 0; i < steps; ++i) {
        auto& one = *room[static_cast<std::size_t>(below(devices))];
        auto& other = *room[static_cast<std::size_t>(below(devices))];
        if (&one != &other && below(4) == 0) {
            exchange(one, other);
        } else {
            write(one);
        }
    }
    bringAllTogether(room);
    classify(room.front()->book());
    const auto first = dumpOf(room.front()->book());
    for (auto& device : room) {
        RC_ASSERT(dumpOf(device->book()) == first);
        RC_ASSERT(isRebuiltTheSame(device->book()));
        RC_ASSERT(versionVector(device->book().connection()).value() ==
                  versionVector(room.front()->book().connection()).value());
    }
    // Once everything is settled on one device, it is settled on all.
    settleAll(room.front()->book());
    bringAllTogether(room);
    for (auto& device : room) RC_ASSERT(differences(device->book()).value().empty());
}

int histories() {
    const char* asked = std::getenv("BURROW_HISTORIES");
    return asked != nullptr ? std::max(1, std::atoi(asked)) : 500;
}

}  // namespace

int main() {
    // rapidcheck takes the number of cases from its own variable; one that is set already wins.
    const auto cases = "max_success=" + std::to_string(histories());
    setenv("RC_PARAMS", cases.c_str(), 0);
    return rc::check("books of five devices end equal", anyHistory) ? 0 : 1;
}
