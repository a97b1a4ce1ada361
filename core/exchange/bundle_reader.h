// Reads a bundle that somebody else wrote. What it says of itself is believed only as far as it was
// checked: sizes before they are read, hashes before anything is used.
#pragma once

#include <filesystem>
#include <functional>

#include "base/files.h"
#include "exchange/manifest.h"

namespace burrow::exchange {

class BundleReader {
public:
    /// Looks the file over and reads its manifest. Fails with `badInput` for what is no bundle, is cut,
    /// holds other files than it says, or is over the limits; with `newer` for a later format.
    /// `path` is the plain zip; a sealed one is opened with unseal() before.
    static Result<BundleReader> open(const std::filesystem::path& path);

    [[nodiscard]] const Manifest& manifest() const { return manifest_; }

    /// Gives each entry with the bytes read so far; what the function fails with ends the reading.
    /// Fails where the entries are not those that the manifest counts, which is only known after the
    /// last: what was made of them is to be thrown away then.
    using OnEntry = std::function<Done(const Entry&, std::uint64_t bytes)>;
    [[nodiscard]] Result<std::vector<NamedPhoto>> readEntries(const OnEntry& onEntry) const;

    /// Only that the bytes are there and have the right hash; they are not looked into.
    using OnBytes = std::function<Done(std::uint64_t bytes)>;
    [[nodiscard]] Done checkEntries(const OnBytes& onBytes) const;

    struct Photo {
        Sha256 picture;  ///< the full one, also where this is its reduced copy
        bool isReduced = false;
        Bytes bytes;  ///< whole and with the right hash
    };
    /// Whether the bytes of a photo are wanted at all.
    using IsWanted = std::function<bool(const Sha256& picture, bool isReduced)>;
    /// Gives each wanted photo; fails for one whose hash is wrong.
    [[nodiscard]] Done readPhotos(const IsWanted& isWanted,
                                  const std::function<Done(Photo)>& onPhoto) const;

private:
    BundleReader(std::filesystem::path path, Manifest manifest)
        : path_(std::move(path)), manifest_(std::move(manifest)) {}
    std::filesystem::path path_;
    Manifest manifest_;
};

}  // namespace burrow::exchange
