#include "journal/roster.h"

#include <fmt/format.h>

#include <unordered_map>

#include "base/text.h"
#include "journal/digest_codec.h"
#include "journal/everyone.h"
#include "journal/fields.h"
#include "journal/rows.h"
#include "model/number.h"

namespace burrow {
namespace {

using storage::Query;

#define BURROW_KEPT_COLUMNS                                                              \
    "SELECT s.id, s.number, s.form, s.species, s.sex, s.hatched, s.acquired, s.source, " \
    "s.standing, s.quarantined, s.mature, s.enclosure, s.place, s.mother, s.father, "    \
    "s.headcount, s.note, e.place, d.state, e.length_mm, e.width_mm, e.height_mm, "      \
    "e.substrate_mm FROM subject s LEFT JOIN enclosure e ON e.id = "                     \
    "s.enclosure LEFT JOIN digest d ON d.subject = s.id"

constexpr const char* allKept = BURROW_KEPT_COLUMNS;
constexpr const char* oneKept = BURROW_KEPT_COLUMNS " WHERE s.id = ?";

/// The code of every tag by what it hangs on; of several on the same thing the first in the alphabet.
using TagCodes = std::unordered_map<Uuid, std::string, UuidHash>;

void addTag(TagCodes& codes, const Query& row) {
    // Columns: code, subject, enclosure.
    const auto target = row.isNull(1) ? maybeUuidAt(row, 2) : maybeUuidAt(row, 1);
    if (target) codes.try_emplace(*target, row.text(0));
}

std::optional<std::string> codeFor(const TagCodes& codes, const Subject& subject) {
    auto found = codes.find(subject.id.uuid);
    if (found == codes.end() && subject.enclosure) found = codes.find(subject.enclosure->uuid);
    return found == codes.end() ? std::nullopt : std::optional(found->second);
}

template <class Thing>
std::optional<Id<Thing>> maybeIdAt(const Query& row, int column) {
    const auto uuid = maybeUuidAt(row, column);
    return uuid ? std::optional(Id<Thing>{*uuid}) : std::nullopt;
}

struct KeptRow {
    Kept kept;
    bool mustFold = false;  ///< its digest is of another version of the program
};

KeptRow keptAt(const Query& row) {
    KeptRow read;
    auto& kept = read.kept;
    auto& subject = kept.subject;
    subject.id = SubjectId{uuidAt(row, 0)};
    subject.number = row.text(1);
    subject.form = static_cast<Form>(row.integer(2));
    subject.species = row.text(3);
    subject.sex = static_cast<Sex>(row.integer(4));
    subject.hatched = maybeDayAt(row, 5);
    subject.acquired = maybeDayAt(row, 6);
    subject.source = row.text(7);
    subject.standing = static_cast<Standing>(row.integer(8));
    subject.quarantined = row.integer(9) != 0;
    subject.mature = row.integer(10) != 0;
    subject.enclosure = maybeIdAt<EnclosureTag>(row, 11);
    if (!row.text(12).empty()) subject.place = Place::parse(row.text(12));
    subject.mother = maybeIdAt<SubjectTag>(row, 13);
    subject.father = maybeIdAt<SubjectTag>(row, 14);
    subject.headcount = static_cast<int>(row.integer(15));
    subject.note = row.text(16);
    kept.place = row.text(17).empty() ? subject.place : Place::parse(row.text(17));
    if (!row.isNull(18)) {
        auto digest = decodeDigest(row.blob(18));
        read.mustFold = !digest;
        if (digest) kept.digest = *std::move(digest);
    }
    if (!row.isNull(19)) {
        kept.home = HomeSize{Millimetres{row.real(19)}, Millimetres{row.real(20)},
                             Millimetres{row.real(21)}, Millimetres{row.real(22)}};
    }
    return read;
}

/// The day on which the value was set that now counts. Only few are in quarantine at a time.
Done addQuarantine(Book& book, Kept& kept) {
    if (!kept.subject.quarantined) return {};
    BURROW_TRY(auto rows,
               book.connection().query("SELECT e.day FROM field f JOIN entry e ON e.id = f.entry "
                                       "WHERE f.thing = ? AND f.name = 'quarantined' AND f.value = "
                                       "'true' AND NOT f.retracted ORDER BY f.hlc DESC, f.entry "
                                       "DESC LIMIT 1"));
    rows.bind(kept.subject.id.uuid.bytes);
    BURROW_TRY(const bool found, rows.next());
    if (found) kept.quarantinedSince = maybeDayAt(rows, 0);
    return {};
}

/// What does not stand in the row itself.
Result<Kept> complete(Book& book, KeptRow read) {
    if (read.mustFold) {
        BURROW_TRY(const auto facts, factsOf(book.connection(), read.kept.subject.id));
        read.kept.digest = digestOf(facts);
    }
    BURROW_DO(addQuarantine(book, read.kept));
    return std::move(read.kept);
}

Enclosure enclosureAt(const Query& row) {
    return {EnclosureId{uuidAt(row, 0)},
            std::string(row.text(1)),
            Millimetres{row.real(2)},
            Millimetres{row.real(3)},
            Millimetres{row.real(4)},
            Millimetres{row.real(5)},
            row.text(6).empty() ? Place{} : Place::parse(row.text(6)),
            std::string(row.text(7))};
}

/// All rows of a query, each made into a record.
template <class Record, class Make>
Result<std::vector<Record>> collect(Query& rows, Make make) {
    std::vector<Record> records;
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return records;
        records.push_back(make(rows));
    }
}

template <class Record, class Make>
Result<std::optional<Record>> first(Query& rows, Make make) {
    BURROW_TRY(const bool found, rows.next());
    return found ? std::optional<Record>(make(rows)) : std::nullopt;
}

}  // namespace

