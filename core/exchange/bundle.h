// Bundles: a book, or a part of it, as one file that other devices take in. FORMAT.md beside this header
// describes the file byte by byte.
//
// All of it works in a stream: what a call needs of memory does not depend on how much is in the file.
// Each call belongs to the thread of its book, and may be ended through its progress.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>

#include "exchange/manifest.h"
#include "journal/book.h"
#include "journal/merge.h"
#include "pictures/store.h"

namespace burrow::exchange {

enum class Step { opening, photos, entries, checking, placing };

struct Progress {
    Step step = Step::entries;
    std::uint64_t done = 0;
    std::uint64_t total = 0;  ///< 0 where it is not known
};
/// False ends the work: nothing is kept of it, and the call fails with `bundle.stopped`.
using OnProgress = std::function<bool(const Progress&)>;

// --- Out -----------------------------------------------------------------------------------------

struct ExportOptions {
    /// Only what this device was not known to have when it wrote its last file; everything where it
    /// never wrote one.
    std::optional<DeviceId> madeFor;
    Selection selection;
    /// Of the photos that the entries in the file name.
    PhotoChoice photos = PhotoChoice::none;
    std::string passphrase;  ///< sealed where there is one
    std::string program;     ///< name and version, for the manifest
    /// Makes reduced copies; needed for PhotoChoice::reduced only.
    pictures::Developer* developer = nullptr;
    OnProgress onProgress;
};

/// Writes the file, reads it back, and only then gives it its name: what was at `path` before stays
/// until then. Photos that are not on this device, or damaged here, are left out and counted.
Result<Manifest> exportBundle(Book& book, const std::filesystem::path& path,
                              const ExportOptions& options);

/// Another device, as this book knows it.
struct KnownPeer {
    DeviceId device;
    Instant writtenAt;  ///< its last file
};
/// Those whose files were taken in, the latest first.
Result<std::vector<KnownPeer>> peers(Book& book);

// --- In ------------------------------------------------------------------------------------------

struct Contents {
    Manifest manifest;
    bool isSealed = false;
    std::uint64_t fileBytes = 0;
};

struct PeekOptions {
    std::string passphrase;
    /// Where a sealed file is opened for a moment.
    std::filesystem::path scratch = std::filesystem::temp_directory_path();
    OnProgress onProgress;
};

/// What a file says is in it; nothing is taken in. Fails with `badInput` for what is no bundle or is
/// damaged, and with the message `seal.needed` for a sealed one without a passphrase.
Result<Contents> peek(const std::filesystem::path& path, const PeekOptions& options = {});

struct TakeInOptions {
    std::string passphrase;
    /// Also a file of another book: its animals become part of this one.
    bool fromOtherBook = false;
    /// Makes thumbnails; without it the photos come without.
    pictures::Developer* developer = nullptr;
    OnProgress onProgress;
};

struct TakenIn {
    MergeReport merge;
    Manifest manifest;
    std::int64_t photosAdded = 0;
    std::int64_t photosKnown = 0;
    std::int64_t photosUnnamed = 0;  ///< that no entry names: left where they are
    std::int64_t differences = 0;    ///< to settle in the book now, old and new
};

/// Takes all of the file into the book, or nothing. Everything is checked first or in the same
/// transaction; a run that dies leaves the book as it was, and the next start clears up.
Result<TakenIn> mergeBundle(Book& book, const std::filesystem::path& path, Files& files,
                            const TakeInOptions& options = {});

/// Removes all that the newest arrival brought, with its photos; see takeBackArrival().
Result<TakenBack> takeBackBundle(Book& book, Files& files);

/// Makes a book at `path` that takes part in the book of the file as a device of its own, and takes the
/// file in. Nothing is at `path` unless all of it went well. Refuses when there is anything already.
Result<TakenIn> joinFromBundle(const std::filesystem::path& path,
                               const std::filesystem::path& bundle, Files& files,
                               const Surroundings& surroundings, const TakeInOptions& options = {});

}  // namespace burrow::exchange
