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

    void add(const Glance& glance) {
        const auto main = glance.main();
        if (glance.isHeld()) {
            ++held;
        } else if (main == Care::feed) {
            ++feed;
        } else if (main == Care::look) {
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

}  // namespace

void DueModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &DueModel::read);
    read();
    emit deskChanged();
}

void DueModel::read() {
    const auto listed = desk_->room() ? desk_->room()->listed() : std::vector<StubPtr>();
    summarise(listed);
    bring(rows_, rowsFor(listed));
    emit summaryChanged();
}

std::vector<DueRow> DueModel::rowsFor(const std::vector<StubPtr>& listed) const {
    std::vector<DueRow> rows;
    rows.reserve(listed.size());
    Tally tally;
    std::optional<Place> shelf;
    std::size_t first = 0;
    // Each shelf's tally stands on its first row, and is known at its last.
    const auto finishShelf = [&] {
        if (!shelf) return;
        rows[first].heading = shelfText(*shelf, *desk_);
        if (desk_->room()->isWhole()) rows[first].headingNote = tally.text(*desk_);
    };
    for (const auto& stub : listed) {
        auto place = stub->walk().place.shelfOnly();
        if (place != shelf) {
            finishShelf();
            shelf = std::move(place);
            first = rows.size();
            tally = {};
        }
        tally.add(stub->glance());
        rows.push_back({toQt(stub->id().text()), stub, {}, {}});
    }
    finishShelf();
    return rows;
}

void DueModel::summarise(const std::vector<StubPtr>& listed) {
    summary_.clear();
    nothing_.clear();
    if (!desk_->room()) return;
    summary_ = toQt(desk_->knowledge().words.longDay(desk_->today()));
    // Nobody is counted before everyone is read.
    if (!desk_->room()->isWhole()) return;
    Tally all;
    for (const auto& stub : listed) all.add(stub->glance());
    if (const auto text = all.text(*desk_); !text.isEmpty()) summary_ += ". " + text;
    if (!listed.empty()) return;

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
    const auto& resident = *row->stub->resident();
    const auto& main = mainAnswer(resident.plan);
    switch (role) {
        case SubjectRole: return row->key;
        case TagRole: return toQt(resident.subject().number);
        case BinomialRole: return speciesText(resident);
        case HeadingRole: return row->heading;
        case HeadingNoteRole: return row->headingNote;
        case PunchRole: return punchFor(resident, main);
        case VerbRole: return verbText(resident, main, *desk_);
        case ReasonRole: return desk_->say(main.reason) + alsoText(visitOf(*row->stub), *desk_);
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