Result<RoomInfo> roomInfo(Book& book) {
    RoomInfo info;
    BURROW_TRY(auto rows, book.connection().query("SELECT name, value FROM setting ORDER BY name"));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return info;
        const auto name = rows.text(0);
        const std::string value(rows.text(1));
        if (name == setting::room) {
            info.name = value;
        } else if (name == setting::roomCode) {
            info.code = value;
        } else if (name == setting::contact) {
            info.contact = value;
        } else if (name.starts_with(setting::rule)) {
            info.rules.emplace_back(name.substr(setting::rule.size()), value);
        } else if (name.starts_with(setting::profile)) {
            info.profiles.emplace_back(name.substr(setting::profile.size()), value);
        } else {
            info.others.emplace(name, value);
        }
    }
}

Result<std::string> roomCode(Book& book) {
    BURROW_TRY(auto row, book.connection().query("SELECT value FROM setting WHERE name = ?"));
    row.bind(setting::roomCode);
    BURROW_TRY(const bool found, row.next());
    return found ? std::string(row.text(0)) : std::string();
}

Done forEachKept(Book& book, const std::function<void(Kept)>& each) {
    TagCodes codes;
    {
        BURROW_TRY(auto tags, book.connection().query(
                                  "SELECT code, subject, enclosure FROM tag ORDER BY code"));
        while (true) {
            BURROW_TRY(const bool more, tags.next());
            if (!more) break;
            addTag(codes, tags);
        }
    }
    BURROW_TRY(auto rows, book.connection().query(allKept));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return {};
        BURROW_TRY(auto kept, complete(book, keptAt(rows)));
        kept.tagCode = codeFor(codes, kept.subject);
        each(std::move(kept));
    }
}

Result<std::vector<Kept>> roster(Book& book) {
    std::vector<Kept> everyone;
    BURROW_DO(forEachKept(book, [&](Kept kept) { everyone.push_back(std::move(kept)); }));
    return everyone;
}

Result<std::optional<Kept>> kept(Book& book, SubjectId id) {
    std::optional<KeptRow> found;
    {
        BURROW_TRY(auto rows, book.connection().query(oneKept));
        rows.bind(id.uuid.bytes);
        BURROW_TRY(found, first<KeptRow>(rows, keptAt));
    }
    if (!found) return std::optional<Kept>();
    BURROW_TRY(std::optional<Kept> kept, complete(book, *std::move(found)));
    TagCodes codes;
    BURROW_TRY(auto tags, book.connection().query("SELECT code, subject, enclosure FROM tag WHERE "
                                                  "subject = ? OR enclosure = ? ORDER BY code"));
    const auto home =
        kept->subject.enclosure ? std::optional(kept->subject.enclosure->uuid.bytes) : std::nullopt;
    tags.bind(id.uuid.bytes, home);
    while (true) {
        BURROW_TRY(const bool more, tags.next());
        if (!more) break;
        addTag(codes, tags);
    }
    kept->tagCode = codeFor(codes, kept->subject);
    return kept;
}

Result<std::vector<Kept>> kept(Book& book, std::span<const SubjectId> those) {
    BURROW_TRY(const auto snapshot, storage::Snapshot::take(book.connection()));
    std::vector<Kept> found;
    found.reserve(those.size());
    for (const auto id : those) {
        BURROW_TRY(auto one, kept(book, id));
        if (one) found.push_back(*std::move(one));
    }
    return found;
}

