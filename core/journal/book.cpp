#include "journal/book.h"

#include <system_error>

#include "journal/backups.h"
#include "journal/fields.h"
#include "journal/hlc.h"
#include "journal/json_reading.h"
#include "journal/migration.h"
#include "journal/rows.h"
#include "storage/copy.h"

namespace burrow {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using storage::Access;
using storage::Connection;
using storage::Transaction;

/// Keeps a copy, then brings the book to this program's version.
Done migrateKeepingCopy(Connection& connection, const fs::path& path,
                        const Surroundings& surroundings) {
    const Backups backups(path, surroundings.clock, surroundings.zone);
    BURROW_TRY(const auto kept, backups.make(BackupReason::beforeMigration));
    static_cast<void>(kept);
    return migrate(connection);
}

/// Whether a set replaced nothing.
bool isFirstOfItsKind(const Entry& set) {
    const auto* over = reading::member(set.body, "over");
    return over == nullptr || over->empty();
}

}  // namespace

std::optional<SetDraft> consequenceOf(const FactDraft& draft) {
    if (draft.isHistory) return std::nullopt;
    SetDraft set{ThingType::subject, draft.subject.uuid, {}};
    if (draft.kind == FactKind::rehoused && draft.body.enclosure) {
        set.fields["enclosure"] = draft.body.enclosure->text();
    }
    if (draft.kind == FactKind::moved && draft.body.place) {
        set.fields["place"] = draft.body.place->text();
        set.fields["enclosure"] = nullptr;  // it stands elsewhere now, without a recorded enclosure
    }
    // An examination that could not tell leaves standing what is known.
    if (draft.kind == FactKind::sexed && tellsSex(draft.body)) {
        set.fields["sex"] = std::string(name(*draft.body.sex));
    }
    if (draft.kind == FactKind::moulted && draft.body.ultimate.value_or(false)) {
        set.fields["mature"] = true;
    }
    return set.fields.empty() ? std::nullopt : std::optional(std::move(set));
}

Book::Book(Connection connection, fs::path path, Surroundings surroundings)
    : connection_(std::move(connection)),
      path_(std::move(path)),
      surroundings_(std::move(surroundings)),
      uuids_(std::make_unique<UuidSource>(surroundings_.clock, surroundings_.random)) {}

/// Makes a book under another name first, so that one that could not be finished is not in the way.
Result<Book> Book::make(const fs::path& path, Surroundings surroundings, std::optional<BookId> id,
                        const FieldValues& settings) {
    std::error_code error;
    if (fs::exists(path, error)) {
        return fail(Trouble::badInput, {"book.exists", {{"file", path.filename().string()}}});
    }
    if (path.has_parent_path()) fs::create_directories(path.parent_path(), error);
    auto part = path;
    part += ".part";
    const storage::Workpiece unfinished(part);
    BURROW_DO(writeNew(part, surroundings, id, settings));
    // What SQLite kept beside a book that is gone would be taken for this one's.
    const Backups backups(path, surroundings.clock, surroundings.zone);
    BURROW_TRY(const auto aside, backups.putAside());
    static_cast<void>(aside);
    auto moved = moveIntoPlace(part, path);
    Result<Book> book = moved ? open(path, Access::readWrite, std::move(surroundings))
                              : Result<Book>(failAs(moved));
    if (!book) storage::removeDatabase(path);
    return book;
}

/// Writes a whole new book, with a device of its own, in one file.
Done Book::writeNew(const fs::path& path, const Surroundings& surroundings,
                    std::optional<BookId> id, const FieldValues& settings) {
    BURROW_TRY(auto connection, Connection::open(path, Access::create));
    BURROW_DO(connection.execute("PRAGMA synchronous = FULL"));
    BURROW_DO(migrate(connection));
    UuidSource uuids(surroundings.clock, surroundings.random);
    const auto device = uuids.next();
    const auto book = id ? id->uuid : uuids.next();
    {
        BURROW_TRY(auto transaction, Transaction::begin(connection));
        BURROW_TRY(auto addDevice, connection.query("INSERT INTO device (ref, id) VALUES (1, ?)"));
        BURROW_DO(addDevice.bind(device.bytes).run());
        BURROW_TRY(auto addBook,
                   connection.query("INSERT INTO book (only, id, device) VALUES (1, ?, 1)"));
        BURROW_DO(addBook.bind(book.bytes).run());
        BURROW_DO(transaction.commit());
    }
    if (settings.empty()) return {};
    BURROW_TRY(auto made, openConnected(std::move(connection), path, surroundings));
    BURROW_TRY(const auto changes, made.record(SetDraft{ThingType::book, made.id_.uuid, settings}));
    static_cast<void>(changes);
    return {};
}

