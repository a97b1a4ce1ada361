#include "viewmodels/duemodel.h"

#include <algorithm>

#include "viewmodels/deeds.h"
#include "viewmodels/duetally.h"

namespace burrow {

void DueModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &DueModel::read);
    read();
    emit deskChanged();
}

void DueModel::setFilter(DueFilterModel* filter) {
    if (filter_ == filter) return;
    if (filter_) disconnect(filter_, nullptr, this, nullptr);
    filter_ = filter;
    if (filter_) connect(filter_, &DueFilterModel::changed, this, &DueModel::read);
    read();
    emit filterChanged();
}

void DueModel::read() {
    if (!desk_) return;
    auto visits = desk_->room() ? desk_->room()->visits() : std::vector<Visit>();
    if (filter_ && filter_->isActive()) {
        visits = narrowed(std::move(visits), filter_->filter(), desk_->today());
    }
    summarise(visits);
    bring(rows_, rowsFor(std::move(visits)));
    emit summaryChanged();
}

std::vector<DueRow> DueModel::rowsFor(std::vector<Visit> visits) const {
    std::vector<DueRow> rows;
    rows.reserve(visits.size());
    // Each shelf's tally stands on its first row, so rows are gone through shelf by shelf.
    for (std::size_t first = 0; first < visits.size();) {
        const auto shelf = visits[first].resident->kept.place.shelfOnly();
        DueTally tally;
        auto end = first;
        for (; end < visits.size() && visits[end].resident->kept.place.shelfOnly() == shelf;
             ++end) {
            tally.add(visits[end].answers.front());
        }
        for (auto at = first; at < end; ++at) {
            DueRow row{
                toQt(visits[at].resident->subject().id.text()), std::move(visits[at]), {}, {}};
            if (at == first) {
                row.heading = shelfText(shelf, *desk_);
                row.headingNote = tally.text(*desk_);
            }
            rows.push_back(std::move(row));
        }
        first = end;
    }
    return rows;
}

void DueModel::summarise(const std::vector<Visit>& visits) {
    summary_.clear();
    nothing_.clear();
    if (!desk_->room()) return;
    DueTally all;
    for (const auto& visit : visits) all.add(visit.answers.front());
    summary_ = toQt(desk_->knowledge().words.longDay(desk_->today()));
    if (const auto text = all.text(*desk_); !text.isEmpty()) summary_ += ". " + text;
    if (!visits.empty()) return;
    if (filter_ && filter_->isActive()) {
        nothing_ = desk_->say("due.noneFits");
        return;
    }
    std::optional<CivilDay> next;
    for (const auto& resident : desk_->room()->residents()) {
        for (const auto& answer : resident->plan.answers) {
            if (answer.state != State::waiting || !answer.window) continue;
            if (!next || answer.window->opens < *next) next = answer.window->opens;
        }
    }
    nothing_ =
        next ? desk_->say({"due.nothingUntil", {{"day", *next}}}) : desk_->say("due.nothing");
}

void DueModel::logUsual(const QString& subject) {
    const auto resident = residentOf(*desk_, subject);
    if (resident) logFact(*desk_, this, *resident, usualFeeding(*resident, *desk_));
}

QVariant DueModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    const auto& resident = *row->visit.resident;
    const auto& main = row->visit.answers.front();
    switch (role) {
        case SubjectRole: return row->key;
        case TagRole: return toQt(resident.subject().number);
        case BinomialRole: return speciesText(resident);
        case HeadingRole: return row->heading;
        case HeadingNoteRole: return row->headingNote;
        case PunchRole: return punchFor(resident, main);
        case VerbRole: return verbText(resident, main, *desk_);
        case ReasonRole: return desk_->say(main.reason) + alsoText(row->visit, *desk_);
        case HeldRole: return main.state == State::hold;
        case LookRole: return main.care == Care::look;
        case CanFeedRole: return main.care == Care::feed && main.state == State::due;
        case MarksRole: return recentMoultLine(resident, *desk_).marks;
        case FeedingsRole: return recentMoultLine(resident, *desk_).feedings;
        case NowDayRole: return desk_->today().days;
        case LineTextRole: return recentMoultLine(resident, *desk_).description;
        default: return {};
    }
}

QHash<int, QByteArray> DueModel::roleNames() const {
    return {{SubjectRole, "subject"},
            {TagRole, "tag"},
            {BinomialRole, "binomial"},
            {HeadingRole, "heading"},
            {HeadingNoteRole, "headingNote"},
            {PunchRole, "punch"},
            {VerbRole, "verb"},
            {ReasonRole, "reason"},
            {HeldRole, "held"},
            {LookRole, "look"},
            {CanFeedRole, "canFeed"},
            {MarksRole, "marks"},
            {FeedingsRole, "feedings"},
            {NowDayRole, "nowDay"},
            {LineTextRole, "lineText"}};
}

}  // namespace burrow
