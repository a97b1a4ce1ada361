#include "viewmodels/airmodel.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "room/air_file.h"
#include "room/tables.h"
#include "viewmodels/airwords.h"

namespace burrow {
namespace {

constexpr std::int64_t msPerDay = 86'400'000;
/// What is shown of the last readings: enough to see what is wrong now.
constexpr int daysShown = 3;

/// The newest alarm that still lasts.
QString openAlarm(const AirReport& report, const Desk& desk) {
    const auto open = std::find_if(report.alarms.rbegin(), report.alarms.rend(),
                                   [](const air::Alarm& alarm) { return alarm.isOpen; });
    return open == report.alarms.rend() ? QString() : desk.say(open->why);
}

/// The last reading of a place, however old, with what was read shortly before it.
Result<std::vector<air::Sample>> newestOf(Book& book, const AirPlace& place, Instant now) {
    for (const int back : {daysShown, 31, 366}) {
        BURROW_TRY(auto samples, airOf(book, place, {{now.ms - back * msPerDay}, now}));
        if (!samples.empty()) return samples;
    }
    return std::vector<air::Sample>{};
}

}  // namespace

void AirModel::setDesk(Desk* desk) {
    desk_ = desk;
    emit deskChanged();
    connect(desk, &Desk::written, this, &AirModel::read);
    connect(desk, &Desk::roomChanged, this, &AirModel::read);
    read();
}

void AirModel::read() {
    if (!desk_ || !desk_->room()) return;
    desk_->ask<std::vector<AirReport>>(
        this,
        [room = desk_->room(), tables = desk_->tables(),
         now = desk_->knowledge().clock.now()](Book& book) -> Result<std::vector<AirReport>> {
            std::vector<AirReport> reports;
            BURROW_TRY(const auto places, airPlaces(book));
            for (const auto& place : places) {
                BURROW_TRY(auto samples, newestOf(book, place, now));
                reports.push_back(airReport(*room, place.place, std::move(samples), tables->air));
            }
            return reports;
        },
        [this](const Result<std::vector<AirReport>>& reports) {
            if (reports) show(*reports);
        });
}

void AirModel::show(const std::vector<AirReport>& reports) {
    std::vector<AirRow> rows;
    for (const auto& report : reports) {
        AirRow row;
        row.key = toQt(report.place);
        row.name = airPlaceText(report.place, *desk_);
        if (report.now) {
            row.value = readingText(report.now->sample, *desk_);
            row.when = momentText(report.now->sample.at, *desk_);
        }
        row.alarm = openAlarm(report, *desk_);
        rows.push_back(std::move(row));
    }
    isReady_ = true;
    choices_ = choicesFor(reports);
    bring(rows_, std::move(rows));
    emit changed();
}

QVariantList AirModel::choicesFor(const std::vector<AirReport>& reports) const {
    QVariantList list;
    std::set<std::string> known;
    const auto add = [&](const std::string& place) {
        if (!known.insert(lowerAscii(place)).second) return;
        list.append(QVariantMap{{QStringLiteral("place"), toQt(place)},
                                {QStringLiteral("name"), airPlaceText(place, *desk_)}});
    };
    for (const auto& report : reports) add(report.place);
    if (desk_->room()) {
        for (const auto& place : placesOf(*desk_->room())) add(place);
    }
    return list;
}

QString AirModel::summary() const {
    if (!desk_ || !isReady_ || rows_.empty()) return {};
    const auto alarmed =
        std::ranges::count_if(rows_, [](const AirRow& row) { return !row.alarm.isEmpty(); });
    return desk_->say({alarmed > 0 ? "airpage.alarmed" : "airpage.places",
                       {{"count", static_cast<std::int64_t>(rows_.size())},
                        {"alarmed", static_cast<std::int64_t>(alarmed)}}});
}

void AirModel::clearErrors() {
    placeError_.clear();
    temperatureError_.clear();
    humidityError_.clear();
    emit errorsChanged();
}

void AirModel::write(const QString& place, const QString& temperature, const QString& humidity) {
    if (!desk_) return;
    clearErrors();
    air::Sample sample{desk_->knowledge().clock.now(), std::nullopt, std::nullopt};
    const auto take = [this](const QString& text, auto readOne, auto& into, QString& error) {
        if (text.trimmed().isEmpty()) return;
        const auto value = readOne(text.toStdString());
        if (value) {
            into = *value;
        } else {
            error = desk_->say(value.error().message);
        }
    };
    take(temperature, readTemperature, sample.temperature, temperatureError_);
    take(humidity, readHumidity, sample.humidity, humidityError_);
    if (place.trimmed().isEmpty()) placeError_ = desk_->say("air.noPlace");
    const bool isRead = temperatureError_.isEmpty() && humidityError_.isEmpty();
    if (isRead && !sample.temperature && !sample.humidity) {
        temperatureError_ = desk_->say("air.noReading");
    }
    emit errorsChanged();
    if (!placeError_.isEmpty() || !temperatureError_.isEmpty() || !humidityError_.isEmpty()) {
        return;
    }
    Deed deed;
    deed.tag = airPlaceText(place.trimmed().toStdString(), *desk_);
    deed.said = {"did.airTyped", {{"text", readingText(sample, *desk_).toStdString()}}};
    deed.compose = [place = place.toStdString(), sample](Book& book) -> Result<std::vector<Draft>> {
        BURROW_TRY(auto taken, airDrafts(book, place, std::span(&sample, 1)));
        return std::move(taken.drafts);
    };
    desk_->act(this, std::move(deed), [this](const Result<ChangeSet>& changes) {
        if (changes) emit kept();
    });
}

QVariant AirModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case PlaceRole: return row->key;
        case NameRole: return row->name;
        case ValueRole: return row->value;
        case WhenRole: return row->when;
        case AlarmRole: return row->alarm;
        default: return {};
    }
}

QHash<int, QByteArray> AirModel::roleNames() const {
    return {{PlaceRole, "place"},
            {NameRole, "name"},
            {ValueRole, "value"},
            {WhenRole, "when"},
            {AlarmRole, "alarm"}};
}

}  // namespace burrow
