#include "journal/version_vector.h"

#include <unordered_set>

#include "journal/json_reading.h"
#include "journal/projector.h"

namespace burrow {
namespace {

using nlohmann::json;
using storage::Connection;
using Ids = std::unordered_set<Uuid, UuidHash>;

std::int64_t blockOf(std::int64_t seq) { return (seq - 1) / vectorBlock; }

void join(KnownBlock& block, const Uuid& id) {
    ++block.count;
    for (std::size_t i = 0; i < id.bytes.size(); ++i) block.digest.bytes[i] ^= id.bytes[i];
}

std::optional<KnownBlock> find(const VersionVector& vector, const DeviceId& device,
                               std::int64_t block) {
    const auto found = vector.devices.find(device);
    if (found == vector.devices.end()) return std::nullopt;
    const auto at = found->second.find(block);
    return at == found->second.end() ? std::nullopt : std::optional(at->second);
}

Result<Ids> confidentialEntries(Connection& connection) {
    Ids ids;
    BURROW_TRY(auto rows, connection.query("SELECT entry FROM confidential"));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return ids;
        ids.insert(uuidAt(rows, 0));
    }
}

/// Adds the things whose ids a query gives as 16 bytes or as text.
Done addThings(storage::Query& rows, Ids& things) {
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return {};
        if (auto thing = maybeUuidAt(rows, 0)) things.insert(*thing);
        if (auto thing = Uuid::parse(rows.text(0))) things.insert(*thing);
    }
}

/// The subjects with what belongs to them.
Result<Ids> thingsOf(Connection& connection, const std::set<SubjectId>& subjects) {
    Ids things;
    for (const auto& subject : subjects) {
        things.insert(subject.uuid);
        BURROW_TRY(auto homes,
                   connection.query("SELECT value ->> '$' FROM field WHERE thing = ?1 AND type = "
                                    "'subject' AND name = 'enclosure' UNION SELECT body ->> "
                                    "'$.enclosure' FROM fact WHERE subject = ?1 AND kind = "
                                    "'rehoused'"));
        BURROW_DO(addThings(homes.bind(subject.uuid.bytes), things));
    }
    const auto targets = things;
    BURROW_TRY(auto tags, connection.query("SELECT thing, value ->> '$' FROM field WHERE type = "
                                           "'tag' AND name IN ('subject', 'enclosure')"));
    while (true) {
        BURROW_TRY(const bool more, tags.next());
        if (!more) return things;
        const auto target = Uuid::parse(tags.text(1));
        if (target && targets.contains(*target)) things.insert(uuidAt(tags, 0));
    }
}

/// Sends what a book lacks, block by block.
class Sender {
public:
    Sender(Connection& connection, const VersionVector& vector,
           const std::function<Done(const StoredEntry&)>& send)
        : connection_(connection), vector_(vector), send_(send) {}

    Done select(const Selection& selection) {
        if (!selection.withConfidential) {
            BURROW_TRY(left_, confidentialEntries(connection_));
        }
        if (selection.subjects) {
            BURROW_TRY(things_, thingsOf(connection_, *selection.subjects));
        }
        return {};
    }

    Done run() {
        std::vector<std::pair<std::int64_t, DeviceId>> devices;
        {
            BURROW_TRY(auto rows, connection_.query("SELECT ref, id FROM device ORDER BY id"));
            while (true) {
                BURROW_TRY(const bool more, rows.next());
                if (!more) break;
                devices.emplace_back(rows.integer(0), DeviceId{uuidAt(rows, 1)});
            }
        }
        for (const auto& [ref, device] : devices) BURROW_DO(runDevice(ref, device));
        return {};
    }

private:
    /// From block to block by the index, so that blocks that are equal are never read.
    Done runDevice(std::int64_t ref, const DeviceId& device) {
        std::int64_t after = 0;
        while (true) {
            std::int64_t block = 0;
            {
                BURROW_TRY(auto next, connection_.query("SELECT min(seq) FROM entry WHERE device = "
                                                        "? AND seq > ?"));
                next.bind(ref, after);
                BURROW_TRY(const bool found, next.next());
                if (!found || next.isNull(0)) return {};
                block = blockOf(next.integer(0));
            }
            BURROW_DO(runBlock(ref, device, block));
            after = (block + 1) * vectorBlock;
        }
    }

