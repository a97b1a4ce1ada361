#include "viewmodels/sizelines.h"

#include <cmath>

#include "viewmodels/lengthkinds.h"

namespace burrow {
namespace {

/// As on a scale that is read to tenths.
double said(Millimetres length) { return saidLength(length, Millimetres{1}); }

QString howKnown(const growth::Measured& value, const Desk& desk) {
    if (value.low && value.high) {
        return desk.say(
            {"measuring.history.within", {{"low", said(*value.low)}, {"high", said(*value.high)}}});
    }
    return desk.say(Message(value.method ? "measuring.history." + std::string(name(*value.method))
                                         : std::string("measuring.history.unknown")));
}

QVariantMap rowOf(const growth::Measured& value, const Desk& desk) {
    QStringList sub;
    if (value.factor) {
        sub << desk.say(
            {"measuring.history.factor", {{"factor", std::round(100 * *value.factor) / 100}}});
    }
    sub << howKnown(value, desk);
    if (!value.isOfTheMoult) sub << desk.say("measuring.history.ofTheAnimal");
    return {
        {QStringLiteral("name"), desk.say({"fact.day", {{"day", value.day}}})},
        {QStringLiteral("value"), desk.say({"fact.millimetres", {{"length", said(value.size)}}})},
        {QStringLiteral("sub"), sub.join(QStringLiteral(", "))},
        {QStringLiteral("page"), QStringLiteral("EntryPage")},
        {QStringLiteral("properties"),
         QVariantMap{{QStringLiteral("entry"), toQt(value.entry.text())}}}};
}

QVariantList yearsSince(CivilDay first, CivilDay today) {
    QVariantList labels;
    for (int year = yearMonthDay(first).year + 1; year <= yearMonthDay(today).year; ++year) {
        labels.append(QVariantMap{{QStringLiteral("day"), civilDay({year, 1, 1})->days},
                                  {QStringLiteral("text"), QString::number(year)}});
    }
    return labels;
}

}  // namespace

SizeLines sizeLines(std::span<const growth::Measured> skins, const std::string& what,
                    const Desk& desk) {
    SizeLines lines;
    for (const auto& skin : skins) {
        lines.rows.prepend(rowOf(skin, desk));
        lines.points.append(QVariantMap{{QStringLiteral("day"), skin.day.days},
                                        {QStringLiteral("value"), skin.size.value}});
    }
    if (skins.size() < 2) lines.points.clear();
    if (skins.empty()) return lines;
    lines.labels = yearsSince(skins.front().day, desk.today());
    lines.spoken = desk.say({"growth.spoken",
                             {{"unit", what},
                              {"count", static_cast<std::int64_t>(skins.size())},
                              {"first", skins.front().size.value},
                              {"last", skins.back().size.value}}});
    return lines;
}

}  // namespace burrow
