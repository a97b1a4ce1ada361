// Books of every released schema, brought to this one. schema_N.sql is a populated book as version N
// wrote it, schema_N.txt is what version N showed of it; neither is ever changed.
#include <QtTest>

#include <fstream>

#include "journal/migration.h"
#include "journal/restore.h"
#include "migrations/populate.h"
#include "storage/schema.h"
#include "support/assets.h"

using namespace burrow;
using namespace burrow::test;
namespace fs = std::filesystem;
using storage::Access;
using storage::Connection;

namespace {

const fs::path fixtures = fs::path(BURROW_SOURCE_DIR) / "tests" / "migrations";

fs::path fixture(std::int64_t version, const char* ending) {
    return fixtures / ("schema_" + std::to_string(version) + ending);
}

std::string schemaOf(Connection& connection) {
    std::string text;
    auto rows = connection
                    .query(
                        "SELECT type || ' ' || name || ' ' || sql FROM sqlite_schema WHERE name "
                        "NOT LIKE 'sqlite_%' ORDER BY type, name")
                    .value();
    while (rows.next().value()) text += std::string(rows.text(0)) + "\n";
    return text;
}

std::string schemaOf(const fs::path& file) {
    auto connection = Connection::open(file, Access::readOnly).value();
    return schemaOf(connection);
}

/// A place for old books.
class Attic {
public:
    [[nodiscard]] Surroundings surroundings() { return {clock, random, Zone::utc()}; }
    [[nodiscard]] fs::path path() const { return folder.path() / "old.book"; }
    [[nodiscard]] Backups backups() const { return {path(), clock, Zone::utc()}; }

    /// The book as that version wrote it.
    void unpack(std::int64_t version) {
        auto connection = Connection::open(path(), Access::create).value();
        must(connection.execute(slurp(fixture(version, ".sql"))));
        must(connection.execute("PRAGMA journal_mode = WAL"));
    }
    Result<Book> open() { return Book::open(path(), Access::readWrite, surroundings()); }

    ScratchFolder folder;
    FixedClock clock{fridayEvening};
    SeededRandom random{5};
};

void eachVersion() {
    QTest::addColumn<int>("version");
    for (int version = 1; version <= newestVersion(); ++version) {
        if (fs::exists(fixture(version, ".sql"))) {
            QTest::addRow("schema %d", version) << version;
        }
    }
}

}  // namespace

class TestMigrations : public QObject {
    Q_OBJECT

private slots:
    /// The one that is being worked on gets its fixture when it is released.
    void everyReleasedSchemaHasAFixture() {
        for (std::int64_t version = 1; version < std::max<std::int64_t>(newestVersion(), 2);
             ++version) {
            QVERIFY2(fs::exists(fixture(version, ".sql")), std::to_string(version).c_str());
            QVERIFY2(fs::exists(fixture(version, ".txt")), std::to_string(version).c_str());
        }
    }

    void stepsAreNumberedWithoutAGap() {
        std::vector<std::string> names;
        for (const auto& file :
             fs::directory_iterator(fs::path(BURROW_SOURCE_DIR) / "core/storage/schema")) {
            names.push_back(file.path().filename().string());
        }
        std::sort(names.begin(), names.end());
        QCOMPARE(static_cast<std::int64_t>(names.size()), newestVersion());
        for (std::size_t i = 0; i < names.size(); ++i) {
            QVERIFY2(names[i].starts_with(fmt::format("{:04}_", i + 1)), names[i].c_str());
        }
    }

    void oldBooksShowWhatTheyShowed_data() { eachVersion(); }
    void oldBooksShowWhatTheyShowed() {
        QFETCH(int, version);
        Attic attic;
        attic.unpack(version);
        const auto entries = contentsOf(attic.path())->entries;
        auto book = attic.open();
        QVERIFY2(book, book ? "" : book.error().message.id.c_str());
        QCOMPARE(shown(*book), slurp(fixture(version, ".txt")));
        const auto report = check(*book).value();
        QVERIFY2(report.isSound(), report.isSound() ? "" : report.findings[0].id.c_str());
        QCOMPARE(report.entries, entries);
        QCOMPARE(contentsOf(attic.path())->version, newestVersion());
        // And it can be written in.
        QVERIFY(book->record(SetDraft{ThingType::book, book->id().uuid, {{"contact", "x"}}}));
        QVERIFY(check(*book)->isSound());
    }

    void theSchemaIsThatOfANewBook_data() { eachVersion(); }
    void theSchemaIsThatOfANewBook() {
        QFETCH(int, version);
        Attic attic;
        attic.unpack(version);
        // A step that was released is never changed: it gives what it gave.
        auto fresh = Connection::open(attic.folder.path() / "fresh.book", Access::create).value();
        const auto& steps = storage::schemaSteps();
        must(migrate(fresh, std::span(steps).first(static_cast<std::size_t>(version))));
        QCOMPARE(schemaOf(attic.path()), schemaOf(fresh));
        must(migrate(fresh));
        QVERIFY(attic.open());
        QCOMPARE(schemaOf(attic.path()), schemaOf(fresh));
        TestBook created;
        QCOMPARE(schemaOf(created.book.path()), schemaOf(fresh));
    }

