#include "viewmodels/duemodel.h"

#include <algorithm>
#include <unordered_map>

#include "viewmodels/deeds.h"
#include "viewmodels/duetally.h"

namespace burrow {
namespace {

void addTo(const DueRow& row, DueTally& tally) {
    if (row.only) {
        const auto& main = row.only->front();
        tally.add(main.care, main.state == State::hold);
    } else if (const auto main = row.stub->glance().main()) {
        tally.add(*main, row.stub->glance().isHeld());
    }
}

}  // namespace

Visit DueRow::visit() const {
    auto visit = visitOf(*stub);
    if (only) visit.answers = *only;
    return visit;
}

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
    auto rows = isNarrowed() ? narrowedRows() : listed();
    summarise(rows);
    addHeadings(rows);
    bring(rows_, std::move(rows));
    emit summaryChanged();
}

std::vector<DueRow> DueModel::listed() const {
    std::vector<DueRow> rows;
    if (!desk_->room()) return rows;
    for (auto& stub : desk_->room()->listed()) {
        rows.push_back({toQt(stub->id().text()), std::move(stub), {}, {}, {}});
    }
    return rows;
}

std::vector<DueRow> DueModel::narrowedRows() const {
    std::vector<DueRow> rows;
    if (!desk_->room()) return rows;
    std::vector<Visit> visits;
    std::unordered_map<const Resident*, StubPtr> stubs;
    for (auto& stub : desk_->room()->listed()) {
        visits.push_back(visitOf(*stub));
        stubs.emplace(visits.back().resident.get(), std::move(stub));
    }
    for (auto& visit : narrowed(std::move(visits), filter_->filter(), desk_->today())) {
        auto& stub = stubs.at(visit.resident.get());
        rows.push_back(
            {toQt(stub->id().text()), std::move(stub), std::move(visit.answers), {}, {}});
    }
    return rows;
}

/// Each shelf's tally stands on its first row.
void DueModel::addHeadings(std::vector<DueRow>& rows) const {
    DueTally tally;
    std::optional<Place> shelf;
    DueRow* first = nullptr;
    const auto finishShelf = [&] {
        if (first == nullptr) return;
        first->heading = shelfText(*shelf, *desk_);
        if (desk_->room()->isWhole()) first->headingNote = tally.text(*desk_);
    };
    for (auto& row : rows) {
        auto place = row.stub->walk().place.shelfOnly();
        if (place != shelf) {
            finishShelf();
            shelf = std::move(place);
            first = &row;
            tally = {};
        }
        addTo(row, tally);
    }
    finishShelf();
}

void DueModel::summarise(const std::vector<DueRow>& rows) {
    summary_.clear();
    nothing_.clear();
    if (!desk_->room()) return;
    summary_ = toQt(desk_->knowledge().words.longDay(desk_->today()));
    // Nobody is counted before everyone is read.
    if (!desk_->room()->isWhole()) return;
    DueTally all;
    for (const auto& row : rows) addTo(row, all);
    if (const auto text = all.text(*desk_); !text.isEmpty()) summary_ += ". " + text;
    if (!rows.empty()) return;
    if (isNarrowed()) {
        nothing_ = desk_->say("due.noneFits");
        return;
    }
    std::optional<CivilDay> next;
    desk_->room()->forEach([&next](const StubPtr& stub) {
        const auto& opens = stub->glance().opens;
        if (opens) next = next ? std::min(*next, *opens) : *opens;
    });
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
    const auto visit = row->visit();
    const auto& resident = *visit.resident;
    const auto& main = visit.answers.front();
    switch (role) {
        case SubjectRole: return row->key;
        case TagRole: return toQt(resident.subject().number);
        case BinomialRole: return speciesText(resident);
        case HeadingRole: return row->heading;
        case HeadingNoteRole: return row->headingNote;
        case PunchRole: return punchFor(resident, main);
        case VerbRole: return verbText(resident, main, *desk_);
        case ReasonRole: return desk_->say(main.reason) + alsoText(visit, *desk_);
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
