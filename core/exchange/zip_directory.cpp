#include "exchange/zip_directory.h"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>

#include "base/files.h"
#include "exchange/refuse.h"

namespace burrow::exchange {
namespace {

// Signatures and lengths of APPNOTE.TXT, little-endian.
constexpr std::uint32_t localHeader = 0x04034b50;
constexpr std::uint32_t endRecord = 0x06054b50;
constexpr std::uint32_t end64Locator = 0x07064b50;
constexpr std::uint32_t end64Record = 0x06064b50;
constexpr std::size_t endBytes = 22;
constexpr std::size_t locatorBytes = 20;
constexpr std::size_t end64Bytes = 56;
constexpr std::size_t mostComment = 0xFFFF;

std::uint64_t littleAt(const Bytes& bytes, std::size_t at, std::size_t size) {
    std::uint64_t value = 0;
    for (std::size_t i = size; i-- > 0;) value = value << 8U | bytes[at + i];
    return value;
}

Result<Bytes> readAt(int fd, std::uint64_t offset, std::size_t size) {
    Bytes bytes(size);
    std::size_t got = 0;
    while (got < size) {
        const auto more =
            ::pread(fd, bytes.data() + got, size - got, static_cast<off_t>(offset + got));
        if (more < 0 && errno == EINTR) continue;
        if (more < 0) return failFromErrno(errno, "");
        if (more == 0) return refuse({"bundle.cut"});
        got += static_cast<std::size_t>(more);
    }
    return bytes;
}

}  // namespace

Result<ZipDirectory> zipDirectory(int fd, std::uint64_t fileBytes) {
    if (fileBytes < 4) return refuse({"bundle.notABundle"});
    BURROW_TRY(const auto start, readAt(fd, 0, 4));
    if (littleAt(start, 0, 4) != localHeader) return refuse({"bundle.notABundle"});
    if (fileBytes < endBytes) return refuse({"bundle.cut"});
    const auto tailBytes = std::min<std::uint64_t>(fileBytes, endBytes + mostComment);
    const auto tailStart = fileBytes - tailBytes;
    BURROW_TRY(const auto tail, readAt(fd, tailStart, static_cast<std::size_t>(tailBytes)));
    for (std::size_t at = tail.size() - endBytes + 1; at-- > 0;) {
        if (littleAt(tail, at, 4) != endRecord) continue;
        ZipDirectory found{littleAt(tail, at + 10, 2), littleAt(tail, at + 12, 4)};
        const auto position = tailStart + at;
        if (position < locatorBytes) return found;
        BURROW_TRY(const auto locator, readAt(fd, position - locatorBytes, locatorBytes));
        if (littleAt(locator, 0, 4) != end64Locator) return found;
        const auto offset = littleAt(locator, 8, 8);
        if (offset > fileBytes - end64Bytes) return refuse({"bundle.cut"});
        BURROW_TRY(const auto record, readAt(fd, offset, end64Bytes));
        if (littleAt(record, 0, 4) != end64Record) return refuse({"bundle.damaged"});
        // Readers differ in which of the two they believe, so the larger counts.
        found.files = std::max(found.files, littleAt(record, 32, 8));
        found.bytes = std::max(found.bytes, littleAt(record, 40, 8));
        return found;
    }
    return refuse({"bundle.cut"});
}

}  // namespace burrow::exchange
