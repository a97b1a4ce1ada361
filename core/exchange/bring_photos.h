// Photos that stand beside tables: they are put with those of the book before the entries that name them are
// written, and taken away again where these are not.
#pragma once

#include <filesystem>
#include <set>
#include <span>
#include <vector>

#include "exchange/bring.h"
#include "pictures/store.h"

namespace burrow::exchange {

/// The photos that the tables of events name.
Result<std::set<Sha256>> picturesNamed(std::span<const CsvSource> sources);

class IncomingPhotos {
public:
    /// Both must outlive it.
    IncomingPhotos(Book& book, Files& files, pictures::Developer& developer)
        : store_(pictures::Store::folderFor(book.path()), files),
          files_(files),
          developer_(developer) {}
    IncomingPhotos(const IncomingPhotos&) = delete;
    IncomingPhotos& operator=(const IncomingPhotos&) = delete;
    ~IncomingPhotos();

    /// Takes those that the folder holds as "<SHA-256>.jpg", are pictures, and have that hash. Those that the
    /// book has are left alone, and so is everything else in the folder. Fails where they can't be written.
    Done take(const std::filesystem::path& folder, const std::set<Sha256>& pictures);
    /// The entries that name them are in the book.
    void keep() { placed_.clear(); }
    [[nodiscard]] std::int64_t count() const { return count_; }

private:
    Done place(const Sha256& picture, std::span<const std::uint8_t> bytes);
    pictures::Store store_;
    Files& files_;
    pictures::Developer& developer_;
    std::vector<std::filesystem::path> placed_;
    std::int64_t count_ = 0;
};

}  // namespace burrow::exchange
