#include "exchange/csv.h"

#include <csv.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

#include "base/text.h"
#include "model/terms.h"

namespace burrow::exchange {
namespace {

/// Longer cells are no record of an animal, but a sign that a quote was never closed.
constexpr std::size_t longestCell = 16'384;

std::string_view takeLine(std::string_view& text) {
    const auto end = text.find('\n');
    const auto line = text.substr(0, end == std::string_view::npos ? text.size() : end + 1);
    text.remove_prefix(line.size());
    return line;
}

std::string_view withoutLineEnd(std::string_view line) {
    while (!line.empty() && (line.back() == '\n' || line.back() == '\r')) line.remove_suffix(1);
    return line;
}

bool isBlank(std::string_view line) { return trimmed(line).empty(); }

constexpr char guard = '\'';

/// Whether a spreadsheet, or trimming, would make something else of this text.
bool needsGuard(std::string_view text) {
    if (text.empty()) return true;
    // = + - @ and their full-width forms, which some spreadsheets take for the same.
    constexpr std::array<std::string_view, 4> wide{"\xEF\xBC\x9D", "\xEF\xBC\x8B", "\xEF\xBC\x8D",
                                                   "\xEF\xBC\xA0"};
    return std::string_view("=+-@").find(text.front()) != std::string_view::npos ||
           text.front() == guard || trimmed(text).size() != text.size() ||
           std::any_of(wide.begin(), wide.end(),
                       [&](std::string_view sign) { return text.starts_with(sign); });
}

/// A cell as the parser gives it: what follows a guard is kept to the last space.
std::string_view trimmedCell(std::string_view cell) {
    const auto text = trimmed(cell);
    if (!text.starts_with(guard)) return text;
    const auto whole = cell.substr(cell.find(guard));
    return needsGuard(whole.substr(1)) ? whole : text;
}

std::size_t countOutsideQuotes(std::string_view line, char wanted) {
    std::size_t count = 0;
    bool quoted = false;
    for (const char c : line) {
        if (c == '"') quoted = !quoted;
        if (c == wanted && !quoted) ++count;
    }
    return count;
}

}  // namespace

/// The C parser and what its callbacks fill.
struct CsvReader::Parsing {
    explicit Parsing(char delimiter) { start(delimiter); }
    Parsing(const Parsing&) = delete;
    Parsing& operator=(const Parsing&) = delete;
    ~Parsing() { csv_free(&parser); }

    void start(char delimiter) {
        csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI);
        csv_set_delim(&parser, static_cast<unsigned char>(delimiter));
    }
    void restart(char delimiter) {
        csv_free(&parser);
        start(delimiter);
        cells.clear();
        isRowDone = false;
    }
    static void onCell(void* text, std::size_t size, void* self) {
        static_cast<Parsing*>(self)->cells.emplace_back(
            trimmedCell(std::string_view(static_cast<const char*>(text), size)));
    }
    static void onRow(int /*terminator*/, void* self) {
        static_cast<Parsing*>(self)->isRowDone = true;
    }

    csv_parser parser{};
    std::vector<std::string> cells;
    bool isRowDone = false;
};

CsvReader::CsvReader(std::string_view text, char delimiter)
    : rest_(text), delimiter_(delimiter), parsing_(std::make_unique<Parsing>(delimiter)) {}
CsvReader::CsvReader(CsvReader&&) noexcept = default;
CsvReader& CsvReader::operator=(CsvReader&&) noexcept = default;
CsvReader::~CsvReader() = default;

Result<CsvReader> CsvReader::open(std::string_view text) {
    if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) {
        return fail(Trouble::badInput, {"csv.utf16"});
    }
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    auto peek = text;
    const auto first = withoutLineEnd(takeLine(peek));
    if (first.find('\0') != std::string_view::npos || !isUtf8(first)) {
        return fail(Trouble::badInput, {"csv.binary"});
    }
    char delimiter = ',';
    for (const char candidate : {';', '\t'}) {
        if (countOutsideQuotes(first, candidate) > countOutsideQuotes(first, delimiter)) {
            delimiter = candidate;
        }
    }
    CsvReader reader(text, delimiter);
    const auto header = reader.next();
    if (!header || header->problem) return fail(Trouble::badInput, {"csv.noHeader"});
    reader.rawHeader_ = header->raw;
    reader.columns_ = header->cells;
    for (const auto& cell : header->cells) reader.header_.push_back(normalTerm(cell));
    return reader;
}

std::optional<CsvRow> CsvReader::next() {
    CsvRow row;
    parsing_->restart(delimiter_);
    while (!rest_.empty()) {
        const auto line = takeLine(rest_);
        ++line_;
        if (row.line == 0) {
            if (isBlank(line)) continue;
            row.line = line_;
            row.raw = line;
        } else {
            row.raw = {row.raw.data(),
                       row.raw.size() + line.size()};  // the lines of a row follow on
        }
        if (line.find('\0') != std::string_view::npos) row.problem = {"csv.nul"};
        if (!isUtf8(line)) row.problem = {"csv.notUtf8"};
        const auto read = csv_parse(&parsing_->parser, line.data(), line.size(), Parsing::onCell,
                                    Parsing::onRow, parsing_.get());
        if (read != line.size()) row.problem = {"csv.quote"};
        if (row.problem || parsing_->isRowDone) break;
        if (row.raw.size() > longestCell * 8) {
            row.problem = {"csv.quote"};
            break;
        }
    }
    if (row.line == 0) return std::nullopt;
    // The last line may have no line end, and then may also be inside an open quote.
    if (!row.problem && !parsing_->isRowDone &&
        csv_fini(&parsing_->parser, Parsing::onCell, Parsing::onRow, parsing_.get()) != 0) {
        row.problem = {"csv.quote"};
    }
    row.cells = std::move(parsing_->cells);
    row.raw = withoutLineEnd(row.raw);
    for (const auto& cell : row.cells) {
        if (cell.size() > longestCell) row.problem = {"csv.longCell"};
    }
    if (!row.problem && !header_.empty() && row.cells.size() != header_.size()) {
        row.problem = {"csv.cellCount",
                       {{"found", static_cast<std::int64_t>(row.cells.size())},
                        {"expected", static_cast<std::int64_t>(header_.size())}}};
    }
    return row;
}

std::string csvCell(std::string_view text, char delimiter) {
    const bool mustQuote = text.find_first_of("\"\r\n") != std::string_view::npos ||
                           text.find(delimiter) != std::string_view::npos ||
                           trimmed(text).size() != text.size();
    if (!mustQuote) return std::string(text);
    std::string quoted = "\"";
    for (const char c : text) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + '"';
}

std::string guardedText(std::string_view text) {
    std::string cell(needsGuard(text) ? 1 : 0, guard);
    for (const char c : text) {
        if (c == '\0') {
            cell += "\xEF\xBF\xBD";
        } else {
            cell += c;
        }
    }
    return cell;
}

std::string_view plainText(std::string_view cell) {
    return cell.starts_with(guard) && needsGuard(cell.substr(1)) ? cell.substr(1) : cell;
}

}  // namespace burrow::exchange
