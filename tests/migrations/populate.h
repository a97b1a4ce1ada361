// A room with one of everything that a book can hold, and what a book shows of it as text.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

#include "base/files.h"
#include "journal/check.h"
#include "support/joined.h"

namespace burrow::test {

namespace populating {

inline FactBody bodyOf(FactKind kind, EnclosureId enclosure, EntryId moult) {
    FactBody body;
    switch (kind) {
        case FactKind::offered:
            body.outcome = Outcome::ate;
            body.prey = "cricket";
            body.preyLength = Millimetres{8};
            body.count = 2;
            break;
        case FactKind::premoultSign: body.sign = "dull colour"; break;
        case FactKind::moulted:
            body.span = Millimetres{61.5};
            body.ultimate = true;
            break;
        case FactKind::measured:
            body.span = Millimetres{62};
            body.carapace = Millimetres{21.25};
            body.mass = Grams{7.5};
            body.method = Method::ruler;
            break;
        case FactKind::seen: body.count = 3; break;
        case FactKind::rehoused: body.enclosure = enclosure; break;
        case FactKind::moved: body.place = Place::parse("B/2/7"); break;
        case FactKind::photo:
            body.picture = Sha256::of(bytesOf("picture"));
            body.original = Sha256::of(bytesOf("original"));
            body.role = PhotoRole::moult;
            body.about = moult;
            break;
        case FactKind::sexed:
            body.sex = Sex::male;
            body.method = Method::eye;
            break;
        case FactKind::died:
            body.count = 1;
            body.cause = "stuck in the moult";
            break;
        case FactKind::sold:
            body.party = "a visitor";
            body.price = "40";
            body.confidential = true;
            break;
        case FactKind::lent: body.until = parseIsoDate("2026-07-01"); break;
        default: break;
    }
    body.text = "webbed over the \"dish\"; 50 % \xC3\xA4 <b>";
    return body;
}

/// An entry of a kind that is yet to come.
inline void addUnknownKind(TestBook& room) {
    must(room.book.connection().execute(
        "INSERT INTO entry (id, device, seq, act, hlc, kind, thing, body, recorded_at, "
        "happened_at, day, zone) SELECT x'0196b0a1000170008000000000000001', device, seq + 1, seq "
        "+ 1, hlc + 1, 'levitated', thing, '{\"deep\":{\"list\":[1,2,null]},\"mm\":3}', "
        "recorded_at, happened_at, day, zone FROM entry ORDER BY seq DESC LIMIT 1"));
}

}  // namespace populating

/// Everything that schema 1 can hold.
inline void populateAlone(TestBook& room) {
    using namespace populating;
    auto& book = room.book;
    const auto tick = [&] { room.clock.set({room.clock.now().ms + 3'600'000}); };
    book.record(
            SetDraft{ThingType::book,
                     book.id().uuid,
                     {{setting::contact, "Ask at the door"}, {"rule.feed.interval.adult", "8-12"}}})
        .value();
    const EnclosureId enclosure{book.newId()};
    book.record(SetDraft{ThingType::enclosure, enclosure.uuid,
                         toFields(Enclosure{enclosure, "E1", Millimetres{200}, Millimetres{150},
                                            Millimetres{150}, Millimetres{80},
                                            Place::parse("A/1/3"), "cork bark"})})
        .value();
    const auto animal = room.add("214", "Brachypelma hamorii");
    const auto group = room.add("260", "Neoholothele incei", Form::group, 5);
    const auto lot = room.add("300", "Grammostola pulchra", Form::lot, 200);
    const Tag tag{"7Q2MZX89", Millimetres{20}, animal, std::nullopt};
    book.record(SetDraft{ThingType::tag, tagThing(tag.code), toFields(tag)}).value();
    EntryId moult;
    for (const auto& kind : factKinds()) {
        tick();
        const auto target = kind.kind == FactKind::died || kind.kind == FactKind::seen    ? group
                            : kind.kind == FactKind::sold || kind.kind == FactKind::given ? lot
                                                                                          : animal;
        const auto logged = room.log(target, kind.kind, bodyOf(kind.kind, enclosure, moult));
        if (kind.kind == FactKind::moulted) moult = logged.entries[0];
    }
    tick();
    const auto late =
        room.log(animal, FactKind::offered, bodyOf(FactKind::offered, enclosure, moult),
                 Instant{fridayEvening.ms - 9 * msPerDay});
    FactBody better = bodyOf(FactKind::offered, enclosure, moult);
    better.outcome = Outcome::part;
    book.record(AmendDraft{late.entries[0], better, std::nullopt}).value();
    better.outcome = Outcome::refused;
    book.record(AmendDraft{late.entries[0], better, Instant{fridayEvening.ms - 8 * msPerDay}})
        .value();
    book.undo().value();  // the second amendment is withdrawn
    tick();
    room.log(animal, FactKind::watered);
    book.undo().value();
    book.record(SetDraft{ThingType::subject, animal.uuid, {{"note", "shy"}, {"quarantine", true}}})
        .value();
    addUnknownKind(room);
}

/// What schema 2 brought: entries of another phone, values and amendments that differ, a confidential part
/// beside its fact.
inline void meetAnotherPhone(TestBook& room) {
    SeededRandom random(977);
    auto other = Book::join(room.folder.path() / "other.book", room.book.id(),
                            {room.clock, random, Zone::utc()})
                     .value();
    merged(other, lacking(room.book, other));
    const auto subjects = roster(room.book).value();
    const auto animal = std::find_if(subjects.begin(), subjects.end(), [](const Kept& kept) {
                            return kept.subject.number == "214";
                        })->subject.id;
    room.clock.set({room.clock.now().ms + msPerDay});
    const auto meal = history(room.book, animal, wholeHistory).value().back().id;
    FactBody body;
    body.outcome = Outcome::ate;
    for (auto* book : {&room.book, &other}) {
        body.text = book == &other ? "seen from the left" : "seen from the right";
        book->record(AmendDraft{meal, body, std::nullopt}).value();
        book->record(SetDraft{ThingType::subject, animal.uuid, {{"note", *body.text}}}).value();
    }
    FactBody sale;
    sale.count = 1;
    sale.party = "another visitor";
    const auto lot = std::find_if(subjects.begin(), subjects.end(), [](const Kept& kept) {
                         return kept.subject.form == Form::lot;
                     })->subject.id;
    other.record(FactDraft{lot, FactKind::sold, sale, std::nullopt}).value();
    merged(room.book, lacking(other, room.book));
}

/// Everything that the newest schema can hold; a later version adds what it brings.
inline void populate(TestBook& room) {
    populateAlone(room);
    meetAnotherPhone(room);
}

/// What the keeper sees of a book, a line for each thing and fact, in an order of its own.
inline std::string shown(Book& book) {
    std::ostringstream text;
    const auto info = roomInfo(book).value();
    text << fmt::format("room {} {} {}\n", info.name, info.code, info.contact);
    for (const auto& [rule, value] : info.rules) text << fmt::format("rule {} {}\n", rule, value);
    auto all = enclosures(book).value();
    for (const auto& e : all) {
        text << fmt::format("enclosure {} {}x{}x{} {} {} {}\n", e.name, e.length.value,
                            e.width.value, e.height.value, e.substrate.value, e.place.text(),
                            e.note);
    }
    auto everyone = roster(book).value();
    std::sort(everyone.begin(), everyone.end(),
              [](const Kept& a, const Kept& b) { return a.subject.number < b.subject.number; });
    for (const auto& one : everyone) {
        const auto& s = one.subject;
        text << fmt::format(
            "subject {} {} form {} sex {} standing {} quarantine {} mature {} "
            "count {} place {} tag {} note {}\n",
            s.number, s.species, static_cast<int>(s.form), static_cast<int>(s.sex),
            static_cast<int>(s.standing), s.quarantined, s.mature, s.headcount, one.place.text(),
            one.tagCode.value_or("-"), s.note);
        for (const auto& fact : got(history(book, s.id, wholeHistory))) {
            text << fmt::format("  {} {} {} {}\n", isoDate(fact.day), isoInstant(fact.happenedAt),
                                spec(fact.kind).name, toJson(fact.body).dump());
        }
    }
    return text.str();
}

}  // namespace burrow::test
