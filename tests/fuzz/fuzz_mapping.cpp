// A spreadsheet that was never seen: proposed, asked about, answered and applied; and mappings as files.
#include "exchange/csv.h"
#include "exchange/mapping.h"
#include "fuzz/target.h"
#include "husbandry/profiles.h"

using namespace burrow;
using namespace burrow::exchange;

namespace {

/// Answers everything that is open with its first choice.
void answer(Mapping& mapping, const MapReview& review) {
    for (const auto& question : review.questions) {
        using Kind = MapQuestion::Kind;
        if (question.kind == Kind::dateOrder) {
            mapping.columns[*question.column].date = DateOrder::dayFirst;
        }
        if (question.kind == Kind::unit) mapping.columns[*question.column].unit = LengthUnit::cm;
        if (question.kind == Kind::twice) mapping.columns[*question.column].isLeftOut = true;
        if (question.kind == Kind::event) mapping.event = question.choices.front();
        if (question.kind == Kind::missing && question.value == "code") mapping.numberFrom = 1;
    }
}

void readSpreadsheet(std::string_view bytes) {
    static const auto profiles = Profiles::fromJson({}).value();
    const auto sheet = readSheet(bytes, 200);
    if (!sheet) return;
    auto mapping = proposeMapping(*sheet, profiles, CivilDay{20'000});
    BURROW_REQUIRE(mapping.columns.size() == sheet->columns.size());
    const auto review = reviewMapping(mapping, *sheet, profiles);
    BURROW_REQUIRE(review.columns.size() == mapping.columns.size());
    answer(mapping, review);
    const auto tables = applyMapping(bytes, mapping);
    if (!tables) return;
    for (const auto& table : *tables) {
        // What was made is a table that can be read, row by row as it was made.
        auto reader = CsvReader::open(table.text);
        BURROW_REQUIRE(reader.has_value());
        std::size_t rows = 0;
        while (const auto row = reader->next()) {
            ++rows;
            const bool isLong = row->problem && row->problem->id == "csv.longCell";
            BURROW_REQUIRE(!row->problem || isLong);
        }
        BURROW_REQUIRE(rows == table.original.rows.size());
    }
}

}  // namespace

FUZZ_TARGET(mapping) {
    if (const auto mapping = mappingFromJson(bytes)) {
        const auto again = mappingFromJson(mappingToJson(*mapping));
        BURROW_REQUIRE(again.has_value() && again->columns.size() == mapping->columns.size());
    }
    readSpreadsheet(bytes);
}
