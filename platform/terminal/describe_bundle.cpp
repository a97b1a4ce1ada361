#include "terminal/describe_bundle.h"

#include <fmt/format.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <memory>

namespace burrow::terminal {
namespace {

using nlohmann::json;

constexpr std::array<const char*, 5> stepIds{"step.opening", "step.photos", "step.entries",
                                             "step.checking", "step.placing"};
constexpr std::size_t progressWidth = 40;

json toJson(const std::vector<AheadDevice>& devices) {
    json list = json::array();
    for (const auto& [device, days] : devices) {
        list.push_back({{"device", device.text()}, {"days", days}});
    }
    return list;
}

json toJson(const std::vector<DeviceId>& devices) {
    json list = json::array();
    for (const auto& device : devices) list.push_back(device.text());
    return list;
}

}  // namespace

std::string shortName(const DeviceId& device) {
    constexpr std::size_t shown = 6;
    const auto text = device.text();
    return text.substr(text.size() - shown);
}

json toJson(const exchange::Manifest& m) {
    return {{"book", m.book.text()},
            {"room", m.room},
            {"code", m.roomCode},
            {"device", m.device.text()},
            {"program", m.program},
            {"written_at", isoInstant(m.writtenAt)},
            {"extent", std::string(name(m.extent))},
            {"made_for", m.madeFor ? json(m.madeFor->text()) : json()},
            {"entries", m.totals.entries},
            {"animals", m.totals.animals},
            {"first_day", m.totals.firstDay ? json(isoDate(*m.totals.firstDay)) : json()},
            {"last_day", m.totals.lastDay ? json(isoDate(*m.totals.lastDay)) : json()},
            {"photos", m.photos.size()},
            {"reduced_photos", m.reduced.size()},
            {"photo_bytes", m.photoBytes()},
            {"left_out",
             {{"confidential", !m.withConfidential},
              {"photos", std::string(name(m.photoChoice))},
              {"missing_photos", m.missingPhotos}}}};
}

void describe(const exchange::Manifest& m, const Console& console) {
    const auto say = [&](const Message& message) { console.line(console.say(message)); };
    constexpr std::uint64_t megabyte = 1'000'000;
    constexpr std::int64_t msPerDay = 86'400'000;
    const CivilDay written{static_cast<std::int32_t>(m.writtenAt.ms / msPerDay)};
    say({"said.bundleFrom",
         {{"room", m.room},
          {"extent", std::string(name(m.extent))},
          {"day", written},
          {"device", shortName(m.device)}}});
    const auto photos = static_cast<std::int64_t>(m.photos.size() + m.reduced.size());
    const auto bytes = (m.totals.bytes + m.photoBytes() + megabyte - 1) / megabyte;
    say({"said.bundleHolds",
         {{"animals", m.totals.animals},
          {"entries", m.totals.entries},
          {"photos", photos},
          {"mb", static_cast<std::int64_t>(bytes)}}});
    if (m.totals.firstDay && m.totals.lastDay) {
        say({"said.bundleDays", {{"first", *m.totals.firstDay}, {"last", *m.totals.lastDay}}});
    }
    if (!m.withConfidential) say({"said.leftOut.confidential"});
    if (m.photoChoice == exchange::PhotoChoice::none) say({"said.leftOut.none"});
    if (m.photoChoice == exchange::PhotoChoice::reduced) say({"said.leftOut.reduced"});
    if (m.missingPhotos > 0) say({"said.leftOut.missing", {{"photos", m.missingPhotos}}});
}

json toJson(const MergeReport& merge) {
    return {{"added", merge.added},
            {"known", merge.known},
            {"unknown", merge.unknown},
            {"ahead", toJson(merge.ahead)},
            {"forked", toJson(merge.forked)},
            {"new_device", merge.isNewDevice},
            {"arrival", merge.arrival ? json(*merge.arrival) : json()}};
}

void warn(const std::vector<AheadDevice>& ahead, const std::vector<DeviceId>& forked,
          bool isNewDevice, std::int64_t differences, const Console& console) {
    const auto say = [&](const Message& message) { console.line(console.say(message)); };
    for (const auto& [device, days] : ahead) {
        say({"said.ahead", {{"device", shortName(device)}, {"days", days}}});
    }
    for (const auto& device : forked) say({"said.forked", {{"device", shortName(device)}}});
    if (isNewDevice) say({"said.newDevice"});
    if (differences > 0) say({"said.toSettle", {{"count", differences}}});
}

exchange::OnProgress showProgress(const Console& console) {
    if (console.isJson() || isatty(STDERR_FILENO) == 0) return {};
    auto shown = std::make_shared<std::string>();
    return [&console, shown](const exchange::Progress& progress) {
        auto text = console.say({stepIds.at(static_cast<std::size_t>(progress.step))});
        if (progress.total > 0) {
            text += fmt::format(" {} %", progress.done * 100 / progress.total);
        } else {
            text += fmt::format(" {}", progress.done);
        }
        if (text == *shown) return true;
        *shown = text;
        fmt::print(stderr, "\r{:<{}}", text, progressWidth);
        std::fflush(stderr);
        return true;
    };
}

void endProgress() {
    if (isatty(STDERR_FILENO) != 0) fmt::print(stderr, "\r{:<{}}\r", "", progressWidth);
}

}  // namespace burrow::terminal
