#include "exchange/share.h"

#include <algorithm>
#include <system_error>

#include "exchange/bundle_reader.h"
#include "exchange/bundle_writer.h"
#include "exchange/share_photos.h"
#include "exchange/share_state.h"
#include "journal/differences.h"
#include "journal/roster.h"

namespace burrow::exchange {
namespace {

namespace fs = std::filesystem;

/// The entries of one arrival, by their numbers in the order of arrival.
struct ArrivedRange {
    std::int64_t first = 0;
    std::int64_t last = 0;
};

template <class Value>
void addNew(std::vector<Value>& to, const std::vector<Value>& from) {
    for (const auto& value : from) {
        if (std::find(to.begin(), to.end(), value) == to.end()) to.push_back(value);
    }
}

/// Troubles of the file rather than of the book or the device.
bool isTroubleOfFile(Trouble trouble) {
    return trouble == Trouble::badInput || trouble == Trouble::corrupt ||
           trouble == Trouble::newer || trouble == Trouble::notFound;
}

bool wasStopped(const Error& error) { return error.message.id == "bundle.stopped"; }

/// One visit.
class Visit {
public:
    Visit(Book& book, fs::path folder, Files& files, const ShareOptions& options)
        : book_(book), folder_(std::move(folder)), files_(files), options_(options) {}

    Result<ShareReport> run() {
        BURROW_TRY(listing_, listShared(folder_));
        report_.passedOver = listing_.passedOver;
        BURROW_TRY(state_, loadFolderState(book_.connection(), folder_.string()));
        BURROW_DO(lookForLosses());
        BURROW_DO(saveState());
        BURROW_DO(takeInAll());
        BURROW_DO(writeEntries());
        BURROW_DO(putTogether());
        removeCovered();
        SharedPhotos photos(book_, folder_, files_, options_, listing_.photos);
        BURROW_DO(photos.takeIn(report_));
        BURROW_DO(photos.writeOut(report_));
        BURROW_TRY(const auto open, differences(book_));
        report_.differences = static_cast<std::int64_t>(open.size());
        return std::move(report_);
    }

private:
    /// Where a file is gone that no other one stands for, somebody emptied the folder, or a device that left
    /// took its files along: what they held is written again.
    Done lookForLosses() {
        bool isAnew = options_.anew || (options_.withConfidential && !state_.hadConfidential);
        BURROW_TRY(auto transaction, storage::Transaction::begin(book_.connection()));
        for (const auto& [device, known] : state_.known) {
            const auto& there = listing_.writings[device];
            for (const auto& writing : known) {
                if (there.contains(writing)) continue;
                if (!isCovered(writing, there)) isAnew = true;
                BURROW_DO(forgetKnownFile(book_.connection(), state_.ref, device, writing));
            }
        }
        BURROW_DO(transaction.commit());
        isAnew_ = isAnew;
        if (isAnew) {
            state_.vector = {};
            state_.newest.reset();
        }
        state_.hadConfidential = options_.withConfidential;
        return {};
    }

    Done saveState() {
        BURROW_TRY(auto transaction, storage::Transaction::begin(book_.connection()));
        BURROW_DO(saveFolderState(book_.connection(), folder_.string(), state_));
        return transaction.commit();
    }

    Done noteKnown(const DeviceId& device, const Writing& writing) {
        BURROW_TRY(auto transaction, storage::Transaction::begin(book_.connection()));
        BURROW_DO(saveKnownFile(book_.connection(), state_.ref, device, writing));
        BURROW_DO(transaction.commit());
        state_.known[device].insert(writing);
        return {};
    }

    /// Also what this device wrote itself and does not know of: its book was restored from a copy.
    Done takeInAll() {
        for (const auto& [device, writings] : listing_.writings) {
            // The largest first: what they cover need not be read.
            std::vector<Writing> order(writings.begin(), writings.end());
            std::stable_sort(order.begin(), order.end(), [](const Writing& a, const Writing& b) {
                return a.last - a.first > b.last - b.first;
            });
            for (const auto& writing : order) BURROW_DO(takeIn(device, writing));
        }
        return {};
    }

