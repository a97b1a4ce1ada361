#include "viewmodels/takeinmodel.h"

#include "journal/backups.h"
#include "viewmodels/files.h"
#include "viewmodels/filewords.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

QVariantMap factOf(const QString& name, const QString& value, const QString& sub = {}) {
    return {{QStringLiteral("name"), name},
            {QStringLiteral("value"), value},
            {QStringLiteral("sub"), sub}};
}

QVariantMap warningOf(const QString& happened, const QString& advice) {
    return {{QStringLiteral("happened"), happened}, {QStringLiteral("advice"), advice}};
}

/// What the book says of itself before a file is looked at.
struct Here {
    BookId book;
    std::optional<Arrival> last;
};

}  // namespace

void TakeInModel::setDesk(Desk* desk) {
    desk_ = desk;
    readLast();
    emit changed();
}

void TakeInModel::readLast() {
    if (!desk_) return;
    desk_->ask<Here>(
        this,
        [](Book& book) -> Result<Here> {
            BURROW_TRY(auto newest, arrivals(book, 1));
            Here here{book.id(), std::nullopt};
            if (!newest.empty() && !newest.front().takenBack) here.last = std::move(newest.front());
            return here;
        },
        [this](const Result<Here>& here) {
            if (!here) return;
            book_ = here->book;
            last_ = here->last;
            emit changed();
        });
}

void TakeInModel::enter(Step step) {
    step_ = step;
    trouble_.clear();
    emit changed();
}

int TakeInModel::animalsHere() const {
    return desk_ && desk_->room() ? static_cast<int>(desk_->room()->residents().size()) : 0;
}

void TakeInModel::look(const QUrl& file) {
    const auto path = pathOf(file);
    enter(Step::Choosing);
    if (!path) {
        trouble_ = desk_->say(path.error().message);
        return emit changed();
    }
    path_ = *path;
    passphrase_.clear();
    peek();
}

void TakeInModel::unlock(const QString& passphrase) {
    if (step_ != Step::Locked || passphrase.isEmpty()) return;
    passphrase_ = passphrase.toStdString();
    peek();
}

void TakeInModel::peek() {
    enter(Step::Looking);
    exchange::PeekOptions options;
    options.passphrase = passphrase_;
    options.onProgress = work_.watch(*desk_);
    desk_->ask<exchange::Contents>(
        this, [path = path_, options](Book&) { return exchange::peek(path, options); },
        [this](Result<exchange::Contents> contents) { show(std::move(contents)); });
}

void TakeInModel::show(Result<exchange::Contents> contents) {
    work_.end();
    if (contents) {
        contents_ = *std::move(contents);
        return enter(Step::Looked);
    }
    const auto& message = contents.error().message;
    const bool isLocked = message.id == "seal.needed" || message.id == "seal.wrong";
    enter(isLocked ? Step::Locked : Step::Choosing);
    const bool isAsked = message.id == "seal.needed" || message.id == "bundle.stopped";
    if (!isAsked) trouble_ = desk_->say(message);
    emit changed();
}

void TakeInModel::takeIn() {
    if (step_ != Step::Looked) return;
    enter(Step::TakingIn);
    before_ = animalsHere();
    exchange::TakeInOptions options;
    options.passphrase = passphrase_;
    options.fromOtherBook = isForeign();
    options.developer = &darkroom_->developer();
    options.onProgress = work_.watch(*desk_);
    auto taken = std::make_shared<exchange::TakenIn>();
    Deed deed;
    deed.write = [path = path_, options, taken,
                  &files = darkroom_->files()](Book& book) -> Result<ChangeSet> {
        const auto& around = book.surroundings();
        const Backups backups(book.path(), around.clock, around.zone);
        BURROW_TRY(const auto kept, backups.ensure(BackupReason::beforeImport));
        static_cast<void>(kept);
        BURROW_TRY(*taken, exchange::mergeBundle(book, path, files, options));
        return taken->merge.changes;
    };
    desk_->settle();
    desk_->act(this, std::move(deed),
               [this, taken](const Result<ChangeSet>& done) { showTakenIn(done, taken); });
}

void TakeInModel::showTakenIn(const Result<ChangeSet>& done,
                              std::shared_ptr<exchange::TakenIn> taken) {
    work_.end();
    if (!done) {
        desk_->dismissTrouble();  // it is said here
        enter(Step::Looked);
        if (done.error().message.id != "bundle.stopped") {
            trouble_ = desk_->say(done.error().message);
            emit changed();
        }
        return;
    }
    taken_ = std::move(taken);
    now_ = animalsHere();
    enter(Step::TakenIn);
    readLast();
}

