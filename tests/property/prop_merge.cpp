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

FactBody anyBody(FactKind kind) {
    FactBody body;
    switch (kind) {
        case FactKind::offered:
            body.outcome = *rc::gen::element(Outcome::ate, Outcome::refused, Outcome::leftIn);
            if (*rc::gen::arbitrary<bool>()) body.prey = "cricket";
            break;
        case FactKind::sold:
            body.party = *rc::gen::element<std::string>("Marl Hollow", "Fenwick Reach");
            if (*rc::gen::arbitrary<bool>()) body.price = "40";
            break;
        case FactKind::note:
            body.text = *rc::gen::element<std::string>("webbed over", "dug in", "out at night");
            if (*rc::gen::arbitrary<bool>()) body.confidential = true;
            break;
        case FactKind::sexed: body.sex = *rc::gen::element(Sex::female, Sex::male); break;
        case FactKind::moved:
            body.place = *rc::gen::element(Place::parse("A / 1"), Place::parse("B / 2"));
            break;
        case FactKind::moulted: body.ultimate = *rc::gen::arbitrary<bool>(); break;
        default: break;
    }
    return body;
}

/// Writes something on one device, as its keeper would.
void write(Device& device) {
    device.clock.set({device.clock.now().ms + *rc::gen::inRange(0, 600) * 1000});
    auto& book = device.book;
    const auto everyone = roster(book).value();
    const int what = everyone.empty() ? 0 : *rc::gen::inRange(0, 14);
    if (what == 0) {
        const Uuid thing = book.newId();
        book.record(SetDraft{ThingType::subject,
                             thing,
                             {{"number", *rc::gen::element<std::string>("001", "002", "003")},
                              {"species", "Grammostola pulchra"}}})
            .value();
        return;
    }
    const auto subject = everyone[static_cast<std::size_t>(
                                      *rc::gen::inRange<int>(0, static_cast<int>(everyone.size())))]
                             .subject.id;
    const auto facts = history(book, subject, 20).value();
    const auto anyFact = [&] {
        return facts[static_cast<std::size_t>(
            *rc::gen::inRange<int>(0, static_cast<int>(facts.size())))];
    };
    const auto all = entriesAfter(book.connection(), 0, 100'000).value();
    const auto anyEntry = [&]() -> const Entry& {
        return all[static_cast<std::size_t>(
                       *rc::gen::inRange<int>(0, static_cast<int>(all.size())))]
            .second;
    };
    switch (what) {
        case 1:
        case 2:
        case 3:
            book.record(SetDraft{ThingType::subject,
                                 subject.uuid,
                                 {{*rc::gen::element<std::string>("note", "number", "count"),
                                   *rc::gen::element<nlohmann::json>("x", "y", 2, nullptr)}}})
                .value();
            return;
        case 4: book.record(RetractDraft{anyEntry().id}).value(); return;
        case 5:
        case 6:
            if (facts.empty()) break;
            {
                const auto fact = anyFact();
                AmendDraft amend{fact.id, anyBody(fact.kind), std::nullopt};
                if (checkComplete(amend.body, fact.kind)) {
                    if (*rc::gen::arbitrary<bool>()) {
                        amend.happenedAt = Instant{fact.happenedAt.ms - 3'600'000};
                    }
                    book.record(amend).value();
                }
            }
            return;
        case 7: static_cast<void>(book.undo()); return;
        case 8: device.writeUnknown(subject.uuid); return;
        case 9: {
            const auto open = differences(book).value();
            if (open.empty()) return;
            const auto& one = open[static_cast<std::size_t>(
                *rc::gen::inRange<int>(0, static_cast<int>(open.size())))];
            const auto choice = static_cast<std::size_t>(
                *rc::gen::inRange<int>(0, static_cast<int>(one.choices.size())));
            settle(book, one, choice).value();
            return;
        }
        case 10:
            // A clock that somebody set.
            device.clock.set(
                {fridayEvening.ms +
                 *rc::gen::element<std::int64_t>(-40, -1, 0, 2, 400, 26'000) * msPerDay});
            return;
        default: {
            const auto kind = *rc::gen::element(FactKind::offered, FactKind::note, FactKind::sold,
                                                FactKind::sexed, FactKind::moved, FactKind::moulted,
                                                FactKind::watered);
            std::optional<Instant> at;
            if (*rc::gen::inRange(0, 4) == 0) {
                at = Instant{fridayEvening.ms - *rc::gen::inRange(1, 40) * msPerDay};
            }
            book.record(FactDraft{subject, kind, anyBody(kind), at}).value();
        }
    }
}

/// Some of what one device has goes to another one, in any order and some of it twice.
void exchange(Device& from, Device& to) {
    std::vector<Entry> entries;
    Selection selection;
    selection.withConfidential = *rc::gen::inRange(0, 3) > 0;
    const bool onlyLacking = *rc::gen::arbitrary<bool>();
    const auto vector = onlyLacking ? versionVector(to.book.connection()).value() : VersionVector{};
    must(forEachEntryLacking(from.book.connection(), vector, selection,
                             [&](const StoredEntry& entry) -> Done {
                                 entries.push_back(entry.toEntry());
                                 return {};
                             }));
    const auto drop = *rc::gen::element(0, 0, 50);
    std::erase_if(entries,
                  [&](const Entry&) { return drop > 0 && *rc::gen::inRange(0, 100) < drop; });
    shuffle(entries, *rc::gen::arbitrary<std::uint64_t>());
    auto merge = Merge::begin(to.book, {"some.burrow", from.book.device()}).value();
    for (const auto& entry : entries) must(merge.add(entry));
    for (std::size_t i = 0; i < entries.size(); i += 3) must(merge.add(entries[i]));
    merge.commit().value();
    RC_ASSERT(isRebuiltTheSame(to.book));
    // The newest arrival can go again, and what is left is as if it had never come.
    if (*rc::gen::inRange(0, 8) == 0 && takeBackArrival(to.book)) {
        RC_ASSERT(isRebuiltTheSame(to.book));
    }
}

/// Every one gets all that every other one has, in two rounds; only what it lacks.
void bringAllTogether(std::vector<std::unique_ptr<Device>>& room) {
    for (int round = 0; round < 2; ++round) {
        for (auto& from : room) {
            for (auto& to : room) {
                if (from != to) sendAll(*from, *to);
            }
        }
    }
}

void anyHistory() {
    auto room = roomOf(devices, *rc::gen::arbitrary<std::uint64_t>());
    const int steps = *rc::gen::inRange(5, 40);
    for (int i = 0; i < steps; ++i) {
        auto& one = *room[static_cast<std::size_t>(*rc::gen::inRange(0, devices))];
        auto& other = *room[static_cast<std::size_t>(*rc::gen::inRange(0, devices))];
        if (&one != &other && *rc::gen::inRange(0, 4) == 0) {
            exchange(one, other);
        } else {
            write(one);
        }
    }
    bringAllTogether(room);
    const auto first = dumpOf(room.front()->book);
    for (auto& device : room) {
        RC_ASSERT(dumpOf(device->book) == first);
        RC_ASSERT(isRebuiltTheSame(device->book));
        RC_ASSERT(versionVector(device->book.connection()).value() ==
                  versionVector(room.front()->book.connection()).value());
    }
    // Once everything is settled on one device, it is settled on all.
    settleAll(room.front()->book);
    bringAllTogether(room);
    for (auto& device : room) RC_ASSERT(differences(device->book).value().empty());
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
