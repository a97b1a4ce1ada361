#include "viewmodels/moultmodel.h"

#include <algorithm>

#include "pictures/store.h"
#include "viewmodels/deeds.h"
#include "viewmodels/files.h"

namespace burrow {
MoultModel::MoultModel(QObject* parent) : QObject(parent) {
    when_.requireKnown();
    connect(&when_, &DayEntry::changed, this, &MoultModel::changed);
    connect(&shots_, &MoultShots::changed, this, &MoultModel::photosChanged);
    connect(&shots_, &MoultShots::tagsSeen, this, [this](const std::vector<std::string>& codes) {
        if (!isSaved() && !isAdding()) filing_.see(codes);
    });
    connect(&filing_, &MoultFiling::found, this, &MoultModel::setSubject);
}

void MoultModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    shots_.setDesk(desk);
    filing_.setDesk(desk);
    when_.prepare(desk->knowledge().words, desk->today());
    when_.forbidFuture();
    when_.setToday();
    connect(desk, &Desk::roomChanged, this, &MoultModel::read);
    connect(desk, &Desk::written, this, &MoultModel::lookWhetherUndone);
    read();
    readAdded();
    emit givenChanged();
}

void MoultModel::setDarkroom(Darkroom* darkroom) {
    darkroom_ = darkroom;
    shots_.setDarkroom(darkroom);
    emit givenChanged();
}

void MoultModel::setPhotographer(Photographer* photographer) {
    if (photographer_ == photographer) return;
    if (photographer_) photographer_->disconnect(this);
    photographer_ = photographer;
    if (photographer_) {
        connect(photographer_, &Photographer::busyChanged, this, &MoultModel::photosChanged);
        connect(photographer_, &Photographer::taken, this, &MoultModel::addBytes);
        connect(photographer_, &Photographer::refused, this,
                [this](const QString& id) { shots_.tell(desk_->say(Message(id.toStdString()))); });
    }
    emit givenChanged();
}

void MoultModel::setScanner(Scanner* scanner) {
    if (scanner_ == scanner) return;
    if (scanner_) scanner_->disconnect(this);
    scanner_ = scanner;
    if (scanner_) connect(scanner_, &Scanner::stateChanged, this, &MoultModel::cameraChanged);
    emit givenChanged();
    emit cameraChanged();
}

QString MoultModel::cameraTrouble() const {
    if (!scanner_ || !desk_ || scanner_->trouble().isEmpty()) return {};
    return desk_->say(Message("moult." + scanner_->trouble().toStdString()));
}

void MoultModel::setSubject(const QString& subject) {
    if (subject_ == subject) return;
    subject_ = subject;
    read();
    emit givenChanged();
}

void MoultModel::read() {
    resident_ = desk_ ? residentOf(*desk_, subject_) : nullptr;
    filing_.setResident(resident_);
    emit changed();
    emit photosChanged();
}

void MoultModel::setMoult(const QString& moult) {
    if (added_ == moult) return;
    added_ = moult;
    addedTo_.reset();
    isAddedRead_ = false;
    readAdded();
    emit givenChanged();
}

void MoultModel::readAdded() {
    const auto id = Uuid::parse(added_.toStdString());
    if (!desk_ || !isAdding()) return;
    desk_->ask<std::optional<Fact>>(
        this,
        [entry = EntryId{id.value_or(Uuid())}](Book& book) { return burrow::fact(book, entry); },
        [this](const Result<std::optional<Fact>>& found) {
            isAddedRead_ = true;
            if (found && *found && (*found)->kind == FactKind::moulted) addedTo_ = **found;
            if (addedTo_) {
                // By the next day a skin has dried.
                setDried(addedTo_->day < desk_->today());
                setSubject(toQt(addedTo_->subject.text()));
            }
            emit changed();
            emit photosChanged();
        });
}

bool MoultModel::isMissing() const {
    if (!desk_ || !desk_->room() || resident_ || isUnfiled()) return false;
    return !isAdding() || isAddedRead_;
}

QString MoultModel::addingTo() const {
    return addedTo_ && resident_ ? desk_->say({"moult.addingTo", {{"day", addedTo_->day}}})
                                 : QString();
}

QString MoultModel::tag() const {
    return resident_ ? toQt(resident_->subject().number) : QString();
}
QString MoultModel::binomial() const { return resident_ ? speciesText(*resident_) : QString(); }
QString MoultModel::about() const { return resident_ ? aboutText(*resident_, *desk_) : QString(); }
QString MoultModel::punch() const { return resident_ ? punchFor(*resident_) : QString(); }

