// One row of events to the draft of a fact.
#include <algorithm>

#include "exchange/bring_rows.h"

namespace burrow::exchange {

FactDraft RowMaker::startEvent(const Cells& cells) const {
    const auto& code = cells.needed("code");
    const auto subject = known_.claimed(code);
    if (!subject) refuse("code", {"cell.unknownAnimal", {{"value", code}}});
    const auto& at = cells.needed("at");
    const auto moment = parseIsoMoment(at);
    if (!moment) refuse("at", {"cell.date", {{"value", at}}});
    const auto& event = cells.needed("event");
    const auto kind = parseFactKind(event);
    if (!kind) refuse("event", {"cell.event", {{"value", event}}});

    FactDraft draft{*subject, *kind, {}, book_.surroundings().zone.resolve(*moment)};
    draft.day = cells.day("on_day");
    draft.isHistory = known_.isComplete(code);
    if (cells.isGiven("entry_ref")) {
        const auto& label = cells.text("entry_ref");
        draft.id = known_.entry(label);
        if (!draft.id || !known_.claimEntry(label)) {
            refuse("entry_ref", {"cell.taken", {{"value", label}}});
        }
    }
    return draft;
}

void RowMaker::readField(FactDraft& draft, const std::string& column, const Cells& cells) const {
    if (column == "enclosure") {
        draft.body.enclosure = home(cells);
        return;
    }
    auto value = cells.text(column);
    if (column == "about") {
        if (const auto labelled = known_.entry(value)) {
            draft.body.about = labelled;
            return;
        }
        if (!Uuid::parse(value)) refuse(column, {"cell.unknownEntry", {{"value", value}}});
    }
    if (column.ends_with("_mm") || column.ends_with("_g")) value = cells.number(value);
    if (const auto set = setFieldExactly(draft.body, draft.kind, column, value); !set) {
        refuse(column, set.error().message);
    }
}

RowMaker::Drafts RowMaker::eventDrafts(const Cells& cells) const {
    auto draft = startEvent(cells);
    const auto fields = factFields();
    for (const auto& column : cells.columns()) {
        const bool isField = std::any_of(fields.begin(), fields.end(),
                                         [&](const FieldSpec& f) { return f.name == column; });
        // A column is shared by all kinds of events, so a cell that this kind has no use for is kept
        // as a note, not refused.
        if (!isField || column == "text" || !kindHas(draft.kind, column)) continue;
        if (cells.isGiven(column)) readField(draft, column, cells);
    }
    const bool hasNote = cells.isGiven("note");
    if (const auto note = cells.noteAndRest(); hasNote || !note.empty()) {
        if (const auto set = setFieldExactly(draft.body, draft.kind, "text", note); !set) {
            refuse("note", set.error().message);
        }
    }
    if (const auto complete = checkComplete(draft.body, draft.kind); !complete) {
        const auto* field = complete.error().message.find("field");
        const auto column = field != nullptr ? std::get<std::string>(*field) : std::string();
        refuse(column == "text" ? "note" : column, complete.error().message);
    }
    return std::vector<Draft>{std::move(draft)};
}

}  // namespace burrow::exchange
