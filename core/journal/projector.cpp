#include "journal/projector.h"

#include <algorithm>
#include <cstring>
#include <tuple>

#include "journal/amendments.h"
#include "journal/confidential.h"
#include "journal/digest_codec.h"
#include "journal/fields.h"
#include "journal/json_reading.h"
#include "journal/rows.h"

namespace burrow {

using nlohmann::json;

namespace {

bool isCorrection(const Entry& entry) {
    return entry.kind == entrykind::amend || entry.kind == entrykind::retract;
}

/// What a correction is about.
std::optional<EntryId> targetOf(const Entry& correction) {
    const auto uuid = reading::uuid(correction.body, "entry");
    return uuid ? std::optional(EntryId{*uuid}) : std::nullopt;
}

}  // namespace

std::size_t UuidHash::operator()(const Uuid& uuid) const {
    std::size_t hash = 0;
    // The last bytes of a version 7 UUID are random.
    std::memcpy(&hash, uuid.bytes.data() + 8, sizeof hash);
    return hash;
}

Done Projector::apply(const Entry& entry, std::string_view body) {
    if (listsEntries_) changes_.entries.push_back(entry.id);
    BURROW_DO(noteConfidential(entry));
    if (!isCorrection(entry)) return project(entry, body);
    BURROW_DO(noteCorrection(entry));
    if (const auto target = targetOf(entry)) corrected_.insert(*target);
    return {};
}

/// Under the corrections now known.
Done Projector::project(const Entry& entry, std::string_view body) {
    if (entry.kind == entrykind::set) return applySet(entry);
    if (const auto kind = parseFactKind(entry.kind)) return applyFact(entry, *kind, body);
    return {};  // a newer version's kind: kept in the journal, shown by that version
}

Done Projector::noteConfidential(const Entry& entry) {
    if (!isConfidential(entry.body)) return {};
    BURROW_TRY(auto insert, connection_.query("INSERT INTO confidential (entry) VALUES (?)"));
    return insert.bind(entry.id.uuid.bytes).run();
}

Done Projector::noteCorrection(const Entry& entry) {
    const auto target = targetOf(entry);
    if (!target) return {};
    const auto text = entry.body.dump();
    BURROW_TRY(auto insert, connection_.query("INSERT INTO correction (target, hlc, entry, kind, "
                                              "body, device, seq) VALUES (?, ?, ?, ?, ?, ?, ?)"));
    return insert
        .bind(target->uuid.bytes, entry.hlc, entry.id.uuid.bytes, entry.kind, text,
              entry.device.uuid.bytes, entry.seq)
        .run();
}

Done Projector::forget(const Entry& entry) {
    {
        BURROW_TRY(auto remove, connection_.query("DELETE FROM confidential WHERE entry = ?"));
        BURROW_DO(remove.bind(entry.id.uuid.bytes).run());
    }
    BURROW_DO(takeAway(entry));
    const auto target = targetOf(entry);
    if (!isCorrection(entry) || !target) return {};
    {
        BURROW_TRY(auto remove,
                   connection_.query("DELETE FROM correction WHERE target = ? AND entry = ?"));
        BURROW_DO(remove.bind(target->uuid.bytes, entry.id.uuid.bytes).run());
    }
    corrected_.insert(*target);
    return {};
}

Result<bool> Projector::lookForFork(const DeviceId& device, std::int64_t seq) {
    bool isForked = false;
    {
        BURROW_TRY(auto count,
                   connection_.query("SELECT count(*) FROM entry WHERE device = (SELECT ref FROM "
                                     "device WHERE id = ?) AND seq = ?"));
        count.bind(device.uuid.bytes, seq);
        BURROW_TRY(const bool counted, count.next());
        isForked = counted && count.integer(0) > 1;
    }
    BURROW_TRY(auto change,
               connection_.query(isForked ? "INSERT OR IGNORE INTO fork (device, seq) VALUES (?, ?)"
                                          : "DELETE FROM fork WHERE device = ? AND seq = ?"));
    BURROW_DO(change.bind(device.uuid.bytes, seq).run());
    return isForked;
}

Done Projector::applyFact(const Entry& original, FactKind kind, std::string_view body) {
    BURROW_TRY(const auto amendments, amendmentsOf(connection_, original.id));
    if (amendments.isNone()) return writeFact(original, kind, body);
    auto entry = original;
    if (!applyTo(entry, amendments)) return {};
    BURROW_DO(noteDifferences(entry.id, amendments));
    return writeFact(entry, kind, entry.body.dump());
}

Done Projector::writeFact(const Entry& entry, FactKind kind, std::string_view text) {
    if (!entry.thing) return {};
    const auto body = factBody(kind, entry.body);
    if (!body) return {};  // from elsewhere and not to be read; it stays in the journal
    const SubjectId subject{*entry.thing};
    BURROW_TRY(auto* state, folding(subject));
    const Fact fact{entry.id, subject, kind, entry.day, entry.happenedAt, entry.hlc, *body};
    const bool isNewest = std::tie(state->lastAt, state->lastStamp, state->lastEntry) <
                          std::tie(fact.happenedAt, fact.stamp, fact.id);
    if (isNewest && !state->mustRefold) {
        const auto before = std::pair(state->digest.standing, state->digest.gone);
        fold(state->digest, fact);
        state->rowMayChange |= before != std::pair(state->digest.standing, state->digest.gone);
        std::tie(state->lastAt, state->lastStamp, state->lastEntry) =
            std::tie(fact.happenedAt, fact.stamp, fact.id);
    } else {
        state->mustRefold = true;
    }
    BURROW_TRY(auto insert,
               connection_.query("INSERT INTO fact (subject, happened_at, hlc, entry, kind, day, "
                                 "body) VALUES (?, ?, ?, ?, ?, ?, ?)"));
    BURROW_DO(insert
                  .bind(subject.uuid.bytes, fact.happenedAt.ms, fact.stamp, fact.id.uuid.bytes,
                        spec(kind).name, fact.day.days, text)
                  .run());
    if (!body->text) return {};
    Searchable said{TextOf::fact, fact.id.uuid, subject.uuid, fact.happenedAt, {}, {}, {}, {}};
    said.note = *body->text;
    return words_.put(said);
}

Done Projector::applySet(const Entry& entry) {
    const auto type = parseThingType(reading::text(entry.body, "type"));
    const auto* fields = reading::member(entry.body, "fields");
    if (!type || !entry.thing || fields == nullptr || !fields->is_object()) return {};
    BURROW_TRY(const bool retracted, isRetracted(entry.id));
    const auto* over = reading::member(entry.body, "over");
    for (const auto& [field, value] : fields->items()) {
        const auto written = value.dump();
        std::optional<std::string> replaced;
        if (over != nullptr) {
            const auto* ids = reading::member(*over, field);
            replaced = ids != nullptr ? ids->dump() : "[]";
        }
        BURROW_TRY(auto insert,
                   connection_.query("INSERT INTO field (thing, name, hlc, entry, type, value, "
                                     "device, seq, over, retracted) VALUES (?, ?, ?, ?, ?, ?, ?, "
                                     "?, ?, ?)"));
        BURROW_DO(insert
                      .bind(entry.thing->bytes, field, entry.hlc, entry.id.uuid.bytes, name(*type),
                            written, entry.device.uuid.bytes, entry.seq, replaced, retracted)
                      .run());
    }
    return touch(entry, *type);
}

/// Notes that the row of a thing must be written anew.
Done Projector::touch(const Entry& set, ThingType type) {
    if (type == ThingType::subject) {
        BURROW_TRY(auto* state, folding(SubjectId{*set.thing}));
        state->rowMayChange = true;
    } else {
        things_.emplace(type, *set.thing);
    }
    return {};
}

/// Projects what was corrected, once for all its corrections.
Done Projector::reprojectCorrected() {
    for (const auto& target : corrected_) {
        BURROW_TRY(auto entry, findEntry(connection_, target));
        if (!entry) continue;  // not here yet: its corrections wait for it
        if (entry->kind == entrykind::amend) {
            // An amendment was taken back: the fact it amended reads as before.
            const auto fact = targetOf(*entry);
            if (!fact) continue;
            BURROW_TRY(entry, findEntry(connection_, *fact));
            if (!entry) continue;
        }
        BURROW_DO(reproject(*entry));
    }
    corrected_.clear();
    return {};
}

/// Takes the rows of an entry away and projects it again under the corrections now known.
Done Projector::reproject(const Entry& entry) {
    BURROW_DO(takeAway(entry));
    return project(entry, entry.body.dump());
}

/// Takes the rows of a set or a fact away.
Done Projector::takeAway(const Entry& entry) {
    if (!entry.thing) return {};
    if (entry.kind == entrykind::set) {
        BURROW_TRY(auto remove,
                   connection_.query("DELETE FROM field WHERE thing = ? AND entry = ?"));
        BURROW_DO(remove.bind(entry.thing->bytes, entry.id.uuid.bytes).run());
        const auto type = parseThingType(reading::text(entry.body, "type"));
        return type ? touch(entry, *type) : Done();
    }
    if (!parseFactKind(entry.kind)) return {};
    {
        BURROW_TRY(auto remove,
                   connection_.query("DELETE FROM fact WHERE subject = ? AND entry = ?"));
        BURROW_DO(remove.bind(entry.thing->bytes, entry.id.uuid.bytes).run());
    }
    BURROW_DO(words_.remove(TextOf::fact, entry.id.uuid));
    {
        BURROW_TRY(auto remove,
                   connection_.query("DELETE FROM difference WHERE kind > 0 AND about = ?"));
        BURROW_DO(remove.bind(entry.id.uuid.bytes).run());
    }
    BURROW_TRY(auto* state, folding(SubjectId{*entry.thing}));
    state->mustRefold = true;
    return {};
}

Result<bool> Projector::isRetracted(const EntryId& entry) {
    BURROW_TRY(auto rows, connection_.query("SELECT 1 FROM correction WHERE target = ? AND kind = "
                                            "'retract' LIMIT 1"));
    rows.bind(entry.uuid.bytes);
    return rows.next();
}

/// Notes where the amendments of a fact say different things.
Done Projector::noteDifferences(const EntryId& fact, const Amendments& amendments) {
    const auto note = [&](const std::vector<Amendment>& list, DifferenceRow row) -> Done {
        const auto heads = headsOf(list);
        const bool differ = std::any_of(heads.begin(), heads.end(), [&](const Amendment* head) {
            return !sayTheSame(*head, *heads.front());
        });
        if (!differ) return {};
        BURROW_TRY(auto insert,
                   connection_.query("INSERT INTO difference (kind, about, type, name) VALUES (?, "
                                     "?, '', '')"));
        return insert.bind(row, fact.uuid.bytes).run();
    };
    BURROW_DO(note(amendments.plain, DifferenceRow::amendment));
    return note(amendments.confidential, DifferenceRow::confidentialPart);
}

Result<Projector::Folding*> Projector::folding(SubjectId subject) {
    const auto [found, isNew] = subjects_.try_emplace(subject.uuid);
    auto& state = found->second;
    if (!isNew) return &state;
    BURROW_TRY(auto rows,
               connection_.query("SELECT last_at, last_hlc, last_entry, state FROM digest "
                                 "WHERE subject = ?"));
    rows.bind(subject.uuid.bytes);
    BURROW_TRY(const bool known, rows.next());
    if (!known) {
        state.lastAt = {INT64_MIN};
        return &state;
    }
    state.lastAt = {rows.integer(0)};
    state.lastStamp = rows.integer(1);
    state.lastEntry = EntryId{uuidAt(rows, 2)};
    if (auto digest = decodeDigest(rows.blob(3))) {
        state.digest = std::move(*digest);
    } else {
        state.mustRefold = true;
    }
    return &state;
}

/// Folds one fact after the other: a subject may have more of them than fit into memory.
Done Projector::refold(SubjectId subject, Folding& state) {
    state.digest = {};
    state.lastAt = {INT64_MIN};
    state.lastStamp = 0;
    state.lastEntry = {};
    state.rowMayChange = true;
    BURROW_TRY(auto rows, connection_.query("SELECT entry, subject, kind, day, happened_at, hlc, "
                                            "body FROM fact WHERE subject = ? ORDER BY "
                                            "happened_at, hlc, entry"));
    rows.bind(subject.uuid.bytes);
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return {};
        const auto fact = factAt(rows);
        if (!fact) continue;
        fold(state.digest, *fact);
        std::tie(state.lastAt, state.lastStamp, state.lastEntry) =
            std::tie(fact->happenedAt, fact->stamp, fact->id);
    }
}

Done Projector::finishSubject(SubjectId subject, Folding& state) {
    if (state.mustRefold) BURROW_DO(refold(subject, state));
    if (state.lastAt.ms == INT64_MIN) {
        BURROW_TRY(auto remove, connection_.query("DELETE FROM digest WHERE subject = ?"));
        BURROW_DO(remove.bind(subject.uuid.bytes).run());
    } else {
        const auto bytes = encodeDigest(state.digest);
        BURROW_TRY(auto replace,
                   connection_.query("REPLACE INTO digest (subject, last_at, last_hlc, last_entry, "
                                     "state) VALUES (?, ?, ?, ?, ?)"));
        BURROW_DO(replace
                      .bind(subject.uuid.bytes, state.lastAt.ms, state.lastStamp,
                            state.lastEntry.uuid.bytes, bytes)
                      .run());
    }
    return state.rowMayChange ? writeSubject(subject, state.digest) : Done();
}

}  // namespace burrow
