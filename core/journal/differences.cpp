#include "journal/differences.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/hash.h"
#include "journal/amendments.h"
#include "journal/fields.h"
#include "journal/roster.h"
#include "journal/rows.h"

namespace burrow {
namespace {

using nlohmann::json;
using storage::Connection;
using Kind = Difference::Kind;

/// Setting of the book under which the keeper's having seen a fork is kept: up to which number.
std::string forkSetting(const DeviceId& device) { return "fork." + device.text(); }

Result<Choice> choiceOf(Connection& connection, const EntryId& id, json value) {
    Choice choice{id, {}, {}, std::move(value)};
    BURROW_TRY(const auto entry, findEntry(connection, id));
    if (!entry) return choice;
    choice.device = entry->device;
    choice.recordedAt = entry->recordedAt;
    return choice;
}

/// Only the first of several that say the same.
void addIfNew(std::vector<Choice>& choices, Choice choice) {
    const bool isThere = std::ranges::any_of(choices, [&](const Choice& other) {
        return other.value == choice.value && other.happenedAt == choice.happenedAt &&
               other.day == choice.day;
    });
    if (!isThere) choices.push_back(std::move(choice));
}

Result<Difference> fieldDifference(Connection& connection, ThingType type, const Uuid& thing,
                                   const std::string& field) {
    Difference difference{Kind::field, type, thing, field};
    BURROW_TRY(const auto all, fieldValues(connection, thing, type));
    const auto found = all.find(field);
    if (found == all.end()) return difference;
    for (const auto* head : headsOf(found->second)) {
        BURROW_TRY(auto choice, choiceOf(connection, head->said.entry,
                                         json::parse(head->value, nullptr, false)));
        addIfNew(difference.choices, std::move(choice));
    }
    return difference;
}

Result<Difference> factDifference(Connection& connection, Kind kind, const EntryId& fact) {
    Difference difference{kind, ThingType::subject};
    difference.fact = fact;
    BURROW_TRY(const auto entry, findEntry(connection, fact));
    if (entry) {
        difference.thing = entry->thing.value_or(Uuid{});
        difference.factKind = parseFactKind(entry->kind);
    }
    BURROW_TRY(const auto amendments, amendmentsOf(connection, fact));
    const auto& list = kind == Kind::amendment ? amendments.plain : amendments.confidential;
    for (const auto* head : headsOf(list)) {
        BURROW_TRY(auto choice, choiceOf(connection, head->said.entry, head->body()));
        if (kind == Kind::amendment) {
            choice.happenedAt = head->happenedAt();
            choice.day = head->day();
        }
        addIfNew(difference.choices, std::move(choice));
    }
    return difference;
}

struct Row {
    DifferenceRow kind = DifferenceRow::field;
    Uuid about;
    std::string type;
    std::string name;
};

Result<std::vector<Row>> notedRows(Connection& connection) {
    std::vector<Row> noted;
    BURROW_TRY(auto rows, connection.query("SELECT kind, about, type, name FROM difference ORDER "
                                           "BY kind, about, type, name"));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return noted;
        noted.push_back({static_cast<DifferenceRow>(rows.integer(0)), uuidAt(rows, 1),
                         std::string(rows.text(2)), std::string(rows.text(3))});
    }
}

Done addNoted(Connection& connection, std::vector<Difference>& all) {
    BURROW_TRY(const auto noted, notedRows(connection));
    for (const auto& row : noted) {
        if (row.kind == DifferenceRow::field) {
            const auto type = parseThingType(row.type).value_or(ThingType::subject);
            BURROW_TRY(auto difference, fieldDifference(connection, type, row.about, row.name));
            all.push_back(std::move(difference));
            continue;
        }
        const auto kind =
            row.kind == DifferenceRow::amendment ? Kind::amendment : Kind::confidentialPart;
        BURROW_TRY(auto difference, factDifference(connection, kind, EntryId{row.about}));
        all.push_back(std::move(difference));
    }
    return {};
}

/// Two living subjects with the same number.
Done addNumbers(Connection& connection, std::vector<Difference>& all) {
    BURROW_TRY(auto rows, connection.query(
                              "SELECT number, id FROM subject WHERE standing IN (0, 1) AND number "
                              "IN (SELECT number FROM subject WHERE standing IN (0, 1) AND "
                              "number <> '' GROUP BY number HAVING count(*) > 1) ORDER BY "
                              "number, id"));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return {};
        const std::string number(rows.text(0));
        if (all.empty() || all.back().kind != Kind::number || all.back().name != number) {
            all.push_back({Kind::number, ThingType::subject, uuidAt(rows, 1), number});
        }
        Choice choice;
        choice.value = number;
        choice.subject = SubjectId{uuidAt(rows, 1)};
        all.back().choices.push_back(std::move(choice));
    }
}

