#include "exchange/peers.h"

#include "exchange/bundle.h"

namespace burrow::exchange {

Done rememberPeer(storage::Connection& connection, const Manifest& manifest) {
    if (manifest.vector.devices.empty()) return {};
    const auto vector = burrow::toJson(manifest.vector).dump();
    BURROW_TRY(
        auto insert,
        connection.query("INSERT INTO peer (device, written_at, vector) VALUES (?, ?, ?) ON "
                         "CONFLICT (device) DO UPDATE SET written_at = excluded.written_at, "
                         "vector = excluded.vector WHERE excluded.written_at >= written_at"));
    return insert.bind(manifest.device.uuid.bytes, manifest.writtenAt.ms, vector).run();
}

Result<VersionVector> peerVector(storage::Connection& connection, const DeviceId& device) {
    BURROW_TRY(auto row, connection.query("SELECT vector FROM peer WHERE device = ?"));
    row.bind(device.uuid.bytes);
    BURROW_TRY(const bool found, row.next());
    if (!found) return VersionVector{};
    return versionVectorFrom(nlohmann::json::parse(row.text(0), nullptr, false));
}

Result<std::vector<KnownPeer>> peers(Book& book) {
    std::vector<KnownPeer> known;
    BURROW_TRY(auto rows, book.connection().query(
                              "SELECT device, written_at FROM peer ORDER BY written_at DESC, "
                              "device"));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return known;
        known.push_back({DeviceId{uuidAt(rows, 0)}, Instant{rows.integer(1)}});
    }
}

Result<bool> hasAll(storage::Connection& connection, const Totals& totals) {
    for (const auto& [device, share] : totals.authors) {
        BURROW_TRY(auto rows,
                   connection.query("SELECT e.id FROM entry e JOIN device d ON d.ref = "
                                    "e.device WHERE d.id = ? AND e.seq BETWEEN ? AND ?"));
        rows.bind(device.uuid.bytes, share.first, share.last);
        Share here{share.first, share.last, 0, {}};
        while (here.count <= share.count) {
            BURROW_TRY(const bool more, rows.next());
            if (!more) break;
            ++here.count;
            const auto id = rows.blob(0);
            for (std::size_t i = 0; i < id.size() && i < here.digest.bytes.size(); ++i) {
                here.digest.bytes[i] ^= id[i];
            }
        }
        if (here != share) return false;
    }
    return true;
}

}  // namespace burrow::exchange
