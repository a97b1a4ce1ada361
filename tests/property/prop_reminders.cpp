// Reminders over days of hours: never in quiet hours, never more than the most a day, every urgent one
// once, nothing of those who are not here, and the same answer to the same question; across changes of
// the clocks and in zones all over.
#include <map>
#include <memory>
#include <random>
#include <set>

#include "room/reminders.h"
#include "support/book.h"
#include "support/checks.h"
#include "support/planning.h"

using namespace burrow;
using namespace burrow::test;

namespace {

constexpr std::int64_t msPerHour = 3'600'000;

const Room::Reference& reference() {
    static const Room::Reference shared{sharedProfiles(), sharedRules()};
    return shared;
}

ReminderRules shipped() {
    const auto path = std::filesystem::path(BURROW_ASSETS_DIR) / "rules/tables/reminders.json";
    return ReminderRules::fromJson(slurp(path)).value();
}

/// A room whose records end on the evening of 8 May 2026 or half a year before, when clocks change.
class AnyRoom {
public:
    AnyRoom(std::uint64_t seed, Instant until) : room_(seed) {
        room_.clock.set(until);
        std::mt19937_64 random(seed);
        const auto below = [&](int count) {
            return static_cast<int>(random() % static_cast<std::uint64_t>(count));
        };
        for (int i = 0; i < 14; ++i) {
            const auto id = room_.add(std::to_string(100 + i),
                                      sharedProfiles().all()[static_cast<std::size_t>(i)].name,
                                      i % 5 == 4 ? Form::group : Form::animal, i % 5 == 4 ? 8 : 1);
            const auto back = [&](int days) { return Instant{until.ms - days * msPerDay}; };
            room_.log(id, FactKind::moulted, {.span = Millimetres{10.0 + below(150)}},
                      back(20 + below(60)));
            room_.log(id, FactKind::watered, {}, back(below(20)));
            room_.log(id, FactKind::offered,
                      {.outcome = below(2) == 0 ? Outcome::leftIn : Outcome::ate}, back(below(15)));
            if (below(3) == 0) room_.log(id, FactKind::premoultSign, {}, back(below(3)));
            if (below(6) == 0) room_.log(id, FactKind::lent, {}, back(1));
            if (below(6) == 0) room_.log(id, FactKind::died, {.count = 8}, back(1));
        }
    }

