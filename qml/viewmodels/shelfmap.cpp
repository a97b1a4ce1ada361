#include "viewmodels/shelfmap.h"

#include <algorithm>

#include "base/text.h"
#include "room/due_filter.h"
#include "viewmodels/duetally.h"

namespace burrow {
namespace {

/// All who stand in the room, by place: quarantine, which is walked last, stands among the rest.
std::vector<ResidentPtr> byPlace(const Room& room) {
    std::vector<ResidentPtr> here;
    const auto all = room.residents();
    std::copy_if(all.begin(), all.end(), std::back_inserter(here),
                 [](const ResidentPtr& one) { return one->subject().standing == Standing::here; });
    std::stable_sort(here.begin(), here.end(), [](const ResidentPtr& a, const ResidentPtr& b) {
        if (const int order = compareWalk(a->kept.place, b->kept.place); order != 0) {
            return order < 0;
        }
        return compareNatural(a->subject().number, b->subject().number) < 0;
    });
    return here;
}

QString holeFor(const Plan& plan) {
    bool isHeld = false;
    for (const auto& answer : plan.answers) {
        if (!isListed(answer)) continue;
        if (answer.state == State::due) return QStringLiteral("open");
        isHeld = true;
    }
    return isHeld ? QStringLiteral("slash") : QStringLiteral("done");
}

QString rackText(const Place& shelf, const Desk& desk) {
    QStringList parts;
    if (!shelf.room.empty()) parts.append(toQt(shelf.room));
    if (!shelf.rack.empty()) parts.append(desk.say({"place.rack", {{"rack", shelf.rack}}}));
    return parts.join(QStringLiteral(", "));
}

QString nameOf(const Place& shelf, const Desk& desk) {
    if (!shelf.shelf.empty()) return desk.say({"place.shelf", {{"shelf", shelf.shelf}}});
    return desk.say(shelf.rack.empty() && shelf.room.empty() ? "place.none" : "map.noShelf");
}

template <class Residents>
ShelfMapRow rowFor(const Residents& here, const Desk& desk) {
    const auto shelf = here.front()->kept.place.shelfOnly();
    ShelfMapRow row;
    row.key = toQt(shelf.text());
    row.name = nameOf(shelf, desk);
    DueTally tally;
    for (const auto& resident : here) {
        row.holes.append(holeFor(resident->plan));
        const auto& main = mainAnswer(resident->plan);
        if (isListed(main)) tally.add(main);
    }
    row.note = desk.say({"shelves.tubs", {{"count", static_cast<std::int64_t>(here.size())}}});
    if (const auto asked = tally.text(desk); !asked.isEmpty()) row.note += ", " + asked;
    return row;
}

}  // namespace

void ShelfMapModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &ShelfMapModel::read);
    read();
    emit deskChanged();
}

void ShelfMapModel::read() {
    std::vector<ShelfMapRow> rows;
    const auto here = desk_->room() ? byPlace(*desk_->room()) : std::vector<ResidentPtr>();
    std::optional<Place> rack;
    for (auto first = here.begin(); first != here.end();) {
        const auto shelf = (*first)->kept.place.shelfOnly();
        const auto end = std::find_if(first, here.end(), [&](const ResidentPtr& one) {
            return one->kept.place.shelfOnly() != shelf;
        });
        auto row = rowFor(std::span(first, end), *desk_);
        if (rack != rackOf(shelf)) row.heading = rackText(shelf, *desk_);
        rack = rackOf(shelf);
        rows.push_back(std::move(row));
        first = end;
    }
    bring(rows_, std::move(rows));
    emit countChanged();
}

QVariant ShelfMapModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case ShelfRole: return row->key;
        case HeadingRole: return row->heading;
        case NameRole: return row->name;
        case NoteRole: return row->note;
        case HolesRole: return row->holes;
        default: return {};
    }
}

QHash<int, QByteArray> ShelfMapModel::roleNames() const {
    return {{ShelfRole, "shelf"},
            {HeadingRole, "heading"},
            {NameRole, "name"},
            {NoteRole, "note"},
            {HolesRole, "holes"}};
}

}  // namespace burrow
