#include "viewmodels/shelfmodel.h"

#include <algorithm>

namespace burrow {

void ShelfModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &ShelfModel::read);
    read();
    emit deskChanged();
}

void ShelfModel::setShelf(const QString& shelf) {
    shelf_ = shelf;
    leftOut_.clear();
    read();
}

void ShelfModel::read() {
    std::vector<ShelfRow> rows;
    isDue_ = false;
    const auto room = desk_ ? desk_->room() : nullptr;
    if (room) {
        for (const auto& resident : room->residents()) {
            const auto& subject = resident->subject();
            const bool isHere = subject.standing == Standing::here &&
                                toQt(resident->kept.place.shelfOnly().text()) == shelf_;
            if (!isHere) continue;
            isDue_ = isDue_ || isListed(mainAnswer(resident->plan));
            const auto key = toQt(subject.id.text());
            rows.push_back(
                {key, toQt(subject.number), speciesText(*resident), !leftOut_.contains(key)});
        }
    }
    bring(rows_, std::move(rows));
    emit countChanged();
}

QString ShelfModel::title() const {
    return desk_ ? shelfText(Place::parse(shelf_.toStdString()), *desk_) : QString();
}

int ShelfModel::included() const {
    return static_cast<int>(std::count_if(rows_.begin(), rows_.end(),
                                          [](const ShelfRow& row) { return row.included; }));
}

void ShelfModel::toggle(const QString& subject) {
    if (!leftOut_.remove(subject)) leftOut_.insert(subject);
    read();
}

void ShelfModel::log(FactKind kind) {
    std::vector<Draft> drafts;
    for (const auto& row : rows_) {
        const auto id = Uuid::parse(row.key.toStdString());
        if (row.included && id)
            drafts.emplace_back(FactDraft{SubjectId{*id}, kind, {}, std::nullopt});
    }
    if (drafts.empty()) return;
    Deed deed;
    deed.tag = title();
    deed.said = {"did.shelf." + std::string(spec(kind).name),
                 {{"count", static_cast<std::int64_t>(drafts.size())}}};
    deed.compose = [drafts = std::move(drafts)](Book&) -> Result<std::vector<Draft>> {
        return drafts;
    };
    desk_->act(this, std::move(deed), [this](const Result<ChangeSet>& done) {
        if (done) emit logged();
    });
}

QVariant ShelfModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case SubjectRole: return row->key;
        case TagRole: return row->tag;
        case BinomialRole: return row->binomial;
        case IncludedRole: return row->included;
        default: return {};
    }
}

QHash<int, QByteArray> ShelfModel::roleNames() const {
    return {{SubjectRole, "subject"},
            {TagRole, "tag"},
            {BinomialRole, "binomial"},
            {IncludedRole, "included"}};
}

}  // namespace burrow
