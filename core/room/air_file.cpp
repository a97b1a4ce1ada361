#include "room/air_file.h"

#include <algorithm>

#include "air/written.h"
#include "base/text.h"
#include "exchange/csv.h"

namespace burrow {
namespace {

constexpr std::size_t mostShown = 40;

/// One typed number between two limits.
Result<double> readTyped(std::string_view typed, Range<double> limits, const char* trouble) {
    double value = 0;
    const bool isRead = air::readValue(typed, value) == air::Reading::number;
    if (isRead && value >= limits.least && value <= limits.most) return value;
    std::string shown(typed.substr(0, mostShown));
    while (!isUtf8(shown)) shown.pop_back();
    return fail(Trouble::badInput, {trouble, {{"value", std::move(shown)}}});
}

}  // namespace

Result<AirFile> readAirFile(std::string_view text, const Zone& zone, const air::AirRules& rules,
                            std::optional<air::DateOrder> order) {
    auto reader = exchange::CsvReader::open(text);
    if (!reader) return fail(Trouble::badInput, {"air.log.noCsv"});
    std::vector<air::LoggerRow> rows;
    std::vector<air::BadRow> bad;
    while (auto row = reader->next()) {
        if (rows.size() > air::mostRows) break;  // which are too many, and said so below
        if (row->problem) {
            bad.push_back({row->line, *row->problem});
        } else {
            rows.push_back({row->line, std::move(row->cells)});
        }
    }
    AirFile file;
    file.hash = Sha256::of(text);
    BURROW_TRY(file.log, air::readLogger(reader->columns(), rows, zone, rules, order));
    file.log.bad.insert(file.log.bad.end(), std::make_move_iterator(bad.begin()),
                        std::make_move_iterator(bad.end()));
    std::ranges::stable_sort(file.log.bad, {}, &air::BadRow::line);
    return file;
}

Result<Celsius> readTemperature(std::string_view typed) {
    BURROW_TRY(const double value, readTyped(typed, {-40, 80}, "air.badTemperature"));
    return Celsius{value};
}

Result<air::Percent> readHumidity(std::string_view typed) {
    BURROW_TRY(const double value, readTyped(typed, {0, 100}, "air.badHumidity"));
    return air::Percent{value};
}

}  // namespace burrow
