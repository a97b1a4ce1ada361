// Writes a bundle piece by piece: entries first, then photos, then the manifest that names them all.
// Nothing is kept in memory but the list of photos.
#pragma once

#include <filesystem>
#include <memory>

#include "base/random.h"
#include "exchange/manifest.h"

namespace burrow::exchange {

class BundleWriter {
public:
    /// Writes to a temporary name beside `path`. Sealed where there is a passphrase.
    static Result<BundleWriter> create(const std::filesystem::path& path,
                                       const std::string& passphrase, Random& random);
    BundleWriter(BundleWriter&&) noexcept;
    BundleWriter& operator=(BundleWriter&&) = delete;
    /// What was not published is removed.
    ~BundleWriter();

    /// All entries come before the first photo.
    Done add(const StoredEntry& entry);
    Done add(const Entry& entry);
    /// The photos that the entries so far name.
    [[nodiscard]] const std::vector<NamedPhoto>& photos() const;
    /// A copy whose SHA-256 is `picture`.
    Done addPhoto(const Sha256& picture, std::span<const std::uint8_t> bytes);
    /// A smaller copy of the photo `full`.
    Done addReduced(const Sha256& full, std::span<const std::uint8_t> bytes);

    /// Fills in what was counted, writes the manifest and flushes: the file can be read back under
    /// temporary(). Gives the manifest as it was written.
    Result<Manifest> close(Manifest manifest);
    [[nodiscard]] const std::filesystem::path& temporary() const;
    /// Of the whole zip, after close(), where the file is sealed.
    [[nodiscard]] Sha256 zipHash() const;
    /// Gives the file its name: that of create(), or another one in the same folder.
    Done publish();
    Done publishAs(const std::filesystem::path& path);

private:
    struct State;
    explicit BundleWriter(std::unique_ptr<State> state);
    Done flushLines();
    Done endEntries();
    std::unique_ptr<State> state_;
};

}  // namespace burrow::exchange
