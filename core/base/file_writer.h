// Files that are too large to hold: written piece by piece to a temporary name, flushed, and renamed
// when all of it is there.
#pragma once

#include "base/files.h"

namespace burrow {

/// Where bytes go, one after the other.
class ByteSink {
public:
    virtual ~ByteSink() = default;
    virtual Done write(std::span<const std::uint8_t> bytes) = 0;
};

/// Writes to "NAME.part" and holds a lock on it, so that another run can tell a file that is being
/// written from one that was left behind. What was not finished is removed with its writer.
class FileWriter final : public ByteSink {
public:
    /// Makes the folder where it is missing. Fails with `locked` where another program writes the
    /// same file at the moment. Only the owner can read what is written with `onlyOwner`.
    static Result<FileWriter> create(const std::filesystem::path& path, bool onlyOwner = false);
    FileWriter(FileWriter&& other) noexcept;
    FileWriter(const FileWriter&) = delete;
    FileWriter& operator=(const FileWriter&) = delete;
    FileWriter& operator=(FileWriter&&) = delete;
    ~FileWriter() override;

    Done write(std::span<const std::uint8_t> bytes) override;
    /// All that was written is on the device, under the temporary name: it can be read back.
    Done flush();
    /// Flushes and renames: from now on the file is there.
    Done finish() { return finishAs(path_); }
    /// The same under another name in the same folder.
    Done finishAs(const std::filesystem::path& path);

    [[nodiscard]] const std::filesystem::path& path() const { return path_; }
    [[nodiscard]] const std::filesystem::path& temporary() const { return temporary_; }
    [[nodiscard]] std::uint64_t size() const { return size_; }

private:
    FileWriter(int fd, std::filesystem::path path, std::filesystem::path temporary)
        : fd_(fd), path_(std::move(path)), temporary_(std::move(temporary)) {}
    Done writeOut(std::span<const std::uint8_t> bytes);

    int fd_;
    std::filesystem::path path_;
    std::filesystem::path temporary_;
    Bytes waiting_;  // small pieces are written together
    std::uint64_t size_ = 0;
};

/// Removes what FileWriters of programs that died left in the folder: names that end in `ending`
/// and ".part" and that nobody holds.
void sweepUnfinished(const std::filesystem::path& folder, std::string_view ending);

}  // namespace burrow
