#include "viewmodels/sexmodel.h"

#include <algorithm>

#include "journal/past.h"
#include "model/moult_photo.h"
#include "room/sex_words.h"
#include "room/sheets.h"
#include "room/tables.h"
#include "viewmodels/photofiles.h"
#include "viewmodels/sexwords.h"

namespace burrow {
namespace {

/// The day of the moult that a photo shows, as it stands now: a photo stays where it was taken when the
/// moult is put right.
CivilDay shownDay(const Fact& photo, std::span<const Fact> facts) {
    const auto moult = std::find_if(facts.begin(), facts.end(),
                                    [&](const Fact& fact) { return fact.id == moultOf(photo); });
    return moult != facts.end() ? moult->day : photo.day;
}

QVariantMap photoMap(const Fact& photo, CivilDay day, const Desk& desk) {
    const bool isDried = photo.body.dried.value_or(false);
    const auto name = desk.say({isDried ? "sexing.titleDried" : "sexing.title", {{"day", day}}});
    return {{QStringLiteral("files"), photoPaths(desk, photo.body)},
            {QStringLiteral("url"), pictureUrl(desk, *photo.body.picture)},
            {QStringLiteral("thumbnail"), thumbnailUrl(desk, *photo.body.picture)},
            {QStringLiteral("name"), name}};
}

/// Takes the last examination back, and puts back the one that it replaced.
Result<ChangeSet> withdraw(Book& book, const std::optional<TakenOut>& replaced) {
    BURROW_TRY(auto undone, book.undo());
    if (!replaced) return std::move(undone.first);
    return putBack(book, *replaced);
}

}  // namespace

/// What the book has about a moult and its animal.
struct SexModel::Record {
    std::optional<Fact> moult;  ///< or the photo that stands for it
    std::optional<SexCase> animal;
};

void SexModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::written, this, &SexModel::read);
    read();
    emit givenChanged();
}

void SexModel::setMoult(const QString& moult) {
    if (moult_ == moult) return;
    moult_ = moult;
    read();
    emit givenChanged();
}

Result<SexModel::Record> SexModel::recordOf(Book& book, const EntryId& moult,
                                            const sexing::SexingRules& rules,
                                            const Profiles& profiles) {
    Record record;
    BURROW_TRY(record.moult, fact(book, moult));
    if (!record.moult) return record;
    BURROW_TRY(record.animal, sexCase(book, record.moult->subject, rules, profiles));
    return record;
}

void SexModel::read() {
    const auto id = Uuid::parse(moult_.toStdString());
    if (!desk_ || !id) return;
    desk_->ask<Record>(
        this,
        [moult = EntryId{*id}, tables = desk_->tables(), room = desk_->room(),
         &shipped = desk_->knowledge().profiles](Book& book) {
            return recordOf(book, moult, tables->sexing, room ? room->profiles() : shipped);
        },
        [this](const Result<Record>& record) { show(record ? *record : Record()); });
}

void SexModel::show(const Record& record) {
    isRead_ = true;
    photos_.clear();
    earlier_.clear();
    opinions_.clear();
    others_.clear();
    said_.reset();
    const bool isThere = record.moult && record.animal && desk_->room();
    resident_ = isThere ? desk_->room()->find(record.moult->subject) : nullptr;
    if (resident_) {
        const auto day = record.moult->day;
        carapace_ = markOf(*record.moult, record.animal->history).carapace;
        title_ = desk_->say({carapace_ ? "sexing.titleWithSize" : "sexing.title",
                             {{"day", day}, {"size", carapace_.value_or(Millimetres{}).value}}});
        for (const auto& fact : record.animal->history) {
            const bool isLook = fact.kind == FactKind::sexed && fact.body.about == record.moult->id;
            if (isLook && fact.body.judge) opinions_.append(opinionText(fact.body, *desk_));
            if (isLook && !fact.body.judge && !said_) said_ = fact;
        }
        showPhotos(record.animal->history, *record.moult);
        others_ = record.animal->sightings;
        std::erase_if(others_, [this](const sexing::Sighting& seen) {
            return said_ && seen.entry == said_->id;
        });
    }
    weigh();
    emit changed();
}

