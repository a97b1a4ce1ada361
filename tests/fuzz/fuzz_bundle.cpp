// A bundle that somebody else wrote. The first byte chooses how much of it is made up: "z" is followed by
// the bytes of the whole file; anything else by a manifest, a line of "--" and the entries, which are
// packed as a bundle is, with the right checksums, and the hash and the length of the entries in the
// place of "@hash" and "@bytes".
#include <fstream>

#include "base/file_writer.h"
#include "base/hash.h"
#include "exchange/bundle_reader.h"
#include "exchange/zip_writer.h"
#include "fuzz/target.h"
#include "support/book.h"

using namespace burrow;
using namespace burrow::exchange;

namespace {

const std::filesystem::path& file() {
    static const test::ScratchFolder folder;
    static const auto path = folder.path() / "fuzz.burrow";
    return path;
}

void replaceAll(std::string& text, std::string_view from, std::string_view to) {
    for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
        text.replace(at, from.size(), to);
    }
}

/// A bundle without photos.
void pack(std::string_view manifest, std::string_view entries) {
    auto out = FileWriter::create(file()).value();
    auto zip = ZipWriter::begin(out).value();
    test::must(zip.startDeflated(filename::entries));
    test::must(zip.write(fuzz::asBytes(entries)));
    test::must(zip.startDeflated(filename::manifest));
    test::must(zip.write(fuzz::asBytes(manifest)));
    test::must(zip.close());
    test::must(out.finish());
}

}  // namespace

FUZZ_TARGET(bundle) {
    if (bytes.empty()) return;
    if (bytes[0] == 'z') {
        std::ofstream(file(), std::ios::binary) << bytes.substr(1);
    } else {
        const auto cut = bytes.find("\n--\n");
        if (cut == std::string_view::npos || cut == 0) return;
        const auto entries = bytes.substr(cut + 4);
        std::string manifest(bytes.substr(1, cut - 1));
        replaceAll(manifest, "@hash", Sha256::of(entries).hex());
        replaceAll(manifest, "@bytes", std::to_string(entries.size()));
        pack(manifest, entries);
    }
    const auto reader = BundleReader::open(file());
    if (!reader) return;
    std::int64_t entries = 0;
    const auto read = reader->readEntries([&](const Entry&, std::uint64_t) -> Done {
        ++entries;
        return {};
    });
    if (read) BURROW_REQUIRE(entries == reader->manifest().totals.entries);
    static_cast<void>(reader->readPhotos(
        [](const Sha256&, bool) { return true; },
        [](BundleReader::Photo photo) -> Done {
            BURROW_REQUIRE(photo.isReduced || Sha256::of(photo.bytes) == photo.picture);
            return {};
        }));
}
