// Reads CSV as RFC 4180 describes it, and as spreadsheets write it: comma, semicolon or tab, with or
// without a byte order mark, CRLF or LF. Every row knows the line it began on.
//
// Spreadsheets take a cell that begins with = + - @ for a formula, which a text from elsewhere must never
// become (OWASP, "CSV Injection"). A text that begins so, or that would not survive trimming, is written
// with an apostrophe before it, and plainText() takes that one apostrophe off again.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

struct csv_parser;

namespace burrow::exchange {

struct CsvRow {
    int line = 0;  ///< 1 for the first line of the file
    /// Quotes taken off, and trimmed where no apostrophe says that spaces belong to the text.
    std::vector<std::string> cells;
    std::string_view raw;            ///< as it stands in the file, without the line end
    std::optional<Message> problem;  ///< why this row cannot be read
};

/// Reads row by row from a text that must outlive it. Blank lines are passed over.
class CsvReader {
public:
    /// Looks at the header: fails for text that is no CSV in UTF-8 (binary, UTF-16, one column).
    static Result<CsvReader> open(std::string_view text);

    CsvReader(CsvReader&&) noexcept;
    CsvReader& operator=(CsvReader&&) noexcept;
    ~CsvReader();

    [[nodiscard]] char delimiter() const { return delimiter_; }
    [[nodiscard]] const std::string& rawHeader() const { return rawHeader_; }
    /// Column names in normal form ("Prey mm" is "prey_mm").
    [[nodiscard]] const std::vector<std::string>& header() const { return header_; }
    /// Column names as they are written.
    [[nodiscard]] const std::vector<std::string>& columns() const { return columns_; }
    /// The next row, or nothing at the end of the text.
    std::optional<CsvRow> next();

private:
    explicit CsvReader(std::string_view text, char delimiter);
    struct Parsing;

    std::string_view rest_;
    int line_ = 0;
    char delimiter_;
    std::string rawHeader_;
    std::vector<std::string> header_;
    std::vector<std::string> columns_;
    std::unique_ptr<Parsing> parsing_;
};

/// A cell as RFC 4180 writes it, quoted where it must be.
[[nodiscard]] std::string csvCell(std::string_view text, char delimiter);

/// A text with the apostrophe before it that keeps it a text; an empty one is the apostrophe alone, which
/// is more than an empty cell. NUL, which no CSV can hold, becomes U+FFFD.
[[nodiscard]] std::string guardedText(std::string_view text);
/// What guardedText() was given. Any other cell is left as it stands, also one that only happens to begin
/// with an apostrophe.
[[nodiscard]] std::string_view plainText(std::string_view cell);

}  // namespace burrow::exchange
