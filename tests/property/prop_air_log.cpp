// Readings of the air in a book: packed texts read back as they were, hostile ones are refused, what is
// taken in twice adds nothing, two loggers on one place and day unite on every device, and what the
// planner is told is the newest day's mean. The checks are laws; the means are worked out by hand.
#include <rapidcheck.h>

#include <chrono>
#include <cmath>
#include <cstdlib>

#include "air/packed.h"
#include "exchange/csv.h"
#include "room/air_file.h"
#include "room/air_leave.h"
#include "room/own_numbers.h"
#include "room/room.h"
#include "support/assets.h"
#include "support/joined.h"
#include "support/profiles.h"

using namespace burrow;
using namespace burrow::test;
using air::Percent;
using air::Sample;

namespace {

const air::AirRules& airRules() {
    static const auto rules =
        air::AirRules::fromJson(slurp(std::string(BURROW_ASSETS_DIR) + "/rules/tables/air.json"))
            .value();
    return rules;
}

Sample reading(Instant at, double warmth, std::optional<double> humidity = std::nullopt) {
    Sample sample{at, Celsius{warmth}, std::nullopt};
    if (humidity) sample.humidity = Percent{*humidity};
    return sample;
}

/// Readings of a few days, in any order, some moments twice.
std::vector<Sample> anyReadings(int most) {
    std::vector<Sample> samples;
    const int count = *rc::gen::inRange(1, most);
    for (int i = 0; i < count; ++i) {
        Sample sample;
        sample.at = {fridayEvening.ms - *rc::gen::inRange(0, 60) * 2'700'000LL};
        const int kind = *rc::gen::inRange(0, 4);
        if (kind != 0) sample.temperature = Celsius{*rc::gen::inRange(-4000, 8001) / 100.0};
        if (kind == 0 || kind == 3) sample.humidity = Percent{*rc::gen::inRange(0, 10'001) / 100.0};
        samples.push_back(sample);
    }
    return samples;
}

Range<Instant> always() {
    return {{fridayEvening.ms - 400 * msPerDay}, {fridayEvening.ms + 400 * msPerDay}};
}

std::vector<Sample> readingsIn(Book& book, const std::string& name) {
    for (const auto& place : got(airPlaces(book))) {
        if (place.place == name) return airOf(book, place, always()).value();
    }
    return {};
}

void take(Book& book, const std::string& place, const std::vector<Sample>& samples,
          const std::optional<Sha256>& file = std::nullopt) {
    const auto taken = airDrafts(book, place, samples, file).value();
    if (!taken.drafts.empty()) book.record(taken.drafts).value();
}

bool isNear(Celsius a, double b) { return std::abs(a.value - b) < 0.02; }

bool packedTextsReadBack() {
    return rc::check("what is packed reads back", [] {
        const auto samples = air::united(anyReadings(300));
        std::vector<Sample> back;
        for (const auto& text : air::packed(samples)) {
            RC_ASSERT(text.size() <= air::longestPacked);
            const auto read = air::unpacked(text);
            RC_ASSERT(read.has_value());
            back.insert(back.end(), read->begin(), read->end());
        }
        RC_ASSERT(back == samples);
    });
}

bool damagedTextsAreRefusedOrWritable() {
    return rc::check("a damaged text is refused, or reads as what packs to it or the like", [] {
        auto text = air::packed(air::united(anyReadings(30))).front();
        for (int i = *rc::gen::inRange(1, 4); i > 0; --i) {
            const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
            text[at] = *rc::gen::element('0', '9', '-', ' ', 't', 'h', 'x', '\xFF');
        }
        const auto read = air::unpacked(text);
        if (!read) return;
        RC_ASSERT(air::united(*read) == *read);
        RC_ASSERT(std::ranges::all_of(*read, [](const Sample& sample) {
            const double warmth = sample.temperature.value_or(Celsius{0}).value;
            const double humidity = sample.humidity.value_or(Percent{0}).value;
            return warmth >= -40 && warmth <= 80 && humidity >= 0 && humidity <= 100;
        }));
    });
}

bool unitingKnowsNoOrder() {
    return rc::check("who is united first does not matter", [] {
        auto a = anyReadings(40);
        const auto b = anyReadings(40);
        auto other = b;
        a.insert(a.end(), b.begin(), b.end());
        other.insert(other.end(), a.begin(), a.begin() + static_cast<int>(a.size() - b.size()));
        RC_ASSERT(air::united(a) == air::united(other));
        RC_ASSERT(air::united(air::united(a)) == air::united(a));
    });
}

bool twiceAddsNothing() {
    return rc::check("taken in twice, or beginning with what is known, adds only what is new", [] {
        const auto room = roomOf(1, 11);
        auto& book = room.front()->book();
        const auto samples = air::united(anyReadings(60));
        const auto some = static_cast<int>(*rc::gen::inRange<std::size_t>(0, samples.size() + 1));
        const auto file = Sha256::of(std::string_view("one"));
        take(book, "Warm room", {samples.begin(), samples.begin() + some}, file);
        const auto rest = airDrafts(book, " warm ROOM ", samples, Sha256::of("two")).value();
        RC_ASSERT(rest.known == some);
        RC_ASSERT(rest.added == static_cast<int>(samples.size()) - some);
        if (!rest.drafts.empty()) book.record(rest.drafts).value();
        RC_ASSERT(readingsIn(book, some > 0 ? "Warm room" : "warm ROOM") == samples);
        RC_ASSERT(airDrafts(book, "Warm room", samples, file).value().drafts.empty());
    });
}

bool twoLoggersUnite() {
    return rc::check("two loggers of one place and day unite, whoever merges first", [] {
        const auto phones = roomOf(2, 23);
        const auto a = anyReadings(40);
        const auto b = anyReadings(40);
        take(phones[0]->book(), "A / 2", a, Sha256::of("a"));
        take(phones[1]->book(), "A / 2", b, Sha256::of("b"));
        // Both took in a third file.
        const auto both = anyReadings(20);
        for (const auto& phone : phones) take(phone->book(), "A / 2", both, Sha256::of("both"));
        sendAll(*phones[0], *phones[1]);
        sendAll(*phones[1], *phones[0]);
        auto all = a;
        all.insert(all.end(), b.begin(), b.end());
        all.insert(all.end(), both.begin(), both.end());
        // What one logger says twice of one moment is one reading before it is united with the other's.
        const auto there = readingsIn(phones[1]->book(), "A / 2");
        RC_ASSERT(readingsIn(phones[0]->book(), "A / 2") == there);
        const auto expected = air::united(all);
        RC_ASSERT(there.size() == expected.size());
        RC_ASSERT(differences(phones[0]->book()).value().empty());
        RC_ASSERT(isRebuiltTheSame(phones[0]->book()));
        RC_ASSERT(dumpOf(phones[0]->book()) == dumpOf(phones[1]->book()));
    });
}

bool undoHidesNobodyElses() {
    return rc::check("taking one file back leaves what another phone took in", [] {
        const auto phones = roomOf(2, 31);
        const auto a = air::united(anyReadings(30));
        const auto b = air::united(anyReadings(30));
        take(phones[0]->book(), "A", a, Sha256::of("a"));
        sendAll(*phones[0], *phones[1]);
        const auto more = airDrafts(phones[1]->book(), "A", b, Sha256::of("b")).value();
        if (more.drafts.empty()) return;
        phones[1]->book().record(more.drafts).value();
        phones[0]->book().undo().value();
        sendAll(*phones[0], *phones[1]);
        const auto left = readingsIn(phones[1]->book(), "A");
        RC_ASSERT(left.size() == static_cast<std::size_t>(more.added));
    });
}

bool plansKnowTheNewestDay() {
    return rc::check("plans are told the newest day's mean of the narrowest place", [] {
        const auto room = roomOf(1, 47);
        auto& book = room.front()->book();
        static const auto profiles = shippedProfiles();
        static const auto rules = Rules::fromJson(assetFiles("rules")).value();
        static const auto numbers = NumberTables::fromJson(tableTexts()).value();
        const Room::Reference reference{profiles, rules, &numbers};
        const PlanDay day{Zone::utc().dayOf(fridayEvening), Zone::utc()};
        Subject subject;
        subject.number = "1";
        subject.species = "Brachypelma hamorii";
        subject.place = Place::parse("Warm / A / 2 / 1");
        const SubjectId id{book.newId()};
        book.record(SetDraft{ThingType::subject, id.uuid, toFields(subject)}).value();
        auto loaded = Room::load(book, reference, day).value();
        RC_ASSERT(!loaded.find(id)->warmth.has_value());
        // From 10 to 20 degrees within two hours, then 20 for two: 17.5 in the mean of four.
        const auto noon = Zone::utc().at(day.today, 12 * 3600);
        const auto hours = [&](int count) { return Instant{noon.ms + count * 3'600'000LL}; };
        const int back = *rc::gen::inRange(0, 30);
        const auto on = [&](int hour) { return Instant{hours(hour).ms - back * msPerDay}; };
        take(book, "Warm", {reading(on(0), 10), reading(on(2), 20), reading(on(4), 20)});
        const auto changes =
            book.record(airDrafts(book, "B", std::vector{reading(hours(0), 5)}).value().drafts)
                .value();
        loaded = loaded.after(book, reference, changes).value();
        RC_ASSERT(isNear(loaded.find(id)->warmth->mean, 17.5));
        RC_ASSERT(loaded.find(id)->warmth->day == day.today - back);
        // Readings too far apart to be joined: their mean. The shelf is narrower than the room.
        take(book, "Warm / A / 2 / ", {reading(hours(-11), 30), reading(hours(0), 20)});
        take(book, "2", {reading(hours(-11), 30), reading(hours(0), 22)});
        loaded = Room::load(book, reference, day).value();
        RC_ASSERT(isNear(loaded.find(id)->warmth->mean, 25));
        // What was logged after the day that is looked at does not count.
        const auto before =
            Room::load(book, reference, {day.today - back - 1, Zone::utc()}).value();
        RC_ASSERT(!before.find(id)->warmth.has_value());
    });
}

/// What leaves as a table comes back in as a logger's file.
bool readingsLeaveAsATable() {
    return rc::check("what leaves as a table comes back", [] {
        const auto phones = roomOf(2, 61);
        const auto samples = air::united(anyReadings(40));
        const std::string place = *rc::gen::element<std::string>("A / 2", "=Warm, room");
        const auto table = airTable();
        RC_ASSERT(!table.hasAny(phones[0]->book()).value());
        take(phones[0]->book(), place, samples);
        RC_ASSERT(table.hasAny(phones[0]->book()).value());
        std::string text = "place,at,celsius,humidity\r\n";
        must(table.write(phones[0]->book(), [&](std::span<const std::string> cells) -> Done {
            RC_ASSERT(cells.size() == table.columns.size());
            RC_ASSERT(std::string(exchange::plainText(cells[0])) == place);
            for (const auto& cell : cells) text += exchange::csvCell(cell, ',') + ",";
            text.back() = '\r';
            text += '\n';
            return {};
        }));
        const auto file = readAirFile(text, Zone::utc(), airRules()).value();
        RC_ASSERT(file.log.bad.empty());
        RC_ASSERT(file.log.samples == samples);
    });
}

/// 100,000 rows of a logger are taken in at once, and again with nothing to add.
bool aLargeFileGoesIn() {
    const auto room = roomOf(1, 5);
    auto& book = room.front()->book();
    std::vector<Sample> samples;
    for (int i = 0; i < 100'000; ++i) {
        samples.push_back(
            reading({fridayEvening.ms - i * 60'000LL}, 24 + i % 97 / 50.0, 60 + i % 61 / 10.0));
    }
    const auto begin = std::chrono::steady_clock::now();
    take(book, "Warm room", samples, Sha256::of("large"));
    const bool isAll = readingsIn(book, "Warm room").size() == samples.size();
    const bool addsNothing = airDrafts(book, "Warm room", samples).value().drafts.empty();
    const auto bytes = book.connection().integer("SELECT sum(length(body)) FROM entry").value();
    const auto entries = book.connection().integer("SELECT count(*) FROM entry").value();
    const auto longest = book.connection().integer("SELECT max(length(body)) FROM entry").value();
    std::printf("100,000 readings: %lld entries, %lld bytes, longest %lld, %lld ms\n",
                static_cast<long long>(entries), static_cast<long long>(bytes),
                static_cast<long long>(longest),
                static_cast<long long>(std::chrono::duration_cast<std::chrono::milliseconds>(
                                           std::chrono::steady_clock::now() - begin)
                                           .count()));
    const bool isShort = longest <= static_cast<long long>(longestEntryBody);
    if (!isAll || !addsNothing || !isShort) std::puts("A large file did not go in as a whole");
    return isAll && addsNothing && isShort;
}

}  // namespace

int main() {
    bool isGood = packedTextsReadBack();
    isGood &= damagedTextsAreRefusedOrWritable();
    isGood &= unitingKnowsNoOrder();
    isGood &= twiceAddsNothing();
    isGood &= twoLoggersUnite();
    isGood &= undoHidesNobodyElses();
    isGood &= plansKnowTheNewestDay();
    isGood &= readingsLeaveAsATable();
    isGood &= aLargeFileGoesIn();
    return isGood ? EXIT_SUCCESS : EXIT_FAILURE;
}
