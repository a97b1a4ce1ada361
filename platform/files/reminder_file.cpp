#include "files/reminder_file.h"

#include <QFile>

namespace burrow {

Result<ReminderRules> loadReminderRules() {
    QFile file(QStringLiteral(":/burrow/rules/tables/reminders.json"));
    if (!file.open(QIODevice::ReadOnly)) return fail(Trouble::badInput, {"remind.rules"});
    return ReminderRules::fromJson(file.readAll().toStdString());
}

}  // namespace burrow
