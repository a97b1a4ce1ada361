// A book with one of everything: every kind of event with every field it may have, corrected and taken-back
// ones, clashing numbers, groups, enclosures, tags, the keeper's own rules and a species profile.
#pragma once

#include "support/book.h"
#include "tags/code.h"

namespace burrow::test {

/// One value that the field takes.
inline std::string someValue(const FieldSpec& field, const Uuid& enclosure, const Uuid& entry) {
    switch (field.type) {
        case FieldType::text: return "=1+1, \"quoted\"\nsecond line ";
        case FieldType::count: return "2";
        case FieldType::millimetres: return "12.5";
        case FieldType::grams: return "0.75";
        case FieldType::outcome: return "left_in";
        case FieldType::method: return "ruler";
        case FieldType::sex: return "female";
        case FieldType::role: return "moult";
        case FieldType::look: return "underside";
        case FieldType::clarity: return "beyond_doubt";
        case FieldType::flag: return "yes";
        case FieldType::day: return "2026-08-01";
        case FieldType::place: return "A / 2";
        case FieldType::enclosure: return enclosure.text();
        case FieldType::entry: return entry.text();
        case FieldType::hash: return Sha256::of("a photo").hex();
    }
    return {};
}

inline void fillWithEverything(TestBook& room) {
    const auto animal = room.add("214", "Brachypelma hamorii");
    const auto group = room.add("260", "Neoholothele incei", Form::group, 20);
    room.add("214", "Poecilotheria regalis");  // another phone's 214
    Enclosure home;
    home.id = EnclosureId{room.book.newId()};
    home.name = "E1";
    home.length = Millimetres{300};
    home.place = Place::parse("A / 2");
    room.book.record(SetDraft{ThingType::enclosure, home.id.uuid, toFields(home)}).value();
    const EntryId moult{room.book.newId()};
    room.book.record(FactDraft{animal, FactKind::moulted, {}, std::nullopt, moult}).value();
    for (const auto& kind : factKinds()) {
        room.clock.set({room.clock.now().ms + 60'000});
        FactBody body;
        for (const auto& field : factFields()) {
            if (!kindHas(kind.kind, field.name)) continue;
            must(setFieldExactly(body, kind.kind, field.name,
                                 someValue(field, home.id.uuid, moult.uuid)));
        }
        room.log(kind.kind == FactKind::seen ? group : animal, kind.kind, body);
    }
    const auto amended = room.log(group, FactKind::watered).entries.front();
    FactBody note;
    note.text = "only half";
    room.book.record(AmendDraft{amended, note, std::nullopt}).value();
    room.book.record(RetractDraft{room.log(group, FactKind::dampened).entries.front()}).value();
    Tag tag{tags::generateCode(room.random), tags::printedSide, animal, std::nullopt};
    room.book.record(SetDraft{ThingType::tag, tagThing(tag.code), toFields(tag)}).value();
    room.book
        .record(SetDraft{ThingType::book,
                         room.book.id().uuid,
                         {{"contact", "fair@kilnrow.invalid"},
                          {"rule.feed.interval.adult", "20-25"},
                          {"profile.Novagenus nova", R"({"name": "Novagenus nova"})"}}})
        .value();
}

}  // namespace burrow::test
