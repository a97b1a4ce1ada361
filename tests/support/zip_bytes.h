// Zip files put together byte by byte from APPNOTE.TXT (PKWARE, version 6.3), independently of the library
// that writes ours: also such as no library would write.
#pragma once

#include <zlib.h>

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace burrow::test {

struct ZipPart {
    std::string name;
    std::string data;                ///< as packed
    std::optional<std::string> raw;  ///< before packing, where it was packed
    std::uint16_t method = 0;        ///< 0 stored, 8 deflated
    std::uint16_t flags = 0;
    std::uint32_t mode = 0100644;  ///< of Unix: a plain file
    std::optional<std::uint32_t> claimedSize = {};
    std::optional<std::uint32_t> claimedCrc = {};
    std::optional<std::string> localName = {};  ///< in the local header, where that says another
    /// Points to the data of an earlier part, by its place in the list, instead of having any.
    std::optional<std::size_t> sharesDataOf = {};
};

inline void putLittle(std::string& out, std::uint64_t value, int bytes) {
    for (int i = 0; i < bytes; ++i) out += static_cast<char>(value >> 8 * i & 0xFF);
}

/// Raw deflate, RFC 1951.
inline std::string deflated(const std::string& raw) {
    z_stream stream{};
    deflateInit2(&stream, 9, Z_DEFLATED, -15, 9, Z_DEFAULT_STRATEGY);
    std::string out(deflateBound(&stream, static_cast<uLong>(raw.size())), '\0');
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(raw.data()));
    stream.avail_in = static_cast<uInt>(raw.size());
    stream.next_out = reinterpret_cast<Bytef*>(out.data());
    stream.avail_out = static_cast<uInt>(out.size());
    deflate(&stream, Z_FINISH);
    out.resize(stream.total_out);
    deflateEnd(&stream);
    return out;
}

inline ZipPart deflatedPart(std::string name, const std::string& raw) {
    return {std::move(name), deflated(raw), raw, 8};
}

struct ZipEnd {
    std::optional<std::uint16_t> claimedFiles = {};
    std::string comment = {};
};

inline std::string zipOf(const std::vector<ZipPart>& parts, const ZipEnd& end = {}) {
    std::string out;
    std::string directory;
    std::vector<std::uint32_t> offsets;
    for (const auto& part : parts) {
        const auto& raw = part.raw ? *part.raw : part.data;
        const auto crc = part.claimedCrc.value_or(static_cast<std::uint32_t>(
            crc32(0, reinterpret_cast<const Bytef*>(raw.data()), static_cast<uInt>(raw.size()))));
        const auto size = part.claimedSize.value_or(static_cast<std::uint32_t>(raw.size()));
        const auto common = [&](std::string& to, const std::string& name) {
            putLittle(to, 20, 2);  // version needed
            putLittle(to, part.flags, 2);
            putLittle(to, part.method, 2);
            putLittle(to, 0x210000, 4);  // time and date: 1 January 1980
            putLittle(to, crc, 4);
            putLittle(to, part.data.size(), 4);
            putLittle(to, size, 4);
            putLittle(to, name.size(), 2);
            putLittle(to, 0, 2);  // extra field
        };
        auto offset = static_cast<std::uint32_t>(out.size());
        if (part.sharesDataOf) {
            offset = offsets[*part.sharesDataOf];
        } else {
            putLittle(out, 0x04034b50, 4);
            common(out, part.localName.value_or(part.name));
            out += part.localName.value_or(part.name) + part.data;
        }
        offsets.push_back(offset);
        putLittle(directory, 0x02014b50, 4);
        putLittle(directory, 3 << 8 | 20, 2);  // made by: Unix, so that the mode counts
        common(directory, part.name);
        putLittle(directory, 0, 2);  // comment
        putLittle(directory, 0, 2);  // disk
        putLittle(directory, 0, 2);  // internal attributes
        putLittle(directory, std::uint64_t{part.mode} << 16U, 4);
        putLittle(directory, offset, 4);
        directory += part.name;
    }
    const auto start = out.size();
    out += directory;
    const auto files = end.claimedFiles.value_or(static_cast<std::uint16_t>(parts.size()));
    putLittle(out, 0x06054b50, 4);
    putLittle(out, 0, 4);  // disks
    putLittle(out, files, 2);
    putLittle(out, files, 2);
    putLittle(out, directory.size(), 4);
    putLittle(out, start, 4);
    putLittle(out, end.comment.size(), 2);
    return out + end.comment;
}

}  // namespace burrow::test
