// The numbers behind reminders that travel inside the program.
#pragma once

#include "room/reminder_rules.h"

namespace burrow {

/// Fails only in a broken build: a test loads the same file.
Result<ReminderRules> loadReminderRules();

}  // namespace burrow
