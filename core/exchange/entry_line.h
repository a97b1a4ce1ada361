// One entry of the journal as one line of JSON, as bundles carry it. FORMAT.md says what each field
// means. Lines come from other people's files and are not to be trusted.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "journal/rows.h"

namespace burrow::exchange {

namespace limit {
/// Without the line end: the longest body, and what stands around it.
inline constexpr std::size_t lineBytes = longestEntryBody + 1024;
inline constexpr int nesting = 16;  ///< objects and lists inside each other
}  // namespace limit

/// Adds the line to `out`, with its line end: keys in order, no spaces, so that the same entry always
/// gives the same bytes.
void appendLine(const StoredEntry& entry, std::string& out);

/// Reads a line without its line end; any spacing and order of keys will do. Fails with `badInput` for
/// what is longer or deeper than the limits, no JSON in UTF-8, holds a NUL, lacks a field, has one
/// that is not known, or one out of range.
Result<Entry> entryFromLine(std::string_view line);

/// That a JSON text is UTF-8, nests no deeper than `depth` and holds no NUL, written out or escaped:
/// what must be known before it is parsed. Fails with `badInput`.
Done checkJsonText(std::string_view text, int depth);

}  // namespace burrow::exchange
