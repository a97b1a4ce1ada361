// The air of the room's places: what was read, and taking readings in.
#include <fmt/format.h>

#include <cmath>
#include <memory>

#include "base/files.h"
#include "base/text.h"
#include "room/air_file.h"
#include "room/air_report.h"
#include "room/tables.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

struct Typed {
    Path book;
    std::string log;                  ///< the place of a reading
    std::vector<std::string> fields;  ///< temp=24.5 humidity=65
    std::string at;
    Path in;
    std::string place;
    std::string dates;
    int days = 14;
};

double tenths(double value) { return std::round(10 * value) / 10; }

template <class T>
json maybe(const std::optional<T>& value) {
    return value ? json(std::round(100 * value->value) / 100) : json();
}
template <class T>
json maybe(const std::optional<Range<T>>& range) {
    return range ? json::array({range->least.value, range->most.value}) : json();
}

std::string lastText(const AirReport& report, const Console& console) {
    const auto& sample = report.now->sample;
    if (!sample.humidity) {
        return console.say({"air.temperature", {{"value", tenths(sample.temperature->value)}}});
    }
    if (!sample.temperature) {
        return console.say({"air.humidity", {{"value", tenths(sample.humidity->value)}}});
    }
    return console.say({"air.both",
                        {{"temperature", tenths(sample.temperature->value)},
                         {"humidity", tenths(sample.humidity->value)}}});
}

json nowJson(const AirNow& now) {
    return {{"at", isoInstant(now.sample.at)},        {"celsius", maybe(now.sample.temperature)},
            {"humidity", maybe(now.sample.humidity)}, {"dew_point_celsius", maybe(now.dewPoint)},
            {"absolute_g_m3", maybe(now.absolute)},   {"deficit_hpa", maybe(now.deficit)}};
}

const char* nameOf(air::Breach breach) {
    switch (breach) {
        case air::Breach::tooCold: return "too_cold";
        case air::Breach::tooWarm: return "too_warm";
        case air::Breach::tooDry: return "too_dry";
        case air::Breach::tooDamp: return "too_damp";
    }
    return "";
}

json toJson(const AirReport& report, bool withReadings, const Console& console) {
    json object{{"place", report.place},
                {"now", report.now ? nowJson(*report.now) : json()},
                {"days", json::array()},
                {"day_degrees", report.dayDegrees ? json(*report.dayDegrees) : json()},
                {"base_celsius", report.base.value},
                {"standing", report.standing},
                {"wanted_celsius", maybe(report.wanted)},
                {"wanted_apart", report.isWantedApart},
                {"wanted_humidity", maybe(report.wantedHumidity)},
                {"humidity_apart", report.isHumidityApart},
                {"alarms", json::array()}};
    for (const auto& day : report.days) {
        object["days"].push_back(
            {{"day", isoDate(day.day)},
             {"celsius", maybe(day.warmth)},
             {"mean_celsius", maybe(day.meanWarmth)},
             {"humidity", maybe(day.humidity)},
             {"day_degrees", day.dayDegrees ? json(*day.dayDegrees) : json()}});
    }
    for (const auto& alarm : report.alarms) {
        object["alarms"].push_back({{"kind", nameOf(alarm.breach)},
                                    {"from", isoInstant(alarm.from)},
                                    {"until", isoInstant(alarm.until)},
                                    {"worst", alarm.worst},
                                    {"limit", alarm.limit},
                                    {"open", alarm.isOpen},
                                    {"text", console.say(alarm.why)}});
    }
    if (!withReadings) return object;
    object["readings"] = json::array();
    for (const auto& sample : report.samples) {
        object["readings"].push_back({{"at", isoInstant(sample.at)},
                                      {"celsius", maybe(sample.temperature)},
                                      {"humidity", maybe(sample.humidity)}});
    }
    return object;
}

int showAir(const Setting& setting, const Typed& typed, Book& book) {
    auto& console = setting.console;
    const auto room = roomOn(book, setting, std::nullopt);
    if (!room) return console.trouble(room.error());
    const auto places = airPlaces(book);
    if (!places) return console.trouble(places.error());
    const auto now = setting.clock.now();
    constexpr std::int64_t msPerDay = 86'400'000;
    const Range<Instant> when{{now.ms - typed.days * msPerDay}, now};
    const auto wanted = lowerAscii(trimmed(typed.place));
    json list = json::array();
    bool isKnown = wanted.empty();
    for (const auto& place : *places) {
        if (!wanted.empty() && lowerAscii(place.place) != wanted) continue;
        isKnown = true;
        auto samples = airOf(book, place, when);
        if (!samples) return console.trouble(samples.error());
        const auto report = airReport(*room, place.place, *std::move(samples), room->tables()->air);
        list.push_back(toJson(report, !wanted.empty(), console));
        const auto last = report.now ? lastText(report, console) : std::string("-");
        console.line(console.say({"said.airPlace", {{"place", place.place}, {"last", last}}}));
        for (const auto& alarm : report.alarms) console.line("  ! " + console.say(alarm.why));
    }
    if (!isKnown) return console.trouble(Message{"air.unknownPlace", {{"place", typed.place}}});
    if (list.empty()) console.line(console.say({"said.airNone"}));
    console.value(list);
    return done;
}

