// Calendars read by libical, a reference implementation of RFC 5545.
#include <libical/ical.h>

#include <QtTest>
#include <memory>
#include <set>

#include "base/text.h"
#include "room/calendar.h"
#include "support/book.h"
#include "support/calendar.h"
#include "support/husbandry.h"

using namespace burrow;
using namespace burrow::exchange;
using namespace burrow::test;

namespace {

using Component = std::unique_ptr<icalcomponent, decltype(&icalcomponent_free)>;

Component parsed(const std::string& text) {
    return {icalparser_parse_string(text.c_str()), icalcomponent_free};
}

std::vector<icalcomponent*> eventsOf(const Component& calendar) {
    std::vector<icalcomponent*> events;
    for (auto* event = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
         event != nullptr;
         event = icalcomponent_get_next_component(calendar.get(), ICAL_VEVENT_COMPONENT)) {
        events.push_back(event);
    }
    return events;
}

std::string orEmpty(const char* text) { return text != nullptr ? text : ""; }

std::string dateOf(const icaltimetype& time) {
    return isoDate(civilDay({time.year, time.month, time.day}).value());
}

/// The longest line and whether all of them end with CRLF and are well-formed UTF-8 by themselves.
void checkLines(const std::string& text) {
    std::string_view rest = text;
    while (!rest.empty()) {
        const auto end = rest.find("\r\n");
        QVERIFY(end != std::string_view::npos);
        const auto line = rest.substr(0, end);
        QVERIFY2(line.size() <= 75, std::string(line).c_str());
        QVERIFY(line.find_first_of("\r\n") == std::string_view::npos);
        QVERIFY2(isUtf8(line), std::string(line).c_str());
        rest.remove_prefix(end + 2);
    }
}

/// A room of four on 8 May 2026.
class SmallRoom {
public:
    SmallRoom() {
        room.add("214", "Brachypelma hamorii");
        room.add("031", "Poecilotheria regalis");
        room.add("260", "Neoholothele incei", Form::group, 20);
        room.add("099", "Grammostola pulchra");
        const auto in = [](Outcome outcome) {
            FactBody body;
            body.outcome = outcome;
            body.prey = "cricket";
            return body;
        };
        const auto id = [&](const char* number) {
            return subjectsNumbered(room.book, number)->front();
        };
        const auto ago = [&](int days) { return Instant{fridayEvening.ms - days * msPerDay}; };
        FactBody adult;
        adult.span = Millimetres{150};
        room.log(id("214"), FactKind::measured, adult, ago(90));
        room.log(id("214"), FactKind::offered, in(Outcome::ate), ago(3));
        room.log(id("031"), FactKind::moulted, {}, ago(2));
        room.log(id("260"), FactKind::offered, in(Outcome::leftIn), ago(1));
        room.log(id("099"), FactKind::died, {}, ago(1));
    }
    [[nodiscard]] Calendar calendar(int days = 60, Instant at = fridayEvening) {
        const auto today = Zone::utc().dayOf(at);
        const auto loaded = Room::load(room.book, {profiles, rules}, {today, Zone::utc()}).value();
        return calendarOf(loaded, words, at, days);
    }

    Profiles profiles = shippedProfiles();
    Rules rules = shippedRules();
    Words words = englishWords();
    TestBook room;
};

}  // namespace

class TestCalendar : public QObject {
    Q_OBJECT

private slots:
    void escapes() {
        // RFC 5545, 3.3.11, its own example.
        QCOMPARE(icalText("Project XYZ Final Review\nConference Room - 3B\nCome Prepared."),
                 std::string("Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared."));
        QCOMPARE(icalText("a;b,c\\d\r\ne\x01\x7F\tf"), std::string("a\\;b\\,c\\\\d\\ne  \tf"));
    }

    void folds() {
        QCOMPARE(foldedLine(std::string(75, 'a')), std::string(75, 'a') + "\r\n");
        QCOMPARE(foldedLine(std::string(76, 'a')), std::string(75, 'a') + "\r\n a\r\n");
        // 75 octets, then 74 and a space: RFC 5545, 3.1.
        QCOMPARE(foldedLine(std::string(150, 'a')),
                 std::string(75, 'a') + "\r\n " + std::string(74, 'a') + "\r\n a\r\n");
        // Never inside a character, be it of bytes that are none.
        QCOMPARE(foldedLine(std::string(74, 'a') + "ü"), std::string(74, 'a') + "\r\n ü\r\n");
        QVERIFY(foldedLine(std::string(200, '\xBF')).ends_with("\r\n"));
    }

