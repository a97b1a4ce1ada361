#include "viewmodels/entrymodel.h"

#include "journal/past.h"
#include "model/moult_photo.h"
#include "room/sex_case.h"
#include "viewmodels/photofiles.h"

namespace burrow {

struct EntryModel::Found {
    std::optional<Fact> fact;
    std::optional<EntryId> toSex;
    std::vector<Reading> readings;
    EnclosureNames names;
};

void EntryModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::written, this, &EntryModel::read);
    emit deskChanged();
    read();
}

void EntryModel::setEntry(const QString& entry) {
    if (entry_ == entry) return;
    entry_ = entry;
    read();
}

void EntryModel::read() {
    const auto id = Uuid::parse(entry_.toStdString());
    if (!desk_ || entry_.isEmpty()) return;
    if (!id) return show({});
    desk_->ask<Found>(
        this,
        [entry = EntryId{*id}](Book& book) -> Result<Found> {
            Found found;
            BURROW_TRY(found.fact, fact(book, entry));
            if (found.fact) {
                BURROW_TRY(found.toSex, moultToSex(book, *found.fact));
            }
            BURROW_TRY(found.readings, readingsOf(book, entry));
            BURROW_TRY(found.names, enclosureNames(book));
            return found;
        },
        [this, asked = entry_](const Result<Found>& found) {
            if (asked == entry_) show(found ? *found : Found{});
        });
}

void EntryModel::show(const Found& found) {
    isRead_ = true;
    fact_ = found.fact;
    resident_ = fact_ && desk_->room() ? desk_->room()->find(fact_->subject) : nullptr;
    toSex_ = found.toSex ? toQt(found.toSex->text()) : QString();
    lines_.clear();
    readings_.clear();
    if (resident_) lines_ = fieldLines(fact_->kind, fact_->body, *resident_, *desk_, found.names);
    for (const auto& reading : found.readings) {
        if (!resident_ || found.readings.size() < 2) break;
        auto then = *fact_;
        then.day = reading.day;
        then.body = reading.body;
        const auto written = desk_->knowledge().zone.dayOf(reading.writtenAt);
        const auto detail = factDetail(then, *resident_, *desk_, found.names);
        QStringList parts{factTitle(then, *desk_), detail, factNote(then, *desk_)};
        parts.removeAll(QString());
        readings_.append(QVariantMap{
            {QStringLiteral("name"),
             desk_->say({readings_.isEmpty() ? "entry.first" : "entry.then", {{"day", written}}})},
            {QStringLiteral("value"), dayText(then.day, *desk_)},
            {QStringLiteral("sub"), parts.join(QStringLiteral(", "))}});
    }
    emit changed();
}

QString EntryModel::subject() const {
    return resident_ ? toQt(resident_->subject().id.text()) : QString();
}

QString EntryModel::tag() const {
    return resident_ ? toQt(resident_->subject().number) : QString();
}

QString EntryModel::binomial() const { return resident_ ? speciesText(*resident_) : QString(); }

QString EntryModel::title() const { return resident_ ? factTitle(*fact_, *desk_) : QString(); }

QString EntryModel::glyph() const { return resident_ ? factGlyph(fact_->kind) : QString(); }

QString EntryModel::day() const { return resident_ ? dayText(fact_->day, *desk_) : QString(); }

QUrl EntryModel::picture() const {
    return resident_ && fact_->body.picture ? pictureUrl(*desk_, *fact_->body.picture) : QUrl();
}

QString EntryModel::toMeasure() const {
    if (!resident_) return {};
    const bool isMoult = fact_->kind == FactKind::moulted || isMoultPhoto(*fact_);
    return isMoult ? entry_ : QString();
}

QString EntryModel::toPhotograph() const {
    return resident_ && fact_->kind == FactKind::moulted ? entry_ : QString();
}

void EntryModel::takeOut() {
    if (!resident_ || busy_) return;
    const auto taken = std::make_shared<TakenOut>();
    Deed deed;
    deed.tag = tag();
    deed.said = {"did.takenOut"};
    deed.compose = [taken, entry = fact_->id](Book& book) -> Result<std::vector<Draft>> {
        BURROW_TRY(auto found, takingOut(book, entry));
        if (!found) return fail(Trouble::notFound, {"entry.missing"});
        *taken = *std::move(found);
        return taken->drafts;
    };
    deed.takeBack = [taken](Book& book) { return putBack(book, *taken); };
    busy_ = true;
    emit busyChanged();
    desk_->act(this, std::move(deed), [this](const Result<ChangeSet>& done) {
        busy_ = false;
        emit busyChanged();
        if (done) emit takenOut();
    });
}

}  // namespace burrow