/// "temp=24.5" into a reading.
Done readField(const std::string& field, air::Sample& sample) {
    const auto refuse = [](const char* id, const char* name, const std::string& value) {
        return fail(Trouble::badInput, {id, {{name, value}}});
    };
    const auto equals = field.find('=');
    if (equals == std::string::npos) return refuse("air.badField", "field", field);
    const auto name = lowerAscii(field.substr(0, equals));
    const auto text = field.substr(equals + 1);
    if (name == "temp" || name == "temperature" || name == "celsius") {
        BURROW_TRY(sample.temperature, readTemperature(text));
        return {};
    }
    if (name == "humidity" || name == "rh") {
        BURROW_TRY(sample.humidity, readHumidity(text));
        return {};
    }
    return refuse("air.badField", "field", field);
}

Result<air::Sample> typedReading(const Setting& setting, const Typed& typed) {
    air::Sample sample{setting.clock.now(), std::nullopt, std::nullopt};
    for (const auto& field : typed.fields) BURROW_DO(readField(field, sample));
    if (!sample.temperature && !sample.humidity) {
        return fail(Trouble::badInput, {"air.noReading"});
    }
    if (typed.at.empty()) return sample;
    BURROW_TRY(sample.at, readMoment(typed.at, setting.zone));
    if (sample.at > setting.clock.now()) return fail(Trouble::badInput, {"air.later"});
    return sample;
}

int takeIn(const Setting& setting, Book& book, const std::string& place,
           const std::vector<air::Sample>& samples, const std::optional<Sha256>& file,
           const std::vector<air::BadRow>& bad) {
    auto& console = setting.console;
    const auto taken = airDrafts(book, place, samples, file);
    if (!taken) return console.trouble(taken.error());
    if (!taken->drafts.empty()) {
        const auto written = book.record(taken->drafts);
        if (!written) return console.trouble(written.error());
    }
    console.line(console.say({"said.airTaken",
                              {{"added", std::int64_t{taken->added}},
                               {"known", std::int64_t{taken->known}},
                               {"place", std::string(trimmed(place))}}}));
    json rows = json::array();
    for (const auto& row : bad) {
        const auto why = console.say(row.why);
        console.line(
            console.say({"said.airBad", {{"line", std::int64_t{row.line}}, {"why", why}}}));
        rows.push_back({{"line", row.line}, {"why", why}});
    }
    console.value({{"place", std::string(trimmed(place))},
                   {"added", taken->added},
                   {"known", taken->known},
                   {"bad", std::move(rows)}});
    return done;
}

int takeFile(const Setting& setting, const Typed& typed, Book& book) {
    auto& console = setting.console;
    DeviceFiles device;
    const auto bytes = device.read(typed.in, largestAirFile);
    if (!bytes) return console.trouble(bytes.error());
    std::optional<air::DateOrder> order;
    if (typed.dates == "day-first") order = air::DateOrder::dayFirst;
    if (typed.dates == "month-first") order = air::DateOrder::monthFirst;
    const auto tables = tablesOf(book, setting);
    if (!tables) return console.trouble(tables.error());
    const auto file = readAirFile(textOf(*bytes), setting.zone, (*tables)->air, order);
    if (!file) return console.trouble(file.error());
    if (file->log.samples.empty()) return console.trouble(Message{"air.log.none"});
    return takeIn(setting, book, typed.place, file->log.samples, file->hash, file->log.bad);
}

int readOrShow(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    const bool isTyped = !typed.log.empty();
    const bool isFile = !typed.in.empty();
    auto book =
        isTyped || isFile ? openToWrite(typed.book, setting) : openToRead(typed.book, setting);
    if (!book) return console.trouble(book.error());
    if (isFile) return takeFile(setting, typed, *book);
    if (!isTyped) return showAir(setting, typed, *book);
    const auto sample = typedReading(setting, typed);
    if (!sample) return console.trouble(sample.error());
    return takeIn(setting, *book, typed.log, {*sample}, std::nullopt, {});
}

}  // namespace

void addAirCommand(CLI::App& app, Command& chosen) {
    auto typed = std::make_shared<Typed>();
    auto& t = *typed;
    auto* command =
        addCommand(app, t.book, chosen, "air",
                   "Temperature and humidity by place: what was read, and taking readings in.",
                   "burrow air kiln-row.book --log \"Warm room\" temp=24.5 humidity=65\n"
                   "  burrow air kiln-row.book --in logger.csv --place \"A / 2\"",
                   [typed](const Setting& s) { return readOrShow(s, *typed); });
    command->add_option("FIELDS", t.fields, "of a reading: temp=24.5 humidity=65");
    auto* log = command->add_option("--log", t.log, "write a reading down for this place");
    command->add_option("--at", t.at, "when it was read (now)")->needs(log);
    auto* place = command->add_option("--place", t.place, "only this place, with its readings");
    command->add_option("--in", t.in, "take in a logger's CSV file for --place")
        ->excludes(log)
        ->needs(place);
    command->add_option("--dates", t.dates, "how its dates are written where that is not clear")
        ->check(CLI::IsMember({"day-first", "month-first"}));
    command->add_option("--days", t.days, "how far back is shown")->check(CLI::Range(1, 3660));
}

}  // namespace burrow::terminal
