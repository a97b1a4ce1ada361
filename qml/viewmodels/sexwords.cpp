#include "viewmodels/sexwords.h"

#include <array>

namespace burrow {
namespace {

constexpr std::array sexes{Sex::female, Sex::male, Sex::unknown};
constexpr int clarityStops = 5;
/// Where to look, what there is to see, and what a grown male shows.
constexpr std::array drawingNames{"where",   "plate",  "plate_single", "none",
                                  "ventral", "dorsal", "hooks",        "bulb"};

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

QString opinionText(const FactBody& examination, const Desk& desk) {
    const auto sex = examination.sex.value_or(Sex::unknown);
    const auto clarity = examination.clarity ? name(*examination.clarity) : "unstated";
    return desk.say({"sexing.opinion." + std::string(name(sex)),
                     {{"judge", examination.judge.value_or(std::string())},
                      {"clarity", std::string(clarity)}}});
}

QVariantList sexDrawings(const Desk& desk) {
    QVariantList list;
    for (const std::string name : drawingNames) {
        list.append(QVariantMap{{QStringLiteral("drawing"), toQt(name)},
                                {QStringLiteral("name"), desk.say(Message("drawing." + name))}});
    }
    return list;
}

QStringList clarityWords(const Desk& desk) {
    QStringList list;
    for (int stop = 0; stop < clarityStops; ++stop) {
        list.append(desk.say(Message("sexing.clarity." + std::to_string(stop))));
    }
    return list;
}

}  // namespace burrow
