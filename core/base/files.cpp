#include "base/files.h"

#include <fcntl.h>
#include <fmt/core.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

namespace burrow {
namespace {

namespace fs = std::filesystem;

/// Closes on every way out.
class Descriptor {
public:
    explicit Descriptor(int fd) : fd_(fd) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() {
        if (fd_ >= 0) ::close(fd_);
    }
    [[nodiscard]] int get() const { return fd_; }
    [[nodiscard]] bool isOpen() const { return fd_ >= 0; }

private:
    int fd_;
};

Done writeAll(int fd, std::span<const std::uint8_t> bytes, const fs::path& path) {
    while (!bytes.empty()) {
        const auto written = ::write(fd, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return failFromErrno(errno, path);
        bytes = bytes.subspan(static_cast<std::size_t>(written));
    }
    if (::fsync(fd) != 0) return failFromErrno(errno, path);
    return {};
}

fs::path folderOf(const fs::path& path) {
    return path.has_parent_path() ? path.parent_path() : fs::path(".");
}

}  // namespace

tl::unexpected<Error> failFromErrno(int error, const fs::path& path) {
    const auto name = path.filename().string();
    switch (error) {
        case ENOENT: return fail(Trouble::notFound, {"file.missing", {{"file", name}}});
        case EISDIR: return fail(Trouble::badInput, {"file.isFolder", {{"file", name}}});
        case EACCES:
        case EPERM:
        case EROFS: return fail(Trouble::readOnly, {"file.forbidden", {{"file", name}}});
        case ENOSPC:
        case EDQUOT: return fail(Trouble::full, {"file.noRoom", {{"file", name}}});
        default:
            return fail(Trouble::inputOutput,
                        {"file.trouble",
                         {{"file", name}, {"cause", std::generic_category().message(error)}}});
    }
}

Done syncFolder(const fs::path& folder) {
    const Descriptor fd(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (!fd.isOpen() || ::fsync(fd.get()) == 0) return {};
    const int cause = errno;
    const bool isReal = cause == EIO || cause == ENOSPC || cause == EDQUOT;
    return isReal ? Done(failFromErrno(cause, folder)) : Done();
}

Result<Bytes> DeviceFiles::read(const fs::path& path, std::uint64_t limit) {
    const Descriptor fd(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (!fd.isOpen()) return failFromErrno(errno, path);
    struct stat status {};
    if (::fstat(fd.get(), &status) != 0) return failFromErrno(errno, path);
    if (S_ISDIR(status.st_mode)) return failFromErrno(EISDIR, path);
    Bytes bytes;
    // A pipe or a growing file may hold more than fstat says, so the limit is kept while reading.
    const auto announced = static_cast<std::uint64_t>(status.st_size);
    if (announced <= limit) {
        bytes.resize(announced + 1);
        std::size_t size = 0;
        while (true) {
            if (size == bytes.size()) bytes.resize(bytes.size() * 2);
            const auto got = ::read(fd.get(), bytes.data() + size, bytes.size() - size);
            if (got < 0 && errno == EINTR) continue;
            if (got < 0) return failFromErrno(errno, path);
            if (got == 0) break;
            size += static_cast<std::size_t>(got);
            if (size > limit) break;
        }
        bytes.resize(size);
        if (size <= limit) return bytes;
    }
    return fail(Trouble::badInput, {"file.tooLarge",
                                    {{"file", path.filename().string()},
                                     {"limit_mb", static_cast<std::int64_t>(limit / 1'000'000)}}});
}

Done DeviceFiles::write(const fs::path& path, std::span<const std::uint8_t> bytes) {
    std::error_code error;
    fs::create_directories(folderOf(path), error);
    if (error) return failFromErrno(error.value(), folderOf(path));
    auto temporary = path;
    temporary += ".part";
    {
        const Descriptor fd(
            ::open(temporary.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644));
        if (!fd.isOpen()) return failFromErrno(errno, path);
        if (auto written = writeAll(fd.get(), bytes, path); !written) {
            ::unlink(temporary.c_str());
            return written;
        }
    }
    auto moved = moveIntoPlace(temporary, path);
    if (!moved) ::unlink(temporary.c_str());
    return moved;
}

bool DeviceFiles::exists(const fs::path& path) {
    std::error_code error;
    return fs::exists(path, error);
}

Done DeviceFiles::remove(const fs::path& path) {
    std::error_code error;
    fs::remove(path, error);
    if (error) return failFromErrno(error.value(), path);
    return {};
}

fs::path freePath(const fs::path& folder, const std::string& stem, const std::string& ending) {
    auto path = folder / (stem + ending);
    std::error_code ignored;
    for (int n = 2; fs::exists(path, ignored); ++n) {
        path = folder / fmt::format("{}-{}{}", stem, n, ending);
    }
    return path;
}

Done moveIntoPlace(const fs::path& from, const fs::path& to) {
    if (::rename(from.c_str(), to.c_str()) != 0) return failFromErrno(errno, to);
    return syncFolder(folderOf(to));
}

std::uint64_t freeBytesAt(const fs::path& path) {
    auto at = fs::absolute(path);
    std::error_code error;
    while (!fs::exists(at, error) && at.has_relative_path()) at = at.parent_path();
    const auto space = fs::space(at, error);
    return error ? 0 : space.available;
}

}  // namespace burrow
