#include "viewmodels/filewords.h"

#include <fmt/format.h>

#include <cmath>

#include "viewmodels/wording.h"

namespace burrow {

QString fileSizeText(std::uint64_t bytes, const Desk& desk) {
    const auto size = static_cast<double>(bytes);
    if (size < 999'500) {
        const auto kilobytes = static_cast<std::int64_t>(std::ceil(size / 1000));
        return desk.say({"file.kB", {{"size", kilobytes}}});
    }
    if (size < 999.5e6) return desk.say({"file.MB", {{"size", std::round(size / 1e5) / 10}}});
    return desk.say({"file.GB", {{"size", std::round(size / 1e8) / 10}}});
}

std::string timeText(Instant instant, const Desk& desk) {
    const int second = desk.knowledge().zone.secondOfDay(instant);
    return fmt::format("{:02}:{:02}", second / 3600, second / 60 % 60);
}

QString entriesText(const exchange::Manifest& manifest, const Desk& desk) {
    const auto photos = static_cast<std::int64_t>(manifest.photos.size() + manifest.reduced.size());
    const std::string id = "file.made." + std::string(name(manifest.photoChoice));
    return desk.say({id, {{"entries", manifest.totals.entries}, {"photos", photos}}});
}

QString titleText(const exchange::Manifest& manifest, const Desk& desk) {
    return desk.say({"file.title",
                     {{"room", manifest.room},
                      {"day", desk.knowledge().zone.dayOf(manifest.writtenAt)},
                      {"time", timeText(manifest.writtenAt, desk)}}});
}

}  // namespace burrow
