#include "viewmodels/profilewords.h"

#include "husbandry/profile_lines.h"

namespace burrow {

QString kindText(const Profile& profile, const Desk& desk) { return desk.say(kindOf(profile)); }

QString joinedNames(const std::vector<std::string>& names) {
    QStringList list;
    for (const auto& name : names) list.append(toQt(name));
    return list.join(QStringLiteral(", "));
}

QVariantList profileLines(const Profile& profile, const Desk& desk) {
    QVariantList lines;
    for (const auto& line : profileLines(profile)) {
        lines.append(
            QVariantMap{{QStringLiteral("name"), desk.say(Message(std::string(line.name)))},
                        {QStringLiteral("value"), desk.say(line.value)},
                        {QStringLiteral("source"), toQt(line.source)},
                        // Where it comes from stands below each fact.
                        {QStringLiteral("sub"), toQt(line.source)}});
    }
    return lines;
}

}  // namespace burrow
