#include "base/file_writer.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>
#include <utility>

namespace burrow {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t writeTogether = std::size_t{256} * 1024;

fs::path temporaryFor(const fs::path& path) {
    auto temporary = path;
    temporary += ".part";
    return temporary;
}

/// Where the file system knows no locks, nobody is taken to hold one.
bool tryLock(int fd) { return ::flock(fd, LOCK_EX | LOCK_NB) == 0 || errno != EWOULDBLOCK; }

/// Whether a sweep took the name away between opening and locking.
bool wasSwept(int fd) {
    struct stat status {};
    return ::fstat(fd, &status) == 0 && status.st_nlink == 0;
}

}  // namespace

Result<FileWriter> FileWriter::create(const fs::path& path, bool onlyOwner) {
    std::error_code error;
    const auto folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
    fs::create_directories(folder, error);
    if (error) return failFromErrno(error.value(), folder);
    const auto temporary = temporaryFor(path);
    // O_NOFOLLOW: a link that somebody put there must not lead the writing elsewhere. Not O_TRUNC:
    // the file may be another program's until the lock is held.
    const int fd = ::open(temporary.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW,
                          onlyOwner ? 0600 : 0644);
    if (fd < 0) return failFromErrno(errno, path);
    FileWriter writer(fd, path, temporary);
    if (!tryLock(fd)) {
        writer.temporary_.clear();  // not ours to remove
        return fail(Trouble::locked, {"file.beingWritten", {{"file", path.filename().string()}}});
    }
    if (wasSwept(fd)) return create(path, onlyOwner);
    // In a folder that all may write to, somebody may have put a file of theirs there to read it later.
    struct stat status {};
    const bool isOurs = ::fstat(fd, &status) == 0 && status.st_uid == ::geteuid();
    if (onlyOwner && (!isOurs || ::fchmod(fd, 0600) != 0)) {
        writer.temporary_.clear();
        return fail(Trouble::readOnly, {"file.forbidden", {{"file", path.filename().string()}}});
    }
    if (::ftruncate(fd, 0) != 0) return failFromErrno(errno, path);
    return writer;
}

FileWriter::FileWriter(FileWriter&& other) noexcept
    : fd_(std::exchange(other.fd_, -1)),
      path_(std::move(other.path_)),
      temporary_(std::move(other.temporary_)),
      waiting_(std::move(other.waiting_)),
      size_(other.size_) {}

FileWriter::~FileWriter() {
    if (fd_ < 0) return;
    // Removed before the lock goes: nobody else can take the name up in between.
    if (!temporary_.empty()) ::unlink(temporary_.c_str());
    ::close(fd_);
}

Done FileWriter::writeOut(std::span<const std::uint8_t> bytes) {
    while (!bytes.empty()) {
        const auto written = ::write(fd_, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return failFromErrno(errno, path_);
        bytes = bytes.subspan(static_cast<std::size_t>(written));
    }
    return {};
}

Done FileWriter::write(std::span<const std::uint8_t> bytes) {
    size_ += bytes.size();
    if (waiting_.size() + bytes.size() < writeTogether) {
        waiting_.insert(waiting_.end(), bytes.begin(), bytes.end());
        return {};
    }
    BURROW_DO(writeOut(waiting_));
    waiting_.clear();
    return writeOut(bytes);
}

Done FileWriter::flush() {
    BURROW_DO(writeOut(waiting_));
    waiting_.clear();
    if (::fsync(fd_) != 0) return failFromErrno(errno, path_);
    return {};
}

Done FileWriter::finishAs(const fs::path& path) {
    BURROW_DO(flush());
    if (::rename(temporary_.c_str(), path.c_str()) != 0) return failFromErrno(errno, path);
    ::close(std::exchange(fd_, -1));
    return syncFolder(path.has_parent_path() ? path.parent_path() : fs::path("."));
}

void sweepUnfinished(const fs::path& folder, std::string_view ending) {
    const auto wanted = std::string(ending) + ".part";
    std::error_code error;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
        const auto& path = at->path();
        if (!path.filename().string().ends_with(wanted)) continue;
        const int fd = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
        if (fd < 0) continue;
        if (tryLock(fd)) ::unlink(path.c_str());
        ::close(fd);
    }
}

}  // namespace burrow
