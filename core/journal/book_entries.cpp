// How drafts become entries.
#include "journal/amendments.h"
#include "journal/book.h"
#include "journal/confidential.h"
#include "journal/fields.h"
#include "journal/hlc.h"
#include "journal/json_reading.h"
#include "journal/rows.h"

namespace burrow {

using nlohmann::json;

Entry Book::blank(std::string_view kind, std::optional<Uuid> thing) {
    Entry entry;
    entry.kind = kind;
    entry.id = EntryId{uuids_->next()};
    entry.thing = thing;
    entry.happenedAt = now_;
    entry.day = surroundings_.zone.dayOf(now_);
    return entry;
}

Result<Entry> Book::correction(const EntryId& target, std::string_view kind) {
    BURROW_TRY(const auto corrected, findEntry(connection_, target));
    if (!corrected) return fail(Trouble::notFound, {"entry.missing"});
    auto entry = blank(kind, corrected->thing);
    entry.body = {{"entry", target.text()}};
    return entry;
}

Done Book::requireSubject(SubjectId subject) {
    BURROW_TRY(auto rows, connection_.query("SELECT 1 FROM subject WHERE id = ? UNION ALL SELECT 1 "
                                            "FROM field WHERE thing = ? AND retracted = 0 LIMIT "
                                            "1"));
    rows.bind(subject.uuid.bytes, subject.uuid.bytes);
    BURROW_TRY(const bool known, rows.next());
    if (!known) return fail(Trouble::notFound, {"subject.missing"});
    return {};
}

Result<Entry> Book::entryFor(const Draft& draft) {
    if (const auto* fact = std::get_if<FactDraft>(&draft)) return factEntry(*fact);
    if (const auto* set = std::get_if<SetDraft>(&draft)) return setEntry(*set);
    if (const auto* amend = std::get_if<AmendDraft>(&draft)) return amendEntry(*amend);
    if (const auto* again = std::get_if<AgainDraft>(&draft)) return againEntry(*again);
    return correction(std::get<RetractDraft>(draft).entry, entrykind::retract);
}

Result<Entry> Book::factEntry(const FactDraft& draft) {
    BURROW_DO(requireSubject(draft.subject));
    BURROW_DO(checkComplete(draft.body, draft.kind));
    auto entry = blank(spec(draft.kind).name, draft.subject.uuid);
    const bool hasPart = hasConfidentialPart(draft.body);
    entry.body = toJson(hasPart ? withoutConfidentialPart(draft.body) : draft.body);
    if (draft.happenedAt) {
        entry.happenedAt = *draft.happenedAt;
        entry.day = draft.day.value_or(surroundings_.zone.dayOf(*draft.happenedAt));
    }
    if (draft.id) entry.id = *draft.id;
    return entry;
}

/// Names the values that it replaces, field by field: those that stand now.
Result<Entry> Book::setEntry(const SetDraft& draft) {
    auto entry = blank(entrykind::set, draft.thing);
    if (draft.since) {
        entry.happenedAt = *draft.since;
        entry.day = surroundings_.zone.dayOf(*draft.since);
    }
    json over = json::object();
    BURROW_TRY(const auto known, fieldValues(connection_, draft.thing, draft.type));
    for (const auto& [field, value] : draft.fields) {
        const auto found = known.find(field);
        if (found == known.end()) continue;
        for (const auto* head : headsOf(found->second)) {
            over[field].push_back(head->said.entry.text());
        }
    }
    entry.body = {{"type", std::string(name(draft.type))},
                  {"fields", draft.fields},
                  {"over", std::move(over)}};
    return entry;
}

Result<Entry> Book::amendEntry(const AmendDraft& draft) {
    BURROW_TRY(const auto target, findEntry(connection_, draft.entry));
    if (!target) return fail(Trouble::notFound, {"entry.missing"});
    const auto kind = parseFactKind(target->kind);
    if (!kind) return fail(Trouble::badInput, {"entry.notAFact"});
    BURROW_DO(checkComplete(draft.body, *kind));
    BURROW_TRY(auto entry, correction(draft.entry, entrykind::amend));
    const bool hasPart = hasConfidentialPart(draft.body);
    entry.body["body"] = toJson(hasPart ? withoutConfidentialPart(draft.body) : draft.body);
    if (draft.happenedAt) {
        entry.body["happened_at"] = draft.happenedAt->ms;
        const auto day = draft.day.value_or(surroundings_.zone.dayOf(*draft.happenedAt));
        entry.body["day"] = day.days;
    }
    BURROW_TRY(const auto amendments, amendmentsOf(connection_, draft.entry));
    entry.body["over"] = replacing(amendments.plain);
    return entry;
}

/// The same amendment once more, over all that stand beside it.
Result<Entry> Book::againEntry(const AgainDraft& draft) {
    BURROW_TRY(auto entry, correction(draft.fact, entrykind::amend));
    BURROW_TRY(const auto chosen, findEntry(connection_, draft.amendment));
    if (!chosen || chosen->kind != entrykind::amend) {
        return fail(Trouble::notFound, {"entry.missing"});
    }
    BURROW_TRY(const auto amendments, amendmentsOf(connection_, draft.fact));
    const bool isPart = reading::flag(chosen->body, "confidential");
    entry.body = chosen->body;
    entry.body["entry"] = draft.fact.text();
    entry.body["over"] = replacing(isPart ? amendments.confidential : amendments.plain);
    return entry;
}

/// What stands beside a fact or an amendment so that it can be left out: the full body, of which only
/// the confidential fields count. Also where there is nothing confidential any more but was before.
Result<std::optional<Entry>> Book::confidentialFor(const Draft& draft, const EntryId& written) {
    const auto* fact = std::get_if<FactDraft>(&draft);
    const auto* amend = std::get_if<AmendDraft>(&draft);
    if (fact == nullptr && amend == nullptr) return std::optional<Entry>();
    const auto& body = fact != nullptr ? fact->body : amend->body;
    const auto about = fact != nullptr ? written : amend->entry;
    json over = json::array();
    if (amend != nullptr) {
        BURROW_TRY(const auto amendments, amendmentsOf(connection_, about));
        over = replacing(amendments.confidential);
    }
    if (!hasConfidentialPart(body) && over.empty()) return std::optional<Entry>();
    BURROW_TRY(auto entry, correction(about, entrykind::amend));
    entry.body["confidential"] = true;
    entry.body["body"] = toJson(body);
    entry.body["over"] = std::move(over);
    return std::optional(std::move(entry));
}

Done Book::append(Entry entry) {
    stamp_ = hlc::next(stamp_, now_);
    entry.device = device_;
    entry.seq = nextSeq_++;
    entry.act = act_;
    entry.hlc = stamp_;
    entry.recordedAt = now_;
    entry.zone = surroundings_.zone.name();
    const auto body = entry.body.dump();
    BURROW_DO(insertEntry(connection_, entry, deviceRef_, body));
    return projector_->apply(entry, body);
}

}  // namespace burrow