Result<Book> Book::create(const fs::path& path, std::string_view room, std::string_view roomCode,
                          Surroundings surroundings) {
    if (room.empty() || roomCode.empty()) return fail(Trouble::badInput, {"book.needsName"});
    return make(path, std::move(surroundings), std::nullopt,
                {{setting::room, std::string(room)}, {setting::roomCode, std::string(roomCode)}});
}

Result<Book> Book::join(const fs::path& path, BookId id, Surroundings surroundings) {
    return make(path, std::move(surroundings), id, {});
}

Result<Book> Book::open(const fs::path& path, Access access, Surroundings surroundings) {
    BURROW_TRY(auto connection, Connection::open(path, access));
    BURROW_TRY(const auto version, requireBook(connection));
    const bool isOlder = version < newestVersion();
    if (access == Access::readWrite) {
        BURROW_DO(connection.execute("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL"));
        if (isOlder) BURROW_DO(migrateKeepingCopy(connection, path, surroundings));
    } else if (isOlder) {
        return fail(Trouble::readOnly, {"book.older"});
    }
    return openConnected(std::move(connection), path, std::move(surroundings));
}

Result<Book> Book::openConnected(Connection connection, fs::path path, Surroundings surroundings) {
    BURROW_DO(connection.execute("PRAGMA foreign_keys = ON; PRAGMA mmap_size = 268435456"));
    Book book(std::move(connection), std::move(path), std::move(surroundings));
    BURROW_DO(book.loadIdentity());
    return book;
}

Done Book::loadIdentity() {
    BURROW_TRY(auto rows, connection_.query("SELECT b.id, d.id, d.ref FROM book b JOIN device d ON "
                                            "d.ref = b.device"));
    BURROW_TRY(const bool found, rows.next());
    if (!found) return fail(Trouble::corrupt, {"book.damaged"});
    id_ = BookId{uuidAt(rows, 0)};
    device_ = DeviceId{uuidAt(rows, 1)};
    deviceRef_ = rows.integer(2);
    return {};
}

/// Takes up the sequence and the clock where this device left them; another program may have written
/// in between, so they are read inside the transaction.
Done Book::startAct() {
    projector_ = std::make_unique<Projector>(connection_);
    now_ = surroundings_.clock.now();
    std::int64_t heard = 0;
    std::int64_t device = 0;
    {
        BURROW_TRY(auto own, connection_.query("SELECT device, heard FROM book"));
        BURROW_TRY(const bool found, own.next());
        if (!found) return fail(Trouble::corrupt, {"book.damaged"});
        device = own.integer(0);
        heard = own.integer(1);
    }
    // Another program may have given this copy a device of its own.
    if (device != deviceRef_) BURROW_DO(loadIdentity());
    BURROW_TRY(auto rows, connection_.query(
                              "SELECT seq, hlc FROM entry WHERE device = ? ORDER BY seq DESC LIMIT "
                              "1"));
    rows.bind(deviceRef_);
    BURROW_TRY(const bool found, rows.next());
    nextSeq_ = found ? rows.integer(0) + 1 : 1;
    act_ = nextSeq_;
    stamp_ = std::max(hlc::bounded(found ? rows.integer(1) : 0, now_), hlc::bounded(heard, now_));
    return {};
}

Done Book::becomeNewDevice() {
    BURROW_TRY(auto transaction, Transaction::begin(connection_));
    BURROW_DO(takeNewDevice());
    BURROW_DO(transaction.commit());
    return loadIdentity();
}

