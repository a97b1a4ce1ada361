#include "journal/past.h"

#include <algorithm>

#include "journal/amendments.h"
#include "journal/confidential.h"
#include "journal/fields.h"
#include "journal/json_reading.h"
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

/// Those that were not taken back: oldest first, but the one that counts last.
std::vector<const Amendment*> standing(const std::vector<Amendment>& amendments) {
    std::vector<const Amendment*> all;
    const auto heads = headsOf(amendments);
    for (const auto& amendment : amendments) {
        const bool counts = !heads.empty() && heads.front() == &amendment;
        if (!amendment.said.isRetracted && !counts) all.push_back(&amendment);
    }
    if (!heads.empty()) all.push_back(heads.front());
    return all;
}

/// The confidential part as it stood before a stamp; null where there was none.
json partBefore(const std::vector<Amendment>& parts, std::int64_t stamp) {
    json part;
    for (const auto& each : parts) {
        if (!each.said.isRetracted && each.said.stamp < stamp) part = each.body();
    }
    return part;
}

json countingPart(const std::vector<Amendment>& parts) {
    const auto heads = headsOf(parts);
    return heads.empty() ? json() : heads.front()->body();
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
        const bool isOnlyEvidence = fact.kind == FactKind::sexed && !tellsSex(fact.body);
        return fact.happenedAt > at && saysTheSame(fact.kind, kind) && fact.id != self &&
               !isOnlyEvidence;
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

/// Files for others leave out the entry of a fact that was confidential, with its first words; so what is
/// no longer confidential is written as an entry of its own.
std::vector<Draft> madePublic(const Fact& before, const FactBody& body, Instant happenedAt) {
    FactDraft again{before.subject, before.kind, body, happenedAt};
    if (happenedAt == before.happenedAt) again.day = before.day;
    return {RetractDraft{before.id}, std::move(again)};
}

/// What stands at a moult's time because it is of its skin, its photos and sizes, goes along to another.
Done moveAlong(Book& book, const Fact& moult, Instant to, std::vector<Draft>& drafts) {
    if (moult.kind != FactKind::moulted || to == moult.happenedAt) return {};
    BURROW_TRY(const auto facts, history(book, moult.subject, wholeHistory));
    for (const auto& fact : facts) {
        const bool isOfIt = fact.body.about == moult.id && fact.happenedAt == moult.happenedAt;
        if (isOfIt) drafts.emplace_back(AmendDraft{fact.id, fact.body, to});
    }
    return {};
}

}  // namespace

Result<std::vector<Reading>> readingsOf(Book& book, const EntryId& fact) {
    std::vector<Reading> readings;
    BURROW_TRY(const auto first, findEntry(book.connection(), fact));
    const auto kind = first ? parseFactKind(first->kind) : std::nullopt;
    if (!kind) return readings;
    BURROW_TRY(const auto amendments, amendmentsOf(book.connection(), fact));
    const auto plain = standing(amendments.plain);
    // Who and for how much was written beside each: what stood before the next one was written.
    const auto add = [&](Instant writtenAt, json body, CivilDay day, std::size_t next) {
        const auto part = next < plain.size()
                              ? partBefore(amendments.confidential, plain[next]->said.stamp)
                              : countingPart(amendments.confidential);
        if (!part.is_null()) takeConfidentialPart(body, part);
        if (auto read = factBody(*kind, body)) {
            readings.push_back({writtenAt, day, *std::move(read)});
        }
    };
    add(first->recordedAt, first->body, first->day, 0);
    for (std::size_t i = 0; i < plain.size(); ++i) {
        BURROW_TRY(const auto entry, findEntry(book.connection(), plain[i]->said.entry));
        if (!entry) continue;
        add(entry->recordedAt, plain[i]->body(), plain[i]->day().value_or(first->day), i + 1);
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
    if (before.body.confidential.value_or(false) && !body.confidential.value_or(false)) {
        return madePublic(before, body, happenedAt);
    }
    AmendDraft amend{before.id, body, happenedAt};
    // A day once written stays, whatever zone the keeper is in by now.
    if (happenedAt == before.happenedAt) amend.day = before.day;
    std::vector<Draft> drafts{std::move(amend)};
    BURROW_DO(moveAlong(book, before, happenedAt, drafts));
    if (before.kind == FactKind::moulted && before.body.ultimate != body.ultimate) {
        drafts.emplace_back(SetDraft{
            ThingType::subject, before.subject.uuid, {{"mature", body.ultimate.value_or(false)}}});
        return drafts;
    }
    auto follows = consequenceOf({before.subject, before.kind, body, happenedAt});
    if (before.kind == FactKind::sexed && !follows && tellsSex(before.body)) {
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
        const auto type = parseThingType(reading::text(entry->body, "type"));
        const auto* fields = reading::member(entry->body, "fields");
        if (!type || !entry->thing || fields == nullptr || !fields->is_object()) continue;
        const SetDraft draft{*type, *entry->thing, fields->get<FieldValues>()};
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
