#include "exchange/leave_json.h"

#include <nlohmann/json.hpp>

#include "journal/rows.h"

namespace burrow::exchange {
namespace {

using json = nlohmann::ordered_json;

/// Bytes that are no UTF-8 come only from a damaged book; they must not end the document.
std::string dump(const json& value) {
    return value.dump(-1, ' ', false, json::error_handler_t::replace);
}

void addText(json& object, const char* name, const std::string& value) {
    if (!value.empty()) object[name] = value;
}

void addLength(json& object, const char* name, Millimetres value) {
    if (value.value > 0) object[name] = value.value;
}

template <class Id>
void addId(json& object, const char* name, const std::optional<Id>& id) {
    if (id) object[name] = id->text();
}

void addDay(json& object, const char* name, const std::optional<CivilDay>& day) {
    if (day) object[name] = isoDate(*day);
}

json toJson(const RoomInfo& room, const BookId& book) {
    json object{{"book", book.text()}, {"name", room.name}, {"code", room.code}};
    addText(object, "contact", room.contact);
    json rules = json::object();
    for (const auto& [rule, value] : room.rules) rules[rule] = value;
    object["rules"] = std::move(rules);
    if (!room.profiles.empty()) {
        json profiles = json::object();
        for (const auto& [species, text] : room.profiles) profiles[species] = text;
        object["profiles"] = std::move(profiles);
    }
    return object;
}

json toJson(const Enclosure& enclosure) {
    json object{{"id", enclosure.id.text()}, {"name", enclosure.name}};
    addLength(object, "length_mm", enclosure.length);
    addLength(object, "width_mm", enclosure.width);
    addLength(object, "height_mm", enclosure.height);
    addLength(object, "substrate_mm", enclosure.substrate);
    addText(object, "place", enclosure.place.text());
    addText(object, "note", enclosure.note);
    return object;
}

json toJson(const Tag& tag) {
    json object{{"code", tag.code}};
    addLength(object, "side_mm", tag.printedSide);
    addId(object, "animal", tag.subject);
    addId(object, "enclosure", tag.enclosure);
    return object;
}

json toJson(const GatheredAnimal& animal) {
    const auto& subject = animal.kept.subject;
    json object{{"id", subject.id.text()},    {"number", subject.number},
                {"form", name(subject.form)}, {"species", subject.species},
                {"sex", name(subject.sex)},   {"standing", name(subject.standing)},
                {"count", subject.headcount}, {"quarantined", subject.quarantined},
                {"mature", subject.mature}};
    addDay(object, "hatched_on", subject.hatched);
    addDay(object, "acquired_on", subject.acquired);
    addDay(object, "quarantined_on", animal.kept.quarantinedSince);
    addText(object, "source", subject.source);
    addId(object, "enclosure", subject.enclosure);
    addText(object, "place", subject.place.text());
    addId(object, "mother", subject.mother);
    addId(object, "father", subject.father);
    addText(object, "note", subject.note);
    object["recorded"] =
        json{{"standing", name(animal.recorded.standing)}, {"count", animal.recorded.headcount}};
    return object;
}

json toJson(const Fact& fact) {
    json object{{"id", fact.id.text()},
                {"event", spec(fact.kind).name},
                {"at", isoInstant(fact.happenedAt)},
                {"on_day", isoDate(fact.day)}};
    const auto fields = burrow::toJson(fact.body);
    for (const auto& [name, value] : fields.items()) object[name] = value;
    return object;
}

json toJson(const Entry& entry) {
    json object{{"id", entry.id.text()},
                {"device", entry.device.text()},
                {"seq", entry.seq},
                {"act", entry.act},
                // More than 53 bits, which not every reader of JSON keeps (RFC 7493, 2.2).
                {"hlc", std::to_string(entry.hlc)},
                {"kind", entry.kind}};
    if (entry.thing) object["thing"] = entry.thing->text();
    object["recorded_at"] = isoInstant(entry.recordedAt);
    object["happened_at"] = isoInstant(entry.happenedAt);
    object["on_day"] = isoDate(entry.day);
    object["zone"] = entry.zone;
    object["body"] = json(entry.body);
    return object;
}

}  // namespace

Done JsonDocument::list(std::string_view name) {
    isFirst_ = true;
    return sink_(",\n\"" + std::string(name) + "\": [");
}

Done JsonDocument::item(const std::string& record) {
    const auto* before = isFirst_ ? "\n" : ",\n";
    isFirst_ = false;
    return sink_(before + record);
}

Done JsonDocument::begin(const Book& book, Instant writtenAt) {
    const json head{{"format", "burrowbook"},
                    {"version", 1},
                    {"described_by", "book.schema.json"},
                    {"written_at", isoInstant(writtenAt)}};
    auto text = dump(head);
    text.pop_back();  // the members of the document follow
    BURROW_DO(sink_(text + ",\n\"room\": " + dump(toJson(all_.room, book.id()))));
    BURROW_DO(list("enclosures"));
    for (const auto& each : all_.enclosures) BURROW_DO(item(dump(toJson(each.enclosure))));
    BURROW_DO(sink_("\n]"));
    BURROW_DO(list("tags"));
    for (const auto& tag : all_.tags) BURROW_DO(item(dump(toJson(tag))));
    BURROW_DO(sink_("\n]"));
    return list("animals");
}

Done JsonDocument::beginAnimal(const GatheredAnimal& animal) {
    auto text = dump(toJson(animal));
    text.pop_back();
    BURROW_DO(item(text + ",\"events\":["));
    hasEvents_ = false;
    return {};
}

Done JsonDocument::event(const Fact& fact) {
    const auto* before = hasEvents_ ? ",\n  " : "\n  ";
    hasEvents_ = true;
    return sink_(before + dump(toJson(fact)));
}

Done JsonDocument::endAnimal() { return sink_(hasEvents_ ? "\n]}" : "]}"); }

Done JsonDocument::end(Book& book) {
    BURROW_DO(sink_("\n]"));
    BURROW_DO(list("journal"));
    for (std::int64_t after = 0;;) {
        BURROW_TRY(const auto portion, entriesAfter(book.connection(), after, 2000));
        if (portion.empty()) break;
        for (const auto& [n, entry] : portion) {
            BURROW_DO(item(dump(toJson(entry))));
            after = n;
        }
    }
    return sink_("\n]}\n");
}

}  // namespace burrow::exchange
