#include "viewmodels/enclosurelist.h"

#include <algorithm>

#include "viewmodels/factwords.h"

namespace burrow {
namespace {

QStringList residentsOf(const Room& room, const EnclosureId& id) {
    QStringList numbers;
    for (const auto& resident : room.residents()) {
        const auto& subject = resident->subject();
        if (subject.enclosure == id && subject.isKept()) numbers.append(toQt(subject.number));
    }
    return numbers;
}

}  // namespace

void EnclosureList::setDesk(Desk* desk) {
    desk_ = desk;
    emit deskChanged();
}

void EnclosureList::setQuery(const QString& query) {
    if (query_ == query) return;
    query_ = query;
    emit queryChanged();
    filter();
}

void EnclosureList::read() {
    setQuery({});
    desk_->ask<std::vector<Enclosure>>(
        this, [](Book& book) { return enclosures(book); },
        [this](const Result<std::vector<Enclosure>>& all) {
            if (all) show(*all);
        });
}

void EnclosureList::show(const std::vector<Enclosure>& enclosures) {
    all_.clear();
    if (!desk_->room()) return filter();
    std::vector<EnclosureRow> taken;
    for (const auto& enclosure : enclosures) {
        const auto numbers = residentsOf(*desk_->room(), enclosure.id);
        QStringList parts{innerSizeText(enclosure, *desk_), placeText(enclosure.place, *desk_)};
        parts.removeAll(QString());
        const auto about = parts.join(QStringLiteral(", ")).toStdString();
        const auto who = numbers.join(QStringLiteral(", "));
        EnclosureRow row;
        row.key = toQt(enclosure.id.text());
        row.name = toQt(enclosure.name);
        row.note = desk_->say({numbers.isEmpty() ? "enclosure.empty" : "enclosure.lived",
                               {{"about", about}, {"who", who.toStdString()}}});
        row.haystack = (row.name + ' ' + row.note).toCaseFolded();
        (numbers.isEmpty() ? all_ : taken).push_back(std::move(row));
    }
    std::move(taken.begin(), taken.end(), std::back_inserter(all_));
    filter();
}

void EnclosureList::filter() {
    const auto wanted = query_.trimmed().toCaseFolded();
    std::vector<EnclosureRow> shown;
    std::copy_if(all_.begin(), all_.end(), std::back_inserter(shown),
                 [&](const EnclosureRow& row) { return row.haystack.contains(wanted); });
    hidden_ = static_cast<int>(shown.size() - std::min(shown.size(), most));
    shown.resize(std::min(shown.size(), most));
    bring(rows_, std::move(shown));
    emit countChanged();
}

QString EnclosureList::rest() const {
    return hidden_ > 0 ? desk_->say({"enclosure.rest", {{"count", std::int64_t{hidden_}}}})
                       : QString();
}

QVariant EnclosureList::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case EnclosureRole: return row->key;
        case NameRole: return row->name;
        case NoteRole: return row->note;
        default: return {};
    }
}

QHash<int, QByteArray> EnclosureList::roleNames() const {
    return {{EnclosureRole, "enclosure"}, {NameRole, "name"}, {NoteRole, "note"}};
}

}  // namespace burrow
