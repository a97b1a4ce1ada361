#include "journal/fields.h"

#include <array>

namespace burrow {
namespace {

using nlohmann::json;

constexpr std::array<std::string_view, 4> typeNames{"book", "subject", "enclosure", "tag"};

/// Reads fields one by one; what cannot be read leaves the record as it was.
class Reader {
public:
    explicit Reader(const FieldValues& fields) : fields_(fields) {}

    void text(const char* name, std::string& into) const {
        if (const auto* value = find(name); value != nullptr && value->is_string()) {
            into = value->get<std::string>();
        }
    }
    void flag(const char* name, bool& into) const {
        if (const auto* value = find(name); value != nullptr && value->is_boolean()) {
            into = value->get<bool>();
        }
    }
    void count(const char* name, int& into) const {
        const auto* value = find(name);
        if (value == nullptr || !value->is_number_integer()) return;
        const auto number = value->get<std::int64_t>();
        if (number >= 0 && number <= 1'000'000) into = static_cast<int>(number);
    }
    void millimetres(const char* name, Millimetres& into) const {
        const auto* value = find(name);
        if (value == nullptr || !value->is_number()) return;
        const auto number = value->get<double>();
        if (number >= 0 && number <= 100'000) into = {number};
    }
    void day(const char* name, std::optional<CivilDay>& into) const {
        std::string written;
        text(name, written);
        if (const auto value = parseIsoDate(written)) into = value;
    }
    template <class Thing>
    void id(const char* name, std::optional<Id<Thing>>& into) const {
        std::string written;
        text(name, written);
        if (const auto uuid = Uuid::parse(written)) into = Id<Thing>{*uuid};
    }
    template <class Term>
    void term(const char* name, Term& into) const {
        std::string written;
        text(name, written);
        if (const auto value = parseTerm<Term>(written)) into = *value;
    }
    void place(const char* name, Place& into) const {
        std::string written;
        text(name, written);
        if (!written.empty()) into = Place::parse(written);
    }

private:
    [[nodiscard]] const json* find(const char* name) const {
        const auto found = fields_.find(name);
        return found == fields_.end() ? nullptr : &found->second;
    }
    const FieldValues& fields_;
};

/// Writes only what differs from an empty record.
class Writer {
public:
    void text(const char* name, const std::string& value) {
        if (!value.empty()) fields_[name] = value;
    }
    void flag(const char* name, bool value) {
        if (value) fields_[name] = true;
    }
    void millimetres(const char* name, Millimetres value) {
        if (value.value > 0) fields_[name] = value.value;
    }
    void day(const char* name, std::optional<CivilDay> value) {
        if (value) fields_[name] = isoDate(*value);
    }
    template <class Thing>
    void id(const char* name, const std::optional<Id<Thing>>& value) {
        if (value) fields_[name] = value->text();
    }
    template <class Term>
    void term(const char* name, Term value) {
        if (value != Term{}) fields_[name] = std::string(burrow::name(value));
    }
    void count(const char* name, int value, int usual) {
        if (value != usual) fields_[name] = value;
    }
    FieldValues take() { return std::move(fields_); }

private:
    FieldValues fields_;
};

}  // namespace

std::string_view name(ThingType type) { return typeNames.at(static_cast<std::size_t>(type)); }

std::optional<ThingType> parseThingType(std::string_view text) {
    for (std::size_t i = 0; i < typeNames.size(); ++i) {
        if (typeNames.at(i) == text) return static_cast<ThingType>(i);
    }
    return std::nullopt;
}

FieldValues toFields(const Subject& subject) {
    Writer out;
    out.text("number", subject.number);
    out.term("form", subject.form);
    out.text("species", subject.species);
    out.term("sex", subject.sex);
    out.day("hatched", subject.hatched);
    out.day("acquired", subject.acquired);
    out.text("source", subject.source);
    out.term("standing", subject.standing);
    out.flag("quarantined", subject.quarantined);
    out.flag("mature", subject.mature);
    out.id("enclosure", subject.enclosure);
    out.text("place", subject.place.text());
    out.id("mother", subject.mother);
    out.id("father", subject.father);
    out.count("count", subject.headcount, 1);
    out.text("note", subject.note);
    return out.take();
}

FieldValues toFields(const Enclosure& enclosure) {
    Writer out;
    out.text("name", enclosure.name);
    out.millimetres("length_mm", enclosure.length);
    out.millimetres("width_mm", enclosure.width);
    out.millimetres("height_mm", enclosure.height);
    out.millimetres("substrate_mm", enclosure.substrate);
    out.text("place", enclosure.place.text());
    out.text("note", enclosure.note);
    return out.take();
}

FieldValues toFields(const Tag& tag) {
    Writer out;
    out.text("code", tag.code);
    out.millimetres("side_mm", tag.printedSide);
    out.id("subject", tag.subject);
    out.id("enclosure", tag.enclosure);
    return out.take();
}

Subject subjectFrom(SubjectId id, const FieldValues& fields) {
    const Reader in(fields);
    Subject subject;
    subject.id = id;
    in.text("number", subject.number);
    in.term("form", subject.form);
    in.text("species", subject.species);
    in.term("sex", subject.sex);
    in.day("hatched", subject.hatched);
    in.day("acquired", subject.acquired);
    in.text("source", subject.source);
    in.term("standing", subject.standing);
    in.flag("quarantined", subject.quarantined);
    in.flag("mature", subject.mature);
    in.id("enclosure", subject.enclosure);
    in.place("place", subject.place);
    in.id("mother", subject.mother);
    in.id("father", subject.father);
    in.count("count", subject.headcount);
    in.text("note", subject.note);
    return subject;
}

Enclosure enclosureFrom(EnclosureId id, const FieldValues& fields) {
    const Reader in(fields);
    Enclosure enclosure;
    enclosure.id = id;
    in.text("name", enclosure.name);
    in.millimetres("length_mm", enclosure.length);
    in.millimetres("width_mm", enclosure.width);
    in.millimetres("height_mm", enclosure.height);
    in.millimetres("substrate_mm", enclosure.substrate);
    in.place("place", enclosure.place);
    in.text("note", enclosure.note);
    return enclosure;
}

Tag tagFrom(const FieldValues& fields) {
    const Reader in(fields);
    Tag tag;
    in.text("code", tag.code);
    in.millimetres("side_mm", tag.printedSide);
    in.id("subject", tag.subject);
    in.id("enclosure", tag.enclosure);
    return tag;
}

Uuid tagThing(std::string_view code) { return Uuid::named("burrowbook tag " + std::string(code)); }

}  // namespace burrow
