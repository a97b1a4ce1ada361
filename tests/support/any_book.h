// Random books for property tests: every kind of fact with every field, edits, amendments, retractions,
// groups, enclosures, tags and parents, and texts that a file format could trip over.
#pragma once

#include <rapidcheck.h>

#include "support/book.h"
#include "tags/code.h"

namespace burrow::test {

/// Texts with what CSV, spreadsheets and JSON give a meaning of their own.
inline std::string anyText() {
    const std::vector<std::string> pieces{"webbed over",
                                          " ",
                                          ",",
                                          ";",
                                          "\"",
                                          "'",
                                          "=1+1",
                                          "-",
                                          "@",
                                          "+",
                                          "\n",
                                          "\r\n",
                                          "\t",
                                          "\\",
                                          "ü",
                                          "🕷",
                                          "</b>",
                                          "|",
                                          "null",
                                          "0",
                                          "\xEF\xBC\x9D",
                                          "1/2",
                                          "yes",
                                          "\u202E",
                                          "\xEF\xBB\xBF",
                                          "#",
                                          "''",
                                          "%",
                                          "dull, "};
    std::string text;
    for (int n = *rc::gen::inRange(0, 5); n > 0; --n) text += *rc::gen::elementOf(pieces);
    return text;
}

inline std::string anyValue(const FieldSpec& field, const std::vector<Uuid>& ids) {
    const auto number = [&](double least, double most) {
        return std::to_string(
            *rc::gen::inRange(static_cast<int>(least * 100) + 1, static_cast<int>(most * 100)) /
            100.0);
    };
    switch (field.type) {
        case FieldType::text: return anyText();
        case FieldType::place: return *rc::gen::element<std::string>("A / 2", "B", " / 3", "");
        case FieldType::count: return std::to_string(*rc::gen::inRange(0, 9));
        case FieldType::millimetres:
        case FieldType::grams: return number(field.least, field.most);
        case FieldType::outcome:
            return *rc::gen::element<std::string>("ate", "part", "refused", "left_in");
        case FieldType::method: return *rc::gen::element<std::string>("eye", "ruler", "photo");
        case FieldType::sex: return *rc::gen::element<std::string>("female", "male", "unknown");
        case FieldType::role: return *rc::gen::element<std::string>("animal", "moult", "enclosure");
        case FieldType::look:
            return *rc::gen::element<std::string>("moult", "underside", "mature", "colour");
        case FieldType::clarity:
            return *rc::gen::element<std::string>("barely", "partly", "fairly", "clearly",
                                                  "beyond_doubt");
        case FieldType::flag: return *rc::gen::element<std::string>("yes", "no");
        case FieldType::day: return isoDate(CivilDay{*rc::gen::inRange(18'000, 21'000)});
        case FieldType::enclosure:
        case FieldType::entry: return (*rc::gen::elementOf(ids)).text();
        case FieldType::hash: return Sha256::of(std::to_string(*rc::gen::inRange(0, 9))).hex();
    }
    return {};
}

/// A body of that kind with some of its fields, and all that it needs.
inline FactBody anyBody(FactKind kind, const std::vector<Uuid>& enclosures,
                        const std::vector<Uuid>& entries) {
    FactBody body;
    const auto& row = spec(kind);
    for (const auto& field : factFields()) {
        const bool isNeeded =
            std::find(row.required.begin(), row.required.end(), field.name) != row.required.end();
        if (!kindHas(kind, field.name) || (!isNeeded && *rc::gen::inRange(0, 3) == 0)) continue;
        const auto& ids = field.type == FieldType::entry ? entries : enclosures;
        must(setFieldExactly(body, kind, field.name, anyValue(field, ids)));
    }
    return body;
}

class AnyBook {
public:
    explicit AnyBook(int most) : room_(*rc::gen::arbitrary<std::uint64_t>()) {
        const int animals = *rc::gen::inRange(1, 6);
        for (int i = 0; i < animals; ++i) subjects_.push_back(SubjectId{room_.book.newId()});
        enclosures_.push_back(room_.book.newId());  // one that is nowhere in the book
        entries_.push_back(room_.book.newId());
        for (int n = *rc::gen::inRange(0, 4); n > 0; --n) addEnclosure();
        for (const auto subject : subjects_) editSubject(subject);
        for (int n = *rc::gen::inRange(1, most); n > 0; --n) step();
    }
    TestBook& operator*() { return room_; }
    TestBook* operator->() { return &room_; }

private:
    void step() {
        room_.clock.set({room_.clock.now().ms + *rc::gen::inRange(0, 90'000'000)});
        const auto subject = *rc::gen::elementOf(subjects_);
        switch (*rc::gen::inRange(0, 14)) {
            case 0: editSubject(subject); break;
            case 1: addEnclosure(); break;
            case 2: hangTag(subject); break;
            case 3: amend(subject); break;
            case 4: retract(); break;
            case 5: setRoom(); break;
            default: log(subject);
        }
    }
    void record(Draft draft) {
        const auto written = room_.book.record(std::span(&draft, 1));
        // Nothing happens to a subject whose fields were all taken back.
        if (!written && written.error().trouble == Trouble::notFound) return;
        const auto& changes = written.value();
        for (const auto& entry : changes.entries) entries_.push_back(entry.uuid);
    }
    void editSubject(SubjectId id) {
        Subject subject;
        subject.id = id;
        // Few numbers, so that they clash.
        subject.number =
            *rc::gen::element<std::string>("214", "007", "7", "", "A 1", "=2", "214~2");
        subject.species = *rc::gen::element<std::string>("Brachypelma hamorii",
                                                         "Poecilotheria "
                                                         "regalis",
                                                         "", "-sp.");
        subject.sex = *rc::gen::element(Sex::unknown, Sex::female, Sex::male);
        subject.form = *rc::gen::element(Form::animal, Form::group, Form::lot);
        subject.standing =
            *rc::gen::element(Standing::here, Standing::here, Standing::onLoan, Standing::sold);
        subject.quarantined = *rc::gen::arbitrary<bool>();
        subject.mature = *rc::gen::arbitrary<bool>();
        subject.headcount = *rc::gen::inRange(0, 4);
        if (*rc::gen::arbitrary<bool>()) {
            subject.hatched = CivilDay{*rc::gen::inRange(18'000, 20'000)};
        }
        if (*rc::gen::arbitrary<bool>()) {
            subject.acquired = CivilDay{*rc::gen::inRange(19'000, 20'500)};
        }
        if (*rc::gen::arbitrary<bool>()) {
            subject.enclosure = EnclosureId{*rc::gen::elementOf(enclosures_)};
        }
        subject.place = Place::parse(*rc::gen::element<std::string>("", "A / 2", "C", "/ 4"));
        const auto mother = *rc::gen::elementOf(subjects_);
        if (mother != id) subject.mother = mother;
        if (*rc::gen::inRange(0, 5) == 0) subject.father = SubjectId{entries_.front()};
        subject.source = anyText();
        subject.note = anyText();
        record(SetDraft{ThingType::subject, id.uuid, changedFields(Subject{}, subject)});
    }
    void addEnclosure() {
        Enclosure home;
        home.id = EnclosureId{room_.book.newId()};
        home.name = *rc::gen::element<std::string>("E1", "E1", "", "Tub, large", "+2");
        home.length = {*rc::gen::inRange(0, 90'000) / 100.0};
        home.substrate = {*rc::gen::inRange(0, 300) / 7.0};
        home.place = Place::parse(*rc::gen::element<std::string>("", "A / 2", "/ 4"));
        home.note = anyText();
        // Without any field there would be no enclosure.
        auto fields = toFields(home);
        fields.try_emplace("name", home.name);
        record(SetDraft{ThingType::enclosure, home.id.uuid, fields});
        enclosures_.push_back(home.id.uuid);
    }
    void hangTag(SubjectId subject) {
        Tag tag;
        tag.code = tags::generateCode(room_.random);
        tag.printedSide = tags::printedSide;
        switch (*rc::gen::inRange(0, 3)) {
            case 0: break;
            case 1: tag.enclosure = EnclosureId{*rc::gen::elementOf(enclosures_)}; break;
            default: tag.subject = subject;
        }
        record(SetDraft{ThingType::tag, tagThing(tag.code), toFields(tag)});
    }
    void log(SubjectId subject) {
        const auto kinds = factKinds();
        const auto kind = kinds[*rc::gen::inRange<std::size_t>(0, kinds.size())].kind;
        FactDraft draft{subject, kind, anyBody(kind, enclosures_, entries_)};
        if (*rc::gen::inRange(0, 3) == 0) {
            draft.happenedAt = Instant{room_.clock.now().ms - *rc::gen::inRange(0, 2'000'000'000)};
            // Written down in another zone.
            if (*rc::gen::arbitrary<bool>()) {
                draft.day =
                    CivilDay{static_cast<std::int32_t>(draft.happenedAt->ms / msPerDay) + 1};
            }
        }
        record(draft);
    }
    void amend(SubjectId subject) {
        const auto facts = history(room_.book, subject, 20).value();
        if (facts.empty()) return;
        const auto fact = *rc::gen::elementOf(facts);
        record(AmendDraft{fact.id, anyBody(fact.kind, enclosures_, entries_),
                          Instant{fact.happenedAt.ms - *rc::gen::inRange(0, 100'000'000)}});
    }
    void retract() {
        // Not the first two, which name the room and nothing at all.
        if (entries_.size() < 3) return;
        record(RetractDraft{EntryId{entries_[*rc::gen::inRange<std::size_t>(1, entries_.size())]}});
    }
    void setRoom() {
        record(SetDraft{ThingType::book,
                        room_.book.id().uuid,
                        {{"contact", anyText()}, {"rule.feed.interval.adult", "20-25"}}});
    }

    TestBook room_;
    std::vector<SubjectId> subjects_;
    std::vector<Uuid> enclosures_;
    std::vector<Uuid> entries_;
};

}  // namespace burrow::test
