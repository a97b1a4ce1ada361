#include "exchange/bring.h"

#include <algorithm>
#include <array>
#include <unordered_map>

#include "base/text.h"
#include "exchange/bring_rows.h"
#include "journal/roster.h"

namespace burrow::exchange {
namespace {

constexpr std::array allKinds{CsvKind::settings, CsvKind::enclosures, CsvKind::animals,
                              CsvKind::tags, CsvKind::events};
constexpr std::array<std::string_view, allKinds.size()> kindNames{"settings", "enclosures",
                                                                  "animals", "tags", "events"};

std::vector<std::string_view> requiredColumns(CsvKind kind) {
    switch (kind) {
        case CsvKind::settings: return {"name", "value"};
        case CsvKind::tags: return {"code", "side_mm"};
        case CsvKind::enclosures: return {"code"};
        case CsvKind::animals: return {"code", "species"};
        case CsvKind::events: return {"code", "at", "event"};
    }
    return {};
}

bool has(const std::vector<std::string>& header, std::string_view column) {
    return std::find(header.begin(), header.end(), column) != header.end();
}

Done checkHeader(const CsvReader& reader, CsvKind kind) {
    for (const auto column : requiredColumns(kind)) {
        if (has(reader.header(), column)) continue;
        return fail(Trouble::badInput,
                    {"csv.columnMissing",
                     {{"file", std::string(name(kind))}, {"column", std::string(column)}}});
    }
    auto sorted = reader.header();
    std::sort(sorted.begin(), sorted.end());
    const auto twice = std::adjacent_find(sorted.begin(), sorted.end());
    if (twice != sorted.end() && !twice->empty()) {
        return fail(Trouble::badInput,
                    {"csv.columnTwice", {{"file", std::string(name(kind))}, {"column", *twice}}});
    }
    return {};
}

/// One run of bring(): reads the sources in an order in which later rows can name earlier ones.
class Bringing {
public:
    Bringing(Book& book, const BringOptions& options) : book_(book), options_(options) {}

    Result<BringReport> run(const std::vector<CsvSource>& sources) {
        BURROW_DO(known_.load(book_));
        // Where a file says who wears which tag, nobody gets another one.
        drawsTags_ = std::none_of(sources.begin(), sources.end(), [](const CsvSource& source) {
            return source.kind == CsvKind::tags;
        });
        BURROW_TRY(auto act, book_.beginAct());
        for (const auto kind : allKinds) {
            for (source_ = 0; source_ < sources.size(); ++source_) {
                const auto& source = sources[source_];
                if (source.kind != kind) continue;
                // Parents may stand below their young, so all codes are known before any row counts.
                if (kind == CsvKind::animals) {
                    BURROW_DO(announce(source, "code", &KnownCodes::announce));
                }
                // So may the moult that a photo belongs to.
                known_.forgetEntries();
                if (kind == CsvKind::events) {
                    BURROW_DO(announce(source, "entry_ref", &KnownCodes::announceEntry));
                }
                BURROW_DO(readSource(source, act));
            }
        }
        const bool refused = report_.badRows > 0 && !options_.skipBad;
        if (!refused && !options_.onlyLook) {
            BURROW_TRY(report_.changes, act.commit());
            report_.isDone = true;
        }
        return std::move(report_);
    }

private:
    /// Tells the codes of a column before any row that may name them is read.
    Done announce(const CsvSource& source, std::string_view column,
                  void (KnownCodes::*announceOne)(const std::string&, Book&)) {
        BURROW_TRY(auto reader, CsvReader::open(source.text));
        BURROW_DO(checkHeader(reader, source.kind));
        const auto& header = reader.header();
        const auto found = std::find(header.begin(), header.end(), column);
        if (found == header.end()) return {};
        const auto at = static_cast<std::size_t>(found - header.begin());
        while (const auto row = reader.next()) {
            if (!row->problem) (known_.*announceOne)(std::string(plainText(row->cells[at])), book_);
        }
        return {};
    }

