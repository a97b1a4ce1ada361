// What is due in a room as a calendar: for every subject and kind of care one event, from the day on which
// it opens to the last before it is late.
#pragma once

#include "exchange/ical.h"
#include "room/room.h"
#include "words/words.h"

namespace burrow {

/// What opens on one of the next `days` days, or is open or late already, in walking order. The plan knows
/// only what comes next of each kind: what follows depends on what is logged until then, and stands in the
/// next file, which replaces this one event by event.
[[nodiscard]] exchange::Calendar calendarOf(const Room& room, const Words& words, Instant writtenAt,
                                            int days);

/// The identifier of the event for one kind of care for one subject, the same in every calendar.
[[nodiscard]] Uuid calendarUid(SubjectId subject, Care care);

}  // namespace burrow
