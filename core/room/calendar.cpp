#include "room/calendar.h"

#include <algorithm>

namespace burrow {
namespace {

/// "Opens Monday 4 May, best Friday 8 May, late after Tuesday 12 May": days with their names, because a
/// calendar is read on any day.
Message windowMessage(const Window& window, const Words& words) {
    if (window.opens == window.late) {
        return {"calendar.on", {{"day", words.longDay(window.opens)}}};
    }
    return {"calendar.window",
            {{"opens", words.longDay(window.opens)},
             {"best", words.longDay(window.best)},
             {"late", words.longDay(window.late)}}};
}

std::string descriptionOf(const Answer& answer, const Room& room, const Words& words) {
    const auto today = room.day().today;
    auto text = words.say(windowMessage(*answer.window, words), today);
    if (answer.amount) text += "\n" + words.say(*answer.amount, today);
    // The reason counts days from today, so it says which day that was.
    return text + "\n" +
           words.say({"calendar.asOf",
                      {{"day", words.longDay(today)}, {"reason", words.say(answer.reason, today)}}},
                     today);
}

exchange::AllDayEvent eventFor(const Resident& resident, const Answer& answer, const Room& room,
                               const Words& words) {
    const auto& subject = resident.subject();
    const auto today = room.day().today;
    // By then it is due, whatever it is today.
    auto then = answer;
    then.state = State::due;
    exchange::AllDayEvent event;
    event.uid = calendarUid(subject.id, answer.care);
    event.first = answer.window->opens;
    // What is late is still to be done, so it reaches to today.
    event.last = std::max(answer.window->late, today);
    const auto& code = room.info().code;
    event.summary =
        words.say({"calendar.summary",
                   {{"what", words.say(then.verb(subject.form), today)},
                    {"number", code.empty() ? subject.number : code + "-" + subject.number},
                    {"species", subject.species}}},
                  today);
    event.description = descriptionOf(answer, room, words);
    event.location = resident.kept.place.text();
    event.category = words.say("care." + std::string(name(answer.care)));
    return event;
}

}  // namespace

Uuid calendarUid(SubjectId subject, Care care) {
    return Uuid::named("burrowbook due " + subject.text() + " " + std::string(name(care)));
}

exchange::Calendar calendarOf(const Room& room, const Words& words, Instant writtenAt, int days) {
    exchange::Calendar calendar{room.info().name, writtenAt, {}};
    for (const auto& resident : room.residents()) {
        for (const auto& answer : resident->plan.answers) {
            const bool isSoon = answer.window && answer.window->opens - room.day().today <= days;
            // What is away on loan is to be fed by others.
            const bool isAway = answer.because == Because::onLoan;
            if (answer.state == State::none || isAway || !isSoon) continue;
            calendar.events.push_back(eventFor(*resident, answer, room, words));
        }
    }
    return calendar;
}

}  // namespace burrow