    Done readSource(const CsvSource& source, Act& act) {
        BURROW_TRY(auto reader, CsvReader::open(source.text));
        BURROW_DO(checkHeader(reader, source.kind));
        const RowMaker make(reader.header(), reader.delimiter(), drawsTags_, known_, book_);
        for (std::size_t at = 0; const auto row = reader.next(); ++at) {
            if (++rows_ % 5000 == 0 && options_.onProgress && !options_.onProgress(rows_)) {
                return fail(Trouble::badInput, {"bring.stopped"});
            }
            if (row->problem) {
                addBad({source.kind, row->line, {}, *row->problem, std::string(row->raw)}, source,
                       at);
                continue;
            }
            auto drafts = make.draftsFor(source.kind, row->cells);
            if (!drafts) {
                const bool isSaid = source.original != nullptr && source.original->followsAnimals &&
                                    drafts.error().reason.id == "cell.unknownAnimal";
                if (isSaid) continue;
                addBad({source.kind, row->line, drafts.error().column, drafts.error().reason,
                        std::string(row->raw)},
                       source, at);
                continue;
            }
            for (const auto& draft : *drafts) BURROW_DO(act.add(draft));
            count(source.kind);
        }
        if (source.original == nullptr) return {};
        for (const auto& [row, column, problem] : source.original->unread) {
            tell({source.kind, row.line, column, problem, std::string(row.raw)});
        }
        return {};
    }

    void count(CsvKind kind) {
        if (kind == CsvKind::enclosures) ++report_.enclosures;
        if (kind == CsvKind::animals) ++report_.animals;
        if (kind == CsvKind::events) ++report_.events;
        if (kind == CsvKind::tags) ++report_.tags;
        if (kind == CsvKind::settings) ++report_.settings;
    }

    void addBad(BadRow bad, const CsvSource& source, std::size_t row) {
        if (source.original != nullptr) tellAsKept(bad, *source.original, row);
        tell(std::move(bad));
    }

    void tell(BadRow bad) {
        ++report_.badRows;
        bad.source = source_;
        if (options_.onBadRow) options_.onBadRow(bad);
        if (report_.bad.size() < options_.mostReported) report_.bad.push_back(std::move(bad));
    }

    /// A row of a table that was made here, by what the keeper has of it.
    static void tellAsKept(BadRow& bad, const Original& original, std::size_t row) {
        if (row < original.rows.size()) {
            bad.line = original.rows[row].line;
            bad.raw = original.rows[row].raw;
        }
        const auto column = original.columns.find(bad.column);
        if (column != original.columns.end()) bad.column = column->second;
    }

    Book& book_;
    const BringOptions& options_;
    KnownCodes known_;
    BringReport report_;
    bool drawsTags_ = true;
    std::size_t source_ = 0;  // the one being read
    std::int64_t rows_ = 0;
};

}  // namespace

std::string_view name(CsvKind kind) { return kindNames.at(static_cast<std::size_t>(kind)); }

std::optional<CsvKind> recogniseCsv(std::string_view text) {
    const auto reader = CsvReader::open(text);
    if (!reader) return std::nullopt;
    for (const auto kind : {CsvKind::events, CsvKind::animals, CsvKind::tags}) {
        if (checkHeader(*reader, kind)) return kind;
    }
    // Any list may have names and values among its columns; settings have nothing else.
    if (reader->header().size() == 2 && checkHeader(*reader, CsvKind::settings)) {
        return CsvKind::settings;
    }
    const bool hasSize =
        has(reader->header(), "length_mm") || has(reader->header(), "substrate_mm");
    if (hasSize && checkHeader(*reader, CsvKind::enclosures)) return CsvKind::enclosures;
    return std::nullopt;
}

Result<BringReport> bring(Book& book, const std::vector<CsvSource>& sources,
                          const BringOptions& options) {
    return Bringing(book, options).run(sources);
}

}  // namespace burrow::exchange
