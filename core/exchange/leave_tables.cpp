#include "exchange/leave_tables.h"

#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>

#include "base/text.h"

namespace burrow::exchange {
namespace {

/// One row of a table; a text is guarded, anything else stands as it is.
class Row {
public:
    Row& plain(std::string_view value) {
        if (hasCells_) line_ += ',';
        hasCells_ = true;
        line_ += csvCell(value, ',');
        return *this;
    }
    Row& text(std::string_view value) {
        return value.empty() ? plain({}) : plain(guardedText(value));
    }
    Row& millimetres(Millimetres value) {
        return value.value > 0 ? plain(fmt::format("{}", value.value)) : plain({});
    }
    Row& day(const std::optional<CivilDay>& day) { return plain(day ? isoDate(*day) : ""); }
    /// What the record is called, where its code is not that.
    Row& shownAs(const std::string& name, const std::string& code) {
        return name == code ? plain({}) : plain(guardedText(name));
    }
    Done into(const Sink& sink) { return sink(line_ += "\r\n"); }

private:
    std::string line_;
    bool hasCells_ = false;
};

Done writeHeader(std::initializer_list<std::string_view> columns, const Sink& sink) {
    Row row;
    for (const auto column : columns) row.plain(column);
    return row.into(sink);
}

/// The words that bring() reads from the one column: only those that it would not assume.
std::string statusOf(const Subject& subject) {
    std::string words;
    const auto add = [&](std::string_view word) {
        if (!words.empty()) words += ", ";
        words += word;
    };
    if (subject.standing != Standing::here) add(name(subject.standing));
    const auto assumed = subject.headcount > 1 ? Form::group : Form::animal;
    if (subject.form != assumed) add(name(subject.form));
    if (subject.quarantined) add("quarantine");
    if (subject.mature) add("mature");
    if (words.empty()) add(name(Standing::here));
    return words;
}

std::string placeText(const Place& place) { return std::string(trimmed(place.text())); }

Done writeSettings(const RoomInfo& room, const Sink& sink) {
    BURROW_DO(writeHeader({"name", "value"}, sink));
    const auto write = [&](const std::string& name, const std::string& value) {
        return Row().text(name).text(value).into(sink);
    };
    BURROW_DO(write(setting::room, room.name));
    BURROW_DO(write(setting::roomCode, room.code));
    if (!room.contact.empty()) BURROW_DO(write(setting::contact, room.contact));
    for (const auto& [rule, value] : room.rules) {
        BURROW_DO(write(std::string(setting::rule) + rule, value));
    }
    for (const auto& [species, text] : room.profiles) {
        BURROW_DO(write(std::string(setting::profile) + species, text));
    }
    for (const auto& [name, value] : room.others) {
        if (setting::isOwn(name)) BURROW_DO(write(name, value));
    }
    return {};
}

Done writeEnclosures(const Gathered& all, const Sink& sink) {
    BURROW_DO(writeHeader(
        {"code", "shown_as", "length_mm", "width_mm", "height_mm", "substrate_mm", "place", "note"},
        sink));
    for (const auto& [code, enclosure] : all.enclosures) {
        BURROW_DO(Row()
                      .text(code)
                      .shownAs(enclosure.name, code)
                      .millimetres(enclosure.length)
                      .millimetres(enclosure.width)
                      .millimetres(enclosure.height)
                      .millimetres(enclosure.substrate)
                      .text(placeText(enclosure.place))
                      .text(enclosure.note)
                      .into(sink));
    }
    return {};
}

Done writeAnimals(const Gathered& all, const Sink& sink) {
    BURROW_DO(writeHeader(
        {"code", "shown_as", "species", "sex", "hatched_on", "acquired_on", "source", "status",
         "place", "enclosure", "mother", "father", "count", "note", "quarantined_on", "complete"},
        sink));
    for (const auto& animal : all.animals) {
        const auto& subject = animal.recorded;
        BURROW_DO(Row()
                      .text(animal.code)
                      .shownAs(subject.number, animal.code)
                      .plain(guardedText(subject.species))
                      .plain(name(subject.sex))
                      .day(subject.hatched)
                      .day(subject.acquired)
                      .text(subject.source)
                      .plain(statusOf(subject))
                      .text(placeText(subject.place))
                      .text(all.codeOf(subject.enclosure))
                      .text(all.codeOf(subject.mother))
                      .text(all.codeOf(subject.father))
                      .plain(std::to_string(subject.headcount))
                      .text(subject.note)
                      .day(animal.kept.quarantinedSince)
                      .plain("yes")
                      .into(sink));
    }
    return {};
}

Done writeTags(const Gathered& all, const Sink& sink) {
    BURROW_DO(writeHeader({"code", "side_mm", "animal", "enclosure"}, sink));
    for (const auto& tag : all.tags) {
        BURROW_DO(Row()
                      .plain(tag.code)
                      .millimetres(tag.printedSide)
                      .text(all.codeOf(tag.subject))
                      .text(all.codeOf(tag.enclosure))
                      .into(sink));
    }
    return {};
}

/// Text as it was, an empty place or text as one that is there; the rest as it is read.
std::string fieldCell(const FactBody& body, const FieldSpec& field) {
    const auto text = fieldText(body, field.name);
    if (!text) return {};
    if (field.type == FieldType::place) return guardedText(trimmed(*text));
    return field.type == FieldType::text ? guardedText(*text) : *text;
}

}  // namespace

std::string photoName(const Sha256& picture) { return "photos/" + picture.hex() + ".jpg"; }

Done writeTable(CsvKind kind, const Gathered& all, const Sink& sink) {
    switch (kind) {
        case CsvKind::settings: return writeSettings(all.room, sink);
        case CsvKind::enclosures: return writeEnclosures(all, sink);
        case CsvKind::animals: return writeAnimals(all, sink);
        case CsvKind::tags: return writeTags(all, sink);
        case CsvKind::events: break;
    }
    return {};
}

Done EventTables::writeHeaders() {
    Row row;
    for (const auto* column : {"code", "at", "on_day", "event"}) row.plain(column);
    for (const auto& field : factFields()) {
        if (field.name == "about") row.plain("entry_ref");
        row.plain(field.name == "text" ? "note" : field.name);
    }
    BURROW_DO(row.into(events_));
    return writeHeader({"file", "code", "species", "on_day", "at", "role", "about", "note"},
                       photos_);
}

std::string EventTables::cell(std::string_view column, const Fact& fact) const {
    if (column == "enclosure") {
        return fact.body.enclosure ? guardedText(all_.codeOf(fact.body.enclosure)) : "";
    }
    if (column == "about" && fact.body.about) {
        const auto label = all_.labelOf(*fact.body.about);
        return label.empty() ? fact.body.about->text() : label;
    }
    const auto fields = factFields();
    const auto field = std::find_if(fields.begin(), fields.end(),
                                    [&](const FieldSpec& f) { return f.name == column; });
    return fieldCell(fact.body, *field);
}

Done EventTables::write(const GatheredAnimal& animal, const Fact& fact) {
    Row row;
    row.text(animal.code)
        .plain(isoInstant(fact.happenedAt))
        .plain(isoDate(fact.day))
        .plain(spec(fact.kind).name);
    for (const auto& field : factFields()) {
        if (field.name == "about") row.plain(all_.labelOf(fact.id));
        row.plain(cell(field.name, fact));
    }
    BURROW_DO(row.into(events_));
    if (fact.kind != FactKind::photo || !fact.body.picture) return {};
    return Row()
        .plain(photoName(*fact.body.picture))
        .text(animal.code)
        .text(animal.recorded.species)
        .plain(isoDate(fact.day))
        .plain(isoInstant(fact.happenedAt))
        .plain(cell("role", fact))
        .plain(cell("about", fact))
        .text(fact.body.text.value_or(std::string()))
        .into(photos_);
}

}  // namespace burrow::exchange
