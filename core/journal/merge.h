// Uniting two books: entries of other devices come in one by one, all of them or none. What a book shows
// afterwards depends only on which entries it has, not on the order or the number of times they came.
#pragma once

#include <unordered_map>

#include "journal/book.h"

namespace burrow {

/// Where entries come from; for the keeper, not for the machine.
struct Origin {
    std::string source;              ///< name of the file, at most 200 bytes
    std::optional<DeviceId> device;  ///< that wrote it, where it says so
};

/// A device whose stamps lie further ahead of the clock here than any honest clock is: its values are
/// kept, but nobody's clock follows it.
struct AheadDevice {
    DeviceId device;
    std::int64_t days = 0;  ///< whole days, at least 1
};

struct MergeReport {
    /// To be taken back by; nothing where everything was here already.
    std::optional<std::int64_t> arrival;
    std::int64_t added = 0;
    std::int64_t known = 0;    ///< were here already
    std::int64_t unknown = 0;  ///< of those added: of kinds that only a newer version can show
    std::vector<AheadDevice> ahead;
    std::vector<DeviceId> forked;  ///< that gave numbers twice, seen for the first time
    /// This file turned out to be one of two copies of the same device and got a device id of its own.
    bool isNewDevice = false;
    ChangeSet changes;  ///< without `entries`
};

/// A merge under way: add the entries in any order, then commit. Nothing is kept of a merge that was not
/// committed. The book must stay where it is meanwhile, and nothing else may be done with it.
class Merge {
public:
    static Result<Merge> begin(Book& book, Origin from);
    Merge(Merge&& other) noexcept;
    Merge(const Merge&) = delete;
    Merge& operator=(const Merge&) = delete;
    Merge& operator=(Merge&&) = delete;
    ~Merge();

    /// Passes over an entry that is here already. Refuses with `badInput` one that no device could have
    /// written, and one with a known id but other content; after that the merge can only be dropped.
    Done add(const Entry& entry);
    /// As it stands: of what was added so far.
    [[nodiscard]] std::int64_t added() const { return added_; }
    [[nodiscard]] std::int64_t known() const { return known_; }
    /// When it returns without an error the entries are on the device.
    Result<MergeReport> commit();

private:
    struct Peer {
        std::int64_t ref = 0;
        std::int64_t highest = 0;  ///< number given so far
        std::int64_t ahead = 0;    ///< stamp, zero where none is
        std::int64_t added = 0;
        std::int64_t lastKnown = 0;  ///< number of the last entry that was here already
        bool isForked = false;
        bool wasForked = false;
    };
    Merge(Book& book, storage::Transaction transaction, Origin from);
    Result<Peer*> peer(const DeviceId& device);
    static Done compare(const storage::Query& row, const Entry& entry, std::int64_t device,
                        std::string_view body);
    Result<bool> isNextOnWalk(const Entry& entry, std::int64_t device, std::string_view body);
    Done startWalk(std::int64_t device, std::int64_t afterSeq);
    Result<bool> isKnown(Peer& from, const Entry& entry, std::string_view body);
    Done addNew(Peer& from, const Entry& entry, std::string_view body);
    Done roomForPages(int kibibytes);
    Done noteNumber(Peer& peer, const Entry& entry);
    Done finishArrival(MergeReport& report);

    Book* book_;
    storage::Transaction transaction_;
    Origin from_;
    std::unique_ptr<Projector> projector_;
    std::optional<storage::Query> walk_;
    std::unordered_map<Uuid, Peer, UuidHash> peers_;
    Instant now_;
    std::int64_t firstN_ = 0;
    std::int64_t heard_ = 0;
    std::int64_t added_ = 0;
    std::int64_t known_ = 0;
    std::int64_t unknown_ = 0;
    bool isBroken_ = false;
};

/// A merge that added something.
struct Arrival {
    std::int64_t number = 0;
    Instant at;
    std::string source;
    std::optional<DeviceId> device;
    std::int64_t entries = 0;
    std::optional<Instant> takenBack;
};

/// Newest first.
Result<std::vector<Arrival>> arrivals(Book& book, int limit = 50);

struct TakenBack {
    Arrival arrival;
    ChangeSet changes;  ///< without `entries`
};

/// Removes all that the newest arrival brought, as if it had never come. What was recorded here since
/// stays. Fails with `notFound` when there is none, or when it was taken back already.
Result<TakenBack> takeBackArrival(Book& book);

}  // namespace burrow
