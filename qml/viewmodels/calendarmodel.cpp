#include "viewmodels/calendarmodel.h"

#include <algorithm>
#include <array>

#include "room/calendar.h"
#include "viewmodels/files.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

constexpr std::array spansInDays{30, 60, 120};
constexpr std::size_t mostShown = 5;

}  // namespace

void CalendarModel::setDesk(Desk* desk) {
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &CalendarModel::read);
    read();
}

void CalendarModel::setSharer(Sharer* sharer) {
    sharer_ = sharer;
    emit changed();
}

void CalendarModel::read() {
    if (desk_ && desk_->room()) {
        const auto& knowledge = desk_->knowledge();
        calendar_ = calendarOf(*desk_->room(), knowledge.words, knowledge.clock.now(),
                               spansInDays.at(static_cast<std::size_t>(span_)));
    }
    emit changed();
}

QVariantList CalendarModel::spans() const {
    QVariantList list;
    if (!desk_) return list;
    for (const auto days : spansInDays) {
        list.append(QVariantMap{{QStringLiteral("word"),
                                 desk_->say({"calendar.days", {{"count", std::int64_t{days}}}})}});
    }
    return list;
}

void CalendarModel::setSpan(int span) {
    if (span == span_ || span < 0 || span >= static_cast<int>(spansInDays.size())) return;
    span_ = span;
    savedText_.clear();
    read();
}

QString CalendarModel::contents() const {
    if (!desk_) return {};
    if (!hasAny()) return desk_->say("calendar.none");
    const auto count = static_cast<std::int64_t>(calendar_.events.size());
    return desk_->say({"calendar.count", {{"count", count}}});
}

QVariantList CalendarModel::first() const {
    auto events = calendar_.events;
    std::stable_sort(events.begin(), events.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    // What is still to come shows best what a calendar will show.
    const auto today = desk_ ? desk_->today() : CivilDay{};
    auto from = std::find_if(events.begin(), events.end(),
                             [&](const auto& event) { return event.first >= today; });
    QVariantList list;
    for (; from != events.end() && static_cast<std::size_t>(list.size()) < mostShown; ++from) {
        list.append(QVariantMap{
            {QStringLiteral("name"), toQt(desk_->knowledge().words.day(from->first, today))},
            {QStringLiteral("value"), toQt(from->summary)}});
    }
    return list;
}

std::string CalendarModel::stem() const {
    return fileStem(desk_->room()->info().name, "room") + "-due";
}

Done CalendarModel::write(const std::filesystem::path& path) {
    // The hour at which it is written tells calendars which of two files is the newer.
    calendar_.writtenAt = desk_->knowledge().clock.now();
    DeviceFiles files;
    return files.write(path, bytesOf(exchange::icalendar(calendar_)));
}

void CalendarModel::tell(const Error& error) {
    savedText_.clear();
    trouble_ = desk_->say(error.message);
    emit changed();
}

void CalendarModel::saveTo(const QUrl& folder) {
    if (!hasAny()) return;
    const auto place = pathOf(folder);
    if (!place) return tell(place.error());
    const auto path = freePath(*place, stem(), ".ics");
    if (const auto written = write(path); !written) return tell(written.error());
    trouble_.clear();
    savedText_ = desk_->say(
        {"sheet.saved",
         {{"file", path.filename().string()}, {"folder", path.parent_path().filename().string()}}});
    emit changed();
}

void CalendarModel::share() {
    if (!hasAny() || !canShare()) return;
    const auto path = sharer_->folder() / (stem() + ".ics");
    if (const auto written = write(path); !written) return tell(written.error());
    if (const auto shared = sharer_->share(path); !shared) return tell(shared.error());
    savedText_.clear();
    trouble_.clear();
    emit changed();
}

}  // namespace burrow
