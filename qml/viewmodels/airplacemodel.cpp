#include "viewmodels/airplacemodel.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.h"
#include "room/tables.h"
#include "viewmodels/airwords.h"

namespace burrow {
namespace {

constexpr std::array spansInDays{3, 14, 60};
constexpr qsizetype mostAlarms = 5;

QVariantMap line(const QString& name, const QString& value, const QString& sub = {}) {
    return {{QStringLiteral("name"), name},
            {QStringLiteral("value"), value},
            {QStringLiteral("sub"), sub}};
}

template <class Unit>
QString valueText(const char* id, Unit value, const Desk& desk) {
    return desk.say({id, {{"value", tenths(value.value)}}});
}

template <class Unit>
QString rangeText(const char* id, const Range<Unit>& range, const Desk& desk) {
    return desk.say(
        {id, {{"least", tenths(range.least.value)}, {"most", tenths(range.most.value)}}});
}

}  // namespace

void AirPlaceModel::setDesk(Desk* desk) {
    desk_ = desk;
    emit deskChanged();
    connect(desk, &Desk::written, this, &AirPlaceModel::read);
    read();
}

void AirPlaceModel::setPlace(const QString& place) {
    if (place_ == place) return;
    place_ = place;
    emit placeChanged();
    read();
}

void AirPlaceModel::setSpan(int span) {
    if (span == span_ || span < 0 || span >= static_cast<int>(spansInDays.size())) return;
    span_ = span;
    read();
}

/// Whole days, so that the axis has a midnight at its beginning.
Range<Instant> AirPlaceModel::shown() const {
    const auto& knowledge = desk_->knowledge();
    const auto now = knowledge.clock.now();
    const auto days = spansInDays.at(static_cast<std::size_t>(span_));
    return {knowledge.zone.at(knowledge.zone.dayOf(now) - (days - 1), 0), now};
}

void AirPlaceModel::read() {
    if (!desk_ || !desk_->room() || place_.isEmpty()) return;
    desk_->ask<AirReport>(
        this,
        [room = desk_->room(), tables = desk_->tables(), when = shown(),
         wanted = place_.toStdString()](Book& book) -> Result<AirReport> {
            BURROW_TRY(const auto places, airPlaces(book));
            const auto found = std::ranges::find_if(places, [&](const AirPlace& place) {
                return lowerAscii(place.place) == lowerAscii(trimmed(wanted));
            });
            if (found == places.end()) return airReport(*room, wanted, {}, tables->air);
            BURROW_TRY(auto samples, airOf(book, *found, when));
            return airReport(*room, found->place, std::move(samples), tables->air);
        },
        [this](Result<AirReport> report) {
            if (report) show(*std::move(report));
        });
}

void AirPlaceModel::show(AirReport report) {
    report_ = std::move(report);
    isReady_ = true;
    warmth_ = plotOf(AirValue::warmth);
    humidity_ = plotOf(AirValue::humidity);
    std::vector<AirDayRow> rows;
    for (auto day = report_.days.rbegin(); day != report_.days.rend(); ++day) {
        rows.push_back(rowOf(*day));
    }
    bring(rows_, std::move(rows));
    emit changed();
}

AirDayRow AirPlaceModel::rowOf(const AirDay& day) const {
    AirDayRow row;
    row.key = toQt(isoDate(day.day));
    row.day = toQt(desk_->knowledge().words.day(day.day, desk_->today()));
    QStringList values;
    if (day.warmth) values.append(rangeText("air.range.celsius", *day.warmth, *desk_));
    if (day.humidity) values.append(rangeText("air.range.percent", *day.humidity, *desk_));
    row.value = values.join(QStringLiteral(", "));
    QStringList more;
    if (day.meanWarmth) {
        more.append(desk_->say({"air.covered", {{"value", tenths(day.meanWarmth->value)}}}));
    }
    if (day.dayDegrees) {
        more.append(desk_->say({"air.value.degrees", {{"value", tenths(*day.dayDegrees)}}}));
    }
    row.sub = more.join(QStringLiteral(", "));
    return row;
}

QVariantList AirPlaceModel::plotOf(AirValue which) const {
    QVariantList list;
    const auto& rules = desk_->tables()->air;
    for (const auto& stretch : stretchesOf(report_.samples, which, shown(), stretches, rules)) {
        list.append(QVariantMap{{QStringLiteral("at"), (stretch.place + 0.5) / stretches},
                                {QStringLiteral("low"), stretch.values.least},
                                {QStringLiteral("middle"), stretch.mean},
                                {QStringLiteral("high"), stretch.values.most},
                                {QStringLiteral("gap"), stretch.isAfterGap}});
    }
    return list;
}

/// Each midnight, named by its day; the plot leaves out what would touch.
QVariantList AirPlaceModel::labels() const {
    QVariantList list;
    if (!desk_) return list;
    const auto when = shown();
    const auto& zone = desk_->knowledge().zone;
    const auto today = desk_->today();
    const double whole = static_cast<double>(when.most.ms - when.least.ms);
    if (whole <= 0) return list;
    for (auto day = zone.dayOf(when.least); day <= zone.dayOf(when.most); day = day + 1) {
        const auto at = static_cast<double>(zone.at(day, 0).ms - when.least.ms) / whole;
        list.append(
            QVariantMap{{QStringLiteral("at"), std::clamp(at, 0.0, 1.0)},
                        {QStringLiteral("text"), toQt(desk_->knowledge().words.day(day, today))}});
    }
    return list;
}

QString AirPlaceModel::title() const {
    return desk_ ? airPlaceText(place_.toStdString(), *desk_) : QString();
}

QVariantList AirPlaceModel::now() const {
    QVariantList list;
    if (!desk_ || !report_.now) return list;
    const auto& now = *report_.now;
    const auto name = [this](const char* id) { return desk_->say(id); };
    list.append(line(name("airpage.last"), readingText(now.sample, *desk_),
                     momentText(now.sample.at, *desk_)));
    if (now.dewPoint) {
        list.append(line(name("airpage.dewPoint"),
                         valueText("air.value.celsius", *now.dewPoint, *desk_),
                         name("airpage.dewPoint.sub")));
    }
    if (now.absolute) {
        list.append(
            line(name("airpage.absolute"), valueText("air.value.grams", *now.absolute, *desk_)));
    }
    if (now.deficit) {
        list.append(line(name("airpage.deficit"),
                         valueText("air.value.hectopascals", *now.deficit, *desk_),
                         name("airpage.deficit.sub")));
    }
    if (report_.dayDegrees) {
        list.append(
            line(name("airpage.dayDegrees"), desk_->say({"air.dayDegrees",
                                                         {{"value", tenths(*report_.dayDegrees)},
                                                          {"days", std::int64_t{report_.warmDays}},
                                                          {"base", report_.base.value}}})));
    }
    return list;
}

QString AirPlaceModel::wanted() const {
    return desk_ && isReady_ ? wantedText(report_, *desk_) : QString();
}

QStringList AirPlaceModel::alarms() const {
    QStringList list;
    if (!desk_) return list;
    for (auto alarm = report_.alarms.rbegin(); alarm != report_.alarms.rend(); ++alarm) {
        if (list.size() == mostAlarms) break;
        auto text = momentText(alarm->from, *desk_) + QStringLiteral(": ") + desk_->say(alarm->why);
        if (alarm->isOpen) text += QLatin1Char(' ') + desk_->say("air.open");
        list.append(text);
    }
    return list;
}

QVariantList AirPlaceModel::spans() const {
    QVariantList list;
    if (!desk_) return list;
    for (const auto days : spansInDays) {
        list.append(QVariantMap{{QStringLiteral("word"),
                                 desk_->say({"airpage.days", {{"count", std::int64_t{days}}}})}});
    }
    return list;
}

double AirPlaceModel::wantedLow() const { return report_.wanted ? report_.wanted->least.value : 0; }

double AirPlaceModel::wantedHigh() const { return report_.wanted ? report_.wanted->most.value : 0; }

QString AirPlaceModel::wordsOf(AirValue which) const {
    if (!desk_ || report_.samples.empty()) return {};
    const auto& list = which == AirValue::warmth ? warmth_ : humidity_;
    if (list.isEmpty()) return {};
    double least = 1e9;
    double most = -1e9;
    for (const auto& entry : list) {
        const auto map = entry.toMap();
        least = std::min(least, map.value(QStringLiteral("low")).toDouble());
        most = std::max(most, map.value(QStringLiteral("high")).toDouble());
    }
    const auto last = list.last().toMap().value(QStringLiteral("middle")).toDouble();
    const auto& zone = desk_->knowledge().zone;
    return desk_->say({which == AirValue::warmth ? "air.plot" : "air.plotHumidity",
                       {{"from", zone.dayOf(report_.samples.front().at)},
                        {"to", zone.dayOf(report_.samples.back().at)},
                        {"least", tenths(least)},
                        {"most", tenths(most)},
                        {"last", tenths(last)}}});
}

QString AirPlaceModel::warmthWords() const { return wordsOf(AirValue::warmth); }

QString AirPlaceModel::humidityWords() const { return wordsOf(AirValue::humidity); }

QVariant AirPlaceModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case DayRole: return row->day;
        case ValueRole: return row->value;
        case SubRole: return row->sub;
        default: return {};
    }
}

QHash<int, QByteArray> AirPlaceModel::roleNames() const {
    return {{DayRole, "day"}, {ValueRole, "value"}, {SubRole, "sub"}};
}

}  // namespace burrow
