// A folder beside the book for what has come in and is not part of the book yet. Whatever happens in
// between, the next start finds it and puts it in order.
#pragma once

#include <filesystem>
#include <set>
#include <vector>

#include "base/hash.h"
#include "journal/book.h"
#include "pictures/store.h"

namespace burrow::exchange {

/// A photo waiting to be placed beside the book.
struct Staged {
    Sha256 picture;          ///< of the full one
    bool isReduced = false;  ///< this is its smaller copy

    friend auto operator<=>(const Staged&, const Staged&) = default;
};

class Staging {
public:
    /// Holds the folder until it goes. What an earlier run left is put in order first. Fails with
    /// `locked` while another program brings something in.
    static Result<Staging> open(Book& book, Files& files);
    Staging(Staging&& other) noexcept;
    Staging(const Staging&) = delete;
    Staging& operator=(const Staging&) = delete;
    Staging& operator=(Staging&&) = delete;
    /// Removes the folder, and the photos that were placed unless keep() was called.
    ~Staging();

    [[nodiscard]] std::filesystem::path path(const std::string& name) const {
        return folder_ / name;
    }
    /// Whether the book's photos have it already.
    [[nodiscard]] bool isHere(const Staged& photo) const;
    /// Keeps the bytes here; a thumbnail where there is one.
    Done stage(const Staged& photo, std::span<const std::uint8_t> bytes,
               std::span<const std::uint8_t> thumbnail);
    /// Moves staged photos to those of the book, where the entries that are about to be committed will
    /// look for them.
    Done place(const std::vector<Staged>& photos);
    /// The entries that name the placed photos are in the book.
    void keep();
    /// Has the photos of the book looked at again should this run die: those that no entry names by
    /// then are removed at the next start.
    Done doubt(const std::vector<Staged>& photos);

private:
    Staging(Book& book, Files& files, int lock);
    Done putInOrder();
    [[nodiscard]] std::filesystem::path stagedPath(const Staged& photo) const;

    Book* book_;
    Files* files_;
    pictures::Store store_;
    std::filesystem::path folder_;
    int lock_;
    std::vector<Staged> placed_;
};

/// The folder that belongs to a book.
[[nodiscard]] std::filesystem::path stagingFolderFor(const std::filesystem::path& book);

/// For the start of a program: puts in order what a run that died left behind.
Done sweepStaging(Book& book, Files& files);

/// The pictures of these photos that some entry of the book names. Reads the whole journal.
Result<std::set<Sha256>> namedPictures(storage::Connection& connection,
                                       const std::vector<Staged>& photos);

/// Removes those of the photos that no entry of the book names.
Done removeUnnamed(Book& book, Files& files, const std::vector<Staged>& photos);

}  // namespace burrow::exchange
