#include "viewmodels/findmodel.h"

#include <unordered_map>

namespace burrow {

void FindModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &FindModel::look);
    look();
    emit deskChanged();
}

void FindModel::setQuery(const QString& query) {
    if (query_ == query) return;
    query_ = query;
    look();
    emit queryChanged();
}

void FindModel::look() {
    isStale_ = true;
    if (!desk_ || isAsking_) return;
    if (!isSearching() || !desk_->room()) {
        isStale_ = false;
        return show(Findings{});
    }
    isStale_ = false;
    isAsking_ = true;
    const auto typed = query_.toStdString();
    const SearchOptions options{200, placeWords(desk_->knowledge().words)};
    // The room keeps its profiles as long as they are asked about.
    desk_->ask<Findings>(
        this,
        [room = desk_->room(), typed, options](Book& book) {
            return search(book, room->profiles(), typed, options);
        },
        [this](const Result<Findings>& findings) {
            isAsking_ = false;
            if (isStale_) return look();
            show(findings);
        });
}

void FindModel::show(const Result<Findings>& findings) {
    std::vector<FindRow> rows;
    summary_.clear();
    if (!findings) {
        summary_ = desk_->say(findings.error().message);
    } else if (desk_->room() && isSearching()) {
        std::unordered_map<Uuid, const Resident*, UuidHash> residents;
        for (const auto& resident : desk_->room()->residents()) {
            residents.emplace(resident->subject().id.uuid, resident.get());
        }
        for (const auto& found : findings->found) {
            const auto resident = residents.find(found.subject.uuid);
            if (resident != residents.end()) rows.push_back(rowFor(found, *resident->second));
        }
        const auto all = static_cast<std::int64_t>(findings->all);
        const auto shown = static_cast<std::int64_t>(findings->found.size());
        summary_ = all > shown ? desk_->say({"find.some", {{"count", all}, {"shown", shown}}})
                               : desk_->say({"shelves.found", {{"count", all}}});
    }
    bring(rows_, std::move(rows));
    emit answered();
}

QString FindModel::reasonFor(const Found& found, const Resident& resident) const {
    const auto where = placeText(resident.kept.place, *desk_);
    // What stands in the row anyhow needs no saying.
    const bool isPlain =
        found.by == FoundBy::number || found.by == FoundBy::numberStart ||
        found.by == FoundBy::place ||
        (found.by == FoundBy::species && toQt(found.what.text) == speciesText(resident));
    if (isPlain) return where;
    if (found.by != FoundBy::note) {
        const auto id = "find.seen." + std::string(name(found.by));
        return desk_->say({id, {{"what", found.what.text}}}) + ". " + where;
    }
    if (!found.day) return desk_->say({"find.seen.note", {{"what", found.what.text}}});
    return desk_->say({"find.seen.noteOn", {{"day", *found.day}, {"what", found.what.text}}});
}

FindRow FindModel::rowFor(const Found& found, const Resident& resident) const {
    const auto& subject = resident.subject();
    FindRow row;
    row.key = toQt(subject.id.text());
    row.tag = toQt(subject.number);
    row.binomial = speciesText(resident);
    row.gone = !subject.isKept();
    row.verb = subject.standing == Standing::here
                   ? aboutText(resident, *desk_) + '.'
                   : desk_->say(resident.plan.of(Care::feed).reason) + '.';
    row.reason = reasonFor(found, resident);
    const auto& main = mainAnswer(resident.plan);
    row.punch = isListed(main) ? punchFor(resident, main) : punchFor(resident);
    if (found.entry) row.entry = toQt(found.entry->text());
    return row;
}

QVariant FindModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case SubjectRole: return row->key;
        case TagRole: return row->tag;
        case BinomialRole: return row->binomial;
        case VerbRole: return row->verb;
        case ReasonRole: return row->reason;
        case PunchRole: return row->punch;
        case EntryRole: return row->entry;
        case GoneRole: return row->gone;
        default: return {};
    }
}

QHash<int, QByteArray> FindModel::roleNames() const {
    return {{SubjectRole, "subject"}, {TagRole, "tag"},       {BinomialRole, "binomial"},
            {VerbRole, "verb"},       {ReasonRole, "reason"}, {PunchRole, "punch"},
            {EntryRole, "entry"},     {GoneRole, "gone"}};
}

}  // namespace burrow
