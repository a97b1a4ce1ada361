// The rows that queries read, and what of all that was ever said makes them up.
#include <algorithm>
#include <utility>

#include "journal/amendments.h"
#include "journal/digest_codec.h"
#include "journal/fields.h"
#include "journal/projector.h"
#include "journal/rows.h"

namespace burrow {

using nlohmann::json;

Result<std::map<std::string, std::vector<FieldValue>>> fieldValues(storage::Connection& connection,
                                                                   const Uuid& thing,
                                                                   ThingType type) {
    std::map<std::string, std::vector<FieldValue>> fields;
    BURROW_TRY(auto rows, connection.query("SELECT name, value, entry, device, seq, hlc, over, "
                                           "retracted FROM field WHERE thing = ? AND type = ? "
                                           "ORDER BY name, hlc, entry"));
    rows.bind(thing.bytes, name(type));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return fields;
        FieldValue value{{EntryId{uuidAt(rows, 2)}, uuidAt(rows, 3), rows.integer(4),
                          rows.integer(5), rows.integer(7) != 0, std::nullopt},
                         std::string(rows.text(1))};
        if (!rows.isNull(6)) value.said.over = entryIds(json::parse(rows.text(6), nullptr, false));
        fields[std::string(rows.text(0))].push_back(std::move(value));
    }
}

std::vector<const FieldValue*> headsOf(const std::vector<FieldValue>& values) {
    std::vector<Said> said;
    said.reserve(values.size());
    for (const auto& value : values) said.push_back(value.said);
    std::vector<const FieldValue*> heads;
    for (const auto place : headsOf(said)) heads.push_back(&values[place]);
    return heads;
}

Done Projector::flush() {
    BURROW_DO(reprojectCorrected());
    for (auto& [uuid, state] : subjects_) {
        BURROW_DO(finishSubject(SubjectId{uuid}, state));
        changes_.subjects.push_back(SubjectId{uuid});
    }
    for (const auto& [type, uuid] : things_) {
        switch (type) {
            case ThingType::enclosure:
                BURROW_DO(writeEnclosure(uuid));
                changes_.enclosures.push_back(EnclosureId{uuid});
                break;
            case ThingType::tag:
                BURROW_DO(writeTag(uuid));
                changes_.tags = true;
                break;
            case ThingType::book:
                BURROW_DO(writeSettings(uuid));
                changes_.settings = true;
                break;
            case ThingType::subject: break;
        }
    }
    subjects_.clear();
    things_.clear();
    return {};
}

Done Projector::flushIfLarge() {
    constexpr std::size_t large = 20'000;  // some tens of megabytes of digests
    return subjects_.size() + things_.size() + corrected_.size() > large ? flush() : Done();
}

Result<ChangeSet> Projector::finish() {
    BURROW_DO(flush());
    auto changes = std::exchange(changes_, {});
    const auto once = [](auto& ids) {
        std::ranges::sort(ids);
        ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
    };
    once(changes.subjects);
    once(changes.enclosures);
    return changes;
}

/// The values that count. Notes the fields whose heads say different things.
Result<FieldValues> Projector::winners(const Uuid& thing, ThingType type) {
    BURROW_TRY(const auto all, fieldValues(connection_, thing, type));
    {
        BURROW_TRY(auto remove, connection_.query("DELETE FROM difference WHERE kind = 0 AND about "
                                                  "= ? AND type = ?"));
        BURROW_DO(remove.bind(thing.bytes, name(type)).run());
    }
    FieldValues fields;
    for (const auto& [field, values] : all) {
        const auto heads = headsOf(values);
        if (heads.empty()) continue;
        fields[field] = json::parse(heads.front()->value, nullptr, false);
        const bool differ = std::any_of(heads.begin(), heads.end(), [&](const FieldValue* head) {
            return head->value != heads.front()->value;
        });
        if (!differ) continue;
        BURROW_TRY(auto insert,
                   connection_.query("INSERT INTO difference (kind, about, type, name) VALUES (0, "
                                     "?, ?, ?)"));
        BURROW_DO(insert.bind(thing.bytes, name(type), field).run());
    }
    return fields;
}

