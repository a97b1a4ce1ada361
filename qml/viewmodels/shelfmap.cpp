#include "viewmodels/shelfmap.h"

#include <algorithm>

#include "base/text.h"
#include "room/due_filter.h"
#include "viewmodels/duetally.h"

namespace burrow {
namespace {

/// What the map needs to know of one of many: nobody's plan is unpacked for it.
struct Tub {
    Place place;
    std::string number;
    Glance glance;
};

bool standsBefore(const Tub& a, const Tub& b) {
    if (const int order = compareWalk(a.place, b.place); order != 0) return order < 0;
    return compareNatural(a.number, b.number) < 0;
}

/// All who stand in the room, by place: quarantine, which is walked last, stands among the rest.
std::vector<Tub> byPlace(const Room& room) {
    std::vector<Tub> here;
    room.forEach([&](const StubPtr& stub) {
        if (stub->glance().standing != Standing::here) return;
        auto walk = stub->walk();
        here.push_back({std::move(walk.place), std::move(walk.number), stub->glance()});
    });
    std::stable_sort(here.begin(), here.end(), standsBefore);
    return here;
}

QString holeFor(const Glance& glance) {
    if (!glance.isListed()) return QStringLiteral("done");
    return glance.isDueAtAll() ? QStringLiteral("open") : QStringLiteral("slash");
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

ShelfMapRow rowFor(std::span<const Tub> here, const Desk& desk) {
    const auto shelf = here.front().place.shelfOnly();
    ShelfMapRow row;
    row.key = toQt(shelf.text());
    row.name = nameOf(shelf, desk);
    DueTally tally;
    for (const auto& tub : here) {
        row.holes.append(holeFor(tub.glance));
        if (const auto main = tub.glance.main()) tally.add(*main, tub.glance.isHeld());
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
    const auto here = desk_->room() ? byPlace(*desk_->room()) : std::vector<Tub>();
    std::optional<Place> rack;
    for (auto first = here.begin(); first != here.end();) {
        const auto shelf = first->place.shelfOnly();
        const auto end = std::find_if(
            first, here.end(), [&](const Tub& one) { return one.place.shelfOnly() != shelf; });
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
