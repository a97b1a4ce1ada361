#include "viewmodels/shelvesmodel.h"

#include <algorithm>
#include <unordered_map>

namespace burrow {
namespace {

QString positionText(const Place& place, const Desk& desk) {
    if (place.position.empty()) return {};
    return desk.say({"shelves.tub", {{"position", place.position}}});
}

}  // namespace

void ShelvesModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &ShelvesModel::read);
    read();
    emit deskChanged();
}

void ShelvesModel::setShelf(const QString& shelf) {
    if (shelf_ == shelf) return;
    shelf_ = shelf;
    filter();
    emit filterChanged();
}

void ShelvesModel::setOneShelf(bool on) {
    if (isOneShelf_ == on) return;
    isOneShelf_ = on;
    filter();
    emit filterChanged();
}

void ShelvesModel::setWithGone(bool on) {
    if (withGone_ == on) return;
    withGone_ = on;
    filter();
    emit filterChanged();
}

ShelvesModel::Known ShelvesModel::know(const ResidentPtr& resident) const {
    ShelvesRow row;
    const auto& subject = resident->subject();
    row.key = toQt(subject.id.text());
    row.tag = toQt(subject.number);
    row.binomial = speciesText(*resident);
    row.gone = !subject.isKept();
    row.shelf = toQt(resident->kept.place.shelfOnly().text());
    const auto about = aboutText(*resident, *desk_);
    const auto& main = mainAnswer(resident->plan);
    row.punch = isListed(main) ? punchFor(*resident, main) : punchFor(*resident);
    QStringList more;
    if (subject.standing == Standing::here) {
        row.verb = about + '.';
        more = {positionText(resident->kept.place, *desk_), sizeText(*resident, *desk_)};
    } else {
        row.verb = desk_->say(resident->plan.of(Care::feed).reason) + '.';
        more = {about, sizeText(*resident, *desk_)};
    }
    more.removeAll(QString());
    row.reason = more.join(QStringLiteral(", "));
    return {resident, row};
}

void ShelvesModel::read() {
    std::unordered_map<const Resident*, Known> before;
    for (auto& known : everyone_) before.emplace(known.resident.get(), std::move(known));
    everyone_.clear();
    if (desk_->room()) {
        for (const auto& resident : desk_->room()->residents()) {
            const auto found = before.find(resident.get());
            everyone_.push_back(found != before.end() ? std::move(found->second) : know(resident));
        }
    }
    filter();
}

/// A shelf is headed again where its quarantine comes after all the rest.
void ShelvesModel::addHeadings(std::vector<ShelvesRow>& rows) const {
    for (auto first = rows.begin(); first != rows.end();) {
        const auto end = std::find_if(
            first, rows.end(), [&](const ShelvesRow& row) { return row.shelf != first->shelf; });
        first->heading = shelfText(Place::parse(first->shelf.toStdString()), *desk_);
        first->headingNote = desk_->say({"shelves.tubs", {{"count", std::int64_t{end - first}}}});
        first = end;
    }
}

void ShelvesModel::filter() {
    if (!desk_) return;
    std::vector<ShelvesRow> shown;
    for (const auto& known : everyone_) {
        const bool isHere = !isOneShelf_ || known.row.shelf == shelf_;
        if (isHere && (withGone_ || !known.row.gone)) shown.push_back(known.row);
    }
    addHeadings(shown);
    bring(rows_, std::move(shown));
    emit summaryChanged();
}

QString ShelvesModel::summary() const {
    if (!desk_ || !desk_->room()) return {};
    std::int64_t kept = 0;
    std::int64_t away = 0;
    for (const auto& known : everyone_) {
        const auto& subject = known.resident->subject();
        kept += subject.isKept() ? 1 : 0;
        away += subject.standing == Standing::onLoan ? 1 : 0;
    }
    return desk_->say(
        {away > 0 ? "shelves.keptAndAway" : "shelves.kept", {{"count", kept}, {"away", away}}});
}

QString ShelvesModel::tubs() const {
    if (!desk_) return {};
    return desk_->say({"shelves.tubs", {{"count", std::int64_t{count()}}}});
}

QVariant ShelvesModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case SubjectRole: return row->key;
        case TagRole: return row->tag;
        case BinomialRole: return row->binomial;
        case VerbRole: return row->verb;
        case ReasonRole: return row->reason;
        case PunchRole: return row->punch;
        case ShelfRole: return row->shelf;
        case HeadingRole: return row->heading;
        case HeadingNoteRole: return row->headingNote;
        case GoneRole: return row->gone;
        default: return {};
    }
}

QHash<int, QByteArray> ShelvesModel::roleNames() const {
    return {{SubjectRole, "subject"}, {TagRole, "tag"},         {BinomialRole, "binomial"},
            {VerbRole, "verb"},       {ReasonRole, "reason"},   {PunchRole, "punch"},
            {ShelfRole, "shelf"},     {HeadingRole, "heading"}, {HeadingNoteRole, "headingNote"},
            {GoneRole, "gone"}};
}

}  // namespace burrow
