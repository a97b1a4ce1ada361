// The file system as a port. Everything that is written goes to a temporary name in the same folder,
// is flushed to the device, and is then renamed: a reader sees the old file or the new one.
#pragma once

#include <cstdint>
#include <filesystem>
#include <span>
#include <string>
#include <vector>

#include "base/result.h"

namespace burrow {

using Bytes = std::vector<std::uint8_t>;

class Files {
public:
    virtual ~Files() = default;
    /// Fails with `badInput` for a file larger than `limit` bytes, before reading it.
    virtual Result<Bytes> read(const std::filesystem::path& path, std::uint64_t limit) = 0;
    /// All or nothing; makes the folder where it is missing.
    virtual Done write(const std::filesystem::path& path, std::span<const std::uint8_t> bytes) = 0;
    virtual bool exists(const std::filesystem::path& path) = 0;
    /// Removing what is not there is no error.
    virtual Done remove(const std::filesystem::path& path) = 0;
};

/// The device's own file system (POSIX).
class DeviceFiles final : public Files {
public:
    Result<Bytes> read(const std::filesystem::path& path, std::uint64_t limit) override;
    Done write(const std::filesystem::path& path, std::span<const std::uint8_t> bytes) override;
    bool exists(const std::filesystem::path& path) override;
    Done remove(const std::filesystem::path& path) override;
};

[[nodiscard]] inline std::span<const std::uint8_t> bytesOf(std::string_view text) {
    return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}
[[nodiscard]] inline std::string_view textOf(std::span<const std::uint8_t> bytes) {
    return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}

/// What an errno value means for the file, as an error for the keeper.
[[nodiscard]] tl::unexpected<Error> failFromErrno(int error, const std::filesystem::path& path);

/// A rename is only durable once the folder that holds the name is. Some file systems cannot flush a
/// folder by itself and say so; that is no trouble.
Done syncFolder(const std::filesystem::path& folder);

/// A file of that name in the folder, or, where there is one already, with "-2", "-3" ...: nothing is
/// written over.
[[nodiscard]] std::filesystem::path freePath(const std::filesystem::path& folder,
                                             const std::string& stem, const std::string& ending);

/// Renames, and returns when the new name is on the device. A file that stood there is replaced.
Done moveIntoPlace(const std::filesystem::path& from, const std::filesystem::path& to);

/// Bytes that this program may still write where `path` stands or will stand.
[[nodiscard]] std::uint64_t freeBytesAt(const std::filesystem::path& path);

}  // namespace burrow