    Done takeIn(const DeviceId& device, const Writing& writing) {
        const auto& known = state_.known[device];
        if (known.contains(writing)) return {};
        if (isCovered(writing, known)) return noteKnown(device, writing);
        const auto name = device.text() + "/" + writing.name();
        const TakeInOptions takeInOptions{.developer = options_.developer,
                                          .onProgress = options_.onProgress};
        const auto taken =
            mergeBundle(book_, folder_ / device.text() / writing.name(), files_, takeInOptions);
        if (!taken) {
            const auto& error = taken.error();
            if (!isTroubleOfFile(error.trouble) || wasStopped(error)) return failAs(taken);
            const bool isForeign =
                error.trouble == Trouble::newer || error.message.id == "bundle.otherBook";
            (isForeign ? report_.refused : report_.waiting).push_back({name, error.message});
            return {};
        }
        BURROW_DO(noteArrival(taken->merge));
        ++report_.filesTaken;
        return noteKnown(device, writing);
    }

    Done noteArrival(const MergeReport& merge) {
        report_.entriesAdded += merge.added;
        addNew(report_.changes.subjects, merge.changes.subjects);
        addNew(report_.changes.enclosures, merge.changes.enclosures);
        report_.changes.tags |= merge.changes.tags;
        report_.changes.settings |= merge.changes.settings;
        addNew(report_.forked, merge.forked);
        report_.isNewDevice |= merge.isNewDevice;
        for (const auto& ahead : merge.ahead) {
            const auto isSame = [&](const AheadDevice& other) {
                return other.device == ahead.device;
            };
            if (std::none_of(report_.ahead.begin(), report_.ahead.end(), isSame)) {
                report_.ahead.push_back(ahead);
            }
        }
        if (!merge.arrival) return {};
        BURROW_TRY(auto row, book_.connection().query("SELECT first_n, last_n FROM arrival WHERE "
                                                      "number = ?"));
        row.bind(*merge.arrival);
        BURROW_TRY(const bool found, row.next());
        if (found) arrived_.push_back({row.integer(0), row.integer(1)});
        return {};
    }

    /// Whether an entry came out of this folder just now.
    [[nodiscard]] bool cameFromHere(std::int64_t n) const {
        return std::any_of(arrived_.begin(), arrived_.end(), [&](const ArrivedRange& range) {
            return range.first <= n && n <= range.last;
        });
    }

    [[nodiscard]] fs::path ownFolder() const { return folder_ / book_.device().text(); }

    [[nodiscard]] std::set<Writing>& ownWritings() { return listing_.writings[book_.device()]; }

    [[nodiscard]] std::int64_t nextNumber() {
        std::int64_t last = 0;
        for (const auto& writing : ownWritings()) last = std::max(last, writing.last);
        return last + 1;
    }

    Result<Manifest> head() {
        Manifest manifest;
        manifest.program = options_.program;
        manifest.book = book_.id();
        BURROW_TRY(const auto room, roomInfo(book_));
        manifest.room = room.name;
        manifest.roomCode = room.code;
        manifest.device = book_.device();
        manifest.writtenAt = book_.surroundings().clock.now();
        manifest.extent = isAnew_ ? Extent::everything : Extent::lacking;
        manifest.withConfidential = options_.withConfidential;
        return manifest;  // without a vector: what it would save is less than it takes
    }

