#include "viewmodels/airwords.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.h"

namespace burrow {

double tenths(double value) { return std::round(10 * value) / 10; }

QString airPlaceText(const std::string& place, const Desk& desk) {
    const auto parsed = Place::parse(place);
    if (place.find('/') != std::string::npos) return placeText(parsed, desk);
    // A lone word means a shelf, a rack or a room.
    const auto isItsShelf = [&](const ResidentPtr& resident) {
        return lowerAscii(resident->kept.place.shelf) == lowerAscii(parsed.shelf);
    };
    const bool isShelf = desk.room() && std::ranges::any_of(desk.room()->residents(), isItsShelf);
    return isShelf ? shelfText(parsed, desk) : toQt(place);
}

QString readingText(const air::Sample& sample, const Desk& desk) {
    if (!sample.temperature && !sample.humidity) return {};
    if (!sample.humidity) {
        return desk.say({"air.temperature", {{"value", tenths(sample.temperature->value)}}});
    }
    if (!sample.temperature) {
        return desk.say({"air.humidity", {{"value", tenths(sample.humidity->value)}}});
    }
    return desk.say({"air.both",
                     {{"temperature", tenths(sample.temperature->value)},
                      {"humidity", tenths(sample.humidity->value)}}});
}

QString momentText(Instant at, const Desk& desk) {
    const auto& zone = desk.knowledge().zone;
    const int second = zone.secondOfDay(at);
    return desk.say({"air.at",
                     {{"day", zone.dayOf(at)},
                      {"hour", fmt::format("{:02}", second / 3600)},
                      {"minute", fmt::format("{:02}", second / 60 % 60)}}});
}

namespace {

QString warmthText(const AirReport& report, const Desk& desk) {
    const MessageArgument count{"count", std::int64_t{report.standing}};
    if (report.isWantedApart) return desk.say({"air.apart", {count}});
    if (!report.wanted) return desk.say("air.nobody");
    return desk.say(
        {report.standing == 1 ? "air.wantedOne" : "air.wanted",
         {{"least", report.wanted->least.value}, {"most", report.wanted->most.value}, count}});
}

QString humidityText(const AirReport& report, const Desk& desk) {
    if (report.isHumidityApart) return desk.say("air.humidityApart");
    if (!report.wantedHumidity) return {};
    const auto& wanted = *report.wantedHumidity;
    return desk.say(
        {"air.humidityWanted", {{"least", wanted.least.value}, {"most", wanted.most.value}}});
}

}  // namespace

QString wantedText(const AirReport& report, const Desk& desk) {
    const auto warmth = warmthText(report, desk);
    const auto humidity = humidityText(report, desk);
    return humidity.isEmpty() ? warmth : warmth + QStringLiteral(". ") + humidity;
}

}  // namespace burrow
