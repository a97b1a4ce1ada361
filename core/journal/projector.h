// Keeps the tables that queries read in step with the journal. The result depends only on which
// entries there are, not on the order in which they arrived: a rebuild gives the same rows.
#pragma once

#include <map>
#include <set>
#include <unordered_map>

#include "journal/entry.h"
#include "journal/heads.h"
#include "journal/word_index.h"
#include "model/digest.h"
#include "storage/sqlite.h"

namespace burrow {

struct Amendments;

struct UuidHash {
    std::size_t operator()(const Uuid& uuid) const;
};

class Projector {
public:
    explicit Projector(storage::Connection& connection) : connection_(connection) {}

    /// Projects an entry that has just been added to the journal; `body` is its body as text. Rows of
    /// subjects, enclosures and tags follow with finish(), inside the same transaction.
    Done apply(const Entry& entry, std::string_view body);
    /// Takes away what followed from an entry that has just been deleted from the journal.
    Done forget(const Entry& entry);
    /// Notes or forgets that a device gave a number twice, and says whether it did.
    Result<bool> lookForFork(const DeviceId& device, std::int64_t seq);
    /// Does not list the entries in the change set: a merge may bring a million of them.
    void leaveOutEntries() { listsEntries_ = false; }
    /// Writes what apply() left open where that has become much: keeps memory flat.
    Done flushIfLarge();
    /// Writes what apply() left open, and says what was touched.
    Result<ChangeSet> finish();

    /// Empties the projections and projects the whole journal.
    Done rebuild();

    /// The value that counts of each field of a thing.
    Result<FieldValues> winners(const Uuid& thing, ThingType type);

private:
    /// A subject whose digest changes in this transaction.
    struct Folding {
        Digest digest;
        Instant lastAt;
        std::int64_t lastStamp = 0;
        EntryId lastEntry;
        bool mustRefold = false;    ///< a fact came in between, changed or went
        bool rowMayChange = false;  ///< standing, headcount or fields
    };

    Done applyFact(const Entry& original, FactKind kind, std::string_view body);
    Done writeFact(const Entry& entry, FactKind kind, std::string_view text);
    Done noteDifferences(const EntryId& fact, const Amendments& amendments);
    Done applySet(const Entry& entry);
    Done project(const Entry& entry, std::string_view body);
    Done noteConfidential(const Entry& entry);
    Done noteCorrection(const Entry& entry);
    Done reproject(const Entry& entry);
    Done reprojectCorrected();
    Done flush();
    Done takeAway(const Entry& entry);
    Result<bool> isRetracted(const EntryId& entry);
    Result<Folding*> folding(SubjectId subject);
    Done touch(const Entry& set, ThingType type);
    Done refold(SubjectId subject, Folding& state);
    Done finishSubject(SubjectId subject, Folding& state);
    Done writeSubject(SubjectId id, const Digest& digest);
    Done writeEnclosure(const Uuid& thing);
    Done writeTag(const Uuid& thing);
    Done writeSettings(const Uuid& thing);
    template <class Each>
    Done eachEntry(Each each);

    storage::Connection& connection_;
    WordIndex words_{connection_};
    std::unordered_map<Uuid, Folding, UuidHash> subjects_;
    std::set<std::pair<ThingType, Uuid>> things_;  ///< besides subjects
    std::set<EntryId> corrected_;
    ChangeSet changes_;
    bool listsEntries_ = true;
};

/// A value of a field and what its writer knew.
struct FieldValue {
    Said said;
    std::string value;  ///< JSON
};
/// All values of each field of a thing, in the order of (stamp, entry).
Result<std::map<std::string, std::vector<FieldValue>>> fieldValues(storage::Connection& connection,
                                                                   const Uuid& thing,
                                                                   ThingType type);
/// Those that nobody replaced, the one that counts first.
[[nodiscard]] std::vector<const FieldValue*> headsOf(const std::vector<FieldValue>& values);

/// The kinds of rows in the table `difference`.
enum class DifferenceRow { field, amendment, confidentialPart };

/// One entry by its id; nothing where the journal does not hold it.
Result<std::optional<Entry>> findEntry(storage::Connection& connection, const EntryId& id);

/// The facts of one subject in history order.
Result<std::vector<Fact>> factsOf(storage::Connection& connection, SubjectId subject);

}  // namespace burrow
