#include "viewmodels/duefilter.h"

#include <algorithm>
#include <array>

namespace burrow {
namespace {

QString rackText(const Place& rack, const Desk& desk) {
    QStringList parts;
    if (!rack.room.empty()) parts.append(toQt(rack.room));
    if (!rack.rack.empty()) parts.append(desk.say({"place.rack", {{"rack", rack.rack}}}));
    return parts.isEmpty() ? desk.say("due.noRack") : parts.join(QStringLiteral(", "));
}

QString careText(Care care, const Desk& desk) {
    const auto id = "due.care." + std::string(name(care));
    return desk.say(id.c_str());
}

QString tubsText(std::int64_t count, const Desk& desk) {
    return desk.say({"shelves.tubs", {{"count", count}}});
}

DueChoice choiceOf(Care care, std::int64_t count, const DueFilter& filter, const Desk& desk) {
    DueChoice row;
    row.key = QStringLiteral("care ") + QString::fromStdString(std::string(name(care)));
    row.word = careText(care, desk);
    row.note = tubsText(count, desk);
    row.on = filter.care.contains(care);
    row.care = care;
    return row;
}

DueChoice choiceOf(const Place& rack, std::int64_t count, const DueFilter& filter,
                   const Desk& desk) {
    DueChoice row;
    row.key = QStringLiteral("place ") + toQt(rack.text());
    row.isPlace = true;
    row.word = rackText(rack, desk);
    row.note = tubsText(count, desk);
    row.on = filter.where == rack;
    row.place = rack;
    return row;
}

}  // namespace

void DueFilterModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &DueFilterModel::read);
    read();
    emit deskChanged();
}

void DueFilterModel::setAsking(bool on) {
    if (isAsking_ == on) return;
    isAsking_ = on;
    read();
    emit askingChanged();
}

std::vector<DueChoice> DueFilterModel::careRows(const std::vector<Visit>& visits) const {
    std::array<std::int64_t, allCare.size()> counts{};
    for (const auto& visit : visits) {
        for (const auto& answer : visit.answers) ++counts.at(static_cast<std::size_t>(answer.care));
    }
    std::vector<DueChoice> rows;
    for (const auto care : allCare) {
        const auto count = counts.at(static_cast<std::size_t>(care));
        if (count > 0 || filter_.care.contains(care)) {
            rows.push_back(choiceOf(care, count, filter_, *desk_));
        }
    }
    return rows;
}

/// Nothing to choose between where all stand in the same one.
std::vector<DueChoice> DueFilterModel::placeRows(const std::vector<Visit>& visits) const {
    std::vector<std::pair<Place, std::int64_t>> racks;
    const auto count = [&](const Place& rack, std::int64_t more) {
        const auto found = std::find_if(racks.begin(), racks.end(),
                                        [&](const auto& each) { return each.first == rack; });
        if (found == racks.end()) {
            racks.emplace_back(rack, more);
        } else {
            found->second += more;
        }
    };
    for (const auto& visit : visits) count(rackOf(visit.resident->kept.place), 1);
    if (filter_.where) count(*filter_.where, 0);
    std::vector<DueChoice> rows;
    if (racks.size() < 2 && !filter_.where) return rows;
    std::sort(racks.begin(), racks.end(),
              [](const auto& a, const auto& b) { return compareWalk(a.first, b.first) < 0; });
    for (const auto& [rack, tubs] : racks) rows.push_back(choiceOf(rack, tubs, filter_, *desk_));
    return rows;
}

void DueFilterModel::read() {
    std::vector<DueChoice> rows;
    if (isAsking_ && desk_ && desk_->room()) {
        const auto visits = desk_->room()->visits();
        rows = careRows(visits);
        for (auto& row : placeRows(visits)) rows.push_back(std::move(row));
        for (std::size_t i = 0; i < rows.size(); ++i) {
            rows[i].isFirst = i == 0 || rows[i - 1].isPlace != rows[i].isPlace;
        }
    }
    bring(rows_, std::move(rows));
}

void DueFilterModel::change(const DueFilter& filter) {
    if (filter_ == filter) return;
    filter_ = filter;
    read();
    emit changed();
}

void DueFilterModel::setWhich(Which which) {
    auto next = filter_;
    next.which = static_cast<DueFilter::Which>(which);
    change(next);
}

void DueFilterModel::setQuarantineApart(bool on) {
    auto next = filter_;
    next.quarantineApart = on;
    change(next);
}

void DueFilterModel::toggle(const QString& key) {
    const auto row = std::find_if(rows_.begin(), rows_.end(),
                                  [&](const DueChoice& each) { return each.key == key; });
    if (row == rows_.end()) return;
    auto next = filter_;
    if (row->isPlace) {
        next.where = row->on ? std::nullopt : std::optional(row->place);
    } else if (next.care.erase(row->care) == 0) {
        next.care.insert(row->care);
    }
    change(next);
}

void DueFilterModel::clear() { change({}); }

QString DueFilterModel::text() const {
    if (!desk_ || !filter_.isActive()) return {};
    QStringList parts;
    for (const auto care : filter_.care) parts.append(careText(care, *desk_));
    if (filter_.where) parts.append(rackText(*filter_.where, *desk_));
    if (filter_.which == DueFilter::Which::late) parts.append(desk_->say("due.onlyLate"));
    if (filter_.which == DueFilter::Which::held) parts.append(desk_->say("due.onlyHeld"));
    if (!filter_.quarantineApart) parts.append(desk_->say("due.quarantineAmong"));
    return parts.join(QStringLiteral(", "));
}

QVariant DueFilterModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case KeyRole: return row->key;
        case WordRole: return row->word;
        case NoteRole: return row->note;
        case OnRole: return row->on;
        case PlaceRole: return row->isPlace;
        case FirstRole: return row->isFirst;
        default: return {};
    }
}

QHash<int, QByteArray> DueFilterModel::roleNames() const {
    return {{KeyRole, "key"}, {WordRole, "word"},   {NoteRole, "note"},
            {OnRole, "on"},   {PlaceRole, "place"}, {FirstRole, "first"}};
}

}  // namespace burrow