    const Room& on(CivilDay day, const Zone& zone) {
        const auto key = std::pair(day.days, zone.name());
        auto found = days_.find(key);
        if (found == days_.end()) {
            const PlanDay planned{day, zone};
            found = days_.emplace(key, Room::load(room_.book, reference(), planned).value()).first;
        }
        return found->second;
    }

private:
    TestBook room_;
    std::map<std::pair<std::int32_t, std::string>, Room> days_;
};

/// 28 March 2026, the evening before clocks in Europe go forward, 24 October before they go back, and the
/// weekends of the same in New Zealand (27 September, 5 April) and of none at all.
AnyRoom& anyRoom() {
    static std::vector<std::unique_ptr<AnyRoom>> rooms = [] {
        std::vector<std::unique_ptr<AnyRoom>> made;
        std::uint64_t seed = 1;
        for (const char* day :
             {"2026-05-08", "2026-03-28", "2026-10-24", "2026-09-26", "2026-04-04", "2028-02-28"}) {
            const Instant evening{burrow::test::day(day).days * msPerDay + 19 * msPerHour};
            made.push_back(std::make_unique<AnyRoom>(seed++, evening));
        }
        return made;
    }();
    return *rooms[*rc::gen::inRange<std::size_t>(0, rooms.size())];
}

ReminderChoice anyChoice() {
    const auto minute = [] { return *rc::gen::inRange(0, 24 * 60); };
    ReminderChoice choice{true, minute(), minute(), minute()};
    if (*rc::gen::inRange(0, 3) == 0) choice.quietUntil = choice.quietFrom;  // none
    return choice;
}

bool hasHourOfDay(const ReminderChoice& choice) {
    const int quiet = (choice.quietUntil - choice.quietFrom + 24 * 60) % (24 * 60);
    return quiet <= 22 * 60;
}

/// What is urgent today, found without the code under test.
std::set<std::string> urgentIn(const Room& room, const ReminderRules& rules) {
    std::set<std::string> keys;
    for (const auto& resident : room.residents()) {
        if (resident->subject().standing != Standing::here) continue;
        for (const auto& answer : resident->plan.answers) {
            for (const auto& rule : rules.apart) {
                const bool fits = answer.care == rule.care && answer.state == State::due &&
                                  answer.priority >= rule.least &&
                                  (!rule.because || *rule.because == answer.because);
                if (fits) {
                    keys.insert(rule.id + " " + resident->subject().id.text() + " " +
                                (answer.since ? isoDate(*answer.since) : ""));
                }
            }
        }
    }
    return keys;
}

void requireOfThoseHere(const Reminder& reminder, const Room& room) {
    RC_ASSERT(!reminder.subjects.empty());
    for (const auto id : reminder.subjects) {
        RC_ASSERT(room.find(id)->subject().standing == Standing::here);
    }
    RC_ASSERT(isSpoken(reminder.title, room.day().today));
    for (const auto& part : reminder.parts) RC_ASSERT(isSpoken(part, room.day().today));
}

/// So that nothing holds only because nothing happened.
struct Happened {
    int rounds = 0;
    int urgent = 0;
    int along = 0;  ///< urgent ones that went with a round
};
Happened happened;

struct Days {
    AnyRoom& room;
    ReminderRules rules;
    ReminderChoice choice;
    Zone zone;
    std::vector<Told> told;
    std::optional<Instant> alarm;
    std::set<std::string> wanted;  // urgent from early on

    /// Looks, and before that whenever a reminder's time came meanwhile, as the app does.
    void wake(Instant now) {
        while (alarm && *alarm < now) alarm = look(*alarm);
        alarm = look(now);
    }

    /// When the next one is.
    std::optional<Instant> look(Instant now) {
        const auto& today = room.on(zone.dayOf(now), zone);
        const auto list = remindersFor(today, rules, choice, told, now);
        const auto again = remindersFor(today, rules, choice, told, now);
        RC_ASSERT(list.size() == again.size());
        std::optional<Instant> next;
        for (std::size_t i = 0; i < list.size(); ++i) {
            const auto& reminder = list[i];
            RC_ASSERT(reminder.keys == again[i].keys && reminder.when == again[i].when);
            RC_ASSERT(reminder.when >= now);
            RC_ASSERT(!isQuiet(choice, zone, reminder.when));
            requireOfThoseHere(reminder, today);
            if (reminder.when == now) {
                told.push_back({now, reminder.keys});
            } else if (!next) {
                next = reminder.when;
            }
        }
        return next;
    }