void SexModel::showPhotos(const std::vector<Fact>& facts, const Fact& moult) {
    std::vector<std::pair<CivilDay, Fact>> before;
    for (const auto& fact : facts) {
        if (!isMoultPhoto(fact)) continue;
        const auto day = shownDay(fact, facts);
        if (moultOf(fact) == moult.id) {
            photos_.prepend(photoMap(fact, day, *desk_));
        } else if (day <= moult.day) {
            before.emplace_back(day, fact);
        }
    }
    std::stable_sort(before.begin(), before.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    for (const auto& [day, fact] : before) earlier_.append(photoMap(fact, day, *desk_));
}

/// What the evidence says without this moult, and with what is chosen for it.
void SexModel::weigh() {
    const auto id = Uuid::parse(moult_.toStdString());
    if (!resident_ || !id) return;
    const auto& rules = desk_->tables()->sexing;
    const auto species = speciesText(*resident_).toStdString();
    const sexing::Question question{species, resident_->subject().sex, {}, isTarantula()};
    before_ = sexing::judge(others_, rules, question);
    const bool isChosen = isSexChoice(choice_);
    if (!isChosen && !said_) {
        after_ = before_;
        return;
    }
    sexing::Sighting seen;
    seen.entry = said_ ? said_->id : EntryId{Uuid::named("what is being written")};
    seen.day = desk_->today();
    seen.skin = EntryId{*id};
    seen.carapace = carapace_;
    seen.sizeTells = isTarantula();
    seen.says = isChosen ? sexOf(choice_) : said_->body.sex.value_or(Sex::unknown);
    if (isChosen && clarity_ >= 0) seen.clarity = static_cast<Clarity>(clarity_);
    if (!isChosen) seen.clarity = said_->body.clarity;
    auto all = others_;
    all.push_back(std::move(seen));
    after_ = sexing::judge(all, rules, question);
}

bool SexModel::isTarantula() const {
    const auto* profile = resident_ ? resident_->profile : nullptr;
    return profile == nullptr || profile->order == Order::tarantula;
}

QString SexModel::finding() const {
    return resident_ ? desk_->say(verdictMessage(after_)) : QString();
}

QString SexModel::preview() const {
    return resident_ ? desk_->say(previewMessage(before_.female, after_.female)) : QString();
}

QVariantList SexModel::drawings() const {
    return resident_ && isTarantula() ? sexDrawings(*desk_) : QVariantList();
}

double SexModel::closeMm() const {
    return desk_ ? desk_->tables()->sexing.closeUp(carapace_).value : 0;
}

QStringList SexModel::conflicts() const {
    QStringList list;
    if (!resident_) return list;
    for (const auto& conflict : after_.conflicts) list.append(desk_->say(conflict.why));
    return list;
}

QString SexModel::subject() const {
    return resident_ ? toQt(resident_->subject().id.text()) : QString();
}
QString SexModel::tag() const { return resident_ ? toQt(resident_->subject().number) : QString(); }
QString SexModel::binomial() const { return resident_ ? speciesText(*resident_) : QString(); }
QString SexModel::about() const { return resident_ ? aboutText(*resident_, *desk_) : QString(); }

QStringList SexModel::guidance() const {
    if (!resident_) return {};
    if (!isTarantula()) {
        return {desk_->say("sexing.notATarantula")};
    }
    return {desk_->say("sexing.where"), desk_->say("sexing.what"), desk_->say("sexing.worth")};
}

QString SexModel::verdict() const {
    if (!said_) return {};
    const auto sex = said_->body.sex.value_or(Sex::unknown);
    return desk_->say({"sexing.said", {{"day", said_->day}, {"verdict", std::string(name(sex))}}});
}

void SexModel::setChoice(int choice) {
    if (choice_ == choice) return;
    choice_ = choice;
    weigh();
    emit changed();
}

QVariantList SexModel::choices() const { return desk_ ? sexChoices(*desk_) : QVariantList(); }

void SexModel::setClarity(int clarity) {
    if (clarity_ == clarity) return;
    clarity_ = clarity;
    weigh();
    emit changed();
}

QStringList SexModel::clarities() const { return desk_ ? clarityWords(*desk_) : QStringList(); }

void SexModel::save() {
    const auto id = Uuid::parse(moult_.toStdString());
    if (busy_ || !resident_ || !id || !isSexChoice(choice_)) return;
    FactDraft draft{resident_->subject().id, FactKind::sexed, {}, std::nullopt};
    draft.body.sex = sexOf(choice_);
    draft.body.look = Look::moult;
    draft.body.about = EntryId{*id};
    if (clarity_ >= 0) draft.body.clarity = static_cast<Clarity>(clarity_);
    Deed deed;
    deed.tag = tag();
    deed.said = {"did.sexedBy." + std::string(name(*draft.body.sex))};
    const auto replaced = std::make_shared<std::optional<TakenOut>>();
    deed.compose = [draft, said = said_, replaced](Book& book) -> Result<std::vector<Draft>> {
        std::vector<Draft> drafts;
        if (said) {
            BURROW_TRY(*replaced, takingOut(book, said->id));
            if (*replaced) drafts = (*replaced)->drafts;
        }
        drafts.emplace_back(draft);
        return drafts;
    };
    if (said_) deed.takeBack = [replaced](Book& book) { return withdraw(book, *replaced); };
    busy_ = true;
    emit changed();
    desk_->act(this, std::move(deed), [this](const Result<ChangeSet>& done) {
        busy_ = false;
        emit changed();
        if (done) emit saved();
    });
}

}  // namespace burrow
