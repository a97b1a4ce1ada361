#include "viewmodels/historymodel.h"

#include "viewmodels/deeds.h"

namespace burrow {

struct HistoryModel::Portion {
    std::vector<Fact> facts;
    EnclosureNames names;
};

HistoryRow historyRow(const Fact& fact, const Resident& resident, const Desk& desk,
                      const EnclosureNames& names) {
    HistoryRow row;
    row.key = toQt(fact.id.text());
    row.day = toQt(desk.knowledge().words.longDay(fact.day));
    row.title = factTitle(fact, desk);
    row.detail = factDetail(fact, resident, desk, names);
    row.note = factNote(fact, desk);
    row.glyph = factGlyph(fact.kind);
    return row;
}

void HistoryModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::written, this, &HistoryModel::read);
    connect(desk, &Desk::roomChanged, this, &HistoryModel::headChanged);
    emit deskChanged();
    read();
}

void HistoryModel::setSubject(const QString& subject) {
    if (subject_ == subject) return;
    subject_ = subject;
    wanted_ = portion;
    hasMore_ = false;
    ready_ = false;
    bring(rows_, {});
    emit headChanged();
    emit countChanged();
    read();
}

QString HistoryModel::tag() const {
    const auto resident = desk_ ? residentOf(*desk_, subject_) : nullptr;
    return resident ? toQt(resident->subject().number) : QString();
}

QString HistoryModel::binomial() const {
    const auto resident = desk_ ? residentOf(*desk_, subject_) : nullptr;
    return resident ? speciesText(*resident) : QString();
}

bool HistoryModel::isMissing() const {
    return desk_ && desk_->room() && !residentOf(*desk_, subject_);
}

/// Always from the newest on: what was written meanwhile is there too, and entries of the same moment
/// are never split.
void HistoryModel::read() {
    const auto id = Uuid::parse(subject_.toStdString());
    if (!desk_ || !id) return;
    isReading_ = true;
    desk_->ask<Portion>(
        this,
        [subject = SubjectId{*id}, wanted = wanted_](Book& book) -> Result<Portion> {
            BURROW_TRY(auto facts, history(book, subject, wanted));
            BURROW_TRY(auto names, enclosureNames(book));
            return Portion{std::move(facts), std::move(names)};
        },
        [this, asked = subject_](const Result<Portion>& read) {
            if (asked != subject_) return;
            isReading_ = false;
            if (read) show(*read);
        });
}

void HistoryModel::show(const Portion& read) {
    const auto resident = residentOf(*desk_, subject_);
    hasMore_ = resident && static_cast<int>(read.facts.size()) == wanted_;
    std::vector<HistoryRow> rows;
    QString last;
    for (const auto& fact : read.facts) {
        if (!resident) break;
        auto row = historyRow(fact, *resident, *desk_, read.names);
        const auto month = toQt(desk_->knowledge().words.month(fact.day));
        if (month != last) row.month = month;
        last = month;
        rows.push_back(std::move(row));
    }
    ready_ = true;
    bring(rows_, std::move(rows));
    emit countChanged();
}

bool HistoryModel::canFetchMore(const QModelIndex& parent) const {
    return !parent.isValid() && hasMore_ && !isReading_ && !rows_.empty();
}

void HistoryModel::fetchMore(const QModelIndex& parent) {
    if (!canFetchMore(parent)) return;
    wanted_ += portion;
    read();
}

QVariant HistoryModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case EntryRole: return row->key;
        case MonthRole: return row->month;
        case DayRole: return row->day;
        case TitleRole: return row->title;
        case DetailRole: return row->detail;
        case NoteRole: return row->note;
        case GlyphRole: return row->glyph;
        default: return {};
    }
}

QHash<int, QByteArray> HistoryModel::roleNames() const {
    return {{EntryRole, "entry"},   {MonthRole, "month"}, {DayRole, "day"},    {TitleRole, "title"},
            {DetailRole, "detail"}, {NoteRole, "note"},   {GlyphRole, "glyph"}};
}

}  // namespace burrow
