// CSV files brought into a small room. The first byte chooses which of the three files it is, and whether
// bad rows are left out; nothing is kept.
#include "exchange/bring.h"
#include "fuzz/target.h"
#include "support/book.h"

using namespace burrow;

namespace {

test::TestBook& room() {
    static test::TestBook* const made = [] {
        auto* const book = new test::TestBook;
        book->add("214", "Brachypelma hamorii");
        const EnclosureId enclosure{book->book.newId()};
        book->book
            .record(SetDraft{
                ThingType::enclosure, enclosure.uuid,
                toFields(Enclosure{enclosure, "E1", Millimetres{200}, {}, {}, {}, {}, {}})})
            .value();
        test::must(book->book.connection().execute("PRAGMA synchronous = OFF"));
        return book;
    }();
    return *made;
}

}  // namespace

FUZZ_TARGET(bring) {
    if (bytes.empty()) return;
    const auto choice = static_cast<unsigned char>(bytes.front());
    exchange::BringOptions options;
    options.onlyLook = true;
    options.skipBad = (choice & 4U) != 0;
    const exchange::CsvSource source{static_cast<exchange::CsvKind>(choice % 3), bytes.substr(1)};
    static_cast<void>(exchange::recogniseCsv(source.text));
    const auto report = exchange::bring(room().book, {source}, options);
    if (!report) return;
    BURROW_REQUIRE(!report->isDone);
    BURROW_REQUIRE(report->bad.size() <= options.mostReported);
    for (const auto& row : report->bad) BURROW_REQUIRE(row.line > 1 && !row.reason.id.empty());
    BURROW_REQUIRE(roster(room().book)->size() == 1);
}