    void aCopyIsKeptFirst_data() { eachVersion(); }
    void aCopyIsKeptFirst() {
        QFETCH(int, version);
        Attic attic;
        attic.unpack(version);
        const auto before = contentsOf(attic.path()).value();
        QVERIFY(attic.open());
        const auto kept = attic.backups().list().value();
        if (version == newestVersion()) {
            QVERIFY(kept.empty());
            return;
        }
        QCOMPARE(kept.size(), 1U);
        QCOMPARE(kept[0].reason, BackupReason::beforeMigration);
        const auto copy = contentsOf(kept[0].file).value();
        QCOMPARE(copy.version, version);
        QCOMPARE(copy.entries, before.entries);
        // The copy can be gone back to: it is brought to this version on the way.
        QVERIFY(restore(attic.backups(), kept[0].file, attic.surroundings()));
        auto book = attic.open();
        QVERIFY(check(*book)->isSound());
        QCOMPARE(shown(*book), slurp(fixture(version, ".txt")));
    }

    void withoutACopyNothingIsMigrated_data() { eachVersion(); }
    void withoutACopyNothingIsMigrated() {
        QFETCH(int, version);
        if (version == newestVersion()) QSKIP("there is nothing to migrate");
        Attic attic;
        attic.unpack(version);
        std::ofstream(attic.backups().folder()) << "a file where the folder would stand";
        QVERIFY(!attic.open());
        QCOMPARE(contentsOf(attic.path())->version, version);
        const auto readOnly = Book::open(attic.path(), Access::readOnly, attic.surroundings());
        QCOMPARE(readOnly.error().message.id, std::string("book.older"));
    }

    /// However far a step comes, the book is as it was when it fails.
    void aStepThatFailsLeavesTheOldBook_data() { eachVersion(); }
    void aStepThatFailsLeavesTheOldBook() {
        QFETCH(int, version);
        for (const char* last :
             {"CREATE TABLE more (a) STRICT",
              "CREATE TABLE more (a INT) STRICT; INSERT INTO more "
              "VALUES ('no number')",
              "DROP TABLE entry; SELECT * FROM nowhere",
              "DELETE FROM fact; DELETE FROM subject; INSERT INTO device (id) VALUES (x'00')",
              "DROP TABLE fact" /* found only when the journal is projected anew */}) {
            Attic attic;
            attic.unpack(version);
            auto connection = Connection::open(attic.path(), Access::readWrite).value();
            const auto before = schemaOf(connection);
            auto steps = storage::schemaSteps();
            steps.emplace_back("CREATE TABLE good (a INT) STRICT; INSERT INTO good VALUES (1)");
            steps.emplace_back(last);
            QVERIFY(!migrate(connection, steps));
            QCOMPARE(schemaOf(connection), before);
            QCOMPARE(connection.integer("PRAGMA user_version").value(), version);
            auto book = attic.open();
            QVERIFY(book);
            QCOMPARE(shown(*book), slurp(fixture(version, ".txt")));
            QVERIFY(check(*book)->isSound());
        }
    }

    void aBookOfALaterVersionIsNotTouched() {
        Attic attic;
        attic.unpack(1);
        {
            auto connection = Connection::open(attic.path(), Access::readWrite).value();
            must(connection.execute("PRAGMA user_version = 77; PRAGMA journal_mode = DELETE"));
        }
        const auto before = slurp(attic.path());
        for (const auto access : {Access::readWrite, Access::readOnly}) {
            const auto refused = Book::open(attic.path(), access, attic.surroundings());
            QCOMPARE(refused.error().trouble, Trouble::newer);
        }
        QCOMPARE(slurp(attic.path()), before);
        int files = 0;
        for (const auto& file : fs::directory_iterator(attic.folder.path())) {
            files += file.exists() ? 1 : 0;
        }
        QCOMPARE(files, 1);
        QCOMPARE(attic.backups().make(BackupReason::asked).error().trouble, Trouble::newer);
        QCOMPARE(previewRestore(attic.backups(), attic.path()).error().trouble, Trouble::newer);
    }

    void anotherProgramMayMigrateFirst() {
        Attic attic;
        attic.unpack(1);
        auto first = Connection::open(attic.path(), Access::readWrite).value();
        auto second = Connection::open(attic.path(), Access::readWrite).value();
        QCOMPARE(requireBook(second).value(), 1);
        must(migrate(first));
        must(migrate(second));
        auto book = attic.open();
        QVERIFY(check(*book)->isSound());
    }
};

QTEST_APPLESS_MAIN(TestMigrations)
#include "tst_migrations.moc"
