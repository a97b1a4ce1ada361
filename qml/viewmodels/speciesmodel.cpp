#include "viewmodels/speciesmodel.h"

#include <algorithm>

#include "viewmodels/profilewords.h"

namespace burrow {

void SpeciesModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &SpeciesModel::read);
    read();
    emit deskChanged();
}

void SpeciesModel::setFilter(const QString& filter) {
    if (filter_ == filter) return;
    filter_ = filter;
    if (desk_) return read();
    emit filterChanged();
}

bool SpeciesModel::fits(const Profile& profile) const {
    const auto wanted = filter_.simplified();
    const auto has = [&wanted](const std::string& name) {
        return toQt(name).contains(wanted, Qt::CaseInsensitive);
    };
    return has(profile.name) ||
           std::any_of(profile.otherNames.begin(), profile.otherNames.end(), has) ||
           std::any_of(profile.tradeNames.begin(), profile.tradeNames.end(), has);
}

QString SpeciesModel::noteFor(const Profile& profile) const {
    auto note = kindText(profile, *desk_);
    std::int64_t kept = 0;
    if (desk_->room()) {
        for (const auto& resident : desk_->room()->residents()) {
            kept += resident->profile == &profile && resident->subject().isKept();
        }
    }
    if (profile.origin == ProfileOrigin::keeper) note += ". " + desk_->say("species.fromYou");
    if (kept > 0) note += ". " + desk_->say({"species.kept", {{"count", kept}}});
    return note;
}

void SpeciesModel::read() {
    std::vector<SpeciesRow> rows;
    for (const auto& profile : desk_->profiles().all()) {
        if (!fits(profile)) continue;
        rows.push_back({toQt(profile.name), joinedNames(profile.tradeNames), noteFor(profile)});
    }
    bring(rows_, std::move(rows));
    emit filterChanged();
}

QString SpeciesModel::summary() const {
    if (!desk_) return {};
    return desk_->say({"species.summary", {{"count", std::int64_t{count()}}}});
}

QVariant SpeciesModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case NameRole: return row->key;
        case TradeNamesRole: return row->tradeNames;
        case NoteRole: return row->note;
        default: return {};
    }
}

QHash<int, QByteArray> SpeciesModel::roleNames() const {
    return {{NameRole, "name"}, {TradeNamesRole, "tradeNames"}, {NoteRole, "note"}};
}

}  // namespace burrow
