#include "viewmodels/duemodel.h"

#include <algorithm>

#include "viewmodels/deeds.h"

namespace burrow {
namespace {

/// How many of a shelf's or a room's visits ask for what.
struct Tally {
    int feed = 0;
    int look = 0;
    int held = 0;
    int other = 0;

    void add(const Answer& main) {
        if (main.state == State::hold) {
            ++held;
        } else if (main.care == Care::feed) {
            ++feed;
        } else if (main.care == Care::look) {
            ++look;
        } else {
            ++other;
        }
    }

    /// "11 to feed, 1 to look at, 4 on hold", without those that are none.
    [[nodiscard]] QString text(const Desk& desk) const {
        QStringList parts;
        const auto part = [&](int count, const char* id) {
            if (count > 0) parts.append(desk.say({id, {{"count", std::int64_t{count}}}}));
        };
        part(feed, "due.feed");
        part(look, "due.look");
        part(other, "due.other");
        part(held, "due.held");
        return parts.join(QStringLiteral(", "));
    }
};

DueRow rowFor(const Visit& visit, const Desk& desk) {
    const auto& resident = *visit.resident;
    const auto& main = visit.answers.front();
    DueRow row;
    row.key = toQt(resident.subject().id.text());
    row.tag = toQt(resident.subject().number);
    row.binomial = speciesText(resident);
    row.punch = punchFor(resident, main);
    row.verb = verbText(resident, main, desk);
    row.reason = desk.say(main.reason) + alsoText(visit, desk);
    row.held = main.state == State::hold;
    row.look = main.care == Care::look;
    row.canFeed = main.care == Care::feed && main.state == State::due;
    row.line = recentMoultLine(resident, desk);
    return row;
}

}  // namespace

void DueModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &DueModel::read);
    read();
    emit deskChanged();
}

void DueModel::read() {
    const auto visits = desk_->room() ? desk_->room()->visits() : std::vector<Visit>();
    summarise(visits);
    bring(rows_, rowsFor(visits));
    emit summaryChanged();
}

std::vector<DueRow> DueModel::rowsFor(const std::vector<Visit>& visits) const {
    QHash<QString, Tally> shelves;
    for (const auto& visit : visits) {
        shelves[shelfText(visit.resident->kept.place, *desk_)].add(visit.answers.front());
    }
    std::vector<DueRow> rows;
    rows.reserve(visits.size());
    QString last;
    for (const auto& visit : visits) {
        auto row = rowFor(visit, *desk_);
        const auto shelf = shelfText(visit.resident->kept.place, *desk_);
        if (rows.empty() || shelf != last) {
            row.heading = shelf;
            row.headingNote = shelves[shelf].text(*desk_);
        }
        last = shelf;
        rows.push_back(std::move(row));
    }
    return rows;
}

void DueModel::summarise(const std::vector<Visit>& visits) {
    summary_.clear();
    nothing_.clear();
    if (!desk_->room()) return;
    Tally all;
    for (const auto& visit : visits) all.add(visit.answers.front());
    summary_ = toQt(desk_->knowledge().words.longDay(desk_->today()));
    if (const auto text = all.text(*desk_); !text.isEmpty()) summary_ += ". " + text;
    if (!visits.empty()) return;

    std::optional<CivilDay> next;
    for (const auto& resident : desk_->room()->residents()) {
        for (const auto& answer : resident->plan.answers) {
            if (answer.state != State::waiting || !answer.window) continue;
            if (!next || answer.window->opens < *next) next = answer.window->opens;
        }
    }
    nothing_ = next ? desk_->say({"due.nothingUntil", {{"day", *next}}})
                    : desk_->say("due.nothing");
}

void DueModel::logUsual(const QString& subject) {
    const auto resident = residentOf(*desk_, subject);
    if (resident) logFact(*desk_, this, *resident, usualFeeding(*resident, *desk_));
}

QVariant DueModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case SubjectRole: return row->key;
        case TagRole: return row->tag;
        case BinomialRole: return row->binomial;
        case HeadingRole: return row->heading;
        case HeadingNoteRole: return row->headingNote;
        case PunchRole: return row->punch;
        case VerbRole: return row->verb;
        case ReasonRole: return row->reason;
        case HeldRole: return row->held;
        case LookRole: return row->look;
        case CanFeedRole: return row->canFeed;
        case MarksRole: return row->line.marks;
        case FeedingsRole: return row->line.feedings;
        case NowDayRole: return row->line.nowDay;
        case LineTextRole: return row->line.description;
        default: return {};
    }
}

QHash<int, QByteArray> DueModel::roleNames() const {
    return {{SubjectRole, "subject"},   {TagRole, "tag"},           {BinomialRole, "binomial"},
            {HeadingRole, "heading"},   {HeadingNoteRole, "headingNote"}, {PunchRole, "punch"},
            {VerbRole, "verb"},         {ReasonRole, "reason"},     {HeldRole, "held"},
            {LookRole, "look"},         {CanFeedRole, "canFeed"},   {MarksRole, "marks"},
            {FeedingsRole, "feedings"}, {NowDayRole, "nowDay"},     {LineTextRole, "lineText"}};
}

}  // namespace burrow
