#include "journal/past.h"

#include <algorithm>

#include "journal/fields.h"
#include "journal/roster.h"
#include "journal/rows.h"

namespace burrow {
namespace {

using nlohmann::json;

Result<std::vector<EntryId>> idsOf(storage::Query& rows) {
    std::vector<EntryId> ids;
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return ids;
        ids.push_back(EntryId{uuidAt(rows, 0)});
    }
}

/// Oldest first, without those that were taken back.
Result<std::vector<EntryId>> amendmentsOf(Book& book, const EntryId& fact) {
    BURROW_TRY(
        auto rows,
        book.connection().query(
            "SELECT a.entry FROM correction a WHERE a.target = ? AND a.kind = 'amend' AND NOT "
            "EXISTS (SELECT 1 FROM correction r WHERE r.target = a.entry AND r.kind = "
            "'retract') ORDER BY a.hlc, a.entry"));
    rows.bind(fact.uuid.bytes);
    return idsOf(rows);
}

/// The fields set right after a fact in the same act: other facts of that act have their own.
Result<std::vector<EntryId>> setWith(Book& book, const EntryId& fact) {
    BURROW_TRY(auto rows,
               book.connection().query(
                   "SELECT s.id FROM entry f JOIN entry s ON s.device = f.device AND s.act = f.act "
                   "AND s.seq > f.seq AND s.kind = 'set' WHERE f.id = ? AND NOT EXISTS (SELECT 1 "
                   "FROM entry o WHERE o.device = f.device AND o.act = f.act AND o.seq > f.seq AND "
                   "o.seq < s.seq AND o.kind <> 'set') AND NOT EXISTS (SELECT 1 FROM correction c "
                   "WHERE c.target = s.id AND c.kind = 'retract') ORDER BY s.seq"));
    rows.bind(fact.uuid.bytes);
    return idsOf(rows);
}

/// Both say where it lives.
bool saysTheSame(FactKind a, FactKind b) {
    const auto isHome = [](FactKind kind) {
        return kind == FactKind::rehoused || kind == FactKind::moved;
    };
    return a == b || (isHome(a) && isHome(b));
}

/// Whether nothing of that kind happened later; `self` is not asked.
Result<bool> isLatest(Book& book, SubjectId subject, FactKind kind, Instant at,
                      std::optional<EntryId> self) {
    BURROW_TRY(const auto facts, history(book, subject, wholeHistory));
    return std::none_of(facts.begin(), facts.end(), [&](const Fact& fact) {
        return fact.happenedAt > at && saysTheSame(fact.kind, kind) && fact.id != self;
    });
}

/// The fields of a draft as they stand now.
Result<SetDraft> asItStands(Book& book, const SetDraft& draft) {
    FieldValues all;
    if (draft.type == ThingType::subject) {
        BURROW_TRY(const auto found, kept(book, SubjectId{draft.thing}));
        if (found) all = toFields(found->subject);
    } else if (draft.type == ThingType::enclosure) {
        BURROW_TRY(const auto found, enclosure(book, EnclosureId{draft.thing}));
        if (found) all = toFields(*found);
    }
    SetDraft standing{draft.type, draft.thing, {}};
    for (const auto& [field, value] : draft.fields) {
        const auto found = all.find(field);
        standing.fields[field] = found == all.end() ? json() : found->second;
    }
    return standing;
}

}  // namespace

Result<std::vector<Reading>> readingsOf(Book& book, const EntryId& fact) {
    std::vector<Reading> readings;
    BURROW_TRY(const auto first, findEntry(book.connection(), fact));
    const auto kind = first ? parseFactKind(first->kind) : std::nullopt;
    if (!kind) return readings;
    const auto add = [&](const Entry& written, const json& object, CivilDay day) {
        if (auto body = factBody(*kind, object)) {
            readings.push_back({written.recordedAt, day, *std::move(body)});
        }
    };
    add(*first, first->body, first->day);
    BURROW_TRY(const auto amendments, amendmentsOf(book, fact));
    for (const auto& id : amendments) {
        BURROW_TRY(const auto amendment, findEntry(book.connection(), id));
        if (!amendment || !amendment->body.contains("body")) continue;
        add(*amendment, amendment->body["body"],
            CivilDay{amendment->body.value("day", first->day.days)});
    }
    return readings;
}

