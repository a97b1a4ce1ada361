#include "air/logger.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

#include "air/written.h"
#include "base/text.h"

namespace burrow::air {
namespace {

constexpr Range<double> possibleWarmth{-40, 80};
constexpr double mostHumidity = 105;  // a wet sensor reads a little too much

/// A row as far as it can be read on its own.
struct Taken {
    int line = 0;
    WrittenMoment moment;
    std::optional<Celsius> temperature;
    std::optional<Percent> humidity;
};

tl::unexpected<Error> refuse(std::string id) { return fail(Trouble::badInput, {std::move(id)}); }

std::string_view cellOf(const LoggerRow& row, const std::optional<std::size_t>& column) {
    return column && *column < row.cells.size() ? std::string_view(row.cells[*column])
                                                : std::string_view();
}

/// What is shown of a cell: enough to find it.
std::string shown(std::string_view cell) {
    std::string text(cell.substr(0, 40));
    while (!isUtf8(text)) text.pop_back();
    return text;
}

Message unreadable(const char* id, std::string_view cell) { return {id, {{"value", shown(cell)}}}; }

std::optional<Message> takeTemperature(std::string_view cell, bool isFahrenheit, Taken& taken) {
    double value = 0;
    switch (readValue(cell, value)) {
        case Reading::none: return std::nullopt;
        case Reading::unreadable: return unreadable("air.row.temperature", cell);
        case Reading::number: break;
    }
    if (isFahrenheit) value = (value - 32) / 1.8;
    if (value < possibleWarmth.least || value > possibleWarmth.most) {
        return unreadable("air.row.temperature", cell);
    }
    taken.temperature = Celsius{value};
    return std::nullopt;
}

std::optional<Message> takeHumidity(std::string_view cell, Taken& taken) {
    double value = 0;
    switch (readValue(cell, value)) {
        case Reading::none: return std::nullopt;
        case Reading::unreadable: return unreadable("air.row.humidity", cell);
        case Reading::number: break;
    }
    if (value < 0 || value > mostHumidity) return unreadable("air.row.humidity", cell);
    taken.humidity = Percent{std::min(value, 100.0)};
    return std::nullopt;
}

/// Fills in what can be read, or says why the row can't be.
std::optional<Message> take(const LoggerRow& row, const Columns& columns, Taken& taken) {
    std::string moment(cellOf(row, columns.moment));
    if (columns.clock) moment += " " + std::string(cellOf(row, columns.clock));
    const auto read = readMoment(moment);
    if (!read) return unreadable("air.row.moment", moment);
    taken.line = row.line;
    taken.moment = *read;
    if (!taken.moment.offsetMinutes) taken.moment.offsetMinutes = columns.offsetMinutes;
    auto problem = takeTemperature(cellOf(row, columns.temperature), columns.isFahrenheit, taken);
    if (!problem) problem = takeHumidity(cellOf(row, columns.humidity), taken);
    if (problem) return problem;
    if (!taken.temperature && !taken.humidity) return Message("air.row.empty");
    return std::nullopt;
}

/// How well an order of day and month suits the rows.
struct Suits {
    std::size_t impossible = 0;  ///< dates that are not in the calendar
    std::size_t turns = 0;       ///< from later to earlier, or back
    std::int64_t span = 0;       ///< days from step to step, all together

