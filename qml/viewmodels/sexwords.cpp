#include "viewmodels/sexwords.h"

#include <array>

namespace burrow {
namespace {

constexpr std::array sexes{Sex::female, Sex::male, Sex::unknown};
constexpr int clarityStops = 5;

}  // namespace

QVariantList sexChoices(const Desk& desk) {
    QVariantList list;
    for (const auto sex : sexes) {
        const std::string id = "sexing.choice." + std::string(name(sex));
        list.append(QVariantMap{{QStringLiteral("word"), desk.say(Message(id))},
                                {QStringLiteral("sub"), desk.say(Message(id + ".sub"))}});
    }
    return list;
}

bool isSexChoice(int choice) { return choice >= 0 && choice < static_cast<int>(sexes.size()); }

Sex sexOf(int choice) {
    return isSexChoice(choice) ? sexes.at(static_cast<std::size_t>(choice)) : Sex::unknown;
}

QStringList clarityWords(const Desk& desk) {
    QStringList list;
    for (int stop = 0; stop < clarityStops; ++stop) {
        list.append(desk.say(Message("sexing.clarity." + std::to_string(stop))));
    }
    return list;
}

}  // namespace burrow
