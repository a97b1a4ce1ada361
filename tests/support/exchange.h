// Books that exchange bundles, in folders of their own.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "base/files.h"
#include "exchange/bundle.h"
#include "exchange/staging.h"
#include "journal/dump.h"
#include "support/book.h"
#include "support/photos.h"

namespace burrow::test {

/// All that follows from the entries of a book.
inline std::string dumpOf(Book& book) {
    std::string text;
    must(dumpLogical(book.connection(), [&](std::string_view line) -> Done {
        text.append(line) += '\n';
        return {};
    }));
    return text;
}

inline std::int64_t entriesIn(Book& book) {
    return book.connection().integer("SELECT count(*) FROM entry").value();
}

/// Every file below a folder, by its path from there.
inline std::vector<std::string> filesBelow(const std::filesystem::path& folder) {
    std::vector<std::string> names;
    if (!std::filesystem::exists(folder)) return names;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        if (!entry.is_directory()) {
            names.push_back(std::filesystem::relative(entry.path(), folder).string());
        }
    }
    std::sort(names.begin(), names.end());
    return names;
}

/// Another device of a book, made from a bundle.
class JoinedBook {
public:
    JoinedBook(const std::filesystem::path& bundle, std::uint64_t seed,
               const exchange::TakeInOptions& options = {})
        : random(seed),
          taken(exchange::joinFromBundle(folder.path() / "second.book", bundle, files,
                                         surroundings(), options)
                    .value()),
          book(Book::open(folder.path() / "second.book", storage::Access::readWrite, surroundings())
                   .value()) {}

    Surroundings surroundings() { return {clock, random, Zone::utc()}; }

    ScratchFolder folder;
    FixedClock clock{Instant{fridayEvening.ms + msPerDay}};
    SeededRandom random;
    DeviceFiles files;
    exchange::TakenIn taken;
    Book book;
};

/// Keeps a photo and logs it, as the app does.
inline Sha256 photograph(TestBook& room, SubjectId subject, std::string_view what,
                         bool confidential = false) {
    DeviceFiles files;
    PlainDeveloper developer;
    pictures::Store store(pictures::Store::folderFor(room.book.path()), files);
    const auto kept = store.keep(jpegSaying(what), developer).value();
    FactBody body;
    body.picture = kept.picture;
    body.original = kept.original;
    body.role = PhotoRole::animal;
    if (confidential) body.confidential = true;
    room.log(subject, FactKind::photo, body);
    return kept.picture;
}

inline FactBody noteSaying(std::string text) {
    FactBody body;
    body.text = std::move(text);
    return body;
}

}  // namespace burrow::test
