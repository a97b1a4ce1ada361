#include "journal/dump.h"

#include <fmt/format.h>

#include "journal/projections.h"

namespace burrow {

Done dumpLogical(storage::Connection& connection,
                 const std::function<Done(std::string_view line)>& sink) {
    {
        BURROW_TRY(auto rows,
                   connection.query("SELECT json_array(hex(d.id), e.seq, hex(e.id), e.act, e.hlc, "
                                    "e.kind, hex(e.thing), json(e.body), e.recorded_at, "
                                    "e.happened_at, e.day, e.zone) FROM entry e JOIN device d ON "
                                    "d.ref = e.device ORDER BY d.id, e.seq, e.id"));
        while (true) {
            BURROW_TRY(const bool more, rows.next());
            if (!more) break;
            BURROW_DO(sink(fmt::format("entry {}", rows.text(0))));
        }
    }
    for (const auto& projection : projections) {
        BURROW_TRY(auto rows, connection.query(projection.rows));
        while (true) {
            BURROW_TRY(const bool more, rows.next());
            if (!more) break;
            BURROW_DO(sink(fmt::format("{} {}", projection.table, rows.text(0))));
        }
    }
    return {};
}

}  // namespace burrow
