#include "viewmodels/airfilemodel.h"

#include <algorithm>

#include "room/air_log.h"
#include "room/tables.h"
#include "viewmodels/airwords.h"
#include "viewmodels/files.h"

namespace burrow {

void AirFileModel::setDesk(Desk* desk) {
    desk_ = desk;
    emit deskChanged();
    emit placeChanged();
}

void AirFileModel::setPlace(const QString& place) {
    if (place_ == place) return;
    place_ = place;
    emit placeChanged();
    look();
}

QString AirFileModel::placeName() const {
    return desk_ && !place_.isEmpty() ? airPlaceText(place_.toStdString(), *desk_) : QString();
}

void AirFileModel::setDates(int dates) {
    if (dates_ == dates) return;
    dates_ = dates;
    look();
}

void AirFileModel::choose(const QList<QUrl>& files) {
    if (files.isEmpty() || !desk_) return;
    dates_ = -1;
    asksDates_ = false;
    const auto path = pathOf(files.first());
    if (!path) return show(failAs(path));
    path_ = *path;
    fileName_ = toQt(path_.filename().string());
    look();
}

void AirFileModel::look() {
    if (path_.empty() || !desk_) return;
    isBusy_ = true;
    emit changed();
    std::optional<air::DateOrder> order;
    if (dates_ == 0) order = air::DateOrder::dayFirst;
    if (dates_ == 1) order = air::DateOrder::monthFirst;
    const auto& knowledge = desk_->knowledge();
    desk_->ask<Look>(
        this,
        [path = path_, place = place_.toStdString(), zone = knowledge.zone,
         tables = desk_->tables(), order](Book& book) -> Result<Look> {
            DeviceFiles device;
            BURROW_TRY(const auto bytes, device.read(path, largestAirFile));
            BURROW_TRY(auto file, readAirFile(textOf(bytes), zone, tables->air, order));
            if (file.log.samples.empty()) return fail(Trouble::badInput, {"air.log.none"});
            BURROW_TRY(const auto taken, airDrafts(book, place, file.log.samples, file.hash));
            return Look{std::make_shared<const AirFile>(std::move(file)), taken.added, taken.known};
        },
        [this](Result<Look> looked) { show(std::move(looked)); });
}

void AirFileModel::show(Result<Look> looked) {
    isBusy_ = false;
    trouble_.clear();
    look_ = {};
    std::vector<BadAirRow> rows;
    if (looked) {
        look_ = *std::move(looked);
        for (const auto& bad : look_.file->log.bad) {
            if (rows.size() == most) break;
            // Two rows of one line can't be told apart, and a key must be.
            if (!rows.empty() && rows.back().key == bad.line) continue;
            rows.push_back({bad.line,
                            desk_->say({"air.file.line", {{"line", std::int64_t{bad.line}}}}),
                            desk_->say(bad.why)});
        }
    } else {
        asksDates_ |= looked.error().message.id == "air.log.whichDate";
        trouble_ = desk_->say(looked.error().message);
    }
    bring(rows_, std::move(rows));
    emit changed();
}

QStringList AirFileModel::contents() const {
    QStringList list;
    if (!desk_ || !look_.file) return list;
    const auto& log = look_.file->log;
    const auto& zone = desk_->knowledge().zone;
    list.append(desk_->say({"air.file.readings",
                            {{"count", static_cast<std::int64_t>(log.samples.size())},
                             {"from", zone.dayOf(log.samples.front().at)},
                             {"to", zone.dayOf(log.samples.back().at)}}}));
    list.append(look_.added == 0 ? desk_->say("air.file.nothingNew")
                                 : desk_->say({"air.file.new",
                                               {{"added", std::int64_t{look_.added}},
                                                {"known", std::int64_t{look_.known}}}}));
    if (log.repeated > 0) {
        list.append(desk_->say({"air.file.repeated", {{"count", std::int64_t{log.repeated}}}}));
    }
    if (log.isFahrenheit) list.append(desk_->say("air.file.fahrenheit"));
    return list;
}

QString AirFileModel::badText() const {
    if (!desk_ || !look_.file || look_.file->log.bad.empty()) return {};
    const auto count = static_cast<std::int64_t>(look_.file->log.bad.size());
    return desk_->say({"air.file.bad", {{"count", count}}});
}

QString AirFileModel::moreBad() const {
    if (!desk_ || !look_.file || look_.file->log.bad.size() <= rows_.size()) return {};
    const auto count = static_cast<std::int64_t>(look_.file->log.bad.size() - rows_.size());
    return desk_->say({"air.file.moreBad", {{"count", count}}});
}

void AirFileModel::takeIn() {
    if (!desk_ || !hasAny() || isBusy_) return;
    isBusy_ = true;
    emit changed();
    Deed deed;
    deed.tag = placeName();
    deed.said = {"did.airTaken", {{"count", std::int64_t{look_.added}}}};
    deed.compose = [file = look_.file,
                    place = place_.toStdString()](Book& book) -> Result<std::vector<Draft>> {
        BURROW_TRY(auto taken, airDrafts(book, place, file->log.samples, file->hash));
        return std::move(taken.drafts);
    };
    desk_->act(this, std::move(deed), [this](const Result<ChangeSet>& changes) {
        isBusy_ = false;
        emit changed();
        if (changes) emit taken();
    });
}

QVariant AirFileModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case WhereRole: return row->where;
        case WhyRole: return row->why;
        default: return {};
    }
}

QHash<int, QByteArray> AirFileModel::roleNames() const {
    return {{WhereRole, "where"}, {WhyRole, "why"}};
}

}  // namespace burrow
