#include "exchange/zip_reader.h"

#include <archive.h>
#include <archive_entry.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <string_view>
#include <unordered_set>

#include "base/text.h"
#include "exchange/refuse.h"
#include "exchange/zip_directory.h"

namespace burrow::exchange {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t blockBytes = std::size_t{64} * 1024;  // each look at a header reads one

struct Closer {
    void operator()(archive* zip) const { archive_read_free(zip); }
};

/// Letters, digits, '.', '-' and '_' in parts between single slashes; no part that is "." or "..".
bool isPlainName(std::string_view name) {
    constexpr std::string_view plain =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_-./";
    if (name.find_first_not_of(plain) != std::string_view::npos) return false;
    const auto parts = split(name, '/');
    return std::none_of(parts.begin(), parts.end(), [](std::string_view part) {
        return part.empty() || part == "." || part == "..";
    });
}

}  // namespace

struct ZipReader::State {
    ZipLimits limits;
    int fd = -1;
    std::uint64_t fileBytes = 0;
    std::uint64_t totalBytes = 0;
    std::uint64_t left = 0;  // of the current file, as announced
    std::unordered_set<std::string> names;
    std::unique_ptr<archive, Closer> zip;

    State() = default;
    State(const State&) = delete;
    State& operator=(const State&) = delete;
    ~State() {
        zip.reset();
        if (fd >= 0) ::close(fd);
    }
};

ZipReader::ZipReader(std::unique_ptr<State> state) : state_(std::move(state)) {}
ZipReader::ZipReader(ZipReader&&) noexcept = default;
ZipReader::~ZipReader() = default;

Result<ZipReader> ZipReader::open(const fs::path& path, const ZipLimits& limits) {
    auto state = std::make_unique<State>();
    state->limits = limits;
    state->fd = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    if (state->fd < 0) return failFromErrno(errno, path);
    struct stat status {};
    if (::fstat(state->fd, &status) != 0) return failFromErrno(errno, path);
    if (S_ISDIR(status.st_mode)) return failFromErrno(EISDIR, path);
    if (!S_ISREG(status.st_mode)) return refuse({"bundle.notABundle"});
    state->fileBytes = static_cast<std::uint64_t>(status.st_size);
    // The library takes the whole directory into memory, so its size is looked at before.
    BURROW_TRY(const auto directory, zipDirectory(state->fd, state->fileBytes));
    if (directory.files > limits.files || directory.bytes > limits.directoryBytes) {
        return refuse({"bundle.tooManyFiles"});
    }
    state->zip.reset(archive_read_new());
    auto* zip = state->zip.get();
    archive_read_support_format_zip_seekable(zip);
    if (::lseek(state->fd, 0, SEEK_SET) != 0) return failFromErrno(errno, path);
    if (archive_read_open_fd(zip, state->fd, blockBytes) != ARCHIVE_OK) {
        return refuse({"bundle.cut"});
    }
    return ZipReader(std::move(state));
}

Result<std::optional<ZipItem>> ZipReader::next() {
    archive_entry* entry = nullptr;
    const int code = archive_read_next_header(state_->zip.get(), &entry);
    if (code == ARCHIVE_EOF) return std::optional<ZipItem>();
    // A warning means a header that two readers could understand in two ways.
    if (code != ARCHIVE_OK) return refuse({"bundle.damaged"});
    const char* name = archive_entry_pathname(entry);
    if (name == nullptr || archive_entry_filetype(entry) != AE_IFREG ||
        archive_entry_symlink(entry) != nullptr || archive_entry_hardlink(entry) != nullptr ||
        archive_entry_size_is_set(entry) == 0 || archive_entry_size(entry) < 0) {
        return refuse({"bundle.strangeFile"});
    }
    if (archive_entry_is_encrypted(entry) != 0) return refuse({"bundle.strangeFile"});
    ZipItem item{name, static_cast<std::uint64_t>(archive_entry_size(entry))};
    BURROW_DO(checkCurrent(item));
    state_->left = item.bytes;
    return std::optional(std::move(item));
}

Done ZipReader::checkCurrent(const ZipItem& item) {
    auto& state = *state_;
    if (item.name.size() > state.limits.nameBytes || !isPlainName(item.name)) {
        return refuse({"bundle.strangeName"});
    }
    // The library knows more methods than a bundle may use: "ZIP 2.0 (deflation)".
    const char* formatName = archive_format_name(state.zip.get());
    const std::string_view format = formatName != nullptr ? formatName : "";
    if (!format.ends_with("(uncompressed)") && !format.ends_with("(deflation)")) {
        return refuse({"bundle.strangeFile"});
    }
    if (!state.names.insert(item.name).second) return refuse({"bundle.nameTwice"});
    if (state.names.size() > state.limits.files) return refuse({"bundle.tooManyFiles"});
    if (item.bytes > state.limits.totalBytes - state.totalBytes) return refuse({"bundle.tooLarge"});
    state.totalBytes += item.bytes;
    constexpr std::uint64_t always = 1u << 20U;  // a megabyte of anything harms nobody
    if (state.totalBytes > always && state.totalBytes / state.limits.ratio > state.fileBytes) {
        return refuse({"bundle.tooDense"});
    }
    return {};
}

Result<std::size_t> ZipReader::read(std::span<std::uint8_t> buffer) {
    std::size_t filled = 0;
    while (filled < buffer.size()) {
        const auto got =
            archive_read_data(state_->zip.get(), buffer.data() + filled, buffer.size() - filled);
        if (got < 0) return refuse({"bundle.damaged"});
        if (got == 0) break;
        if (static_cast<std::uint64_t>(got) > state_->left) return refuse({"bundle.damaged"});
        state_->left -= static_cast<std::uint64_t>(got);
        filled += static_cast<std::size_t>(got);
    }
    if (filled < buffer.size() && state_->left != 0) return refuse({"bundle.damaged"});
    return filled;
}

Result<Bytes> ZipReader::readAll(std::uint64_t limit) {
    if (state_->left > limit) return refuse({"bundle.tooLarge"});
    Bytes bytes(static_cast<std::size_t>(state_->left));
    BURROW_TRY(const auto got, read(bytes));
    std::array<std::uint8_t, 1> more{};
    // Asks for one byte past the end, so that the checksum has been compared.
    BURROW_TRY(const auto extra, read(more));
    if (got != bytes.size() || extra != 0) return refuse({"bundle.damaged"});
    return bytes;
}

}  // namespace burrow::exchange