Done Projector::writeSubject(SubjectId id, const Digest& digest) {
    BURROW_TRY(const auto fields, winners(id.uuid, ThingType::subject));
    if (fields.empty()) {
        BURROW_DO(words_.remove(TextOf::subject, id.uuid));
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
    BURROW_DO(words_.put({TextOf::subject, id.uuid, id.uuid, Instant{}, subject.number, place,
                          subject.source, subject.note}));
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
    BURROW_TRY(const auto fields, winners(thing, ThingType::enclosure));
    if (fields.empty()) {
        BURROW_DO(words_.remove(TextOf::enclosure, thing));
        BURROW_TRY(auto remove, connection_.query("DELETE FROM enclosure WHERE id = ?"));
        return remove.bind(thing.bytes).run();
    }
    const auto enclosure = enclosureFrom(EnclosureId{thing}, fields);
    const auto place = enclosure.place.text();
    const auto where = enclosure.name + '\n' + place;
    BURROW_DO(
        words_.put({TextOf::enclosure, thing, thing, Instant{}, {}, where, {}, enclosure.note}));
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
    BURROW_TRY(const auto fields, winners(thing, ThingType::tag));
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

/// Only of this book: another one's room may have come along with its animals.
Done Projector::writeSettings(const Uuid& thing) {
    BURROW_TRY(const auto fields, winners(thing, ThingType::book));
    {
        BURROW_TRY(auto own, connection_.query("SELECT 1 FROM book WHERE id = ?"));
        own.bind(thing.bytes);
        BURROW_TRY(const bool isOwn, own.next());
        if (!isOwn) return {};
    }
    BURROW_DO(connection_.execute("DELETE FROM setting"));
    for (const auto& [field, value] : fields) {
        if (!value.is_string()) continue;
        BURROW_TRY(auto insert,
                   connection_.query("INSERT INTO setting (name, value) VALUES (?, ?)"));
        BURROW_DO(insert.bind(field, value.get_ref<const std::string&>()).run());
    }
    return {};
}

/// In portions, each read by a statement of its own, so that memory stays flat.
template <class Each>
Done Projector::eachEntry(Each each) {
    std::int64_t after = 0;
    while (true) {
        BURROW_TRY(const auto portion, entriesAfter(connection_, after, 2000));
        if (portion.empty()) return {};
        for (const auto& [n, entry] : portion) {
            BURROW_DO(each(entry));
            after = n;
        }
        BURROW_DO(flushIfLarge());
    }
}

Done Projector::rebuild() {
    BURROW_DO(words_.startRefilling());
    BURROW_DO(connection_.execute(
        "DELETE FROM correction; DELETE FROM fact; DELETE FROM field; DELETE FROM digest;"
        "DELETE FROM subject; DELETE FROM enclosure; DELETE FROM tag; DELETE FROM setting;"
        "DELETE FROM difference; DELETE FROM confidential; DELETE FROM fork;"
        "INSERT INTO fork (device, seq) SELECT d.id, e.seq FROM entry e JOIN device d ON d.ref = "
        "e.device GROUP BY e.device, e.seq HAVING count(*) > 1;"));
    // Corrections first: each entry is then projected once, as they leave it.
    const auto note = [&](const Entry& entry) -> Done {
        BURROW_DO(noteConfidential(entry));
        const bool corrects = entry.kind == entrykind::amend || entry.kind == entrykind::retract;
        return corrects ? noteCorrection(entry) : Done();
    };
    BURROW_DO(eachEntry(note));
    BURROW_DO(eachEntry([&](const Entry& entry) { return project(entry, entry.body.dump()); }));
    BURROW_TRY(const auto changes, finish());
    static_cast<void>(changes);
    return words_.finishRefilling();
}

}  // namespace burrow
