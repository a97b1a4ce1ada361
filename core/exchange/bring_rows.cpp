#include "exchange/bring_rows.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "journal/fields.h"
#include "journal/roster.h"
#include "tags/code.h"

namespace burrow::exchange {
namespace {

/// What a reading function throws inside this file; it never leaves draftsFor().
struct BadCell {
    CellProblem problem;
};

[[noreturn]] void refuse(std::string_view column, Message reason) {
    throw BadCell{{std::string(column), std::move(reason)}};
}

}  // namespace

Done KnownCodes::load(Book& book) {
    BURROW_TRY(const auto everyone, roster(book));
    for (const auto& kept : everyone) subjects_[kept.subject.number] = {kept.subject.id, true};
    BURROW_TRY(const auto homes, enclosures(book));
    for (const auto& home : homes) enclosures_[home.name] = home.id;
    return {};
}

void KnownCodes::announce(const std::string& code, Book& book) {
    if (!code.empty() && !subjects_.contains(code))
        subjects_[code] = {SubjectId{book.newId()}, false};
}

std::optional<SubjectId> KnownCodes::subject(std::string_view code) const {
    const auto found = subjects_.find(std::string(code));
    return found == subjects_.end() ? std::nullopt : std::optional(found->second.id);
}

std::optional<EnclosureId> KnownCodes::enclosure(std::string_view code) const {
    const auto found = enclosures_.find(std::string(code));
    return found == enclosures_.end() ? std::nullopt : std::optional(found->second);
}

bool KnownCodes::claim(const std::string& code) {
    auto& named = subjects_.at(code);
    return !std::exchange(named.isTaken, true);
}

bool KnownCodes::addEnclosure(const std::string& code, EnclosureId id) {
    return enclosures_.try_emplace(code, id).second;
}

/// The cells of one row by column name; remembers which were used, so that the rest can be kept as
/// notes.
class RowMaker::Cells {
public:
    Cells(const std::vector<std::string>& header, const std::vector<std::string>& cells,
          char delimiter)
        : header_(header), cells_(cells), isUsed_(header.size()), delimiter_(delimiter) {}

