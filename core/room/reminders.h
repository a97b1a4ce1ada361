// What the keeper is to be reminded of today, and when: one reminder for the round, and what cannot wait
// for it apart. Pure: the same room, choice, memory and moment give the same list.
#pragma once

#include <span>

#include "room/reminder_rules.h"
#include "room/room.h"
#include "words/words.h"

namespace burrow {

struct Reminder {
    Instant when;    ///< not before the moment that was asked about, never in quiet hours
    std::string id;  ///< "round", else the id of the ApartRule
    Message title;
    std::vector<Message> parts;       ///< of one sentence
    std::vector<SubjectId> subjects;  ///< whom it is about, in walking order
    std::vector<std::string> keys;    ///< what is told with it, see Told
    bool isUrgent = false;
};

/// A reminder that was given. Its keys say what of: none of them is told again.
struct Told {
    Instant at;
    std::vector<std::string> keys;

    friend bool operator==(const Told&, const Told&) = default;
};

/// Those still to be given, the first first; empty where the room is not that of today. What follows after
/// today depends on what is logged until then. At most `mostADay` of one civil day, those already told
/// among them; what is urgent beyond that goes along with the round, else waits for the next day. Of those
/// who are not here nothing is said.
[[nodiscard]] std::vector<Reminder> remindersFor(const Room& room, const ReminderRules& rules,
                                                 const ReminderChoice& choice,
                                                 std::span<const Told> told, Instant now);

/// "12 to feed, 3 held, A / 1 first"
[[nodiscard]] std::string sentence(const Reminder& reminder, const Words& words, CivilDay today);

/// What is still worth remembering of what was told.
[[nodiscard]] std::vector<Told> remembered(std::vector<Told> told, const ReminderRules& rules,
                                           Instant now);
/// As JSON, and back; nothing for what is damaged.
[[nodiscard]] std::string toldText(std::span<const Told> told);
[[nodiscard]] std::vector<Told> toldFrom(std::string_view text);

}  // namespace burrow
