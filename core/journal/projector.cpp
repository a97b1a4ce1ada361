#include "journal/projector.h"

#include <cstring>
#include <tuple>

#include "journal/digest_codec.h"
#include "journal/fields.h"
#include "journal/rows.h"

namespace burrow {

using nlohmann::json;

std::size_t UuidHash::operator()(const Uuid& uuid) const {
    std::size_t hash = 0;
    // The last bytes of a version 7 UUID are random.
    std::memcpy(&hash, uuid.bytes.data() + 8, sizeof hash);
    return hash;
}

Done Projector::apply(const Entry& entry) {
    entries_.push_back(entry.id);
    if (entry.kind == entrykind::set) return applySet(entry);
    if (entry.kind == entrykind::amend || entry.kind == entrykind::retract) {
        return applyCorrection(entry);
    }
    if (const auto kind = parseFactKind(entry.kind)) return applyFact(entry, *kind);
    return {};  // a newer version's kind: kept in the journal, shown by that version
}

Done Projector::applyFact(const Entry& original, FactKind kind) {
    BURROW_TRY(const auto entry, amended(original));
    if (!entry || !entry->thing) return {};
    const auto body = factBody(kind, entry->body);
    if (!body) return {};  // from elsewhere and not to be read; it stays in the journal
    const SubjectId subject{*entry->thing};
    BURROW_TRY(auto* state, folding(subject));
    const Fact fact{entry->id, subject, kind, entry->day, entry->happenedAt, entry->hlc, *body};
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
    const auto text = entry->body.dump();
    BURROW_TRY(auto insert,
               connection_.query("INSERT INTO fact (subject, happened_at, hlc, entry, kind, day, "
                                 "body) VALUES (?, ?, ?, ?, ?, ?, ?)"));
    return insert
        .bind(subject.uuid.bytes, fact.happenedAt.ms, fact.stamp, fact.id.uuid.bytes,
              spec(kind).name, fact.day.days, text)
        .run();
}

Done Projector::applySet(const Entry& entry) {
    const auto type = parseThingType(entry.body.value("type", std::string()));
    const auto fields = entry.body.find("fields");
    if (!type || !entry.thing || fields == entry.body.end() || !fields->is_object()) return {};
    BURROW_TRY(const bool retracted, isRetracted(entry.id));
    if (!retracted) {
        for (const auto& [field, value] : fields->items()) {
            const auto written = value.dump();
            BURROW_TRY(auto insert,
                       connection_.query("INSERT INTO field (thing, name, hlc, entry, type, value) "
                                         "VALUES (?, ?, ?, ?, ?, ?)"));
            BURROW_DO(insert
                          .bind(entry.thing->bytes, field, entry.hlc, entry.id.uuid.bytes,
                                name(*type), written)
                          .run());
        }
    }
    if (*type == ThingType::subject) {
        BURROW_TRY(auto* state, folding(SubjectId{*entry.thing}));
        state->rowMayChange = true;
    } else {
        things_[*entry.thing] = *type;
    }
    return {};
}

Done Projector::applyCorrection(const Entry& entry) {
    const auto target = Uuid::parse(entry.body.value("entry", std::string()));
    if (!target) return {};
    const auto text = entry.body.dump();
    {
        BURROW_TRY(auto insert,
                   connection_.query("INSERT INTO correction (target, hlc, entry, kind, "
                                     "body) VALUES (?, ?, ?, ?, ?)"));
        BURROW_DO(
            insert.bind(target->bytes, entry.hlc, entry.id.uuid.bytes, entry.kind, text).run());
    }
    BURROW_DO(reproject(EntryId{*target}));
    if (entry.kind == entrykind::amend) return {};
    // What is retracted may itself be an amendment: then the fact it amended reads as before.
    BURROW_TRY(const auto corrected, findEntry(connection_, EntryId{*target}));
    if (corrected && corrected->kind == entrykind::amend) {
        const auto amendedFact = Uuid::parse(corrected->body.value("entry", std::string()));
        if (amendedFact) return reproject(EntryId{*amendedFact});
    }
    return {};
}

/// Takes the rows of an entry away and projects it again under the corrections now known.
Done Projector::reproject(const EntryId& target) {
    BURROW_TRY(const auto entry, findEntry(connection_, target));
    if (!entry || !entry->thing) return {};  // not here yet: its corrections wait for it
    if (entry->kind == entrykind::set) {
        BURROW_TRY(auto remove,
                   connection_.query("DELETE FROM field WHERE thing = ? AND entry = ?"));
        BURROW_DO(remove.bind(entry->thing->bytes, target.uuid.bytes).run());
        return applySet(*entry);
    }
    const auto kind = parseFactKind(entry->kind);
    if (!kind) return {};
    {
        BURROW_TRY(auto remove,
                   connection_.query("DELETE FROM fact WHERE subject = ? AND entry = ?"));
        BURROW_DO(remove.bind(entry->thing->bytes, target.uuid.bytes).run());
    }
    BURROW_TRY(auto* state, folding(SubjectId{*entry->thing}));
    state->mustRefold = true;
    return applyFact(*entry, *kind);
}

Result<bool> Projector::isRetracted(const EntryId& entry) {
    BURROW_TRY(auto rows, connection_.query("SELECT 1 FROM correction WHERE target = ? AND kind = "
                                            "'retract' LIMIT 1"));
    rows.bind(entry.uuid.bytes);
    return rows.next();
}

/// The entry as its corrections leave it: the last amendment that was not itself retracted counts,
/// and nothing is left of an entry that was.
Result<std::optional<Entry>> Projector::amended(Entry entry) {
    struct Amendment {
        EntryId id;
        json body;
    };
    std::vector<Amendment> amendments;
    {
        BURROW_TRY(auto rows, connection_.query("SELECT entry, kind, body FROM correction WHERE "
                                                "target = ? ORDER BY hlc DESC, entry DESC"));
        rows.bind(entry.id.uuid.bytes);
        while (true) {
            BURROW_TRY(const bool more, rows.next());
            if (!more) break;
            if (rows.text(1) == entrykind::retract) return std::optional<Entry>();
            amendments.push_back(
                {EntryId{uuidAt(rows, 0)}, json::parse(rows.text(2), nullptr, false)});
        }
    }
    for (auto& amendment : amendments) {
        BURROW_TRY(const bool withdrawn, isRetracted(amendment.id));
        const auto body = amendment.body.find("body");
        if (withdrawn || body == amendment.body.end()) continue;
        entry.body = *body;
        if (const auto at = amendment.body.find("happened_at");
            at != amendment.body.end() && at->is_number_integer()) {
            entry.happenedAt = {at->get<std::int64_t>()};
            entry.day = {amendment.body.value("day", entry.day.days)};
        }
        break;
    }
    return std::optional<Entry>(std::move(entry));
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

Done Projector::refold(SubjectId subject, Folding& state) {
    BURROW_TRY(const auto history, factsOf(connection_, subject));
    state.digest = digestOf(history);
    state.lastAt = history.empty() ? Instant{INT64_MIN} : history.back().happenedAt;
    state.lastStamp = history.empty() ? 0 : history.back().stamp;
    state.lastEntry = history.empty() ? EntryId{} : history.back().id;
    state.rowMayChange = true;
    return {};
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

Result<ChangeSet> Projector::finish() {
    ChangeSet changes;
    for (auto& [uuid, state] : subjects_) {
        BURROW_DO(finishSubject(SubjectId{uuid}, state));
        changes.subjects.push_back(SubjectId{uuid});
    }
    for (const auto& [uuid, type] : things_) {
        switch (type) {
            case ThingType::enclosure:
                BURROW_DO(writeEnclosure(uuid));
                changes.enclosures.push_back(EnclosureId{uuid});
                break;
            case ThingType::tag:
                BURROW_DO(writeTag(uuid));
                changes.tags = true;
                break;
            case ThingType::book:
                BURROW_DO(writeSettings(uuid));
                changes.settings = true;
                break;
            case ThingType::subject: break;
        }
    }
    changes.entries = std::move(entries_);
    subjects_.clear();
    things_.clear();
    entries_.clear();
    return changes;
}

Result<FieldValues> Projector::winners(const Uuid& thing) {
    FieldValues fields;
    BURROW_TRY(auto rows,
               connection_.query("SELECT name, value FROM field WHERE thing = ? ORDER BY "
                                 "name, hlc, entry"));
    rows.bind(thing.bytes);
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return fields;
        fields[std::string(rows.text(0))] = json::parse(rows.text(1), nullptr, false);
    }
}

Done Projector::writeSubject(SubjectId id, const Digest& digest) {
    BURROW_TRY(const auto fields, winners(id.uuid));
    if (fields.empty()) {
        BURROW_TRY(auto remove, connection_.query("DELETE FROM subject WHERE id = ?"));
        return remove.bind(id.uuid.bytes).run();
    }
    auto subject = subjectFrom(id, fields);
    subject.headcount = std::max(0, subject.headcount - digest.gone);
    // One death does not end a group; the last one does.
    const bool isOver = subject.form == Form::animal || subject.headcount == 0;
    const bool isLoan = digest.standing == Standing::here || digest.standing == Standing::onLoan;
    if (digest.standing && (isOver || isLoan)) subject.standing = *digest.standing;
    const auto place = subject.place.text();
    BURROW_TRY(
        auto replace,
        connection_.query("REPLACE INTO subject (id, number, form, species, sex, hatched, "
                          "acquired, source, standing, quarantined, mature, enclosure, place, "
                          "mother, father, headcount, note) VALUES (?, ?, ?, ?, ?, ?, ?, ?, "
                          "?, ?, ?, ?, ?, ?, ?, ?, ?)"));
    const auto dayOf = [](std::optional<CivilDay> day) {
        return day ? std::optional<int>(day->days) : std::nullopt;
    };
    const auto bytesOfId = [](const auto& maybe) {
        return maybe ? std::optional(maybe->uuid.bytes) : std::nullopt;
    };
    const auto enclosure = bytesOfId(subject.enclosure);
    const auto mother = bytesOfId(subject.mother);
    const auto father = bytesOfId(subject.father);
    return replace
        .bind(id.uuid.bytes, subject.number, subject.form, subject.species, subject.sex,
              dayOf(subject.hatched), dayOf(subject.acquired), subject.source, subject.standing,
              subject.quarantined, subject.mature, enclosure, place, mother, father,
              subject.headcount, subject.note)
        .run();
}

Done Projector::writeEnclosure(const Uuid& thing) {
    BURROW_TRY(const auto fields, winners(thing));
    if (fields.empty()) {
        BURROW_TRY(auto remove, connection_.query("DELETE FROM enclosure WHERE id = ?"));
        return remove.bind(thing.bytes).run();
    }
    const auto enclosure = enclosureFrom(EnclosureId{thing}, fields);
    const auto place = enclosure.place.text();
    BURROW_TRY(
        auto replace,
        connection_.query("REPLACE INTO enclosure (id, name, length_mm, width_mm, height_mm, "
                          "substrate_mm, place, note) VALUES (?, ?, ?, ?, ?, ?, ?, ?)"));
    return replace
        .bind(thing.bytes, enclosure.name, enclosure.length.value, enclosure.width.value,
              enclosure.height.value, enclosure.substrate.value, place, enclosure.note)
        .run();
}

Done Projector::writeTag(const Uuid& thing) {
    BURROW_TRY(const auto fields, winners(thing));
    const auto tag = tagFrom(fields);
    if (tag.code.empty() || tagThing(tag.code) != thing) {
        BURROW_TRY(auto remove, connection_.query("DELETE FROM tag WHERE id = ?"));
        return remove.bind(thing.bytes).run();
    }
    const auto subject = tag.subject ? std::optional(tag.subject->uuid.bytes) : std::nullopt;
    const auto enclosure = tag.enclosure ? std::optional(tag.enclosure->uuid.bytes) : std::nullopt;
    BURROW_TRY(auto replace, connection_.query("REPLACE INTO tag (id, code, side_mm, subject, "
                                               "enclosure) VALUES (?, ?, ?, ?, ?)"));
    return replace.bind(thing.bytes, tag.code, tag.printedSide.value, subject, enclosure).run();
}

Done Projector::writeSettings(const Uuid& thing) {
    BURROW_TRY(const auto fields, winners(thing));
    BURROW_DO(connection_.execute("DELETE FROM setting"));
    for (const auto& [field, value] : fields) {
        if (!value.is_string()) continue;
        BURROW_TRY(auto insert,
                   connection_.query("INSERT INTO setting (name, value) VALUES (?, ?)"));
        BURROW_DO(insert.bind(field, value.get_ref<const std::string&>()).run());
    }
    return {};
}

Done Projector::rebuild() {
    BURROW_DO(connection_.execute(
        "DELETE FROM correction; DELETE FROM fact; DELETE FROM field; DELETE FROM digest;"
        "DELETE FROM subject; DELETE FROM enclosure; DELETE FROM tag; DELETE FROM setting;"));
    {
        // Entries are read with a statement of their own, in portions, so that memory stays flat.
        std::int64_t after = 0;
        while (true) {
            BURROW_TRY(const auto portion, entriesAfter(connection_, after, 2000));
            if (portion.empty()) break;
            for (const auto& [n, entry] : portion) {
                BURROW_DO(apply(entry));
                after = n;
            }
            entries_.clear();
        }
    }
    BURROW_TRY(const auto changes, finish());
    static_cast<void>(changes);
    return {};
}

}  // namespace burrow