    /// Writes what neither the files of the last visit nor those just taken in hold.
    Done writeEntries() {
        BURROW_TRY(const auto newest, newestEntry(book_.connection()));
        if (newest == state_.newest && !isAnew_ && arrived_.empty()) return {};
        const Writing writing{isAnew_ ? 1 : nextNumber(), nextNumber(), {}};
        std::optional<BundleWriter> writer;
        FolderState next = state_;
        {
            BURROW_TRY(const auto snapshot, storage::Snapshot::take(book_.connection()));
            BURROW_TRY(next.newest, newestEntry(book_.connection()));
            BURROW_TRY(next.vector, versionVector(book_.connection()));
            const Selection selection{{}, options_.withConfidential};
            BURROW_DO(forEachEntryLacking(
                book_.connection(), state_.vector, selection,
                [&](const StoredEntry& entry) -> Done {
                    if (!isAnew_ && cameFromHere(entry.n)) return {};
                    if (!writer) {
                        BURROW_TRY(auto made, BundleWriter::create(ownFolder() / writing.name(), {},
                                                                   book_.surroundings().random));
                        writer.emplace(std::move(made));
                    }
                    ++report_.entriesWritten;
                    return writer->add(entry);
                }));
        }
        if (writer) BURROW_DO(publish(*writer, writing));
        state_ = std::move(next);
        return saveState();
    }

    Done publish(BundleWriter& writer, Writing writing) {
        BURROW_TRY(auto manifest, head());
        BURROW_TRY(manifest, writer.close(std::move(manifest)));
        BURROW_TRY(const auto reader, BundleReader::open(writer.temporary()));
        BURROW_DO(reader.checkEntries([](std::uint64_t) -> Done { return {}; }));
        constexpr std::size_t hashDigits = 16;
        writing.hash = manifest.totals.sha256.hex().substr(0, hashDigits);
        BURROW_DO(writer.publishAs(ownFolder() / writing.name()));
        ownWritings().insert(writing);
        return noteKnown(book_.device(), writing);
    }

    static Done copyEntries(const fs::path& from, BundleWriter& to) {
        BURROW_TRY(const auto reader, BundleReader::open(from));
        const auto read =
            reader.readEntries([&](const Entry& entry, std::uint64_t) { return to.add(entry); });
        return read ? Done() : Done(failAs(read));
    }

    /// Few larger files instead of many small ones.
    Done putTogether() {
        while (true) {
            std::vector<std::pair<Writing, std::uint64_t>> sizes;
            for (const auto& writing : ownWritings()) {
                if (isCovered(writing, ownWritings())) continue;
                std::error_code error;
                const auto size = fs::file_size(ownFolder() / writing.name(), error);
                if (!error) sizes.emplace_back(writing, size);
            }
            const auto parts = toPutTogether(sizes);
            if (parts.empty()) return {};
            const Writing whole{parts.front().first, parts.back().last, {}};
            BURROW_TRY(auto writer, BundleWriter::create(ownFolder() / whole.name(), {},
                                                         book_.surroundings().random));
            for (const auto& part : parts) {
                const auto read = copyEntries(ownFolder() / part.name(), writer);
                if (read) continue;
                if (!isTroubleOfFile(read.error().trouble)) return failAs(read);
                // Damaged since: without it, the next visit writes all of it anew.
                return files_.remove(ownFolder() / part.name());
            }
            BURROW_DO(publish(writer, whole));
        }
    }

    /// After a while: until then a larger file may still be on its way.
    void removeCovered() {
        const auto now = fs::file_time_type::clock::now();
        const auto writings = ownWritings();
        for (const auto& writing : writings) {
            for (const auto& larger : writings) {
                if (!larger.covers(writing)) continue;
                std::error_code error;
                const auto written = fs::last_write_time(ownFolder() / larger.name(), error);
                if (error || now - written < options_.grace) continue;
                static_cast<void>(files_.remove(ownFolder() / writing.name()));
                ownWritings().erase(writing);
                break;
            }
        }
    }

    Book& book_;
    fs::path folder_;
    Files& files_;
    const ShareOptions& options_;
    SharedListing listing_;
    FolderState state_;
    ShareReport report_;
    std::vector<ArrivedRange> arrived_;
    bool isAnew_ = false;
};

}  // namespace

Result<ShareReport> visitSharedFolder(Book& book, const fs::path& folder, Files& files,
                                      const ShareOptions& options) {
    std::error_code error;
    auto whole = fs::weakly_canonical(folder, error);
    if (error) whole = folder;
    return Visit(book, std::move(whole), files, options).run();
}

}  // namespace burrow::exchange
