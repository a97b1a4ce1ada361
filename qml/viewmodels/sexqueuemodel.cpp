#include "viewmodels/sexqueuemodel.h"

#include <algorithm>

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
    desk_->ask<std::vector<MoultPhoto>>(
        this, [](Book& book) { return photosToSex(book); },
        [this](const Result<std::vector<MoultPhoto>>& photos) {
            show(photos ? *photos : std::vector<MoultPhoto>());
        });
}

void SexQueueModel::show(const std::vector<MoultPhoto>& photos) {
    std::vector<MoultToSex> rows;
    for (const auto& photo : photos) {
        const auto key = toQt(photo.moult.text());
        const auto known = std::find_if(rows.begin(), rows.end(),
                                        [&](const MoultToSex& row) { return row.key == key; });
        if (known != rows.end()) {
            ++known->photos;
            continue;
        }
        auto resident = desk_->room() ? desk_->room()->find(photo.subject) : nullptr;
        // A group's moult belongs to none of its members in particular.
        if (!resident || resident->subject().form != Form::animal) continue;
        rows.push_back({key, std::move(resident), photo.day, 1, photo.picture});
    }
    isRead_ = true;
    bring(rows_, std::move(rows));
    emit countChanged();
}

QString SexQueueModel::summary() const {
    if (!desk_) return {};
    return desk_->say({"sexing.waiting", {{"count", std::int64_t{count()}}}});
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
        default: return {};
    }
}

QHash<int, QByteArray> SexQueueModel::roleNames() const {
    return {{MoultRole, "moult"},        {TagRole, "tag"},   {BinomialRole, "binomial"},
            {AboutRole, "about"},        {WhenRole, "when"}, {PhotosRole, "photos"},
            {ThumbnailRole, "thumbnail"}};
}

}  // namespace burrow