    friend auto operator<=>(const Suits&, const Suits&) = default;
};

Suits suits(std::span<const Taken> rows, DateOrder order) {
    Suits suits;
    std::optional<CivilDay> last;
    int direction = 0;
    for (const auto& row : rows) {
        const auto day = row.moment.day(order);
        if (!day) {
            ++suits.impossible;
            continue;
        }
        const int step = last ? *day - *last : 0;
        if (step != 0) {
            const int now = step > 0 ? 1 : -1;
            if (direction != 0 && now != direction) ++suits.turns;
            direction = now;
            suits.span += std::abs(step);
        }
        last = day;
    }
    return suits;
}

/// Nothing where both read as well.
std::optional<DateOrder> orderOf(std::span<const Taken> rows, std::optional<DateOrder> given) {
    const bool isOpen =
        std::any_of(rows.begin(), rows.end(), [](const Taken& row) { return row.moment.isOpen; });
    if (!isOpen) return DateOrder::dayFirst;
    const auto dayFirst = suits(rows, DateOrder::dayFirst);
    const auto monthFirst = suits(rows, DateOrder::monthFirst);
    if (dayFirst == monthFirst) {
        // The same day twice over ("5/5") reads as well either way, and means the same.
        const bool isSame = std::all_of(rows.begin(), rows.end(), [](const Taken& row) {
            return row.moment.day(DateOrder::dayFirst) == row.moment.day(DateOrder::monthFirst);
        });
        return isSame ? DateOrder::dayFirst : given;
    }
    // What the calendar forbids counts before what the keeper says, and that before likeness.
    if (dayFirst.impossible == monthFirst.impossible && given) return given;
    return dayFirst < monthFirst ? DateOrder::dayFirst : DateOrder::monthFirst;
}

/// The instant of a local time; the second of two readings where the first has been passed.
Instant localInstant(CivilDay day, int second, const std::optional<Instant>& last,
                     const Zone& zone) {
    const auto first = zone.at(day, second);
    if (!last || first > *last) return first;
    for (const int minutes : {30, 60, 120}) {
        const Instant later{first.ms + minutes * 60'000LL};
        if (later > *last && zone.dayOf(later) == day && zone.secondOfDay(later) == second) {
            return later;
        }
    }
    return first;
}

/// Samples with their instants, in the order of the file turned to the order of time.
std::vector<Sample> placed(std::vector<Taken> rows, DateOrder order, const Zone& zone,
                           std::vector<BadRow>& bad) {
    const auto fits = [&](const Taken& row) { return row.moment.day(order).has_value(); };
    const auto end = std::stable_partition(rows.begin(), rows.end(), fits);
    for (auto row = end; row != rows.end(); ++row) bad.push_back({row->line, {"air.row.date"}});
    rows.erase(end, rows.end());
    const auto key = [&](const Taken& row) {
        return std::pair(*row.moment.day(order), row.moment.secondOfDay);
    };
    const bool isNewestFirst = !rows.empty() && key(rows.back()) < key(rows.front());
    if (isNewestFirst) std::reverse(rows.begin(), rows.end());
    std::vector<Sample> samples;
    samples.reserve(rows.size());
    std::optional<Instant> last;
    for (const auto& row : rows) {
        const auto [day, second] = key(row);
        Instant at;
        if (row.moment.offsetMinutes) {
            const std::int64_t seconds =
                std::int64_t{day.days} * 86'400 + second - *row.moment.offsetMinutes * 60LL;
            at = {seconds * 1000};
        } else {
            at = localInstant(day, second, last, zone);
        }
        last = at;
        samples.push_back({at, row.temperature, row.humidity});
    }
    return samples;
}

/// In the order of time, the first row of each instant.
int sortOut(std::vector<Sample>& samples) {
    std::stable_sort(samples.begin(), samples.end(),
                     [](const Sample& a, const Sample& b) { return a.at < b.at; });
    const auto end = std::unique(samples.begin(), samples.end(),
                                 [](const Sample& a, const Sample& b) { return a.at == b.at; });
    const auto repeated = static_cast<int>(samples.end() - end);
    samples.erase(end, samples.end());
    return repeated;
}

}  // namespace

Result<LoggerLog> readLogger(std::span<const std::string> header, std::span<const LoggerRow> rows,
                             const Zone& zone, const AirRules& rules,
                             std::optional<DateOrder> order) {
    if (rows.size() > mostRows) return refuse("air.log.tooLong");
    const auto columns = findColumns(header, rules);
    if (!columns.moment) return refuse("air.log.noMoment");
    if (!columns.temperature && !columns.humidity) return refuse("air.log.noValues");
    LoggerLog log;
    log.isFahrenheit = columns.isFahrenheit;
    std::vector<Taken> taken;
    taken.reserve(rows.size());
    for (const auto& row : rows) {
        Taken one;
        if (auto problem = take(row, columns, one)) {
            log.bad.push_back({row.line, std::move(*problem)});
        } else {
            taken.push_back(one);
        }
    }
    const auto chosen = orderOf(taken, order);
    if (!chosen) return refuse("air.log.whichDate");
    log.samples = placed(std::move(taken), *chosen, zone, log.bad);
    log.repeated = sortOut(log.samples);
    std::stable_sort(log.bad.begin(), log.bad.end(),
                     [](const BadRow& a, const BadRow& b) { return a.line < b.line; });
    return log;
}

}  // namespace burrow::air