Done addForks(Connection& connection, std::vector<Difference>& all) {
    BURROW_TRY(auto rows,
               connection.query("SELECT device, max(seq), count(*) FROM fork GROUP BY device ORDER "
                                "BY device"));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return {};
        const DeviceId device{uuidAt(rows, 0)};
        const auto last = std::to_string(rows.integer(1));
        const auto seen = forkSetting(device);
        BURROW_TRY(auto known,
                   connection.query("SELECT 1 FROM setting WHERE name = ? AND CAST(value AS "
                                    "INTEGER) >= CAST(? AS INTEGER)"));
        known.bind(seen, last);
        BURROW_TRY(const bool isSeen, known.next());
        if (isSeen) continue;
        Difference difference{Kind::fork, ThingType::book, device.uuid, last};
        difference.device = device;
        difference.times = rows.integer(2);
        difference.choices.emplace_back();
        all.push_back(std::move(difference));
    }
}

/// What has to be written so that a choice counts.
Result<std::vector<Draft>> draftsFor(Book& book, const Difference& difference,
                                     const Choice& choice) {
    std::vector<Draft> drafts;
    switch (difference.kind) {
        case Kind::field:
            drafts.emplace_back(
                SetDraft{difference.type, difference.thing, {{difference.name, choice.value}}});
            break;
        case Kind::amendment:
        case Kind::confidentialPart:
            drafts.emplace_back(AgainDraft{*difference.fact, choice.entry});
            break;
        case Kind::number: {
            BURROW_TRY(auto next, nextNumber(book));
            for (const auto& other : difference.choices) {
                if (other.subject == choice.subject) continue;
                drafts.emplace_back(
                    SetDraft{ThingType::subject, other.subject->uuid, {{"number", next}}});
                next = numberAfter(next);
            }
            break;
        }
        case Kind::fork:
            drafts.emplace_back(SetDraft{ThingType::book,
                                         book.id().uuid,
                                         {{forkSetting(*difference.device), difference.name}}});
            break;
    }
    return drafts;
}

}  // namespace

std::string Difference::key() const {
    const auto about = fact ? fact->uuid : thing;
    const auto what = fmt::format("{} {} {} {}", static_cast<int>(kind), about.text(),
                                  static_cast<int>(type), name);
    return Sha256::of(what).hex().substr(0, 8);
}

Result<std::vector<Difference>> differences(Book& book) {
    std::vector<Difference> all;
    BURROW_DO(addNoted(book.connection(), all));
    BURROW_DO(addNumbers(book.connection(), all));
    BURROW_DO(addForks(book.connection(), all));
    return all;
}

Result<ChangeSet> settle(Book& book, const Difference& difference, std::size_t choice) {
    const auto gone = fail(Trouble::notFound, {"difference.gone"});
    BURROW_TRY(const auto standing, differences(book));
    const auto found = std::ranges::find_if(
        standing, [&](const Difference& other) { return other.key() == difference.key(); });
    if (found == standing.end() || choice >= difference.choices.size()) return gone;
    const auto& wanted = difference.choices[choice];
    const auto chosen = std::ranges::find_if(found->choices, [&](const Choice& other) {
        return other.entry == wanted.entry && other.value == wanted.value &&
               other.subject == wanted.subject;
    });
    if (chosen == found->choices.end()) return gone;
    BURROW_TRY(const auto drafts, draftsFor(book, *found, *chosen));
    return book.record(drafts);
}

}  // namespace burrow