QString MoultModel::caution() const {
    const auto* profile = resident_ ? resident_->profile : nullptr;
    const bool mayCarryHairs = resident_ && (!profile || profile->hairs.value != Hairs::none);
    return mayCarryHairs ? desk_->say("moult.hairs") : QString();
}

QString MoultModel::onRecord() const {
    if (!resident_ || resident_->subject().form != Form::animal || isSaved()) return {};
    const auto& moults = resident_->kept.digest.recentMoults;
    const bool isThere = std::any_of(moults.begin(), moults.end(), [this](const MoultMark& moult) {
        return moult.day == when_.day();
    });
    return isThere ? desk_->say({"moult.onRecord", {{"day", *when_.day()}}}) : QString();
}

std::optional<CivilDay> MoultModel::recentMoult() const {
    const bool isOne = resident_ && resident_->subject().form == Form::animal && desk_->room();
    if (!isOne || isSaved() || isAdding() || !when_.day()) return std::nullopt;
    // Whose fangs still harden does not moult again.
    const auto growing = resident_->plan.stage.growing();
    const int within =
        desk_->room()->rulesFor(*resident_).dayRange(ruleFor("hardening", growing)).most;
    const auto last = resident_->kept.digest.lastMoult();
    const bool isRecent = last && *last < *when_.day() && *when_.day() - *last <= within;
    return isRecent ? last : std::nullopt;
}

QString MoultModel::recent() const {
    const auto day = recentMoult();
    return day ? desk_->say({"moult.recent", {{"day", *day}}}) : QString();
}

void MoultModel::joinRecent() {
    if (const auto day = recentMoult()) when_.setDay(day);
}

void MoultModel::setCarapace(const QString& text) {
    if (carapace_ == text) return;
    carapace_ = text;
    carapaceError_.clear();
    emit changed();
}

void MoultModel::setSpan(const QString& text) {
    if (span_ == text) return;
    span_ = text;
    spanError_.clear();
    emit changed();
}

QString MoultModel::spanLabel() const {
    if (!resident_) return {};
    const bool isLong =
        resident_->profile != nullptr && isMeasuredByBody(resident_->profile->order);
    return desk_->say(isLong ? "moult.bodyLength" : "moult.span");
}

bool MoultModel::canBeUltimate() const {
    return resident_ && resident_->subject().form == Form::animal &&
           resident_->subject().sex != Sex::female;
}

void MoultModel::setUltimate(bool on) {
    if (ultimate_ == on) return;
    ultimate_ = on;
    emit changed();
}

bool MoultModel::isDeveloping() const {
    return shots_.isDeveloping() || (photographer_ && photographer_->busy());
}

void MoultModel::takePhoto() {
    if (photographer_ && !busy_ && !isSaved() && canTakeMore()) photographer_->take();
}

void MoultModel::addBytes(const QByteArray& bytes) {
    if (!busy_ && !isSaved()) shots_.addBytes(bytes);
}

void MoultModel::addFiles(const QList<QUrl>& files) {
    if (!busy_ && !isSaved()) shots_.addFiles(files);
}

bool MoultModel::readSize(FactBody& body, const char* field, const QString& label,
                          const QString& text, QString& error) const {
    auto typed = text.trimmed().toStdString();
    std::replace(typed.begin(), typed.end(), ',', '.');
    error.clear();
    if (typed.empty()) return true;
    const auto done = setField(body, FactKind::moulted, field, typed);
    if (done) return true;
    auto message = done.error().message;
    for (auto& argument : message.arguments) {
        if (argument.name == "field") argument.value = label.toStdString();
    }
    error = desk_->say(message);
    return false;
}

bool MoultModel::readBody(FactBody& body) {
    const auto carapaceLabel = desk_->say("moult.carapace");
    const bool carapaceIsFine =
        readSize(body, "carapace_mm", carapaceLabel, carapace_, carapaceError_);
    const bool spanIsFine = readSize(body, "span_mm", spanLabel(), span_, spanError_);
    if (body.carapace || body.span) body.method = Method::ruler;
    if (canBeUltimate() && ultimate_) body.ultimate = true;
    emit changed();
    return carapaceIsFine && spanIsFine && !when_.isWrong();
}

bool MoultModel::canSave() const {
    const bool isReady = resident_ && !isDeveloping();
    return isReady && (!isAdding() || (addedTo_ && !shots_.isEmpty()));
}

QString MoultModel::savedMoult() const { return moult_ ? toQt(moult_->text()) : QString(); }

void MoultModel::leave() {
    if (isSaved() || shots_.isEmpty() || warned_) return emit left();
    warned_ = true;
    emit changed();
}

