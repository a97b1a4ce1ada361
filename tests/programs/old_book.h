// Books as earlier versions wrote them, for programs that have only `burrow`.
#pragma once

#include <sqlite3.h>

#include <QFile>
#include <QString>

namespace burrow::test {

inline sqlite3* openRaw(const QString& path) {
    sqlite3* book = nullptr;
    if (sqlite3_open(path.toUtf8(), &book) != SQLITE_OK) qFatal("%s", sqlite3_errmsg(book));
    return book;
}

inline void run(sqlite3* book, const QByteArray& sql) {
    char* trouble = nullptr;
    if (sqlite3_exec(book, sql, nullptr, nullptr, &trouble) != SQLITE_OK) qFatal("%s", trouble);
}

/// The fixture of that schema (tests/migrations), with so many waterings more.
inline void unpackOldBook(const QString& path, int version, std::int64_t more) {
    QFile dump(QStringLiteral(BURROW_SOURCE_DIR "/tests/migrations/schema_%1.sql").arg(version));
    if (!dump.open(QIODevice::ReadOnly)) qFatal("no fixture");
    auto* const book = openRaw(path);
    run(book, "PRAGMA synchronous = OFF");
    run(book, dump.readAll());
    run(book,
        "WITH RECURSIVE counted (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM counted WHERE i < " +
            QByteArray::number(static_cast<qlonglong>(more)) +
            ") INSERT INTO entry (id, device, seq, act, hlc, kind, thing, body, recorded_at, "
            "happened_at, day, zone) SELECT randomblob(16), device, seq + i, seq + i, hlc + i, "
            "'watered', (SELECT id FROM subject ORDER BY number LIMIT 1), '{}', recorded_at, "
            "happened_at, day, zone FROM counted, (SELECT * FROM entry WHERE device = 1 ORDER BY "
            "seq DESC LIMIT 1)");
    run(book, "PRAGMA journal_mode = WAL");
    sqlite3_close(book);
}

inline std::int64_t entriesIn(const QString& path) {
    auto* const book = openRaw(path);
    sqlite3_stmt* count = nullptr;
    sqlite3_prepare_v2(book, "SELECT count(*) FROM entry", -1, &count, nullptr);
    sqlite3_step(count);
    const auto entries = sqlite3_column_int64(count, 0);
    sqlite3_finalize(count);
    sqlite3_close(book);
    return entries;
}

}  // namespace burrow::test
