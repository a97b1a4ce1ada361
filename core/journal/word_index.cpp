#include "journal/word_index.h"

#include <fmt/format.h>

#include <optional>

#include "journal/rows.h"

namespace burrow {
namespace {

/// What stands there now: the row's number, and whether it says the same.
struct Row {
    std::int64_t n = 0;
    bool isSame = false;
};

Result<std::optional<Row>> rowOf(storage::Connection& connection, const Searchable& text) {
    BURROW_TRY(auto row, connection.query("SELECT n, about, at, number, place, source, note FROM "
                                          "searchable WHERE origin = ? AND kind = ?"));
    row.bind(text.origin.bytes, text.kind);
    BURROW_TRY(const bool found, row.next());
    if (!found) return std::optional<Row>();
    const bool isSame = uuidAt(row, 1) == text.about && row.integer(2) == text.at.ms &&
                        row.text(3) == text.number && row.text(4) == text.place &&
                        row.text(5) == text.source && row.text(6) == text.note;
    return std::optional(Row{row.integer(0), isSame});
}

Result<std::int64_t> insert(storage::Connection& connection, const Searchable& text) {
    BURROW_TRY(auto row,
               connection.query("INSERT INTO searchable (kind, origin, about, at, number, place, "
                                "source, note) VALUES (?, ?, ?, ?, ?, ?, ?, ?) RETURNING n"));
    row.bind(text.kind, text.origin.bytes, text.about.bytes, text.at.ms, text.number, text.place,
             text.source, text.note);
    BURROW_TRY(const bool written, row.next());
    return written ? row.integer(0) : 0;
}

Done update(storage::Connection& connection, std::int64_t n, const Searchable& text) {
    BURROW_TRY(auto change,
               connection.query("UPDATE searchable SET about = ?, at = ?, number = ?, place = ?, "
                                "source = ?, note = ? WHERE n = ?"));
    return change
        .bind(text.about.bytes, text.at.ms, text.number, text.place, text.source, text.note, n)
        .run();
}

bool isEmpty(const Searchable& text) {
    return text.number.empty() && text.place.empty() && text.source.empty() && text.note.empty();
}

std::string_view columnsOf(TextPart part) {
    switch (part) {
        case TextPart::number: return "number";
        case TextPart::place: return "place";
        case TextPart::note: break;
    }
    return "source note";
}

}  // namespace

Done WordIndex::put(const Searchable& text) {
    if (isEmpty(text)) return remove(text.kind, text.origin);
    BURROW_TRY(const auto now, rowOf(connection_, text));
    if (!now) {
        BURROW_TRY(const auto n, insert(connection_, text));
        return index(n, text);
    }
    if (now->isSame) return {};
    BURROW_DO(unindex(now->n));
    BURROW_DO(update(connection_, now->n, text));
    return index(now->n, text);
}

Done WordIndex::remove(TextOf kind, const Uuid& origin) {
    std::int64_t n = 0;
    {
        BURROW_TRY(auto row, connection_.query("SELECT n FROM searchable WHERE origin = ? AND "
                                               "kind = ?"));
        row.bind(origin.bytes, kind);
        BURROW_TRY(const bool found, row.next());
        if (!found) return {};
        n = row.integer(0);
    }
    BURROW_DO(unindex(n));
    BURROW_TRY(auto remove, connection_.query("DELETE FROM searchable WHERE n = ?"));
    return remove.bind(n).run();
}

/// While its text stands as it was indexed: the index reads there what to take away.
Done WordIndex::unindex(std::int64_t n) {
    if (isRefilling_) return {};
    BURROW_TRY(auto remove, connection_.query("DELETE FROM word_index WHERE rowid = ?"));
    return remove.bind(n).run();
}

Done WordIndex::index(std::int64_t n, const Searchable& text) {
    if (isRefilling_) return {};
    BURROW_TRY(auto add, connection_.query("INSERT INTO word_index (rowid, number, place, source, "
                                           "note) VALUES (?, ?, ?, ?, ?)"));
    return add.bind(n, text.number, text.place, text.source, text.note).run();
}

Done WordIndex::startRefilling() {
    isRefilling_ = true;
    return connection_.execute("DELETE FROM searchable");
}

Done WordIndex::finishRefilling() {
    isRefilling_ = false;
    return connection_.execute("INSERT INTO word_index (word_index) VALUES ('rebuild')");
}

Done checkWordIndex(storage::Connection& connection) {
    return connection.execute(
        "INSERT INTO word_index (word_index, rank) VALUES ('integrity-check', 1)");
}

Result<std::vector<WordHit>> textsWith(storage::Connection& connection, TextPart part,
                                       std::string_view word, bool isStart, int limit) {
    BURROW_TRY(auto rows, connection.query("SELECT s.n, s.kind, s.origin, s.about, s.at FROM "
                                           "word_index w JOIN searchable s ON s.n = w.rowid WHERE "
                                           "w.word_index MATCH ? ORDER BY w.rowid DESC LIMIT ?"));
    // A word holds no quotation marks: between them it is nothing but a word.
    const auto wanted =
        fmt::format("{{{}}} : \"{}\"{}", columnsOf(part), word, isStart ? " *" : "");
    rows.bind(wanted, limit);
    std::vector<WordHit> hits;
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return hits;
        hits.push_back({rows.integer(0), static_cast<TextOf>(rows.integer(1)), uuidAt(rows, 2),
                        uuidAt(rows, 3), Instant{rows.integer(4)}});
    }
}

Result<NoteText> noteText(storage::Connection& connection, std::int64_t n) {
    BURROW_TRY(auto row, connection.query("SELECT note, source FROM searchable WHERE n = ?"));
    row.bind(n);
    BURROW_TRY(const bool found, row.next());
    if (!found) return NoteText{};
    return NoteText{std::string(row.text(0)), std::string(row.text(1))};
}

}  // namespace burrow