Result<std::vector<Draft>> logging(Book& book, const FactDraft& draft) {
    std::vector<Draft> drafts{draft};
    const auto follows = consequenceOf(draft);
    // An ultimate moult stays one, whatever came later.
    if (!follows || !draft.happenedAt || draft.kind == FactKind::moulted) return drafts;
    BURROW_TRY(const bool latest,
               isLatest(book, draft.subject, draft.kind, *draft.happenedAt, std::nullopt));
    if (latest) return drafts;
    BURROW_TRY(auto standing, asItStands(book, *follows));
    drafts.emplace_back(std::move(standing));
    return drafts;
}

Result<std::vector<Draft>> amending(Book& book, const Fact& before, const FactBody& body,
                                    Instant happenedAt) {
    AmendDraft amend{before.id, body, happenedAt};
    // A day once written stays, whatever zone the keeper is in by now.
    if (happenedAt == before.happenedAt) amend.day = before.day;
    std::vector<Draft> drafts{std::move(amend)};
    if (before.kind == FactKind::moulted && before.body.ultimate != body.ultimate) {
        drafts.emplace_back(SetDraft{
            ThingType::subject, before.subject.uuid, {{"mature", body.ultimate.value_or(false)}}});
        return drafts;
    }
    auto follows = consequenceOf({before.subject, before.kind, body, happenedAt});
    if (before.kind == FactKind::sexed && !follows) {
        follows = SetDraft{
            ThingType::subject, before.subject.uuid, {{"sex", std::string(name(Sex::unknown))}}};
    }
    const bool isNew = follows && body != before.body && before.kind != FactKind::moulted;
    if (!isNew) return drafts;
    BURROW_TRY(const bool latest,
               isLatest(book, before.subject, before.kind, happenedAt, before.id));
    if (!latest) return drafts;
    BURROW_TRY(const auto now, kept(book, before.subject));
    const bool movedWithHome = before.kind == FactKind::moved && now && now->subject.enclosure;
    if (movedWithHome) {
        follows = SetDraft{ThingType::enclosure,
                           now->subject.enclosure->uuid,
                           {{"place", body.place.value_or(Place{}).text()}}};
    }
    drafts.emplace_back(*std::move(follows));
    return drafts;
}

Result<std::optional<TakenOut>> takingOut(Book& book, const EntryId& id) {
    BURROW_TRY(auto found, fact(book, id));
    if (!found) return std::optional<TakenOut>();
    TakenOut taken{*std::move(found), {RetractDraft{id}}, {}};
    BURROW_TRY(const auto sets, setWith(book, id));
    for (const auto& set : sets) {
        BURROW_TRY(const auto entry, findEntry(book.connection(), set));
        const auto type = parseThingType(entry->body.value("type", std::string()));
        if (!type || !entry->thing) continue;
        const SetDraft draft{*type, *entry->thing, entry->body["fields"].get<FieldValues>()};
        BURROW_TRY(auto standing, asItStands(book, draft));
        taken.standing.push_back(std::move(standing));
        taken.drafts.emplace_back(RetractDraft{set});
    }
    return std::optional(std::move(taken));
}

Result<ChangeSet> putBack(Book& book, const TakenOut& taken) {
    const auto& gone = taken.fact;
    const EntryId again{book.newId()};
    std::vector<Draft> drafts{
        FactDraft{gone.subject, gone.kind, gone.body, gone.happenedAt, again, gone.day}};
    drafts.insert(drafts.end(), taken.standing.begin(), taken.standing.end());
    BURROW_TRY(const auto facts, history(book, gone.subject, wholeHistory));
    for (const auto& other : facts) {
        if (other.body.about != gone.id) continue;
        auto body = other.body;
        body.about = again;
        drafts.emplace_back(AmendDraft{other.id, std::move(body), other.happenedAt, other.day});
    }
    return book.record(drafts);
}

}  // namespace burrow