Result<std::vector<SubjectId>> subjectsNumbered(Book& book, std::string_view number) {
    using Numbered = std::pair<SubjectId, std::string>;
    BURROW_TRY(const auto code, roomCode(book));
    BURROW_TRY(auto rows, book.connection().query("SELECT id, number FROM subject ORDER BY number, "
                                                  "id"));
    BURROW_TRY(const auto all, collect<Numbered>(rows, [](const Query& row) {
                   return Numbered{SubjectId{uuidAt(row, 0)}, row.text(1)};
               }));
    std::vector<SubjectId> ids;
    const auto numberOf = [](const Numbered& one) -> const std::string& { return one.second; };
    for (const auto& one : numbered(all, TypedNumber(number, code), numberOf)) {
        ids.push_back(one.first);
    }
    return ids;
}

Result<std::string> nextNumber(Book& book) {
    BURROW_TRY(const auto highest,
               book.connection().integer("SELECT coalesce(max(CAST(number AS INTEGER)), 0) FROM "
                                         "subject WHERE number NOT GLOB '*[^0-9]*' AND "
                                         "length(number) < 10"));
    return fmt::format("{:03}", highest + 1);
}

std::string numberAfter(const std::string& number) {
    return fmt::format("{:03}", parseInteger(number).value_or(0) + 1);
}

Result<std::vector<Enclosure>> enclosures(Book& book) {
    BURROW_TRY(auto rows,
               book.connection().query("SELECT id, name, length_mm, width_mm, height_mm, "
                                       "substrate_mm, place, note FROM enclosure ORDER BY name"));
    return collect<Enclosure>(rows, enclosureAt);
}

Result<std::optional<Enclosure>> enclosure(Book& book, EnclosureId id) {
    BURROW_TRY(auto rows,
               book.connection().query("SELECT id, name, length_mm, width_mm, height_mm, "
                                       "substrate_mm, place, note FROM enclosure WHERE id = ?"));
    rows.bind(id.uuid.bytes);
    return first<Enclosure>(rows, enclosureAt);
}

Result<std::optional<Tag>> tag(Book& book, std::string_view code) {
    BURROW_TRY(auto rows, book.connection().query(
                              "SELECT code, side_mm, subject, enclosure FROM tag WHERE code = ?"));
    rows.bind(code);
    return first<Tag>(rows, [](const Query& row) {
        return Tag{std::string(row.text(0)), Millimetres{row.real(1)},
                   maybeIdAt<SubjectTag>(row, 2), maybeIdAt<EnclosureTag>(row, 3)};
    });
}

Result<std::string> tagCode(Book& book, const Uuid& thing) {
    BURROW_TRY(auto rows, book.connection().query("SELECT code FROM tag WHERE id = ?"));
    rows.bind(thing.bytes);
    BURROW_TRY(const bool found, rows.next());
    return found ? std::string(rows.text(0)) : std::string();
}

Result<std::vector<SubjectId>> subjectsIn(Book& book, EnclosureId enclosure) {
    BURROW_TRY(auto rows,
               book.connection().query("SELECT id FROM subject WHERE enclosure = ? AND standing IN "
                                       "(0, 1) ORDER BY number"));
    rows.bind(enclosure.uuid.bytes);
    return collect<SubjectId>(rows, [](const Query& row) { return SubjectId{uuidAt(row, 0)}; });
}

Result<std::vector<SubjectId>> subjectsTagged(Book& book, std::string_view code) {
    BURROW_TRY(const auto hung, tag(book, code));
    if (hung && hung->subject) return std::vector{*hung->subject};
    if (hung && hung->enclosure) return subjectsIn(book, *hung->enclosure);
    return std::vector<SubjectId>{};
}

Result<std::vector<Fact>> history(Book& book, SubjectId id, int limit,
                                  std::optional<Instant> before) {
    std::vector<Fact> facts;
    BURROW_TRY(auto rows,
               book.connection().query(
                   "SELECT entry, subject, kind, day, happened_at, hlc, body FROM fact "
                   "WHERE subject = ? AND happened_at < ? ORDER BY happened_at DESC, hlc "
                   "DESC, entry DESC LIMIT ?"));
    rows.bind(id.uuid.bytes, before ? before->ms : INT64_MAX, limit);
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return facts;
        if (auto fact = factAt(rows)) facts.push_back(*std::move(fact));
    }
}

Result<std::optional<Fact>> fact(Book& book, const EntryId& entry) {
    BURROW_TRY(auto rows, book.connection().query(
                              "SELECT f.entry, f.subject, f.kind, f.day, f.happened_at, f.hlc, "
                              "f.body FROM fact f JOIN entry e ON e.thing = f.subject WHERE e.id = "
                              "?1 AND f.entry = ?1"));
    rows.bind(entry.uuid.bytes);
    BURROW_TRY(const bool found, rows.next());
    return found ? factAt(rows) : std::nullopt;
}

}  // namespace burrow
