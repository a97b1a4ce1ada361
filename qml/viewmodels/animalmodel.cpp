#include "viewmodels/animalmodel.h"

#include "viewmodels/deeds.h"
#include "viewmodels/historymodel.h"
#include "viewmodels/photofiles.h"

namespace burrow {

void AnimalModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &AnimalModel::read);
    emit deskChanged();
    read();
}

void AnimalModel::setSubject(const QString& subject) {
    if (subject_ == subject) return;
    subject_ = subject;
    isRead_ = false;
    read();
}

/// The label comes from the room at once; the history is asked for.
void AnimalModel::read() {
    if (!desk_) return;
    resident_ = residentOf(*desk_, subject_);
    emit changed();
    if (!resident_) return;
    const auto id = resident_->subject().id;
    desk_->ask<AnimalRecord>(
        this, [id](Book& book) { return readAnimal(book, id); },
        [this, id](const Result<AnimalRecord>& record) {
            const bool isItsOwn = resident_ && resident_->subject().id == id;
            if (record && isItsOwn && desk_->room()) show(*record);
        });
}

void AnimalModel::show(const AnimalRecord& record) {
    const auto& resident = *resident_;
    life_ = lifeLine(resident, record.facts, *desk_);
    growth_ = growthOf(resident, record.facts, *desk_);
    facts_ = factRows(resident, record, *desk_);
    why_ = whyRows(resident, *desk_);
    sexLines_ = sexRows(resident, record, *desk_);
    sexConflict_ = sexConflictOf(resident, record, *desk_);
    const auto sex = resident.subject().sex;
    const bool isShown =
        resident.subject().form == Form::animal && (sex != Sex::unknown || !sexLines_.isEmpty());
    sex_ = isShown ? desk_->say({"fact.sex", {{"sex", std::string(name(sex))}}}) : QString();
    showEntries(record);
    isRead_ = true;
    emit changed();
}

void AnimalModel::showEntries(const AnimalRecord& record) {
    constexpr int lastFew = 5;
    constexpr int mostPhotos = 12;
    constexpr int longAgo = 300;  // days, from which on a weekday and a month could be of any year
    entries_.clear();
    photos_.clear();
    entryCount_ = static_cast<int>(record.facts.size());
    for (const auto& fact : record.facts) {
        if (entries_.size() < lastFew) {
            const auto row = historyRow(fact, *resident_, *desk_, record.names);
            const bool isOld = desk_->today() - fact.day > longAgo;
            entries_.append(
                QVariantMap{{QStringLiteral("entry"), row.key},
                            {QStringLiteral("day"), isOld ? dayText(fact.day, *desk_) : row.day},
                            {QStringLiteral("title"), row.title},
                            {QStringLiteral("detail"), row.detail},
                            {QStringLiteral("note"), row.note},
                            {QStringLiteral("glyph"), row.glyph}});
        }
        if (fact.kind == FactKind::photo && fact.body.picture && photos_.size() < mostPhotos) {
            photos_.append(QVariantMap{
                {QStringLiteral("url"), thumbnailUrl(*desk_, *fact.body.picture)},
                {QStringLiteral("entry"), toQt(fact.id.text())},
                {QStringLiteral("text"), desk_->say({"animal.photo", {{"day", fact.day}}})}});
        }
    }
}

QString AnimalModel::tag() const {
    return resident_ ? toQt(resident_->subject().number) : QString();
}

QString AnimalModel::punch() const {
    return resident_ ? punchFor(*resident_) : QStringLiteral("none");
}

QString AnimalModel::side() const {
    if (!resident_) return {};
    const auto& subject = resident_->subject();
    if (subject.standing != Standing::here) {
        return desk_->say(Message("animal.side." + std::string(name(subject.standing))));
    }
    if (subject.quarantined) return desk_->say("animal.side.quarantine");
    return subject.form == Form::animal
               ? QString()
               : desk_->say(Message("animal.side." + std::string(name(subject.form))));
}

QString AnimalModel::place() const {
    if (!resident_) return {};
    const auto text = placeText(resident_->kept.place, *desk_);
    return side().isEmpty() ? desk_->roomName() + '\n' + text : text;
}

QString AnimalModel::binomial() const { return resident_ ? speciesText(*resident_) : QString(); }

QString AnimalModel::about() const {
    if (!resident_) return {};
    const auto& subject = resident_->subject();
    if (subject.form == Form::animal) return aboutText(*resident_, *desk_);
    const std::int64_t left = subject.headcount;
    return desk_->say(
        {"animal.counts", {{"putIn", left + resident_->kept.digest.gone}, {"count", left}}});
}

QString AnimalModel::size() const { return resident_ ? sizeText(*resident_, *desk_) : QString(); }

QString AnimalModel::nextPunch() const {
    if (!resident_) return QStringLiteral("none");
    const auto& main = mainAnswer(resident_->plan);
    return isListed(main) ? punchFor(*resident_, main) : punchFor(*resident_);
}

QString AnimalModel::verb() const {
    if (!resident_) return {};
    if (!resident_->subject().isKept()) return desk_->say(mainAnswer(resident_->plan).reason) + '.';
    return verbText(*resident_, mainAnswer(resident_->plan), *desk_);
}

QString AnimalModel::reason() const {
    return isKept() ? desk_->say(mainAnswer(resident_->plan).reason) : QString();
}

QStringList AnimalModel::cautions() const {
    if (!resident_) return {};
    return resident_->profile != nullptr ? cautionWords(*resident_, *desk_)
                                         : QStringList{desk_->say("caution.unknown")};
}

}  // namespace burrow
