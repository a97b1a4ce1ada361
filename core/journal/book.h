// The book: a SQLite file with a journal and its projections. Everything that is written goes through
// record(), beginAct() and undo(); each is one transaction, and when it returns without an error the
// entries are on the device.
//
// A book belongs to one thread. Another program may have the same file open: writers take turns.
#pragma once

#include <array>
#include <filesystem>
#include <memory>
#include <span>

#include "base/clock.h"
#include "base/random.h"
#include "base/zone.h"
#include "journal/entry.h"
#include "journal/projector.h"
#include "storage/sqlite.h"

namespace burrow {

/// What a book takes from the world around it.
struct Surroundings {
    const Clock& clock;
    Random& random;
    Zone zone;

    [[nodiscard]] CivilDay today() const { return zone.dayOf(clock.now()); }
};

/// Names of settings that live in the book.
namespace setting {
inline constexpr const char* room = "room";        ///< "Kiln Row"
inline constexpr const char* roomCode = "code";    ///< "KR": printed before a number
inline constexpr const char* contact = "contact";  ///< the keeper's own line on care sheets
inline constexpr std::string_view rule = "rule.";  ///< a rule the keeper changed, by its id
/// A species profile of the keeper's own, by its valid name, as text.
inline constexpr std::string_view profile = "profile.";
/// A count of the keeper's own feeders, by kind and size: "feeders.cricket.small" (room/larder.h).
inline constexpr std::string_view feeders = "feeders.";
/// What a pack of them costs, likewise.
inline constexpr std::string_view price = "price.";
/// On which days the keeper feeds, and how many in one evening (room/evenings.h).
inline constexpr std::string_view evenings = "evenings.";
/// What a sheet for a sitter says beside the room's contact (room/away.h).
inline constexpr std::string_view sitter = "sitter.";
/// The bar of a printed mat as the keeper measured it, by the mat's name (room/mats.h).
inline constexpr std::string_view mat = "mat.";
/// A number of a table that the keeper changed, by its place (room/own_numbers.h).
inline constexpr std::string_view number = "number.";
/// What these begin is the keeper's own, and is taken along when the keeper leaves.
inline constexpr std::array families{rule, profile, feeders, price, evenings, sitter, mat, number};
[[nodiscard]] inline bool isOwn(std::string_view name) {
    for (const auto family : families) {
        if (name.starts_with(family)) return true;
    }
    return false;
}
}  // namespace setting

class Book;

/// An act being recorded, for what is too long to hold as a list of drafts: add one by one, then
/// commit. Nothing is kept of an act that was not committed. The book must stay where it is meanwhile.
class Act {
public:
    /// A draft that is refused leaves the act as it was: the next may be added.
    Done add(const Draft& draft);
    /// What is added from here on is an act of its own, undone by itself, at the clock's time now.
    void startNext();
    Result<ChangeSet> commit();

private:
    friend class Book;
    Act(Book& book, storage::Transaction transaction)
        : book_(&book), transaction_(std::move(transaction)) {}
    Book* book_;
    storage::Transaction transaction_;
};

class Book {
public:
    /// Makes a new book; refuses when there is anything at `path` already.
    static Result<Book> create(const std::filesystem::path& path, std::string_view room,
                               std::string_view roomCode, Surroundings surroundings);
    /// Makes an empty book that takes part in book `id` as a device of its own; the entries follow by a
    /// merge. Refuses when there is anything at `path` already.
    static Result<Book> join(const std::filesystem::path& path, BookId id,
                             Surroundings surroundings);
    /// Refuses a file that is no book, or one that a later version wrote, before any write. One of an
    /// earlier version is brought to this one, after a backup was made of it as it is.
    static Result<Book> open(const std::filesystem::path& path, storage::Access access,
                             Surroundings surroundings);

    /// Appends all drafts as one act, or none of them. What follows from a fact is set with it: the
    /// enclosure after a rehousing, the sex after an examination.
    Result<ChangeSet> record(std::span<const Draft> drafts);
    Result<ChangeSet> record(const Draft& draft) { return record(std::span(&draft, 1)); }
    Result<Act> beginAct();
    /// Retracts the last act of this device that still counts, and gives its entries. Fails with
    /// `notFound` when there is none.
    Result<std::pair<ChangeSet, std::vector<Entry>>> undo();

    /// From here on this file writes under a device id of its own: for a book restored from a copy, whose
    /// other copy may still be in use somewhere. A merge that brings unknown entries of this device does
    /// it by itself.
    Done becomeNewDevice();

    [[nodiscard]] BookId id() const { return id_; }
    [[nodiscard]] DeviceId device() const { return device_; }
    [[nodiscard]] const Surroundings& surroundings() const { return surroundings_; }
    [[nodiscard]] storage::Connection& connection() { return connection_; }
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }
    /// A new identifier for a subject or an enclosure.
    [[nodiscard]] Uuid newId() { return uuids_->next(); }

private:
    friend class Act;
    friend class Merge;
    static Result<Book> make(const std::filesystem::path& path, Surroundings surroundings,
                             std::optional<BookId> id, const FieldValues& settings);
    static Done writeNew(const std::filesystem::path& path, const Surroundings& surroundings,
                         std::optional<BookId> id, const FieldValues& settings);
    Book(storage::Connection connection, std::filesystem::path path, Surroundings surroundings);
    static Result<Book> openConnected(storage::Connection connection, std::filesystem::path path,
                                      Surroundings surroundings);
    Done loadIdentity();
    Done takeNewDevice();
    Result<Entry> entryFor(const Draft& draft);
    Result<Entry> factEntry(const FactDraft& draft);
    Result<Entry> setEntry(const SetDraft& draft);
    Result<Entry> amendEntry(const AmendDraft& draft);
    Result<Entry> againEntry(const AgainDraft& draft);
    Result<std::optional<Entry>> confidentialFor(const Draft& draft, const EntryId& written);
    Result<Entry> correction(const EntryId& target, std::string_view kind);
    Entry blank(std::string_view kind, std::optional<Uuid> thing);
    Done append(Entry entry);
    Done requireSubject(SubjectId subject);
    Done startAct();
    Result<std::vector<EntryId>> lastAct();

    storage::Connection connection_;
    std::filesystem::path path_;
    Surroundings surroundings_;
    std::unique_ptr<UuidSource> uuids_;
    BookId id_;
    DeviceId device_;
    std::int64_t deviceRef_ = 0;
    std::unique_ptr<Projector> projector_;

    // The act being recorded.
    std::int64_t nextSeq_ = 1;
    std::int64_t act_ = 1;
    std::int64_t stamp_ = 0;
    Instant now_;
};

/// The fields that a fact sets when it is recorded; nothing where it sets none.
[[nodiscard]] std::optional<SetDraft> consequenceOf(const FactDraft& draft);

}  // namespace burrow
