#include "journal/amendments.h"

#include <set>

#include "journal/confidential.h"
#include "journal/json_reading.h"
#include "journal/rows.h"

namespace burrow {
namespace {

using nlohmann::json;

Result<bool> isRetracted(storage::Connection& connection, const EntryId& entry) {
    BURROW_TRY(auto rows, connection.query("SELECT 1 FROM correction WHERE target = ? AND kind = "
                                           "'retract' LIMIT 1"));
    rows.bind(entry.uuid.bytes);
    return rows.next();
}

}  // namespace

std::vector<EntryId> entryIds(const json& array) {
    std::vector<EntryId> ids;
    if (!array.is_array()) return ids;
    for (const auto& each : array) {
        if (!each.is_string()) continue;
        if (const auto uuid = Uuid::parse(each.get_ref<const std::string&>())) {
            ids.push_back(EntryId{*uuid});
        }
    }
    return ids;
}

const json& Amendment::body() const {
    static const json none;
    const auto* body = reading::member(entryBody, "body");
    return body != nullptr && body->is_object() ? *body : none;
}

std::optional<Instant> Amendment::happenedAt() const {
    const auto ms = reading::whole(entryBody, "happened_at");
    return ms && reading::isInstant(*ms) ? std::optional(Instant{*ms}) : std::nullopt;
}

std::optional<CivilDay> Amendment::day() const {
    const auto days = reading::whole(entryBody, "day");
    if (!days || !reading::isDay(*days)) return std::nullopt;
    return CivilDay{static_cast<std::int32_t>(*days)};
}

Result<Amendments> amendmentsOf(storage::Connection& connection, const EntryId& fact) {
    Amendments found;
    {
        BURROW_TRY(auto rows,
                   connection.query("SELECT entry, kind, body, device, seq, hlc FROM correction "
                                    "WHERE target = ? ORDER BY hlc, entry"));
        rows.bind(fact.uuid.bytes);
        while (true) {
            BURROW_TRY(const bool more, rows.next());
            if (!more) break;
            if (rows.text(1) == entrykind::retract) {
                found.isRetracted = true;
                continue;
            }
            Amendment amendment{{EntryId{uuidAt(rows, 0)}, uuidAt(rows, 3), rows.integer(4),
                                 rows.integer(5), false, std::nullopt},
                                json::parse(rows.text(2), nullptr, false)};
            if (amendment.body().is_null()) continue;
            if (const auto* over = reading::member(amendment.entryBody, "over")) {
                amendment.said.over = entryIds(*over);
            }
            const bool isPart = reading::flag(amendment.entryBody, "confidential");
            (isPart ? found.confidential : found.plain).push_back(std::move(amendment));
        }
    }
    for (auto* list : {&found.plain, &found.confidential}) {
        for (auto& amendment : *list) {
            BURROW_TRY(amendment.said.isRetracted, isRetracted(connection, amendment.said.entry));
        }
    }
    return found;
}

std::vector<const Amendment*> headsOf(const std::vector<Amendment>& amendments) {
    std::vector<Said> said;
    said.reserve(amendments.size());
    for (const auto& amendment : amendments) said.push_back(amendment.said);
    std::vector<const Amendment*> heads;
    for (const auto place : headsOf(said)) heads.push_back(&amendments[place]);
    return heads;
}

bool sayTheSame(const Amendment& a, const Amendment& b) {
    const bool isPart = reading::flag(a.entryBody, "confidential");
    if (isPart) return sameConfidentialPart(a.body(), b.body());
    return a.body() == b.body() && a.happenedAt() == b.happenedAt() && a.day() == b.day();
}

bool applyTo(Entry& entry, const Amendments& amendments) {
    if (amendments.isRetracted) return false;
    if (const auto heads = headsOf(amendments.plain); !heads.empty()) {
        const auto& counts = *heads.front();
        entry.body = counts.body();
        if (const auto at = counts.happenedAt()) {
            entry.happenedAt = *at;
            entry.day = counts.day().value_or(entry.day);
        }
    }
    if (const auto heads = headsOf(amendments.confidential); !heads.empty()) {
        takeConfidentialPart(entry.body, heads.front()->body());
    }
    return true;
}

json replacing(const std::vector<Amendment>& amendments) {
    std::set<EntryId> replaced;
    std::vector<EntryId> open;
    for (const auto* head : headsOf(amendments)) open.push_back(head->said.entry);
    while (!open.empty()) {
        const auto id = open.back();
        open.pop_back();
        if (!replaced.insert(id).second) continue;
        for (const auto& amendment : amendments) {
            if (amendment.said.entry != id || !amendment.said.over) continue;
            const bool mayBeMissing = !reading::flag(amendment.entryBody, "confidential") &&
                                      isConfidential(amendment.entryBody);
            if (!mayBeMissing) continue;  // confidential parts are left out all together
            open.insert(open.end(), amendment.said.over->begin(), amendment.said.over->end());
        }
    }
    json ids = json::array();
    for (const auto& id : replaced) ids.push_back(id.text());
    return ids;
}

}  // namespace burrow
