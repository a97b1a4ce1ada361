#include "viewmodels/backupsmodel.h"

#include "viewmodels/filewords.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

/// Works in the book's thread: what it writes and what the book writes take turns.
template <class T>
std::function<Result<T>(Book&)> withBackups(const Desk& desk,
                                            std::function<Result<T>(const Backups&)> ask) {
    const auto& known = desk.knowledge();
    return [path = desk.bookPath(), &clock = known.clock, zone = known.zone,
            ask = std::move(ask)](Book&) { return ask(Backups(path, clock, zone)); };
}

}  // namespace

void BackupsModel::setDesk(Desk* desk) {
    desk_ = desk;
    if (desk_) read();
    emit changed();
}

void BackupsModel::read() {
    desk_->ask<std::vector<Backup>>(
        this,
        withBackups<std::vector<Backup>>(*desk_,
                                         [](const Backups& backups) { return backups.list(); }),
        [this](Result<std::vector<Backup>> copies) {
            if (copies) copies_ = *std::move(copies);
            ready_ = true;
            busy_ = false;
            emit changed();
        });
}

void BackupsModel::begin() {
    busy_ = true;
    trouble_.clear();
    told_.clear();
    emit changed();
}

void BackupsModel::tell(const Error& error) {
    busy_ = false;
    trouble_ = desk_->say(error.message);
    emit changed();
}

void BackupsModel::makeNow() {
    if (busy_ || !desk_) return;
    begin();
    desk_->ask<Backup>(
        this,
        withBackups<Backup>(
            *desk_, [](const Backups& backups) { return backups.make(BackupReason::asked); }),
        [this](const Result<Backup>& made) {
            if (!made) return tell(made.error());
            told_ = desk_->say("copies.made");
            read();
        });
}

void BackupsModel::choose(int copy) {
    if (busy_ || copy < 0 || copy >= static_cast<int>(copies_.size())) return;
    begin();
    chosen_ = copy;
    preview_.reset();
    desk_->ask<RestorePreview>(
        this,
        withBackups<RestorePreview>(
            *desk_, [file = copies_[static_cast<std::size_t>(copy)].file](
                        const Backups& backups) { return previewRestore(backups, file); }),
        [this](Result<RestorePreview> preview) {
            if (!preview) {
                chosen_ = -1;
                return tell(preview.error());
            }
            preview_ = *std::move(preview);
            busy_ = false;
            emit changed();
        });
}

void BackupsModel::putAway() {
    chosen_ = -1;
    preview_.reset();
    emit changed();
}

void BackupsModel::goBack() {
    if (busy_ || !preview_ || chosen_ < 0) return;
    begin();
    desk_->ask<Restored>(
        this,
        [path = desk_->bookPath(), &clock = desk_->knowledge().clock,
         zone = desk_->knowledge().zone, file = copies_[static_cast<std::size_t>(chosen_)].file](
            Book& book) { return restore(Backups(path, clock, zone), file, book.surroundings()); },
        [this](const Result<Restored>& restored) {
            putAway();
            if (!restored) return tell(restored.error());
            told_ = desk_->say("copies.wentBack");
            // The book that lies open is another one now.
            desk_->open(desk_->bookPath(), desk_->isDemo());
            read();
        });
}

QString BackupsModel::momentText(Instant at) const {
    return desk_->say(
        {"copies.moment",
         {{"day", desk_->knowledge().zone.dayOf(at)}, {"time", timeText(at, *desk_)}}});
}

QVariantList BackupsModel::copies() const {
    QVariantList list;
    for (const auto& copy : copies_) {
        const Message why("copies.why." + std::string(name(copy.reason)));
        list.append(QVariantMap{{QStringLiteral("when"), momentText(copy.madeAt)},
                                {QStringLiteral("why"), desk_->say(why)},
                                {QStringLiteral("size"), fileSizeText(copy.bytes, *desk_)}});
    }
    return list;
}

QString BackupsModel::chosenTitle() const {
    return chosen_ < 0 ? QString() : momentText(copies_[static_cast<std::size_t>(chosen_)].madeAt);
}

QVariantMap BackupsModel::factOf(const char* name, const OnlyHere& only) const {
    const auto sub = only.from && only.to
                         ? desk_->say({"file.span", {{"first", *only.from}, {"last", *only.to}}})
                         : QString();
    return {{QStringLiteral("name"), desk_->say(name)},
            {QStringLiteral("value"), desk_->say({"copies.entries", {{"count", only.entries}}})},
            {QStringLiteral("sub"), sub}};
}

QVariantList BackupsModel::preview() const {
    if (!preview_) return {};
    const auto& backup = preview_->backup;
    QVariantList facts;
    facts.append(QVariantMap{
        {QStringLiteral("name"), desk_->say("copies.holds")},
        {QStringLiteral("value"), desk_->say({"copies.entries", {{"count", backup.entries}}})},
        {QStringLiteral("sub"), desk_->say({"copies.subjects", {{"count", backup.subjects}}})}});
    facts.append(factOf("copies.wouldGo", preview_->lost));
    facts.append(factOf("copies.wouldCome", preview_->gained));
    return facts;
}

}  // namespace burrow
