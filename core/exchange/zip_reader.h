// Reads a zip file that comes from somewhere else, one file inside it after the other. Nothing is ever
// unpacked to a name that the zip file gives. Only what ISO/IEC 21320-1 allows is read: stored or
// deflated, not encrypted; and of that only plain files with plain names.
#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>

#include "base/files.h"

namespace burrow::exchange {

/// What is read at all; more is refused before it costs anything.
struct ZipLimits {
    std::uint64_t files = 200'002;  ///< inside: the manifest, the entries, and photos
    std::uint64_t directoryBytes = 64u << 20U;
    std::uint64_t totalBytes = 64ull << 30U;  ///< unpacked
    /// Unpacked bytes for each byte of the zip file, over all files inside. Entries come down to a
    /// fifth; the densest that deflate can do is 1032 (zlib's technical details).
    std::uint64_t ratio = 100;
    std::size_t nameBytes = 160;
};

struct ZipItem {
    std::string name;
    std::uint64_t bytes = 0;  ///< unpacked, as the directory says; reading more fails
};

class ZipReader {
public:
    /// Fails with `badInput` for what is no zip file, is cut, or is over the limits.
    static Result<ZipReader> open(const std::filesystem::path& path, const ZipLimits& limits = {});
    ZipReader(ZipReader&&) noexcept;
    ZipReader& operator=(ZipReader&&) = delete;
    ~ZipReader();

    /// The next file inside, or nothing after the last. Fails for folders, links, encrypted or
    /// otherwise packed files, a name that is not plain or comes twice, and when the sum of sizes is
    /// over the limits.
    Result<std::optional<ZipItem>> next();
    /// Fills `buffer` from the current file as far as there is something; 0 at its end. Fails for a
    /// wrong checksum and for more or fewer bytes than announced.
    Result<std::size_t> read(std::span<std::uint8_t> buffer);
    /// The whole current file. Fails with `badInput` where it is larger than `limit`.
    Result<Bytes> readAll(std::uint64_t limit);

private:
    struct State;
    explicit ZipReader(std::unique_ptr<State> state);
    [[nodiscard]] Done checkCurrent(const ZipItem& item);
    std::unique_ptr<State> state_;
};

}  // namespace burrow::exchange
