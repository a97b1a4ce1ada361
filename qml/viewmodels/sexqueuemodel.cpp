#include "viewmodels/sexqueuemodel.h"

#include <algorithm>

#include "room/tables.h"
#include "viewmodels/photofiles.h"

namespace burrow {

void SexQueueModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::written, this, &SexQueueModel::read);
    connect(desk, &Desk::stateChanged, this, &SexQueueModel::read);
    read();
    emit deskChanged();
}

void SexQueueModel::read() {
    if (!desk_) return;
    const auto tables = desk_->tables();
    const auto room = desk_->room();
    if (!room) return show({});
    desk_->ask<std::vector<ToBeSexed>>(
        this,
        [tables, room](Book& book) { return toBeSexed(book, tables->sexing, room->profiles()); },
        [this](const Result<std::vector<ToBeSexed>>& rows) {
            show(rows ? *rows : std::vector<ToBeSexed>());
        });
}

void SexQueueModel::show(const std::vector<ToBeSexed>& found) {
    std::vector<MoultToSex> rows;
    for (const auto& each : found) {
        auto resident = desk_->room() ? desk_->room()->find(each.subject) : nullptr;
        if (!resident) continue;
        const auto& moult = each.moult;
        rows.push_back({toQt(moult.moult.text()), std::move(resident), moult.day, moult.carapace,
                        static_cast<int>(moult.pictures.size()), each.waiting,
                        moult.pictures.front()});
    }
    isRead_ = true;
    bring(rows_, std::move(rows));
    emit countChanged();
}

QString SexQueueModel::summary() const {
    if (!desk_) return {};
    std::int64_t waiting = 0;
    std::int64_t open = 0;
    for (const auto& row : rows_) {
        waiting += row.waiting;
        open += row.waiting == 0 ? 1 : 0;
    }
    auto text =
        waiting > 0 || open == 0 ? desk_->say({"sexing.waiting", {{"count", waiting}}}) : QString();
    if (open == 0) return text;
    if (!text.isEmpty()) text += QStringLiteral(". ");
    return text + desk_->say({"sexing.stillOpen", {{"count", open}}});
}

QVariant SexQueueModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case MoultRole: return row->key;
        case TagRole: return toQt(row->resident->subject().number);
        case BinomialRole: return speciesText(*row->resident);
        case AboutRole: return aboutText(*row->resident, *desk_);
        case WhenRole: {
            const std::int64_t days = std::max(0, desk_->today() - row->day);
            return desk_->say({days == 0 ? "sexing.whenToday" : "sexing.when",
                               {{"day", row->day}, {"days", days}}});
        }
        case PhotosRole:
            return desk_->say({"sexing.photos", {{"count", std::int64_t{row->photos}}}});
        case ThumbnailRole: return thumbnailUrl(*desk_, row->picture);
        case LookedRole: return row->waiting == 0;
        case DetailRole:
            return data(index, WhenRole).toString() + QLatin1Char('\n') +
                   data(index, AboutRole).toString() + QStringLiteral(". ") +
                   data(index, PhotosRole).toString();
        case SpokenRole: {
            QString spoken =
                QStringLiteral("%1, %2, %3. %4, %5")
                    .arg(data(index, TagRole).toString(), data(index, BinomialRole).toString(),
                         data(index, AboutRole).toString(), data(index, WhenRole).toString(),
                         data(index, PhotosRole).toString());
            if (row->waiting == 0) spoken += QStringLiteral(". ") + desk_->say("sexing.lookedOpen");
            return spoken;
        }
        default: return {};
    }
}

QHash<int, QByteArray> SexQueueModel::roleNames() const {
    return {{MoultRole, "moult"},         {TagRole, "tag"},       {BinomialRole, "binomial"},
            {AboutRole, "about"},         {WhenRole, "when"},     {PhotosRole, "photos"},
            {ThumbnailRole, "thumbnail"}, {LookedRole, "looked"}, {DetailRole, "detail"},
            {SpokenRole, "spoken"}};
}

}  // namespace burrow