void TakeInModel::undoAll() {
    if (!last_ || step_ == Step::TakingBack) return;
    const auto from = step_;
    enter(Step::TakingBack);
    Deed deed;
    deed.write = [&files = darkroom_->files()](Book& book) -> Result<ChangeSet> {
        BURROW_TRY(auto taken, exchange::takeBackBundle(book, files));
        return std::move(taken.changes);
    };
    desk_->settle();
    desk_->act(this, std::move(deed), [this, from](const Result<ChangeSet>& done) {
        taken_.reset();
        if (done) {
            last_.reset();
            enter(contents_ ? Step::Looked : Step::Choosing);
        } else {
            enter(from);
        }
        readLast();
    });
}

void TakeInModel::putAside() {
    contents_.reset();
    taken_.reset();
    enter(Step::Choosing);
}

QString TakeInModel::title() const {
    return contents_ ? titleText(contents_->manifest, *desk_) : QString();
}

bool TakeInModel::isForeign() const { return contents_ && contents_->manifest.book != book_; }

int TakeInModel::inFile() const {
    return contents_ ? static_cast<int>(contents_->manifest.totals.animals) : 0;
}

QVariantList TakeInModel::contents() const {
    if (!contents_) return {};
    const auto& manifest = contents_->manifest;
    const auto& totals = manifest.totals;
    QVariantList facts;
    facts.append(factOf(desk_->say("file.animals"), QString::number(totals.animals),
                        desk_->say({"file.extent." + std::string(name(manifest.extent))})));
    facts.append(factOf(
        desk_->say("file.entries"), desk_->say({"file.count", {{"n", totals.entries}}}),
        totals.firstDay && totals.lastDay
            ? desk_->say({"file.span", {{"first", *totals.firstDay}, {"last", *totals.lastDay}}})
            : QString()));
    const auto photos = static_cast<std::int64_t>(manifest.photos.size() + manifest.reduced.size());
    facts.append(factOf(desk_->say("file.photos"), desk_->say({"file.count", {{"n", photos}}}),
                        desk_->say({"file.photos." + std::string(name(manifest.photoChoice))})));
    facts.append(factOf(desk_->say("file.confidential"),
                        desk_->say(manifest.withConfidential ? "file.isIn" : "file.isOut")));
    facts.append(factOf(desk_->say("file.size"), fileSizeText(contents_->fileBytes, *desk_),
                        contents_->isSealed ? desk_->say("file.sealed") : QString()));
    return facts;
}

QVariantList TakeInModel::outcome() const {
    if (!taken_) return {};
    const auto count = [this](std::int64_t n) { return desk_->say({"file.count", {{"n", n}}}); };
    QVariantList facts;
    facts.append(factOf(desk_->say("took.animals"), count(std::max(0, now_ - before_))));
    facts.append(factOf(desk_->say("took.entries"), count(taken_->merge.added)));
    facts.append(
        factOf(desk_->say("took.same"), count(taken_->merge.known), desk_->say("took.leftAlone")));
    facts.append(factOf(desk_->say("took.photos"), count(taken_->photosAdded)));
    return facts;
}

QVariantList TakeInModel::warnings() const {
    QVariantList list;
    if (isForeign() && !taken_) {
        list.append(warningOf(desk_->say({"took.foreign", {{"room", contents_->manifest.room}}}),
                              desk_->say("took.foreign.advice")));
    }
    if (!taken_) return list;
    for (const auto& ahead : taken_->merge.ahead) {
        list.append(warningOf(desk_->say({"took.ahead", {{"days", ahead.days}}}),
                              desk_->say("took.ahead.advice")));
    }
    if (!taken_->merge.forked.empty()) {
        list.append(warningOf(desk_->say("took.forked"), desk_->say("took.forked.advice")));
    }
    if (taken_->merge.unknown > 0) {
        list.append(warningOf(desk_->say({"took.unknown", {{"count", taken_->merge.unknown}}}),
                              desk_->say("took.unknown.advice")));
    }
    return list;
}

QString TakeInModel::last() const {
    if (!last_) return {};
    return desk_->say({"took.last",
                       {{"file", last_->source},
                        {"count", last_->entries},
                        {"day", desk_->knowledge().zone.dayOf(last_->at)}}});
}

}  // namespace burrow
