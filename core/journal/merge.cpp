#include "journal/merge.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "journal/hlc.h"
#include "journal/json_reading.h"
#include "journal/rows.h"

namespace burrow {
namespace {

using nlohmann::json;

constexpr std::size_t longestSource = 200;
constexpr std::size_t longestKind = 64;
constexpr std::size_t longestZone = 64;
/// More than a keeper will ever have, also when each phone is restored every week.
constexpr std::size_t mostDevices = 10'000;
/// The greatest whole number that every reader of JSON keeps exact (RFC 8259, section 6).
constexpr std::int64_t greatestSeq = (std::int64_t{1} << 53) - 1;

constexpr int mergePages = 65'536;
constexpr int usualPages = 2'000;

bool isPlainText(std::string_view text, std::size_t longest) {
    return text.size() <= longest && isUtf8(text) && text.find('\0') == std::string_view::npos;
}

/// Whether a device could have written it.
bool isPossible(const Entry& entry, std::string_view body) {
    const Uuid nil;
    return entry.id.uuid != nil && entry.device.uuid != nil && entry.seq >= 1 &&
           entry.seq <= greatestSeq && entry.act >= 1 && entry.act <= entry.seq && entry.hlc >= 0 &&
           !entry.kind.empty() && isPlainText(entry.kind, longestKind) &&
           isPlainText(entry.zone, longestZone) && entry.body.is_object() &&
           body.size() <= longestEntryBody && reading::isInstant(entry.recordedAt.ms) &&
           reading::isInstant(entry.happenedAt.ms) && reading::isDay(entry.day.days);
}

bool isDeeperThan(const json& value, int levels) {
    if (!value.is_structured()) return false;
    if (levels == 0) return true;
    return std::any_of(value.begin(), value.end(),
                       [&](const json& each) { return isDeeperThan(each, levels - 1); });
}

/// Nothing where it is nested without end, or a text in it is no UTF-8.
std::optional<std::string> textOf(const json& body) {
    if (isDeeperThan(body, deepestEntryBody)) return std::nullopt;
    try {
        return body.dump();
    } catch (const json::exception&) {
        return std::nullopt;
    }
}

bool isKindKnown(std::string_view kind) {
    return kind == entrykind::set || kind == entrykind::amend || kind == entrykind::retract ||
           parseFactKind(kind).has_value();
}

std::int64_t daysAhead(std::int64_t stamp, Instant now) {
    constexpr std::int64_t msPerDay = 86'400'000;
    return (hlc::milliseconds(stamp) - now.ms) / msPerDay;
}

}  // namespace

Merge::Merge(Book& book, storage::Transaction transaction, Origin from)
    : book_(&book),
      transaction_(std::move(transaction)),
      from_(std::move(from)),
      projector_(std::make_unique<Projector>(book.connection())),
      now_(book.surroundings().clock.now()) {
    projector_->leaveOutEntries();
    if (!isPlainText(from_.source, longestSource)) from_.source.clear();
}

Result<Merge> Merge::begin(Book& book, Origin from) {
    BURROW_TRY(auto transaction, storage::Transaction::begin(book.connection()));
    Merge merge(book, std::move(transaction), std::move(from));
    // A book restored or renewed by another program meanwhile has another device by now.
    BURROW_DO(book.loadIdentity());
    BURROW_DO(merge.roomForPages(mergePages));
    BURROW_TRY(const auto last, book.connection().integer("SELECT coalesce(max(n), 0) FROM entry"));
    merge.firstN_ = last + 1;
    BURROW_TRY(merge.heard_, book.connection().integer("SELECT heard FROM book"));
    return merge;
}

/// SQLite's own cache, in KiB: with the usual 2 MiB a long merge would write the same pages again and
/// again. Not a matter of the transaction, so it is given back when the merge ends either way.
Done Merge::roomForPages(int kibibytes) {
    return book_->connection().execute(fmt::format("PRAGMA cache_size = -{}", kibibytes));
}

Merge::Merge(Merge&& other) noexcept = default;

Merge::~Merge() {
    if (projector_) static_cast<void>(roomForPages(usualPages));
}

Result<Merge::Peer*> Merge::peer(const DeviceId& device) {
    const auto [found, isNew] = peers_.try_emplace(device.uuid);
    auto& peer = found->second;
    if (!isNew) return &peer;
    auto& connection = book_->connection();
    {
        BURROW_TRY(auto add, connection.query("INSERT OR IGNORE INTO device (id) VALUES (?)"));
        BURROW_DO(add.bind(device.uuid.bytes).run());
    }
    {
        BURROW_TRY(auto row, connection.query(
                                 "SELECT d.ref, (SELECT max(seq) FROM entry e WHERE e.device = "
                                 "d.ref), EXISTS (SELECT 1 FROM fork f WHERE f.device = d.id) FROM "
                                 "device d WHERE d.id = ?"));
        row.bind(device.uuid.bytes);
        BURROW_TRY(const bool isThere, row.next());
        if (!isThere) return fail(Trouble::corrupt, {"book.damaged"});
        peer.ref = row.integer(0);
        peer.highest = row.integer(1);
        peer.wasForked = row.integer(2) != 0;
    }
    return &peer;
}

/// Fails where the id is here with other content: then one of the two was tampered with.
Done Merge::compare(const storage::Query& row, const Entry& entry, std::int64_t device,
                    std::string_view body) {
    const bool isSame = row.integer(1) == device && row.integer(2) == entry.seq &&
                        row.integer(3) == entry.act && row.integer(4) == entry.hlc &&
                        row.text(5) == entry.kind && maybeUuidAt(row, 6) == entry.thing &&
                        row.text(7) == body && row.integer(8) == entry.recordedAt.ms &&
                        row.integer(9) == entry.happenedAt.ms &&
                        row.integer(10) == entry.day.days && row.text(11) == entry.zone;
    if (isSame) return {};
    return fail(Trouble::badInput, {"merge.otherContent", {{"entry", entry.id.text()}}});
}

/// Files hold the entries of a device in the order of their numbers. Where they are here already, walking
/// along our own is several times cheaper than looking each of them up.
Result<bool> Merge::isNextOnWalk(const Entry& entry, std::int64_t device, std::string_view body) {
    if (!walk_ || uuidAt(*walk_, 0) != entry.id.uuid) return false;
    BURROW_DO(compare(*walk_, entry, device, body));
    BURROW_TRY(const bool more, walk_->next());
    if (!more) walk_.reset();
    return true;
}

Done Merge::startWalk(std::int64_t device, std::int64_t afterSeq) {
    walk_.reset();
    BURROW_TRY(auto walk, book_->connection().query(
                              "SELECT id, device, seq, act, hlc, kind, thing, body, recorded_at, "
                              "happened_at, day, zone FROM entry WHERE device = ? AND seq > ? "
                              "ORDER BY seq, id"));
    walk.bind(device, afterSeq);
    BURROW_TRY(const bool more, walk.next());
    if (more) walk_.emplace(std::move(walk));
    return {};
}

Result<bool> Merge::isKnown(Peer& from, const Entry& entry, std::string_view body) {
    BURROW_TRY(const bool isOnWalk, isNextOnWalk(entry, from.ref, body));
    if (isOnWalk) return true;
    {
        BURROW_TRY(auto row, book_->connection().query(
                                 "SELECT id, device, seq, act, hlc, kind, thing, body, "
                                 "recorded_at, happened_at, day, zone FROM entry WHERE id = ?"));
        row.bind(entry.id.uuid.bytes);
        BURROW_TRY(const bool found, row.next());
        if (!found) return false;
        BURROW_DO(compare(row, entry, from.ref, body));
    }
    const bool isNext = from.lastKnown == entry.seq - 1;
    from.lastKnown = entry.seq;
    if (isNext) BURROW_DO(startWalk(from.ref, entry.seq));
    return true;
}

/// Only a number that is not above all before can have been given already.
Done Merge::noteNumber(Peer& peer, const Entry& entry) {
    if (entry.seq > peer.highest) {
        peer.highest = entry.seq;
        return {};
    }
    BURROW_TRY(const bool isForked, projector_->lookForFork(entry.device, entry.seq));
    peer.isForked |= isForked;
    return {};
}

Done Merge::add(const Entry& entry) {
    if (isBroken_) return fail(Trouble::badInput, {"merge.broken"});
    isBroken_ = true;  // until this entry is in
    const auto body = textOf(entry.body);
    if (!body || peers_.size() > mostDevices) {
        return fail(Trouble::badInput, {"merge.impossible", {{"entry", entry.id.text()}}});
    }
    BURROW_TRY(auto* from, peer(entry.device));
    BURROW_TRY(const bool isHere, isKnown(*from, entry, *body));
    if (isHere) {
        ++known_;
    } else {
        walk_.reset();
        BURROW_DO(addNew(*from, entry, *body));
    }
    isBroken_ = false;
    return {};
}

Done Merge::addNew(Peer& from, const Entry& entry, std::string_view body) {
    if (!isPossible(entry, body)) {
        return fail(Trouble::badInput, {"merge.impossible", {{"entry", entry.id.text()}}});
    }
    BURROW_DO(insertEntry(book_->connection(), entry, from.ref, body));
    BURROW_DO(noteNumber(from, entry));
    BURROW_DO(projector_->apply(entry, body));
    BURROW_DO(projector_->flushIfLarge());
    if (hlc::isAhead(entry.hlc, now_)) {
        from.ahead = std::max(from.ahead, entry.hlc);
    } else {
        heard_ = std::max(heard_, entry.hlc);
    }
    if (!isKindKnown(entry.kind)) ++unknown_;
    ++from.added;
    ++added_;
    return {};
}

/// Writes down where the entries came from, and what was heard of other clocks.
Done Merge::finishArrival(MergeReport& report) {
    auto& connection = book_->connection();
    {
        BURROW_TRY(auto update, connection.query("UPDATE book SET heard = ?"));
        BURROW_DO(update.bind(heard_).run());
    }
    const auto device = from_.device ? std::optional(from_.device->uuid.bytes) : std::nullopt;
    {
        BURROW_TRY(auto insert,
                   connection.query("INSERT INTO arrival (at, source, device, first_n, last_n, "
                                    "entries) VALUES (?, ?, ?, ?, ?, ?)"));
        BURROW_DO(insert.bind(now_.ms, from_.source, device, firstN_, firstN_ + added_ - 1, added_)
                      .run());
    }
    BURROW_TRY(report.arrival, connection.integer("SELECT max(number) FROM arrival"));
    const auto own = peers_.find(book_->device().uuid);
    if (own == peers_.end() || own->second.added == 0) return {};
    // What this device has written is here. Anything more was written by another copy of this file.
    report.isNewDevice = true;
    return book_->takeNewDevice();
}

Result<MergeReport> Merge::commit() {
    if (isBroken_) return fail(Trouble::badInput, {"merge.broken"});
    walk_.reset();
    MergeReport report;
    report.added = added_;
    report.known = known_;
    report.unknown = unknown_;
    BURROW_TRY(report.changes, projector_->finish());
    if (added_ > 0) BURROW_DO(finishArrival(report));
    for (const auto& [device, peer] : peers_) {
        if (peer.ahead != 0) {
            report.ahead.push_back({DeviceId{device}, daysAhead(peer.ahead, now_)});
        }
        if (peer.isForked && !peer.wasForked) report.forked.push_back(DeviceId{device});
    }
    std::ranges::sort(report.ahead, {}, &AheadDevice::device);
    std::ranges::sort(report.forked);
    BURROW_DO(transaction_.commit());
    if (report.isNewDevice) BURROW_DO(book_->loadIdentity());
    return report;
}

}  // namespace burrow