    void awkwardTextsComeBack() {
        const auto wanted = awkwardCalendar();
        const auto text = icalendar(wanted);
        checkLines(text);
        const auto calendar = parsed(text);
        QVERIFY(calendar != nullptr);
        QCOMPARE(icalcomponent_count_errors(calendar.get()), 0);
        QVERIFY(icalrestriction_check(calendar.get()) != 0);
        const auto events = eventsOf(calendar);
        QCOMPARE(events.size(), wanted.events.size());
        for (std::size_t i = 0; i < events.size(); ++i) {
            auto* event = events[i];
            const auto& want = wanted.events[i];
            QCOMPARE(orEmpty(icalcomponent_get_uid(event)), want.uid.text());
            QCOMPARE(orEmpty(icalcomponent_get_summary(event)), want.summary);
            auto description = want.description;
            std::erase(description, '\r');
            QCOMPARE(orEmpty(icalcomponent_get_description(event)), description);
            QCOMPARE(orEmpty(icalcomponent_get_location(event)), want.location);
            const auto start = icalcomponent_get_dtstart(event);
            const auto end = icalcomponent_get_dtend(event);
            // RFC 5545, 3.6.1: both are required; libical's own check lets an event without them pass.
            QCOMPARE(icalcomponent_count_properties(event, ICAL_UID_PROPERTY), 1);
            QCOMPARE(icalcomponent_count_properties(event, ICAL_DTSTAMP_PROPERTY), 1);
            QVERIFY(start.is_date != 0 && end.is_date != 0);
            QCOMPARE(dateOf(start), isoDate(want.first));
            QCOMPARE(dateOf(end), isoDate(want.last + 1));
        }
    }

    /// The check itself notices what is missing, or there twice.
    void libicalWouldNotice() {
        const auto good = icalendar(awkwardCalendar());
        for (const std::string name : {"VERSION", "PRODID", "SUMMARY"}) {
            auto text = good;
            const auto at = text.find("\r\n" + name) + 2;
            const auto line = text.substr(at, text.find("\r\n", at) + 2 - at);
            if (name == "SUMMARY") {
                text.insert(at, line);
            } else {
                text.erase(at, line.size());
            }
            QVERIFY2(icalrestriction_check(parsed(text).get()) == 0, name.c_str());
        }
    }

    void tellsWhatIsDue() {
        SmallRoom room;
        const auto due = room.calendar();
        const auto text = icalendar(due);
        checkLines(text);
        const auto calendar = parsed(text);
        QCOMPARE(icalcomponent_count_errors(calendar.get()), 0);
        QVERIFY(icalrestriction_check(calendar.get()) != 0);
        QCOMPARE(due.name, std::string("Kiln Row"));
        const auto find = [&](const std::string& summary) {
            const auto found =
                std::find_if(due.events.begin(), due.events.end(),
                             [&](const AllDayEvent& event) { return event.summary == summary; });
            return found == due.events.end() ? AllDayEvent{} : *found;
        };
        // Ate on 5 May as an adult: 10 to 14 days, by the rules as they are shipped.
        const auto feed = find("Feed: KR-214 Brachypelma hamorii");
        QCOMPARE(isoDate(feed.first), std::string("2026-05-15"));
        QCOMPARE(isoDate(feed.last), std::string("2026-05-19"));
        QVERIFY2(
            feed.description.find("Opens Friday 15 May, best Sunday 17 May, late after Tuesday "
                                  "19 May.") == 0,
            feed.description.c_str());
        QVERIFY(feed.description.find("As of Friday 8 May: Ate 3 days ago") != std::string::npos);
        // Hardening: food is held back, and the calendar says until when.
        QVERIFY(find("Feed: KR-031 Poecilotheria regalis").first > CivilDay{20'581});
        // Prey left in with the group was due out on the day before, and is still to be done.
        const auto leftovers = find("Take leftovers out: KR-260 Neoholothele incei");
        QCOMPARE(isoDate(leftovers.last), std::string("2026-05-08"));
        // Nothing is planned for the dead.
        for (const auto& event : due.events) {
            QVERIFY(event.summary.find("099") == std::string::npos);
            QVERIFY(event.first <= event.last);
        }
        QVERIFY(room.calendar(0).events.size() < due.events.size());
    }

    /// A later file replaces what an earlier one said of the same care for the same animal.
    void laterFilesReplace() {
        SmallRoom room;
        const auto first = room.calendar();
        room.room.clock.set({fridayEvening.ms + 10 * msPerDay});
        FactBody ate;
        ate.outcome = Outcome::ate;
        const auto id = subjectsNumbered(room.room.book, "214")->front();
        room.room.log(id, FactKind::offered, ate);
        const auto second = room.calendar(60, room.room.clock.now());
        const auto feeding = [&](const Calendar& calendar) {
            const auto uid = calendarUid(id, Care::feed);
            for (const auto& event : calendar.events) {
                if (event.uid == uid) return event;
            }
            return AllDayEvent{};
        };
        QVERIFY(feeding(first).summary == feeding(second).summary);
        QVERIFY(feeding(first).first < feeding(second).first);
        std::set<Uuid> uids;
        for (const auto& event : second.events) uids.insert(event.uid);
        QCOMPARE(uids.size(), second.events.size());
        const auto sequence = [](const Calendar& calendar) {
            const auto read = parsed(icalendar(calendar));
            return icalproperty_get_sequence(
                icalcomponent_get_first_property(eventsOf(read).front(), ICAL_SEQUENCE_PROPERTY));
        };
        QCOMPARE(sequence(second) - sequence(first), 10 * 24 * 60);
    }
};

QTEST_APPLESS_MAIN(TestCalendar)
#include "tst_calendar.moc"