    void judge() const {
        std::map<std::int32_t, int> ofDay;
        std::map<std::string, int> ofKey;
        for (const auto& one : told) {
            RC_ASSERT(++ofDay[zone.dayOf(one.at).days] <= rules.mostADay);
            for (const auto& key : one.keys) RC_ASSERT(++ofKey[key] == 1);
        }
        for (const auto& key : wanted) RC_ASSERT(ofKey.contains(key));
        happened.urgent += static_cast<int>(wanted.size());
        for (const auto& one : told) {
            const bool isRound = std::any_of(one.keys.begin(), one.keys.end(), [](const auto& key) {
                return key.starts_with("round");
            });
            happened.rounds += isRound ? 1 : 0;
            happened.along += isRound && one.keys.size() > 1 ? 1 : 0;
        }
    }
};

void daysOfHours() {
    auto rules = shipped();
    rules.mostADay = *rc::gen::inRange(1, 4);
    auto& room = anyRoom();
    Days days{room,
              rules,
              anyChoice(),
              Zone::named(*rc::gen::element<std::string>("Europe/Berlin", "America/St_Johns",
                                                         "Pacific/Auckland", "Asia/Kolkata",
                                                         "Australia/Lord_Howe"))
                  .value(),
              {},
              {}};
    const auto start = *rc::gen::element<std::string>("2026-05-09", "2026-03-28", "2026-10-24",
                                                      "2026-09-26", "2026-04-04", "2028-02-28");
    const Instant first{day(start).days * msPerDay + *rc::gen::inRange(0, 86'400) * 1000LL};
    constexpr int hours = 5 * 24;
    for (int i = 0; i < hours; ++i) {
        // Not on the hour: whoever wakes late must not speak in the quiet hours either.
        const Instant now{first.ms + i * msPerHour + *rc::gen::inRange(0, 59) * 60'000LL};
        if (i < hours - 3 * 24) {
            const auto urgent = urgentIn(room.on(days.zone.dayOf(now), days.zone), rules);
            if (hasHourOfDay(days.choice)) days.wanted.insert(urgent.begin(), urgent.end());
        }
        days.wake(now);
    }
    // What was urgent only for a night that was quiet throughout could not be told.
    const Instant last{first.ms + hours * msPerHour};
    const auto still = urgentIn(room.on(days.zone.dayOf(last), days.zone), rules);
    std::erase_if(days.wanted, [&](const std::string& key) { return !still.contains(key); });
    days.judge();
}

/// What is remembered on the device survives being written down.
void toldIsRead() {
    const std::vector<Told> told{{fridayEvening, {"round 2026-05-08", "heat x"}},
                                 {{fridayEvening.ms + 1}, {}}};
    RC_ASSERT(toldFrom(toldText(told)) == told);
    RC_ASSERT(toldFrom(*rc::gen::arbitrary<std::string>()).empty());
    RC_ASSERT(remembered(told, shipped(), {fridayEvening.ms + 90 * msPerDay + 1}).size() == 1);
}

/// Clocks in the European Union go forward on the last Sunday of March and back on the last of October,
/// at 01:00 UTC (Directive 2000/84/EC); a time that was skipped moves forward by the gap, of one that
/// comes twice the first is meant (RFC 5545, 3.3.5).
bool clocksThatChange() {
    Checks checks;
    const auto berlin = Zone::named("Europe/Berlin").value();
    const ReminderChoice noQuiet{true, 150, 0, 0};
    const auto at = [&](const char* iso, const ReminderChoice& choice) {
        const auto when = roundOn(day(iso), choice, berlin);
        return when ? isoInstant(*when) : std::string("never");
    };
    const auto same = [&](const std::string& is, const std::string& wanted) {
        checks.that(is == wanted, is + " for " + wanted);
    };
    same(at("2026-03-28", noQuiet), "2026-03-28T01:30:00Z");
    same(at("2026-03-29", noQuiet), "2026-03-29T01:30:00Z");  // 02:30 is 03:30
    same(at("2026-10-25", noQuiet), "2026-10-25T00:30:00Z");  // the first 02:30
    // An hour in the quiet hours: before those of the evening, after those of the morning.
    const ReminderChoice late{true, 22 * 60, 21 * 60 + 30, 8 * 60};
    same(at("2026-05-08", late), "2026-05-08T19:29:00Z");
    const ReminderChoice early{true, 6 * 60, 21 * 60 + 30, 8 * 60};
    same(at("2026-05-08", early), "2026-05-08T06:00:00Z");
    const ReminderChoice noon{true, 13 * 60, 12 * 60, 14 * 60};
    same(at("2026-05-08", noon), "2026-05-08T12:00:00Z");
    // Quiet hours that end at an hour which is skipped.
    const ReminderChoice skipped{true, 1110, 22 * 60, 150};
    const auto end = afterQuiet(skipped, berlin, berlin.at(day("2026-03-28"), 23 * 3600));
    same(end ? isoInstant(*end) : "never", "2026-03-29T01:30:00Z");
    checks.that(!isQuiet(late, berlin, berlin.at(day("2026-05-08"), 8 * 3600)), "over at eight");
    checks.that(isQuiet(late, berlin, berlin.at(day("2026-05-08"), 8 * 3600 - 1)), "until then");
    return checks.ok(9);
}

/// What is said, word for word.
bool words() {
    Checks checks;
    TestBook room;
    const auto rules = shipped();
    auto choice = rules.usual;
    const auto subject = [&](const char* number, const char* place) {
        Subject made;
        made.number = number;
        made.species = "Brachypelma hamorii";
        made.place = Place::parse(place);
        const SubjectId id{room.book.newId()};
        room.book.record(SetDraft{ThingType::subject, id.uuid, toFields(made)}).value();
        room.log(id, FactKind::measured, {.span = Millimetres{140}},
                 Instant{fridayEvening.ms - 60 * msPerDay});
        room.log(id, FactKind::watered);
        room.log(id, FactKind::dampened);
        return id;
    };
    const auto back = [](int days) { return Instant{fridayEvening.ms - days * msPerDay}; };
    const auto hungry = subject("214", "A / 1 / 1");
    room.log(hungry, FactKind::offered, {.outcome = Outcome::ate}, back(40));
    const auto soft = subject("118", "A / 1 / 2");
    room.log(soft, FactKind::moulted, {}, back(2));
    const auto caught = subject("260", "B / 1 / 1");
    room.log(caught, FactKind::offered, {.outcome = Outcome::leftIn}, back(1));
    room.log(caught, FactKind::premoultSign, {}, back(0));
    const auto today = Zone::utc().dayOf(fridayEvening);
    const auto loaded = Room::load(room.book, reference(), {today, Zone::utc()}).value();
    const Instant noon{today.days * msPerDay + 12 * msPerHour};
    std::vector<Told> told;
    auto list = remindersFor(loaded, rules, choice, told, noon);
    checks.that(list.size() == 2, "one for the round, one apart");
    if (list.size() != 2) return checks.ok(99);
    const auto said = [&](const Reminder& one) { return sentence(one, sharedWords(), today); };
    checks.that(list[0].id == "leftovers" && list[0].when == noon && list[0].isUrgent, "at once");
    checks.that(said(list[0]) == "One with prey left in, soft or about to moult, KR-260",
                said(list[0]));
    checks.that(list[1].id == "round" && list[1].when.ms == noon.ms + 6 * msPerHour + 1'800'000,
                "in the evening");
    checks.that(said(list[1]) == "1 to feed, one other thing to do, 1 held, A / 1 first",
                said(list[1]));
    checks.that(sharedWords().say(list[1].title, today) == "Kiln Row: the round", "its title");
    told.push_back({noon, list[0].keys});
    list = remindersFor(loaded, rules, choice, told, noon);
    checks.that(list.size() == 1 && list[0].id == "round", "told once");
    choice.isOn = false;
    checks.that(remindersFor(loaded, rules, choice, told, noon).empty(), "off is off");
    choice.isOn = true;
    checks.that(remindersFor(loaded, rules, choice, told, {noon.ms + msPerDay}).empty(),
                "yesterday's room says nothing");
    return checks.ok(9);
}

bool damagedRules() {
    Checks checks;
    checks.that(!ReminderRules::fromJson("{}"), "an empty file");
    auto text = slurp(std::filesystem::path(BURROW_ASSETS_DIR) / "rules/tables/reminders.json");
    const auto place = text.find("\"urgent\"");
    text.replace(place, 8, "\"dire\"");
    checks.that(!ReminderRules::fromJson(text), "an unknown priority");
    return checks.ok(2);
}

}  // namespace

int main() {
    setenv("RC_PARAMS", "max_success=60", 0);
    bool ok = clocksThatChange();
    ok = words() && ok;
    ok = damagedRules() && ok;
    ok = rc::check("days of hours", daysOfHours) && ok;
    if (happened.rounds < 20 || happened.urgent < 20 || happened.along < 1) {
        std::cerr << "too little happened: " << happened.rounds << " rounds, " << happened.urgent
                  << " urgent, " << happened.along << " along\n";
        ok = false;
    }
    ok = rc::check("what was told is remembered", toldIsRead) && ok;
    return ok ? 0 : 1;
}
