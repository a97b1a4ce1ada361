#include "exchange/seal.h"

#include <fcntl.h>
#include <sodium.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>

#include "exchange/refuse.h"

namespace burrow::exchange {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view magic = "BRBKSEAL";
constexpr std::uint8_t formatVersion = 1;
constexpr std::uint8_t argon2id13 = 1;
constexpr std::size_t chunkBytes = 65'536;
constexpr std::size_t overhead = crypto_secretstream_xchacha20poly1305_ABYTES;

// Where things stand in the header.
constexpr std::size_t versionAt = 8;
constexpr std::size_t kdfAt = 9;
constexpr std::size_t passesAt = 12;
constexpr std::size_t memoryAt = 16;
constexpr std::size_t saltAt = 20;
constexpr std::size_t streamAt = saltAt + crypto_pwhash_SALTBYTES;
constexpr std::size_t headerBytes = streamAt + crypto_secretstream_xchacha20poly1305_HEADERBYTES;
static_assert(headerBytes == 60 && overhead == 17);

using Header = std::array<std::uint8_t, headerBytes>;
using StreamState = crypto_secretstream_xchacha20poly1305_state;

/// What a header may ask of the reader: a phone must be able to give it.
constexpr SealCost mostCost{16, 128 * 1024};

void putLittle(Header& header, std::size_t at, std::uint32_t value) {
    for (std::size_t i = 0; i < 4; ++i) {
        header[at + i] = static_cast<std::uint8_t>(value >> 8U * static_cast<unsigned>(i));
    }
}

std::uint32_t littleAt(const Header& header, std::size_t at) {
    std::uint32_t value = 0;
    for (std::size_t i = 4; i-- > 0;) value = value << 8U | header[at + i];
    return value;
}

/// A key that is wiped when it goes.
struct Key {
    std::array<std::uint8_t, crypto_secretstream_xchacha20poly1305_KEYBYTES> bytes{};
    Key() = default;
    Key(const Key&) = delete;
    Key& operator=(const Key&) = delete;
    ~Key() { sodium_memzero(bytes.data(), bytes.size()); }
};

Done makeKey(Key& key, std::string_view passphrase, const Header& header) {
    if (sodium_init() < 0) return fail(Trouble::inputOutput, {"seal.noMemory"});
    const auto memory = std::size_t{littleAt(header, memoryAt)} * 1024;
    if (crypto_pwhash(key.bytes.data(), key.bytes.size(), passphrase.data(), passphrase.size(),
                      header.data() + saltAt, littleAt(header, passesAt), memory,
                      crypto_pwhash_ALG_ARGON2ID13) != 0) {
        return fail(Trouble::full, {"seal.noMemory"});
    }
    return {};
}

/// The sealed file, read from its beginning.
class SealedFile {
public:
    static Result<SealedFile> open(const fs::path& path) {
        const int fd = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
        if (fd < 0) return failFromErrno(errno, path);
        SealedFile file(fd, path);
        struct stat status {};
        if (::fstat(fd, &status) != 0) return failFromErrno(errno, path);
        if (S_ISDIR(status.st_mode)) return failFromErrno(EISDIR, path);
        file.size_ = static_cast<std::uint64_t>(status.st_size);
        return file;
    }
    SealedFile(SealedFile&& other) noexcept
        : fd_(std::exchange(other.fd_, -1)), path_(std::move(other.path_)), size_(other.size_) {}
    SealedFile(const SealedFile&) = delete;
    SealedFile& operator=(const SealedFile&) = delete;
    SealedFile& operator=(SealedFile&&) = delete;
    ~SealedFile() {
        if (fd_ >= 0) ::close(fd_);
    }

    /// As many bytes as there are, up to the size of the buffer.
    Result<std::size_t> read(std::span<std::uint8_t> buffer) {
        std::size_t filled = 0;
        while (filled < buffer.size()) {
            const auto got = ::read(fd_, buffer.data() + filled, buffer.size() - filled);
            if (got < 0 && errno == EINTR) continue;
            if (got < 0) return failFromErrno(errno, path_);
            if (got == 0) break;
            filled += static_cast<std::size_t>(got);
        }
        return filled;
    }
    [[nodiscard]] std::uint64_t size() const { return size_; }

private:
    SealedFile(int fd, fs::path path) : fd_(fd), path_(std::move(path)) {}
    int fd_;
    fs::path path_;
    std::uint64_t size_ = 0;
};

Done checkHeader(const Header& header) {
    if (!std::equal(magic.begin(), magic.end(), header.begin())) return refuse({"seal.notSealed"});
    if (header[versionAt] > formatVersion || header[kdfAt] != argon2id13) {
        return fail(Trouble::newer, {"bundle.newer"});
    }
    const auto passes = littleAt(header, passesAt);
    const auto memory = littleAt(header, memoryAt);
    constexpr std::uint32_t leastMemory = 8;  // libsodium's own bound, 8 KiB
    const bool isReserved = header[kdfAt + 1] != 0 || header[kdfAt + 2] != 0;
    if (header[versionAt] == 0 || isReserved) return refuse({"bundle.damaged"});
    if (passes < 1 || passes > mostCost.passes || memory < leastMemory ||
        memory > mostCost.memoryKiB) {
        return refuse({"seal.tooCostly"});
    }
    return {};
}

}  // namespace