void MoultModel::save() {
    FactBody body;
    if (busy_ || isSaved() || !canSave() || (!isAdding() && !readBody(body))) return;
    busy_ = true;
    emit changed();
    shots_.keep([this, body](MoultShots::Kept kept) {
        if (isAdding()) return writePhotos(addedTo_->id, std::move(kept));
        write(body, std::move(kept));
    });
}

void MoultModel::write(FactBody body, MoultShots::Kept kept) {
    FoundMoult found{resident_->subject().id,
                     std::move(body),
                     *when_.day(),
                     std::nullopt,
                     resident_->subject().form == Form::animal,
                     kept.photos};
    if (found.day != desk_->today()) {
        // A day alone stands at its noon.
        found.happenedAt = desk_->knowledge().zone.resolve({found.day, std::nullopt, std::nullopt});
    }
    const auto count = static_cast<std::int64_t>(found.photos.size());
    Deed deed;
    deed.tag = tag();
    deed.said = {count == 0 ? "did.moulted" : "did.moultWithPhotos", {{"count", count}}};
    struct Written {
        EntryId moult;
        std::size_t writings = 0;
    };
    const auto written = std::make_shared<Written>();
    deed.write = [found = std::move(found), written](Book& book) -> Result<ChangeSet> {
        BURROW_TRY(const auto made, moultDrafts(book, found));
        ChangeSet changes;
        if (!made.drafts.empty()) {
            BURROW_TRY(changes, book.record(made.drafts));
        }
        written->moult = made.moult;
        // It is written by now, whether or not it can be counted.
        written->writings = writingsOf(book, made.moult).value_or(0);
        return changes;
    };
    desk_->act(this, std::move(deed),
               [this, written, kept = std::move(kept)](const Result<ChangeSet>& done) {
                   if (done) {
                       moult_ = written->moult;
                       writings_ = written->writings;
                   }
                   end(done, kept);
               });
}

void MoultModel::end(const Result<ChangeSet>& done, MoultShots::Kept kept) {
    busy_ = false;
    // What the book refused is said by the desk, and everything stays as it was entered.
    if (done) {
        lostPhotos_ = kept.why;
        kept_.insert(kept_.end(), kept.shots.begin(), kept.shots.end());
        shots_.replace(std::move(kept.left));
    }
    emit photosChanged();
    emit changed();
}

void MoultModel::writePhotos(const EntryId& moult, MoultShots::Kept kept) {
    if (kept.photos.empty()) {
        busy_ = false;
        if (isSaved()) lostPhotos_ = kept.why;
        shots_.replace(std::move(kept.left));
        if (!isSaved()) shots_.tell(kept.why);
        return emit changed();
    }
    Deed deed;
    deed.tag = tag();
    deed.said = {"did.photo"};
    const auto writings = std::make_shared<std::size_t>();
    deed.write = [moult, photos = kept.photos, writings](Book& book) -> Result<ChangeSet> {
        BURROW_TRY(const auto drafts, photoDrafts(book, moult, photos));
        BURROW_TRY(auto changes, book.record(drafts));
        *writings = writingsOf(book, moult).value_or(0);
        return changes;
    };
    desk_->act(this, std::move(deed),
               [this, moult, writings, kept = std::move(kept)](const Result<ChangeSet>& done) {
                   if (done) {
                       writings_ = isSaved() ? writings_ : *writings;
                       moult_ = moult;
                   }
                   end(done, kept);
               });
}

void MoultModel::keepPhotosAgain() {
    if (busy_ || !isSaved()) return;
    busy_ = true;
    emit changed();
    shots_.keep([this](MoultShots::Kept kept) { writePhotos(*moult_, std::move(kept)); });
}

void MoultModel::lookWhetherUndone() {
    if (!isSaved()) return;
    desk_->ask<std::size_t>(
        this, [moult = *moult_](Book& book) { return writingsOf(book, moult); },
        [this](const Result<std::size_t>& writings) {
            if (!isSaved() || !writings || *writings >= writings_) return;
            moult_.reset();
            lostPhotos_.clear();
            shots_.putBack(kept_);
            kept_.clear();
            emit changed();
        });
}

QString MoultModel::verb() const {
    return resident_ ? verbText(*resident_, resident_->plan.of(Care::feed), *desk_) : QString();
}

QString MoultModel::reason() const {
    return resident_ ? desk_->say(resident_->plan.of(Care::feed).reason) : QString();
}

QString MoultModel::nextPunch() const {
    return resident_ ? punchFor(*resident_, resident_->plan.of(Care::feed)) : QString();
}

QString MoultModel::toSex() const {
    const bool canBeSexed = resident_ && resident_->subject().form == Form::animal;
    return canBeSexed ? toMeasure() : QString();
}

QString MoultModel::toMeasure() const { return kept_.empty() ? QString() : savedMoult(); }

}  // namespace burrow
