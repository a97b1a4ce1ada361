#include "exchange/bring.h"

#include <algorithm>
#include <array>
#include <unordered_map>

#include "base/text.h"
#include "exchange/bring_rows.h"
#include "journal/roster.h"

namespace burrow::exchange {
namespace {

constexpr std::array<std::string_view, 3> kindNames{"enclosures", "animals", "events"};

std::vector<std::string_view> requiredColumns(CsvKind kind) {
    switch (kind) {
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
        BURROW_TRY(auto act, book_.beginAct());
        for (const auto kind : {CsvKind::enclosures, CsvKind::animals, CsvKind::events}) {
            for (source_ = 0; source_ < sources.size(); ++source_) {
                const auto& source = sources[source_];
                if (source.kind != kind) continue;
                // Parents may stand below their young, so all codes are known before any row counts.
                if (kind == CsvKind::animals) BURROW_DO(announceAnimals(source));
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
    Done announceAnimals(const CsvSource& source) {
        BURROW_TRY(auto reader, CsvReader::open(source.text));
        BURROW_DO(checkHeader(reader, source.kind));
        const auto column = static_cast<std::size_t>(
            std::find(reader.header().begin(), reader.header().end(), "code") -
            reader.header().begin());
        while (const auto row = reader.next()) {
            if (!row->problem) known_.announce(row->cells[column], book_);
        }
        return {};
    }

    Done readSource(const CsvSource& source, Act& act) {
        BURROW_TRY(auto reader, CsvReader::open(source.text));
        BURROW_DO(checkHeader(reader, source.kind));
        const RowMaker make(reader.header(), reader.delimiter(), known_, book_);
        while (const auto row = reader.next()) {
            if (++rows_ % 5000 == 0 && options_.onProgress && !options_.onProgress(rows_)) {
                return fail(Trouble::badInput, {"bring.stopped"});
            }
            if (row->problem) {
                addBad({source.kind, row->line, {}, *row->problem, row->raw});
                continue;
            }
            auto drafts = make.draftsFor(source.kind, row->cells);
            if (!drafts) {
                addBad({source.kind, row->line, drafts.error().column, drafts.error().reason,
                        row->raw});
                continue;
            }
            for (const auto& draft : *drafts) BURROW_DO(act.add(draft));
            count(source.kind);
        }
        return {};
    }

    void count(CsvKind kind) {
        if (kind == CsvKind::enclosures) ++report_.enclosures;
        if (kind == CsvKind::animals) ++report_.animals;
        if (kind == CsvKind::events) ++report_.events;
    }

    void addBad(BadRow bad) {
        ++report_.badRows;
        bad.source = source_;
        if (options_.onBadRow) options_.onBadRow(bad);
        if (report_.bad.size() < options_.mostReported) report_.bad.push_back(std::move(bad));
    }

    Book& book_;
    const BringOptions& options_;
    KnownCodes known_;
    BringReport report_;
    std::size_t source_ = 0;  // the one being read
    std::int64_t rows_ = 0;
};

}  // namespace

std::string_view name(CsvKind kind) { return kindNames.at(static_cast<std::size_t>(kind)); }

std::optional<CsvKind> recogniseCsv(std::string_view text) {
    const auto reader = CsvReader::open(text);
    if (!reader) return std::nullopt;
    for (const auto kind : {CsvKind::events, CsvKind::animals}) {
        if (checkHeader(*reader, kind)) return kind;
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