struct SealWriter::State {
    ByteSink* sink = nullptr;
    Header header{};
    StreamState stream{};
    bool isFirst = true;
    Bytes waiting;
    Bytes sealed;
    ~State() {
        sodium_memzero(&stream, sizeof stream);
        sodium_memzero(waiting.data(), waiting.size());
    }
};

SealWriter::SealWriter(std::unique_ptr<State> state) : state_(std::move(state)) {}
SealWriter::SealWriter(SealWriter&&) noexcept = default;
SealWriter::~SealWriter() = default;

Result<SealWriter> SealWriter::begin(ByteSink& sink, std::string_view passphrase, Random& random,
                                     const SealCost& cost) {
    auto state = std::make_unique<State>();
    state->sink = &sink;
    auto& header = state->header;
    std::copy(magic.begin(), magic.end(), header.begin());
    header[versionAt] = formatVersion;
    header[kdfAt] = argon2id13;
    putLittle(header, passesAt, cost.passes);
    putLittle(header, memoryAt, cost.memoryKiB);
    random.fill(std::span(header).subspan(saltAt, crypto_pwhash_SALTBYTES));
    Key key;
    BURROW_DO(makeKey(key, passphrase, header));
    // Draws the stream's own random header; the salt above makes every file's key its own already.
    crypto_secretstream_xchacha20poly1305_init_push(&state->stream, header.data() + streamAt,
                                                    key.bytes.data());
    state->waiting.reserve(chunkBytes);
    state->sealed.resize(chunkBytes + overhead);
    BURROW_DO(sink.write(header));
    return SealWriter(std::move(state));
}

Done SealWriter::writeChunk(bool isLast) {
    auto& s = *state_;
    // The first chunk answers for the header, too.
    const std::span<const std::uint8_t> bound =
        s.isFirst ? std::span<const std::uint8_t>(s.header) : std::span<const std::uint8_t>();
    s.isFirst = false;
    unsigned long long size = 0;
    crypto_secretstream_xchacha20poly1305_push(
        &s.stream, s.sealed.data(), &size, s.waiting.data(), s.waiting.size(), bound.data(),
        bound.size(),
        isLast ? crypto_secretstream_xchacha20poly1305_TAG_FINAL
               : crypto_secretstream_xchacha20poly1305_TAG_MESSAGE);
    s.waiting.clear();
    return s.sink->write(std::span(s.sealed).first(static_cast<std::size_t>(size)));
}

Done SealWriter::write(std::span<const std::uint8_t> bytes) {
    auto& waiting = state_->waiting;
    while (!bytes.empty()) {
        // A full chunk waits for one more byte, so that the last chunk is known to be the last.
        if (waiting.size() == chunkBytes) BURROW_DO(writeChunk(false));
        const auto take = std::min(bytes.size(), chunkBytes - waiting.size());
        waiting.insert(waiting.end(), bytes.begin(),
                       bytes.begin() + static_cast<std::ptrdiff_t>(take));
        bytes = bytes.subspan(take);
    }
    return {};
}

Done SealWriter::close() { return writeChunk(true); }

Result<bool> isSealed(const fs::path& path) {
    BURROW_TRY(auto file, SealedFile::open(path));
    std::array<std::uint8_t, magic.size()> start{};
    BURROW_TRY(const auto got, file.read(start));
    return got == start.size() && std::equal(magic.begin(), magic.end(), start.begin());
}

Done unseal(const fs::path& path, std::string_view passphrase, ByteSink& sink,
            const SealProgress& progress) {
    BURROW_TRY(auto file, SealedFile::open(path));
    Header header{};
    BURROW_TRY(const auto headerSize, file.read(header));
    if (headerSize < header.size()) return refuse({"bundle.cut"});
    BURROW_DO(checkHeader(header));
    StreamState stream{};
    {
        Key key;
        BURROW_DO(makeKey(key, passphrase, header));
        if (crypto_secretstream_xchacha20poly1305_init_pull(&stream, header.data() + streamAt,
                                                            key.bytes.data()) != 0) {
            return refuse({"seal.wrong"});
        }
    }
    Bytes sealed(chunkBytes + overhead);
    Bytes plain(chunkBytes);
    std::uint64_t done = headerBytes;
    for (bool isFirst = true;; isFirst = false) {
        BURROW_TRY(const auto got, file.read(sealed));
        if (got < overhead) return refuse({"bundle.cut"});
        unsigned long long size = 0;
        unsigned char tag = 0;
        if (crypto_secretstream_xchacha20poly1305_pull(
                &stream, plain.data(), &size, &tag, sealed.data(), got,
                isFirst ? header.data() : nullptr, isFirst ? header.size() : 0) != 0) {
            if (isFirst) return refuse({"seal.wrong"});
            if (got < sealed.size()) return refuse({"bundle.cut"});
            return refuse({"bundle.damaged"});
        }
        BURROW_DO(sink.write(std::span(plain).first(static_cast<std::size_t>(size))));
        done += got;
        const bool isLast = tag == crypto_secretstream_xchacha20poly1305_TAG_FINAL;
        if (isLast) return done == file.size() ? Done() : Done(refuse({"bundle.damaged"}));
        if (got < sealed.size()) return refuse({"bundle.cut"});
        if (progress && !progress(static_cast<double>(done) / static_cast<double>(file.size()))) {
            return refuse({"bundle.stopped"});
        }
    }
}

}  // namespace burrow::exchange