/// Inside a transaction; loadIdentity() follows when it is committed.
Done Book::takeNewDevice() {
    const auto device = uuids_->next();
    {
        BURROW_TRY(auto add, connection_.query("INSERT INTO device (id) VALUES (?)"));
        BURROW_DO(add.bind(device.bytes).run());
    }
    BURROW_TRY(auto change, connection_.query("UPDATE book SET device = (SELECT ref FROM device "
                                              "WHERE id = ?)"));
    return change.bind(device.bytes).run();
}

Result<Act> Book::beginAct() {
    BURROW_TRY(auto transaction, Transaction::begin(connection_));
    BURROW_DO(startAct());
    return Act(*this, std::move(transaction));
}

Done Act::add(const Draft& draft) {
    BURROW_TRY(auto entry, book_->entryFor(draft));
    const auto id = entry.id;
    BURROW_DO(book_->append(std::move(entry)));
    const auto* fact = std::get_if<FactDraft>(&draft);
    if (const auto follows = fact != nullptr ? consequenceOf(*fact) : std::nullopt) {
        BURROW_TRY(auto set, book_->entryFor(*follows));
        BURROW_DO(book_->append(std::move(set)));
    }
    BURROW_TRY(auto beside, book_->confidentialFor(draft, id));
    return beside ? book_->append(*std::move(beside)) : Done();
}

void Act::startNext() {
    book_->act_ = book_->nextSeq_;
    book_->now_ = book_->surroundings_.clock.now();
}

Result<ChangeSet> Act::commit() {
    BURROW_TRY(auto changes, book_->projector_->finish());
    BURROW_DO(transaction_.commit());
    return changes;
}

Result<ChangeSet> Book::record(std::span<const Draft> drafts) {
    BURROW_TRY(auto act, beginAct());
    for (const auto& draft : drafts) BURROW_DO(act.add(draft));
    return act.commit();
}

/// The entries of this device's newest act that still count, newest first.
Result<std::vector<EntryId>> Book::lastAct() {
    std::vector<EntryId> targets;
    std::int64_t act = 0;
    {
        BURROW_TRY(
            auto rows,
            connection_.query("SELECT act FROM entry e WHERE device = ? AND kind <> 'retract' "
                              "AND NOT EXISTS (SELECT 1 FROM correction c WHERE c.target = e.id "
                              "AND c.kind = 'retract') ORDER BY seq DESC LIMIT 1"));
        rows.bind(deviceRef_);
        BURROW_TRY(const bool found, rows.next());
        if (!found) return targets;
        act = rows.integer(0);
    }
    BURROW_TRY(auto rows, connection_.query(
                              "SELECT id FROM entry e WHERE device = ?1 AND seq >= ?2 AND act = "
                              "?2 AND kind <> 'retract' AND NOT EXISTS (SELECT 1 FROM correction "
                              "c WHERE c.target = e.id AND c.kind = 'retract') ORDER BY seq "
                              "DESC"));
    rows.bind(deviceRef_, act);
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return targets;
        targets.push_back(EntryId{uuidAt(rows, 0)});
    }
}

Result<std::pair<ChangeSet, std::vector<Entry>>> Book::undo() {
    BURROW_TRY(auto transaction, Transaction::begin(connection_));
    BURROW_TRY(const auto targets, lastAct());
    std::vector<Entry> undone;
    BURROW_DO(startAct());
    for (const auto& target : targets) {
        BURROW_TRY(auto entry, findEntry(connection_, target));
        if (entry->thing == id_.uuid && entry->seq == 1 && isFirstOfItsKind(*entry)) {
            continue;  // the room's first name stays
        }
        BURROW_TRY(auto retraction, correction(target, entrykind::retract));
        BURROW_DO(append(std::move(retraction)));
        undone.push_back(*std::move(entry));
    }
    if (undone.empty()) return fail(Trouble::notFound, {"book.nothingToUndo"});
    BURROW_TRY(auto changes, projector_->finish());
    BURROW_DO(transaction.commit());
    return std::pair(std::move(changes), std::move(undone));
}

}  // namespace burrow