    Done runBlock(std::int64_t ref, const DeviceId& device, std::int64_t block) {
        const auto theirs = find(vector_, device, block);
        if (!theirs) return send(ref, block, {});
        // Their part may be ours, or what of ours is not left out; or the beginning of either, where
        // we have written on since.
        KnownBlock all;
        KnownBlock passed;
        Ids known;
        bool fits = false;
        BURROW_TRY(auto rows, connection_.query("SELECT id FROM entry WHERE device = ? AND seq "
                                                "BETWEEN ? AND ? ORDER BY seq, id"));
        rows.bind(ref, block * vectorBlock + 1, (block + 1) * vectorBlock);
        while (!fits) {
            BURROW_TRY(const bool more, rows.next());
            if (!more) break;
            const auto id = uuidAt(rows, 0);
            join(all, id);
            if (!left_.contains(id)) join(passed, id);
            known.insert(id);
            fits = all == *theirs || passed == *theirs;
        }
        if (!fits) known.clear();
        return send(ref, block, known);
    }

    Done send(std::int64_t ref, std::int64_t block, const Ids& known) {
        BURROW_TRY(auto rows, connection_.query("SELECT " BURROW_ENTRY_COLUMNS
                                                "WHERE e.device = ? AND e.seq BETWEEN ? AND ? "
                                                "ORDER BY e.seq, e.id"));
        rows.bind(ref, block * vectorBlock + 1, (block + 1) * vectorBlock);
        while (true) {
            BURROW_TRY(const bool more, rows.next());
            if (!more) return {};
            const auto entry = storedEntryAt(rows);
            const bool isLeft = left_.contains(entry.id.uuid) || known.contains(entry.id.uuid);
            const bool isChosen = !things_ || (entry.thing && things_->contains(*entry.thing));
            if (!isLeft && isChosen) BURROW_DO(send_(entry));
        }
    }

    Connection& connection_;
    const VersionVector& vector_;
    const std::function<Done(const StoredEntry&)>& send_;
    Ids left_;
    std::optional<Ids> things_;
};

}  // namespace

Result<VersionVector> versionVector(Connection& connection) {
    VersionVector vector;
    BURROW_TRY(auto rows, connection.query("SELECT d.id, e.seq, e.id FROM device d JOIN entry e ON "
                                           "e.device = d.ref ORDER BY d.ref, e.seq"));
    DeviceId device;
    std::map<std::int64_t, KnownBlock>* blocks = nullptr;
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return vector;
        const DeviceId of{uuidAt(rows, 0)};
        if (blocks == nullptr || of != device) {
            device = of;
            blocks = &vector.devices[device];
        }
        join((*blocks)[blockOf(rows.integer(1))], uuidAt(rows, 2));
    }
}

Done forEachEntryLacking(Connection& connection, const VersionVector& vector,
                         const Selection& selection,
                         const std::function<Done(const StoredEntry&)>& send) {
    Sender sender(connection, vector, send);
    BURROW_DO(sender.select(selection));
    return sender.run();
}

json toJson(const VersionVector& vector) {
    json devices = json::object();
    for (const auto& [device, blocks] : vector.devices) {
        auto& list = devices[device.text()] = json::array();
        for (const auto& [number, block] : blocks) {
            list.push_back({number, block.count, block.digest.text()});
        }
    }
    return {{"block", vectorBlock}, {"devices", std::move(devices)}};
}

VersionVector versionVectorFrom(const json& written) {
    VersionVector vector;
    const auto* devices = reading::member(written, "devices");
    const bool isReadable = reading::whole(written, "block") == vectorBlock && devices != nullptr &&
                            devices->is_object();
    if (!isReadable) return vector;
    for (const auto& [name, blocks] : devices->items()) {
        const auto device = Uuid::parse(name);
        if (!device || !blocks.is_array()) continue;
        for (const auto& block : blocks) {
            const bool isBlock = block.is_array() && block.size() == 3 &&
                                 block[0].is_number_integer() && block[1].is_number_integer() &&
                                 block[2].is_string();
            if (!isBlock) continue;
            const auto digest = Uuid::parse(block[2].get_ref<const std::string&>());
            if (!digest) continue;
            vector.devices[DeviceId{*device}][block[0].get<std::int64_t>()] = {
                block[1].get<std::int64_t>(), *digest};
        }
    }
    return vector;
}

}  // namespace burrow
