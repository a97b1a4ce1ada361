// Bringing in a keeper's own spreadsheet, whatever its columns are called: what each of them stands for, how
// its dates, lengths and words are to be read, and which species its spellings mean. A mapping is proposed
// from the sheet, and what can be read in two ways is asked, never guessed. Applied, it gives the tables that
// bring() reads. All of it is pure. How a mapping is written down stands in MAPPING.md.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/civil.h"
#include "exchange/bring.h"
#include "husbandry/profiles.h"

namespace burrow::exchange {

/// How a date of three numbers with the year last is read. `iso` leaves it unread: only what can be meant in
/// one way counts, such as 2026-05-08 or 8 May 2026.
enum class DateOrder { iso, dayFirst, monthFirst };

enum class LengthUnit { mm, cm, inch };

/// What is written into mappings and on the command line: "day_first", "in".
[[nodiscard]] std::string_view name(DateOrder order);
[[nodiscard]] std::string_view name(LengthUnit unit);

/// What a column may stand for.
struct MapTarget {
    enum class Type { text, species, word, day, moment, time, length, mass, count };
    std::string_view name;  ///< the column of the table it fills; see LEAVING.md
    CsvKind kind;
    Type type = Type::text;
    bool isRequired = false;
    bool isJoined = false;  ///< several columns may stand for it: genus and species
};

/// Those of a kind. Besides the columns of its table, the parts of a place may stand in columns of their own,
/// and a list of animals may say when each moulted, ate and was watered last, and how large it is: these become
/// events.
[[nodiscard]] std::vector<MapTarget> mapTargets(CsvKind kind);
/// The one of that name; nullptr where the kind has none.
[[nodiscard]] const MapTarget* findTarget(CsvKind kind, std::string_view name);

struct ColumnMapping {
    std::string column;  ///< as the sheet names it
    std::string target;  ///< of mapTargets(); empty for what is kept in the note under its own name
    bool isLeftOut = false;
    std::optional<DateOrder> date;  ///< for days and moments; nothing where it is still to be asked
    std::optional<LengthUnit> unit;  ///< for lengths, where the cell names none

    friend bool operator==(const ColumnMapping&, const ColumnMapping&) = default;
};

struct Mapping {
    CsvKind kind = CsvKind::animals;
    std::vector<ColumnMapping> columns;          ///< in the order of the sheet
    std::map<std::string, std::string> species;  ///< how it is written, and what is meant
    /// The same for the words of a target: "deceased" of status means "dead".
    std::map<std::string, std::map<std::string, std::string>> words;
    std::string event;                ///< what every row of events is, where no column says it
    std::optional<int> numberFrom;    ///< animals without a code are numbered from here
    std::optional<CivilDay> sizesOn;  ///< the day on which sizes in a list of animals were taken

    friend bool operator==(const Mapping&, const Mapping&) = default;
};

/// A sheet as it was read: rows that are no CSV are left out here, and named by bring().
struct Sheet {
    std::vector<std::string> columns;
    std::vector<std::vector<std::string>> rows;  ///< each with as many cells as there are columns
};

/// Reads at most `most` rows. Fails as CsvReader::open does.
Result<Sheet> readSheet(std::string_view text, std::size_t most = 200'000);

/// What the columns most likely stand for. `today` is taken for the day of sizes without one.
[[nodiscard]] Mapping proposeMapping(const Sheet& sheet, const Profiles& profiles, CivilDay today);
/// The same for a kind that the keeper chose.
[[nodiscard]] Mapping proposeMapping(const Sheet& sheet, CsvKind kind, const Profiles& profiles,
                                     CivilDay today);

/// Fills in what is certain of the column at that place, whose target the keeper chose: the order of its dates, its unit, and
/// the day of its sizes.
void completeColumn(Mapping& mapping, const Sheet& sheet, std::size_t at, CivilDay today);

/// A column under a mapping, for the keeper to look at.
struct ColumnPreview {
    std::int64_t filled = 0;   ///< cells in which something stands
    std::int64_t unread = 0;   ///< of them, those that can't be read as what the column stands for
    std::int64_t unknown = 0;  ///< of them, those that say that nothing is known ("n/a", "?")
    struct Sample {
        std::string written;
        std::string becomes;  ///< empty for what can't be read
    };
    std::vector<Sample> samples;  ///< the first few different ones
};

/// Something the keeper has to say, or may want to.
struct MapQuestion {
    enum class Kind {
        dateOrder,  ///< of a column: choices are names of DateOrder
        unit,       ///< of a column: choices are names of LengthUnit
        twice,      ///< a column stands for what another stands for already
        missing,    ///< no column stands for what is needed: `value` is the target
        event,      ///< no column says what happened: choices are names of events
        word,       ///< `value` is none of the words for what the column stands for
        species     ///< `value` is no species that is known here; it can be kept as it is
    };
    Kind kind = Kind::missing;
    std::optional<std::size_t> column;  ///< position in Mapping::columns
    std::string value;
    std::int64_t count = 0;            ///< cells that are concerned
    std::vector<std::string> choices;  ///< the likeliest first
    bool isOpen = false;               ///< nothing can be brought in before it is answered
    Message text;
};

struct MapReview {
    std::vector<ColumnPreview> columns;  ///< as in Mapping::columns
    std::vector<MapQuestion> questions;  ///< the open ones first

    [[nodiscard]] bool isOpen() const { return !questions.empty() && questions.front().isOpen; }
};

[[nodiscard]] MapReview reviewMapping(const Mapping& mapping, const Sheet& sheet,
                                      const Profiles& profiles);

/// A table as bring() reads it, and where its rows came from.
struct MappedTable {
    CsvKind kind = CsvKind::animals;
    std::string text;
    Original original;  ///< looks into the text that was mapped, which must outlive it
};

/// The sheet as tables: one of the mapping's kind, and for a list of animals that tells more than a list of
/// animals does, one of events. A cell that can't be read stays as it is, so that bring() refuses its row.
/// Fails with `badInput` where the mapping leaves open what has to be known.
Result<std::vector<MappedTable>> applyMapping(std::string_view text, const Mapping& mapping);

[[nodiscard]] std::string mappingToJson(const Mapping& mapping);
/// Fails with `badInput` for anything that is no mapping.
Result<Mapping> mappingFromJson(std::string_view text);

}  // namespace burrow::exchange
