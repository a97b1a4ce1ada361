#include "exchange/bring_rows.h"

#include <algorithm>

#include "base/text.h"
#include "journal/fields.h"
#include "tags/code.h"

namespace burrow::exchange {
namespace {

/// What it is called in the book, where its code in the file had to be another (see LEAVING.md).
const std::string& shownName(const RowCells& cells) {
    return cells.isGiven("shown_as") ? cells.text("shown_as") : cells.text("code");
}

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

/// A row that says all there is to say may also say that none are left of a group.
int readCount(const std::string& text, bool isComplete) {
    if (text.empty()) return 1;
    const auto count = parseInteger(text);
    const int least = isComplete ? 0 : 1;
    if (!count || *count < least || *count > 100'000) {
        refuse("count", {"cell.count", {{"value", text}}});
    }
    return static_cast<int>(*count);
}

/// One that is called nothing and of which nothing is known is there all the same, but an entry that sets
/// no field would not make it: so what it is called is said.
Draft firstWords(ThingType type, const Uuid& thing, FieldValues fields, const char* called) {
    if (fields.empty()) fields[called] = "";
    return SetDraft{type, thing, std::move(fields)};
}

Place readPlace(const std::string& text) { return text.empty() ? Place{} : Place::parse(text); }

}  // namespace

RowMaker::Drafts RowMaker::draftsFor(CsvKind kind, const std::vector<std::string>& cells) const {
    const Cells row(header_, cells, delimiter_);
    try {
        switch (kind) {
            case CsvKind::settings: return settingDrafts(row);
            case CsvKind::enclosures: return enclosureDrafts(row);
            case CsvKind::animals: return animalDrafts(row);
            case CsvKind::tags: return tagDrafts(row);
            case CsvKind::events: return eventDrafts(row);
        }
    } catch (BadCell& bad) {
        return tl::unexpected(std::move(bad.problem));
    }
    return std::vector<Draft>();
}

RowMaker::Drafts RowMaker::settingDrafts(const Cells& cells) const {
    const auto& setting = cells.needed("name");
    const auto& value = cells.text("value");
    // A book keeps the name it was given; the file says it only to be read.
    if (setting == setting::room || setting == setting::roomCode) return std::vector<Draft>();
    // A rule or a profile that this version does not know is kept, and counts for those who know it.
    const bool isOwn = setting.size() <= 100 && setting::isOwn(setting);
    if (!isOwn && setting != setting::contact) {
        refuse("name", {"cell.setting", {{"value", setting}}});
    }
    return std::vector<Draft>{SetDraft{ThingType::book, book_.id().uuid, {{setting, value}}}};
}

RowMaker::Drafts RowMaker::enclosureDrafts(const Cells& cells) const {
    Enclosure enclosure;
    enclosure.id = EnclosureId{book_.newId()};
    const auto& code = cells.needed("code");
    enclosure.name = shownName(cells);
    enclosure.length = cells.millimetres("length_mm");
    enclosure.width = cells.millimetres("width_mm");
    enclosure.height = cells.millimetres("height_mm");
    enclosure.substrate = cells.millimetres("substrate_mm");
    enclosure.place = readPlace(cells.text("place"));
    enclosure.note = cells.noteAndRest();
    if (known_.isEnclosureInBook(enclosure.name)) {
        refuse(cells.isGiven("shown_as") ? "shown_as" : "code",
               {"cell.taken", {{"value", enclosure.name}}});
    }
    if (!known_.addEnclosure(code, enclosure.id)) refuse("code", {"cell.taken", {{"value", code}}});
    return std::vector<Draft>{
        firstWords(ThingType::enclosure, enclosure.id.uuid, toFields(enclosure), "name")};
}

std::optional<EnclosureId> RowMaker::home(const Cells& cells) const {
    if (!cells.isGiven("enclosure")) return std::nullopt;
    const auto& code = cells.text("enclosure");
    if (const auto known = known_.enclosure(code)) return known;
    // One that the book left behind named it, but did not hold it.
    if (const auto elsewhere = Uuid::parse(code)) return EnclosureId{*elsewhere};
    refuse("enclosure", {"cell.unknownEnclosure", {{"value", code}}});
}

std::optional<SubjectId> RowMaker::otherAnimal(const Cells& cells, std::string_view column) const {
    if (!cells.isGiven(column)) return std::nullopt;
    const auto& code = cells.text(column);
    if (const auto known = known_.subject(code)) return known;
    if (const auto elsewhere = Uuid::parse(code)) return SubjectId{*elsewhere};
    refuse(column, {"cell.unknownAnimal", {{"value", code}}});
}

Subject RowMaker::readSubject(const Cells& cells) const {
    Subject subject;
    const bool isComplete = cells.flag("complete");
    const auto& code = cells.needed("code");
    subject.number = shownName(cells);
    subject.species = cells.needed("species");
    subject.sex = cells.term("sex", Sex::unknown);
    subject.hatched = cells.day("hatched_on");
    subject.acquired = cells.day("acquired_on");
    subject.source = cells.text("source");
    subject.headcount = readCount(cells.text("count"), isComplete);
    if (subject.headcount > 1) subject.form = Form::group;
    readStatus(subject, cells.text("status"));
    subject.place = readPlace(cells.text("place"));
    subject.mother = otherAnimal(cells, "mother");
    subject.father = otherAnimal(cells, "father");
    for (const auto* column : {"mother", "father"}) {
        if (cells.text(column) == code) refuse(column, {"cell.ownParent", {{"value", code}}});
    }
    subject.enclosure = home(cells);
    subject.note = cells.noteAndRest();
    return subject;
}

RowMaker::Drafts RowMaker::animalDrafts(const Cells& cells) const {
    // Before the rest is gathered into the note, since a cell that is used is no part of it.
    const auto since = cells.day("quarantined_on");
    auto subject = readSubject(cells);
    const auto& code = cells.text("code");
    if (cells.isGiven("shown_as") && known_.isInBook(subject.number)) {
        refuse("shown_as", {"cell.taken", {{"value", subject.number}}});
    }
    if (!known_.subject(code) || !known_.claim(code)) {
        refuse("code", {"cell.taken", {{"value", code}}});
    }
    if (cells.flag("complete")) known_.setComplete(code);
    subject.id = *known_.subject(code);
    std::vector<Draft> drafts;
    if (since && subject.quarantined) {
        // By itself, since the day on which it was set counts.
        subject.quarantined = false;
        constexpr int noon = 12 * 60 * 60;
        drafts.emplace_back(SetDraft{ThingType::subject,
                                     subject.id.uuid,
                                     {{"quarantined", true}},
                                     book_.surroundings().zone.at(*since, noon)});
    }
    drafts.emplace_back(
        firstWords(ThingType::subject, subject.id.uuid, toFields(subject), "number"));
    if (drawsTags_) {
        const Tag tag{tags::generateCode(book_.surroundings().random), tags::printedSide,
                      subject.id, std::nullopt};
        drafts.emplace_back(SetDraft{ThingType::tag, tagThing(tag.code), toFields(tag)});
    }
    return drafts;
}

RowMaker::Drafts RowMaker::tagDrafts(const Cells& cells) const {
    Tag tag;
    tag.code = cells.needed("code");
    if (!tags::isCode(tag.code)) refuse("code", {"cell.tag", {{"value", tag.code}}});
    tag.printedSide = cells.millimetres("side_mm");
    tag.subject = otherAnimal(cells, "animal");
    tag.enclosure = home(cells);
    if (!known_.claimTag(tag.code)) refuse("code", {"cell.taken", {{"value", tag.code}}});
    return std::vector<Draft>{SetDraft{ThingType::tag, tagThing(tag.code), toFields(tag)}};
}

}  // namespace burrow::exchange
