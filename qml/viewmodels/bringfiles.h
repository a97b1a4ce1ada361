// The files that were chosen to be brought in, and what a look at them gives. Called in the book's thread.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "base/files.h"
#include "exchange/mapping.h"
#include "ports/darkroom.h"

namespace burrow {

/// A chosen file, read once: what is brought in is what was looked at.
struct CsvFile {
    std::filesystem::path path;
    exchange::CsvKind kind = exchange::CsvKind::animals;
    Bytes bytes;
    exchange::Sheet sheet;  ///< its beginning, to ask about; only of one that needs a mapping
};

struct ChosenFile {
    std::shared_ptr<const CsvFile> csv;
    std::optional<exchange::Mapping> mapping;  ///< of a sheet with columns of its own
    bool isOpen = false;                       ///< the mapping leaves something to be asked

    [[nodiscard]] exchange::CsvKind kind() const { return mapping ? mapping->kind : csv->kind; }
};
using ChosenFiles = std::vector<ChosenFile>;

/// What bring() is given, and for each table the file it comes from.
struct BringTables {
    std::vector<std::unique_ptr<exchange::MappedTable>> made;
    std::vector<exchange::CsvSource> sources;
    std::vector<std::size_t> fileOf;
};

/// Fails where a mapping does. The files must outlive the tables.
Result<BringTables> tablesOf(const ChosenFiles& files);

struct BringLook {
    ChosenFiles files;
    std::vector<Message> refused;                 ///< what could not be used of the files
    std::optional<exchange::BringReport> report;  ///< nothing while something is to be asked
    std::optional<Message> trouble;
};

/// Adds the files to those chosen before and looks at all of them. A mapping among them (made by `burrow map`
/// or saved here) goes to the file of its kind.
BringLook lookAt(Book& book, const std::vector<std::filesystem::path>& paths, ChosenFiles known,
                 const Profiles& profiles, CivilDay today, exchange::BringOptions options);

struct Brought {
    ChangeSet changes;
    std::vector<std::vector<exchange::BadRow>> bad;  ///< of each file, those that were left out
};

/// Writes what was looked at, after a copy of the book was made. Photos that stand in a folder beside tables of
/// events come along where there is a darkroom. Fails where the book has changed so that not all of it
/// can be brought in any more.
Result<Brought> bringIn(Book& book, const ChosenFiles& files, exchange::BringOptions options,
                        Darkroom* darkroom);

/// Whether the mapping leaves something to be asked.
[[nodiscard]] bool isOpen(const exchange::Mapping& mapping, const exchange::Sheet& sheet,
                          const Profiles& profiles);

}  // namespace burrow
