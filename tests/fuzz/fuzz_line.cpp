// An entry as a line of JSON, as files from other devices carry it.
#include "exchange/entry_line.h"
#include "fuzz/target.h"

using namespace burrow;

namespace {

std::string written(const Entry& entry) {
    const auto body = entry.body.dump();
    std::string line;
    exchange::appendLine(
        {0, entry.id, entry.device, entry.seq, entry.act, entry.hlc, entry.kind, entry.thing, body,
         entry.recordedAt, entry.happenedAt, entry.day, entry.zone},
        line);
    BURROW_REQUIRE(line.ends_with('\n'));
    line.pop_back();
    return line;
}

}  // namespace

FUZZ_TARGET(line) {
    const auto read = exchange::entryFromLine(bytes);
    if (!read) return;
    BURROW_REQUIRE(bytes.size() <= exchange::limit::lineBytes);
    BURROW_REQUIRE(read->seq >= 1 && read->act >= 1);
    const auto line = written(*read);
    if (line.size() > exchange::limit::lineBytes) return;  // escapes may make it longer
    const auto again = exchange::entryFromLine(line);
    BURROW_REQUIRE(again.has_value());
    BURROW_REQUIRE(written(*again) == line);
}
