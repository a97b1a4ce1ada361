#include "exchange/share_state.h"

#include "journal/rows.h"

namespace burrow::exchange {

Result<std::optional<Uuid>> newestEntry(storage::Connection& connection) {
    BURROW_TRY(auto row, connection.query("SELECT id FROM entry ORDER BY n DESC LIMIT 1"));
    BURROW_TRY(const bool found, row.next());
    return found ? maybeUuidAt(row, 0) : std::optional<Uuid>();
}

Result<FolderState> loadFolderState(storage::Connection& connection, const std::string& path) {
    FolderState state;
    {
        BURROW_TRY(auto row, connection.query("SELECT ref, confidential, newest, vector FROM "
                                              "shared_folder WHERE path = ?"));
        row.bind(path);
        BURROW_TRY(const bool found, row.next());
        if (!found) return state;
        state.ref = row.integer(0);
        state.hadConfidential = row.integer(1) != 0;
        state.newest = maybeUuidAt(row, 2);
        state.vector = versionVectorFrom(nlohmann::json::parse(row.text(3), nullptr, false));
    }
    BURROW_TRY(auto rows,
               connection.query("SELECT device, name FROM shared_file WHERE folder = ?"));
    rows.bind(state.ref);
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return state;
        if (auto writing = Writing::parse(rows.text(1))) {
            state.known[DeviceId{uuidAt(rows, 0)}].insert(*std::move(writing));
        }
    }
}

Done saveFolderState(storage::Connection& connection, const std::string& path, FolderState& state) {
    const auto vector = toJson(state.vector).dump();
    const auto newest = state.newest ? std::optional(state.newest->bytes) : std::nullopt;
    {
        BURROW_TRY(auto save, connection.query(
                                  "INSERT INTO shared_folder (path, confidential, newest, vector) "
                                  "VALUES (?1, ?2, ?3, ?4) ON CONFLICT (path) DO UPDATE SET "
                                  "confidential = ?2, newest = ?3, vector = ?4"));
        BURROW_DO(save.bind(path, state.hadConfidential ? 1 : 0, newest, vector).run());
    }
    BURROW_TRY(auto row, connection.query("SELECT ref FROM shared_folder WHERE path = ?"));
    row.bind(path);
    BURROW_TRY(const bool found, row.next());
    if (!found) return fail(Trouble::corrupt, {"book.damaged"});
    state.ref = row.integer(0);
    return {};
}

Done saveKnownFile(storage::Connection& connection, std::int64_t folder, const DeviceId& device,
                   const Writing& writing) {
    const auto name = writing.name();
    BURROW_TRY(auto save,
               connection.query("INSERT OR IGNORE INTO shared_file (folder, device, name) "
                                "VALUES (?, ?, ?)"));
    return save.bind(folder, device.uuid.bytes, name).run();
}

Done forgetKnownFile(storage::Connection& connection, std::int64_t folder, const DeviceId& device,
                     const Writing& writing) {
    const auto name = writing.name();
    BURROW_TRY(auto forget,
               connection.query("DELETE FROM shared_file WHERE folder = ? AND device = "
                                "? AND name = ?"));
    return forget.bind(folder, device.uuid.bytes, name).run();
}

}  // namespace burrow::exchange