    [[nodiscard]] const std::string& text(std::string_view column) const {
        static const std::string none;
        for (std::size_t i = 0; i < header_.size(); ++i) {
            if (header_[i] != column) continue;
            isUsed_[i] = true;
            return cells_[i];
        }
        return none;
    }
    [[nodiscard]] const std::string& needed(std::string_view column) const {
        const auto& value = text(column);
        if (value.empty()) refuse(column, {"cell.empty"});
        return value;
    }
    [[nodiscard]] std::optional<CivilDay> day(std::string_view column) const {
        const auto& value = text(column);
        if (value.empty()) return std::nullopt;
        const auto day = parseIsoDate(value);
        if (!day) refuse(column, {"cell.date", {{"value", value}}});
        return day;
    }
    [[nodiscard]] Millimetres millimetres(std::string_view column) const {
        const auto value = number(text(column));
        if (value.empty()) return {};
        const auto parsed = parseNumber(value);
        if (!parsed || *parsed < 0 || *parsed > 5000) {
            refuse(column, {"cell.millimetres", {{"value", value}}});
        }
        return {*parsed};
    }
    template <class Term>
    [[nodiscard]] Term term(std::string_view column, Term usual) const {
        const auto& value = text(column);
        if (value.empty()) return usual;
        const auto term = parseTerm<Term>(value);
        if (!term) refuse(column, {"cell.word", {{"value", value}}});
        return *term;
    }
    /// Where the delimiter is not a comma, a comma may be the decimal sign.
    [[nodiscard]] std::string number(std::string text) const {
        if (delimiter_ != ',') std::replace(text.begin(), text.end(), ',', '.');
        return text;
    }
    /// The cells nobody asked for, "colour: red; feeder: tongs".
    [[nodiscard]] std::string rest() const {
        std::string all;
        for (std::size_t i = 0; i < header_.size(); ++i) {
            // A file of bad rows carries the reason along, which is nothing about the animal.
            if (isUsed_[i] || cells_[i].empty() || header_[i] == "reason") continue;
            if (!all.empty()) all += "; ";
            all += header_[i].empty() ? cells_[i] : header_[i] + ": " + cells_[i];
        }
        return all;
    }
    [[nodiscard]] std::string noteAndRest() const {
        auto note = text("note");
        const auto others = rest();
        if (!note.empty() && !others.empty()) note += "; ";
        return note + others;
    }
    [[nodiscard]] const std::vector<std::string>& columns() const { return header_; }

private:
    const std::vector<std::string>& header_;
    const std::vector<std::string>& cells_;
    mutable std::vector<bool> isUsed_;
    char delimiter_;
};

RowMaker::Drafts RowMaker::draftsFor(CsvKind kind, const std::vector<std::string>& cells) const {
    const Cells row(header_, cells, delimiter_);
    try {
        switch (kind) {
            case CsvKind::enclosures: return enclosureDrafts(row);
            case CsvKind::animals: return animalDrafts(row);
            case CsvKind::events: return eventDrafts(row);
        }
    } catch (BadCell& bad) {
        return tl::unexpected(std::move(bad.problem));
    }
    return std::vector<Draft>();
}

RowMaker::Drafts RowMaker::enclosureDrafts(const Cells& cells) const {
    Enclosure enclosure;
    enclosure.id = EnclosureId{book_.newId()};
    enclosure.name = cells.needed("code");
    enclosure.length = cells.millimetres("length_mm");
    enclosure.width = cells.millimetres("width_mm");
    enclosure.height = cells.millimetres("height_mm");
    enclosure.substrate = cells.millimetres("substrate_mm");
    if (const auto& place = cells.text("place"); !place.empty())
        enclosure.place = Place::parse(place);
    enclosure.note = cells.noteAndRest();
    if (!known_.addEnclosure(enclosure.name, enclosure.id)) {
        refuse("code", {"cell.taken", {{"value", enclosure.name}}});
    }
    return std::vector<Draft>{
        SetDraft{ThingType::enclosure, enclosure.id.uuid, toFields(enclosure)}};
}

namespace {

/// "quarantine", "on loan", "group, quarantine": standing, form and quarantine may share the column.
void readStatus(Subject& subject, const std::string& text) {
    for (const auto part : split(text, ',')) {
        const auto word = normalTerm(part);
        if (word.empty()) continue;
        if (word == "quarantine" || word == "quarantined") {
            subject.quarantined = true;
        } else if (word == "mature") {
            subject.mature = true;
        } else if (const auto standing = parseTerm<Standing>(word)) {
            subject.standing = *standing;
        } else if (const auto form = parseTerm<Form>(word)) {
            subject.form = *form;
        } else {
            refuse("status", {"cell.word", {{"value", std::string(trimmed(part))}}});
        }
    }
}

int readCount(const std::string& text) {
    if (text.empty()) return 1;
    const auto count = parseInteger(text);
    if (!count || *count < 1 || *count > 100'000) {
        refuse("count", {"cell.count", {{"value", text}}});
    }
    return static_cast<int>(*count);
}

}  // namespace

RowMaker::Drafts RowMaker::animalDrafts(const Cells& cells) const {
    Subject subject;
    subject.number = cells.needed("code");
    subject.species = cells.needed("species");
    subject.sex = cells.term("sex", Sex::unknown);
    subject.hatched = cells.day("hatched_on");
    subject.acquired = cells.day("acquired_on");
    subject.source = cells.text("source");
    subject.headcount = readCount(cells.text("count"));
    if (subject.headcount > 1) subject.form = Form::group;
    readStatus(subject, cells.text("status"));
    if (const auto& place = cells.text("place"); !place.empty())
        subject.place = Place::parse(place);
    const auto parent = [&](std::string_view column) -> std::optional<SubjectId> {
        const auto& code = cells.text(column);
        if (code.empty()) return std::nullopt;
        const auto id = known_.subject(code);
        if (!id) refuse(column, {"cell.unknownAnimal", {{"value", code}}});
        if (code == subject.number) refuse(column, {"cell.ownParent", {{"value", code}}});
        return id;
    };
    subject.mother = parent("mother");
    subject.father = parent("father");
    if (const auto& code = cells.text("enclosure"); !code.empty()) {
        subject.enclosure = known_.enclosure(code);
        if (!subject.enclosure) refuse("enclosure", {"cell.unknownEnclosure", {{"value", code}}});
    }
    subject.note = cells.noteAndRest();
    if (!known_.claim(subject.number)) {
        refuse("code", {"cell.taken", {{"value", subject.number}}});
    }
    subject.id = *known_.subject(subject.number);
    const Tag tag{tags::generateCode(book_.surroundings().random), tags::printedSide, subject.id,
                  std::nullopt};
    return std::vector<Draft>{SetDraft{ThingType::subject, subject.id.uuid, toFields(subject)},
                              SetDraft{ThingType::tag, tagThing(tag.code), toFields(tag)}};
}

RowMaker::Drafts RowMaker::eventDrafts(const Cells& cells) const {
    const auto& code = cells.needed("code");
    const auto subject = known_.subject(code);
    if (!subject) refuse("code", {"cell.unknownAnimal", {{"value", code}}});
    const auto& at = cells.needed("at");
    const auto moment = parseIsoMoment(at);
    if (!moment) refuse("at", {"cell.date", {{"value", at}}});
    const auto& event = cells.needed("event");
    const auto kind = parseFactKind(event);
    if (!kind) refuse("event", {"cell.event", {{"value", event}}});

    FactDraft draft{*subject, *kind, {}, book_.surroundings().zone.resolve(*moment)};
    for (const auto& column : cells.columns()) {
        const auto fields = factFields();
        const bool isField = std::any_of(fields.begin(), fields.end(),
                                         [&](const FieldSpec& f) { return f.name == column; });
        if (!isField || column == "text") continue;
        // A column is shared by all kinds of events, so a cell that this kind has no use for is kept
        // as a note, not refused.
        const auto& row = spec(*kind);
        const bool kindHasIt =
            std::find(row.required.begin(), row.required.end(), column) != row.required.end() ||
            std::find(row.allowed.begin(), row.allowed.end(), column) != row.allowed.end();
        if (!kindHasIt) continue;
        auto value = cells.text(column);
        if (value.empty()) continue;
        if (column == "enclosure") {
            draft.body.enclosure = known_.enclosure(value);
            if (!draft.body.enclosure) {
                refuse(column, {"cell.unknownEnclosure", {{"value", value}}});
            }
            continue;
        }
        if (column.ends_with("_mm") || column.ends_with("_g")) value = cells.number(value);
        if (const auto set = setField(draft.body, *kind, column, value); !set) {
            refuse(column, set.error().message);
        }
    }
    if (auto note = cells.noteAndRest(); !note.empty()) {
        if (const auto set = setField(draft.body, *kind, "text", note); !set) {
            refuse("note", set.error().message);
        }
    }
    if (const auto complete = checkComplete(draft.body, *kind); !complete) {
        const auto* field = complete.error().message.find("field");
        auto column = field != nullptr ? std::get<std::string>(*field) : std::string();
        refuse(column == "text" ? "note" : column, complete.error().message);
    }
    return std::vector<Draft>{std::move(draft)};
}

}  // namespace burrow::exchange
