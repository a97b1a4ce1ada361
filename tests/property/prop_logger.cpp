// Files of temperature loggers as their makers write them, and as nobody should.
#include <rapidcheck.h>

#include <algorithm>
#include <chrono>

#include "air/logger.h"
#include "air/warmth.h"
#include "support/assets.h"
#include "support/checks.h"

using namespace burrow;
using namespace burrow::test;
using namespace burrow::air;

namespace {

const AirRules& rules() {
    static const auto shared =
        AirRules::fromJson(slurp(std::string(BURROW_ASSETS_DIR) + "/rules/tables/air.json"))
            .value();
    return shared;
}

bool isSpoken(const Message& message) {
    static const auto words = englishWords();
    const auto text = words.say(message, CivilDay{20'000});
    return !text.empty() && text.find('[') == std::string::npos;
}

const Zone& berlin() {
    static const auto zone = Zone::named("Europe/Berlin").value();
    return zone;
}

using Cells = std::vector<std::string>;

Result<LoggerLog> read(const Cells& header, const std::vector<Cells>& rows,
                       std::optional<DateOrder> order = std::nullopt, const Zone& zone = berlin()) {
    std::vector<LoggerRow> numbered;
    for (const auto& cells : rows)
        numbered.push_back({static_cast<int>(numbered.size()) + 2, cells});
    return readLogger(header, numbered, zone, rules(), order);
}

void checkHeaders(Checks& checks) {
    const std::vector<Cells> headers{{"Timestamp", "Temperature", "Humidity"},
                                     {"time", "temp_c", "rh"},
                                     {"Date/Time",
                                      "T (\xC2\xB0"
                                      "C)",
                                      "RH (%)"},
                                     {"Datum Uhrzeit",
                                      "Temperatur \xC2\xB0"
                                      "C",
                                      "Rel. Feuchte %"},
                                     {"DATE_TIME", "Temp.(\xE2\x84\x83)", "Relative_Humidity(%RH)"},
                                     {"Recorded at", "CH1 Temperature", "CH1 Humidity"},
                                     {"Date",
                                      "\xC2\xB0"
                                      "C",
                                      "%RH"}};
    for (const auto& header : headers) {
        const auto log = read(header, {{"2026-05-08 21:14", "24.5", "61"}});
        checks.that(log && log->bad.empty() && log->samples.size() == 1, header[1]);
        if (!log || log->samples.empty()) continue;
        const Sample expected{berlin().at(*civilDay({2026, 5, 8}), 76'440), Celsius{24.5},
                              Percent{61}};
        checks.that(log->samples[0] == expected && !log->isFahrenheit,
                    header[1] + " and what it says");
    }
    // Dew point and extremes are not the temperature.
    const auto dew = read({"Time", "Dew point (C)", "Max temp", "Temp (C)"},
                          {{"2026-05-08T21:14Z", "11", "99", "22"}});
    checks.that(dew && dew->samples.at(0).temperature == Celsius{22}, "the right column");
    checks.that(dew->samples[0].at == Instant{1'778'274'840'000}, "an offset is kept");
    const auto warm =
        read({"Time", "Temp(F)"}, {{"2026-05-08T21:14", "77"}, {"2026-05-08T21:15", "212"}});
    checks.that(warm->isFahrenheit && warm->samples.size() == 1 && warm->bad.size() == 1,
                "Fahrenheit");
    checks.near(warm->samples[0].temperature->value, 25, 1e-12, "77 F are 25 C");
    const auto utc = read({"Time (UTC)", "Temp"}, {{"2026-05-08 19:14", "24"}});
    checks.that(utc->samples[0].at == Instant{1'778'267'640'000}, "UTC in the header");
    const auto plusTwo = read({"Time (GMT+02:00)", "Temp"}, {{"2026-05-08 21:14", "24"}});
    checks.that(plusTwo->samples[0].at == utc->samples[0].at, "an offset in the header");
    const auto split = read({"Date", "Time", "Humidity"}, {{"08.05.2026", "9:14 PM", "55,5 %"}});
    checks.that(split->samples.size() == 1 && split->samples[0].humidity == Percent{55.5},
                "date and time");
    checks.that(split->samples[0].at == berlin().at(*civilDay({2026, 5, 8}), 76'440),
                "in the evening");
    for (const auto& [header, id] : {std::pair(Cells{"a", "Temp"}, "air.log.noMoment"),
                                     std::pair(Cells{"Time", "b"}, "air.log.noValues")}) {
        const auto refused = read(header, {});
        checks.that(!refused && refused.error().message.id == id, id);
        checks.that(isSpoken(refused.error().message), id);
    }
}

void checkDates(Checks& checks) {
    const Cells header{"Time", "Temp"};
    const auto dayOf = [&](const Result<LoggerLog>& log, std::size_t i) {
        return isoDate(berlin().dayOf(log->samples.at(i).at));
    };
    const auto late = read(header, {{"1/5/2026 8:00", "24"}, {"13/5/2026 8:00", "24"}});
    checks.that(dayOf(late, 0) == "2026-05-01", "13 is no month");
    const auto american = read(header, {{"5/1/2026 8:00", "24"}, {"5/13/26 8:00", "24"}});
    checks.that(dayOf(american, 0) == "2026-05-01" && dayOf(american, 1) == "2026-05-13",
                "13 is a day");
    const auto row =
        read(header, {{"1/5/2026 8:00", "24"}, {"2/5/2026 8:00", "24"}, {"3/5/2026 8:00", "24"}});
    checks.that(dayOf(row, 2) == "2026-05-03", "days in a row rather than months");
    const auto dashes = read(header, {{"05-01-2026 08:00", "24"}, {"05-02-2026 08:00", "24"}});
    checks.that(dayOf(dashes, 1) == "2026-05-02", "with hyphens too");
    const auto open = read(header, {{"4/5/2026 8:00", "24"}});
    checks.that(!open && open.error().message.id == "air.log.whichDate", "nobody can tell");
    const auto told = read(header, {{"4/5/2026 8:00", "24"}}, DateOrder::monthFirst);
    checks.that(dayOf(told, 0) == "2026-04-05", "until the keeper says");
    const auto same = read(header, {{"5/5/2026 8:00", "24"}});
    checks.that(same && dayOf(same, 0) == "2026-05-05", "the same either way");
    const auto dotted = read(header, {{"1.5.26, 08:00", "24"}, {"2026/05/02 08:00:30.5", "24"}});
    checks.that(dayOf(dotted, 0) == "2026-05-01" && dayOf(dotted, 1) == "2026-05-02",
                "dots and slashes");
    const auto newest = read(header, {{"2026-05-02 08:00", "2"}, {"2026-05-01 08:00", "1"}});
    checks.that(newest->samples.at(0).temperature == Celsius{1}, "newest first is turned round");
    // The clocks go back on 25 October 2026 at 3:00; a reading every half hour.
    const auto fall = read(header, {{"2026-10-25 01:30", "1"},
                                    {"2026-10-25 02:00", "2"},
                                    {"2026-10-25 02:30", "3"},
                                    {"2026-10-25 02:00", "4"},
                                    {"2026-10-25 02:30", "5"},
                                    {"2026-10-25 03:00", "6"}});
    checks.that(fall->samples.size() == 6 && fall->repeated == 0, "an hour that comes twice");
    for (std::size_t i = 1; i < fall->samples.size(); ++i) {
        const auto step = fall->samples[i].at.ms - fall->samples[i - 1].at.ms;
        checks.that(step == 1'800'000, "half an hour each");
    }
    const auto twice = read(header, {{"2026-05-02 08:00", "1"}, {"2026-05-02 08:00", "2"}});
    checks.that(twice->repeated == 1 && twice->samples.at(0).temperature == Celsius{1},
                "the first counts");
}

void checkBadRows(Checks& checks) {
    const auto log = read({"Time", "Temp", "Hum"}, {{"2026-05-08 21:14", "24,5", "61"},
                                                    {"yesterday", "24", "61"},
                                                    {"2026-02-30 08:00", "24", "61"},
                                                    {"2026-05-08 21:15", "warm", "61"},
                                                    {"2026-05-08 21:16", "190", "61"},
                                                    {"2026-05-08 21:17", "24", "140"},
                                                    {"2026-05-08 21:18", "--", ""},
                                                    {"2026-05-08 21:19"},
                                                    {},
                                                    {"2026-05-08 21:20", "24", "101"},
                                                    {"2026-05-08 25:20", "24", "50"}});
    checks.that(log->samples.size() == 2, "two can be read");
    checks.that(log->samples.at(1).humidity == Percent{100}, "a wet sensor");
    std::vector<int> lines;
    for (const auto& bad : log->bad) {
        lines.push_back(bad.line);
        checks.that(isSpoken(bad.why), "a reason for each");
    }
    checks.that(lines == std::vector<int>{3, 4, 5, 6, 7, 8, 9, 10, 12}, "and its line");
}

bool readingHolds() {
    bool ok =
        rc::check("moments in any order and spelling come out in order, and none is lost", [] {
            std::vector<Cells> rows;
            const int count = *rc::gen::inRange(0, 40);
            const CivilDay day = *civilDay({2026, 3, 1}) + *rc::gen::inRange(0, 300);
            const int style = *rc::gen::inRange(0, 4);
            for (int i = 0; i < count; ++i) {
                const auto date = yearMonthDay(day + *rc::gen::inRange(0, 60));
                const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
                const auto clock =
                    two(*rc::gen::inRange(4, 24)) + ":" + two(*rc::gen::inRange(0, 60));
                const auto year = std::to_string(date.year);
                const std::vector<std::string> spelt{
                    year + "-" + two(date.month) + "-" + two(date.day) + "T" + clock,
                    two(date.day) + "." + two(date.month) + "." + year + " " + clock,
                    two(date.month) + "/" + two(date.day) + "/" + year + " " + clock,
                    std::to_string(date.day) + "/" + std::to_string(date.month) + "/" + year + " " +
                        clock};
                rows.push_back({spelt[static_cast<std::size_t>(style)], std::to_string(i)});
            }
            const auto order = style == 2 ? DateOrder::monthFirst : DateOrder::dayFirst;
            const auto log = read({"time", "temperature"}, rows, order).value();
            RC_ASSERT(log.bad.empty());
            RC_ASSERT(log.samples.size() + static_cast<std::size_t>(log.repeated) == rows.size());
            for (std::size_t i = 1; i < log.samples.size(); ++i) {
                RC_ASSERT(log.samples[i - 1].at < log.samples[i].at);
            }
        });
    ok &= rc::check("no cell does harm", [] {
        const auto cell = rc::gen::container<std::string>(rc::gen::oneOf(
            rc::gen::element('0', '1', '2', '.', ',', '-', '/', ':', ' ', 'T', '%', 'f', '+'),
            rc::gen::arbitrary<char>()));
        std::vector<Cells> rows;
        for (int i = 0; i < 5; ++i) rows.push_back({*cell, *cell, *cell});
        const auto log = read({"time", "temp", *cell}, rows, DateOrder::dayFirst);
        if (log) RC_ASSERT(log->samples.size() + log->bad.size() <= rows.size());
    });
    return ok;
}

void checkSpeed(Checks& checks) {
    std::vector<LoggerRow> rows;
    for (int i = 0; i < 200'000; ++i) {
        const CivilDay day{20'000 + i / 1440};
        const int minute = i % 1440;
        const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
        rows.push_back(
            {i + 2,
             {isoDate(day) + " " + two(minute / 60) + ":" + two(minute % 60), "24,5", "60"}});
    }
    const std::vector<std::string> header{"Time", "Temp", "Hum"};
    const auto begin = std::chrono::steady_clock::now();
    const auto log = readLogger(header, rows, berlin(), rules()).value();
    const auto middle = std::chrono::steady_clock::now();
    const auto days = warmthByDay(log.samples, {{20}, {}}, berlin(), rules());
    const auto end = std::chrono::steady_clock::now();
    checks.that(log.samples.size() > 199'000 && days.size() == 139, "200,000 readings");
    using Milliseconds = std::chrono::duration<double, std::milli>;
    std::cout << "200,000 readings: read in " << Milliseconds(middle - begin).count()
              << " ms, day-degrees in " << Milliseconds(end - middle).count() << " ms\n";
}

}  // namespace

int main() {
    Checks checks;
    checkHeaders(checks);
    checkDates(checks);
    checkBadRows(checks);
    checkSpeed(checks);
    bool ok = checks.ok(50);
    ok &= readingHolds();
    return ok ? 0 : 1;
}
